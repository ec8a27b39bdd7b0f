package blankwright.mesh.io;

import java.util.Arrays;

/** Numbers, as many as come; grows by what is there, never by what a header says. */
final class DoubleRow {
    private double[] value = new double[64];
    private int size;

    void add(double v) {
        if (size == value.length) value = Arrays.copyOf(value, longer(size));
        value[size++] = v;
    }

    double get(int i) {
        return value[i];
    }

    int size() {
        return size;
    }

    double[] toArray() {
        return Arrays.copyOf(value, size);
    }

    /** Half as long again; throws OutOfMemoryError, which the reader's door turns into words, past what an array can hold. */
    static int longer(int length) {
        if (length >= Integer.MAX_VALUE - 8) throw new OutOfMemoryError("more than 2147483639 numbers in one array");
        return (int) Math.min(Integer.MAX_VALUE - 8L, length + (length >> 1) + 16L);
    }
}
