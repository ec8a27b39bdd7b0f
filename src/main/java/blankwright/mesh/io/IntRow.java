package blankwright.mesh.io;

import java.util.Arrays;

/** Whole numbers, as many as come; grows by what is there, never by what a header says. */
final class IntRow {
    private int[] value = new int[64];
    private int size;

    void add(int v) {
        if (size == value.length) value = Arrays.copyOf(value, DoubleRow.longer(size));
        value[size++] = v;
    }

    int get(int i) {
        return value[i];
    }

    int size() {
        return size;
    }

    void shorten(int to) {
        size = to;
    }

    int[] toArray() {
        return Arrays.copyOf(value, size);
    }
}
