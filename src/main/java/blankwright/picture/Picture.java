package blankwright.picture;

import java.io.IOException;
import java.io.OutputStream;

/** A finished picture. */
public final class Picture {
    private final int[] rgb;
    private final int width, height;
    private final double perMm;

    Picture(int[] rgb, int width, int height, double perMm) {
        this.rgb = rgb;
        this.width = width;
        this.height = height;
        this.perMm = perMm;
    }

    /**
     * @param rgb 0xRRGGBB row by row from the upper left corner; copied
     * @param perMm elements per mm when printed at its own size
     */
    public static Picture of(int[] rgb, int width, int height, double perMm) {
        if (rgb.length != width * height) throw new IllegalArgumentException(rgb.length + " colours for " + width + " x " + height);
        return new Picture(rgb.clone(), width, height, perMm);
    }

    /** In picture elements. */
    public int width() {
        return width;
    }

    public int height() {
        return height;
    }

    /** Elements per mm when printed at its own size. */
    public double perMm() {
        return perMm;
    }

    /** 0xRRGGBB at column x, row y, from the upper left corner. */
    public int colour(int x, int y) {
        return rgb[y * width + x] & 0xFFFFFF;
    }

    /** Writes it as PNG with its resolution; leaves the stream open. */
    public void writePng(OutputStream out) throws IOException {
        PngFile.write(out, rgb, width, height, perMm);
    }
}
