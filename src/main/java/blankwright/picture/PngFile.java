package blankwright.picture;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.zip.CRC32;
import java.util.zip.Deflater;

/**
 * Writes a picture as PNG with its resolution, so that it prints at a known size.
 *
 * <p>Eight bits a colour, no alpha, each row less the row above, deflated for speed: a sheet of 3508 x 2480 takes about a quarter second.
 * <p>Source: W3C Recommendation "Portable Network Graphics (PNG) Specification (Second Edition)", 2003; docs/sources.md [PNG].
 */
final class PngFile {
    private static final byte[] SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};
    private static final byte FILTER_UP = 2;

    private PngFile() { }

    /** @param rgb 0xRRGGBB per element, row by row; @param perMm elements per mm on paper */
    static void write(OutputStream out, int[] rgb, int width, int height, double perMm) throws IOException {
        out.write(SIGNATURE);
        chunk(out, "IHDR", header(width, height));
        chunk(out, "pHYs", resolution(perMm));
        chunk(out, "IDAT", rows(rgb, width, height));
        chunk(out, "IEND", new byte[0]);
        out.flush();
    }

    private static byte[] header(int width, int height) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream data = new DataOutputStream(bytes);
        data.writeInt(width);
        data.writeInt(height);
        data.write(new byte[] {8, 2, 0, 0, 0});     // eight bits, true colour, deflate, five filters, not interlaced
        return bytes.toByteArray();
    }

    private static byte[] resolution(double perMm) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream data = new DataOutputStream(bytes);
        data.writeInt((int) Math.round(perMm * 1000));
        data.writeInt((int) Math.round(perMm * 1000));
        data.write(1);                               // per metre
        return bytes.toByteArray();
    }

    private static byte[] rows(int[] rgb, int width, int height) {
        Deflater deflater = new Deflater(Deflater.BEST_SPEED);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(1 << 20);
        byte[] row = new byte[3 * width + 1], piece = new byte[1 << 16];
        try {
            for (int y = 0; y < height; y++) {
                row[0] = FILTER_UP;
                for (int x = 0, p = y * width; x < width; x++, p++) {
                    int here = rgb[p], above = y == 0 ? 0 : rgb[p - width];
                    row[3 * x + 1] = (byte) ((here >> 16) - (above >> 16));
                    row[3 * x + 2] = (byte) ((here >> 8) - (above >> 8));
                    row[3 * x + 3] = (byte) (here - above);
                }
                deflater.setInput(row);
                if (y == height - 1) deflater.finish();
                for (int n = deflater.deflate(piece); n > 0; n = deflater.deflate(piece)) bytes.write(piece, 0, n);
            }
        } finally {
            deflater.end();
        }
        return bytes.toByteArray();
    }

    private static void chunk(OutputStream out, String name, byte[] data) throws IOException {
        DataOutputStream to = new DataOutputStream(out);
        byte[] kind = name.getBytes(java.nio.charset.StandardCharsets.US_ASCII);
        CRC32 sum = new CRC32();
        sum.update(kind);
        sum.update(data);
        to.writeInt(data.length);
        to.write(kind);
        to.write(data);
        to.writeInt((int) sum.getValue());
        to.flush();
    }
}
