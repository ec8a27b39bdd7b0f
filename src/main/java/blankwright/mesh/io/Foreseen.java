package blankwright.mesh.io;

import java.io.ByteArrayInputStream;
import java.io.Closeable;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.zip.GZIPInputStream;

/**
 * What a mesh file will bring, told from its length, its first bytes and a few pieces of it: whoever would need more memory than there is
 * can say so before reading.
 *
 * <p>Counts that a header names are taken where the file is long enough to hold them: by as little as a vertex and a face can take. Text STL and OBJ name none:
 * there the words that stand for a triangle or a vertex are counted in pieces spread over the file, which is exact up to 1 MB, and else
 * a tenth is left off. A packed file says at its end how much it holds (RFC 1952); to be counted it is unpacked, piece by piece.
 *
 * @param triangles that the file holds, hardly more; faces of more corners count as one
 * @param vertices likewise; 3 for each triangle of STL
 * @param bytes of the file, unpacked
 */
public record Foreseen(long triangles, long vertices, long bytes) {
    private static final int HEAD = 1 << 16;
    private static final int PIECES = 64;
    private static final int PIECE = 1 << 14;
    private static final double SURELY = 0.9;           // of what pieces say of the whole
    private static final double MOST_PACKED = 1032;     // bytes that one packed byte may stand for

    /** Empty where nothing is to be told; whoever reads the file will say what is wrong with it. */
    public static Optional<Foreseen> of(Path path) {
        try (RandomAccessFile file = Files.isRegularFile(path) ? new RandomAccessFile(path.toFile(), "r") : null) {
            if (file == null || file.length() < 4) return Optional.empty();
            byte[] head = piece(file, 0, HEAD);
            boolean packed = (head[0] & 0xFF) == 0x1F && (head[1] & 0xFF) == 0x8B;
            long bytes = file.length();
            if (packed) {
                bytes = Integer.toUnsignedLong(ByteBuffer.wrap(piece(file, bytes - 4, 4)).order(ByteOrder.LITTLE_ENDIAN).getInt());
                if (bytes > MOST_PACKED * file.length()) return Optional.empty();
                head = unpacked(head);
            }
            try (Pieces pieces = packed ? new Unpacked(path) : new Plain(file)) {
                return told(head, bytes, pieces).filter(f -> f.triangles > 0);
            }
        } catch (IOException | FormatException e) {
            return Optional.empty();
        }
    }

    private static Optional<Foreseen> told(byte[] head, long bytes, Pieces pieces) throws IOException, FormatException {
        if (head.length >= StlReader.HEADER && StlReader.HEADER + StlReader.RECORD * StlReader.claimed(head) == bytes)
            return loose(StlReader.claimed(head), bytes);
        TextScan scan = new TextScan(head, MeshReader.textBegins(head), head.length, "", true, false);
        if (!scan.word()) return Optional.empty();
        if (scan.is("ply")) return ply(scan, bytes);
        if (OffReader.isKeyword(scan.lowerWord())) {
            if (!scan.word()) return Optional.empty();
            long vertices = scan.whole();
            return scan.word() ? promised(scan.whole(), 8, vertices, 6, bytes) : Optional.empty();     // "3 0 1 2\n" and "0 0 0\n"
        }
        if (!MeshReader.isText(head)) return Optional.empty();
        if (scan.is("solid")) return loose(words(pieces, bytes)[0], bytes);
        if (!ObjReader.knows(scan.lowerWord())) return Optional.empty();
        long[] words = words(pieces, bytes);
        return Optional.of(new Foreseen(words[1], words[2], bytes));
    }

    private static Optional<Foreseen> loose(long triangles, long bytes) {
        return Optional.of(new Foreseen(triangles, 3 * triangles, bytes));
    }

    private static Optional<Foreseen> ply(TextScan scan, long bytes) throws FormatException {
        long vertices = 0, faces = 0;
        boolean text = false;
        while (scan.word() && !scan.is("end_header")) {
            if (scan.is("format")) text = scan.wordInLine() && scan.is("ascii");
            if (scan.is("element") && scan.wordInLine()) {
                boolean vertex = scan.is("vertex"), face = scan.is("face");
                if ((vertex || face) && !scan.wordInLine()) return Optional.empty();
                if (vertex) vertices = scan.whole();
                if (face) faces = scan.whole();
            }
            scan.nextLine();
        }
        return promised(faces, text ? 8 : 4, vertices, text ? 6 : 3, bytes);
    }

    private static Optional<Foreseen> promised(long faces, int leastFace, long vertices, int leastVertex, long bytes) {
        boolean there = faces >= 0 && vertices >= 0 && faces <= bytes / leastFace && vertices <= bytes / leastVertex
                && leastFace * faces + leastVertex * vertices <= bytes;
        return there ? Optional.of(new Foreseen(faces, vertices, bytes)) : Optional.empty();
    }

    /** The words "endloop", "f" and "v" at the beginning of lines of the whole file, all of them or as pieces of it say. */
    private static long[] words(Pieces pieces, long length) throws IOException {
        boolean all = length <= (long) PIECES * PIECE;
        long[] sum = new long[3];
        long looked = 0;
        for (int i = 0; i < (all ? 1 : PIECES); i++) {
            byte[] piece = all ? pieces.piece(0, (int) length) : pieces.piece((length - PIECE) / (PIECES - 1) * i, PIECE);
            long[] here = words(piece);
            for (int k = 0; k < 3; k++) sum[k] += here[k];
            looked += piece.length;
        }
        if (!all) for (int k = 0; k < 3; k++) sum[k] = (long) (SURELY * sum[k] / looked * length);
        return sum;
    }

    private static long[] words(byte[] b) {
        long[] found = new long[3];
        TextScan scan = new TextScan(b, 0, b.length, "", true, false);
        while (scan.word()) {
            switch (scan.shown().toLowerCase(Locale.ROOT)) {
                case "endloop" -> found[0]++;
                case "f" -> found[1]++;
                case "v" -> found[2]++;
                default -> { }
            }
            scan.nextLine();
        }
        return found;
    }

    private static byte[] piece(RandomAccessFile file, long from, int most) throws IOException {
        byte[] piece = new byte[(int) Math.min(most, file.length() - from)];
        file.seek(from);
        file.readFully(piece);
        return piece;
    }

    /** What the first packed bytes stand for, as far as it fits. */
    private static byte[] unpacked(byte[] head) throws IOException {
        byte[] out = new byte[HEAD];
        int size = 0;
        try (InputStream in = new GZIPInputStream(new ByteArrayInputStream(head))) {
            for (int got = 0; got >= 0 && size < HEAD; size += Math.max(0, got)) got = in.read(out, size, HEAD - size);
        } catch (EOFException e) {
            // the head ends in the middle of the packed data
        }
        return java.util.Arrays.copyOf(out, size);
    }

    /** What stands at places of a file, asked from its beginning on. */
    private interface Pieces extends Closeable {
        byte[] piece(long from, int size) throws IOException;
    }

    private record Plain(RandomAccessFile file) implements Pieces {
        @Override
        public byte[] piece(long from, int size) throws IOException {
            return Foreseen.piece(file, from, size);
        }

        @Override
        public void close() { }             // whoever opened it
    }

    private static final class Unpacked implements Pieces {
        private final Path path;
        private InputStream in;             // null until asked
        private long at;

        Unpacked(Path path) {
            this.path = path;
        }

        @Override
        public byte[] piece(long from, int size) throws IOException {
            if (in == null) in = new GZIPInputStream(Files.newInputStream(path), HEAD);
            in.skipNBytes(from - at);
            byte[] piece = in.readNBytes(size);
            if (piece.length < size) throw new EOFException();
            at = from + size;
            return piece;
        }

        @Override
        public void close() throws IOException {
            if (in != null) in.close();
        }
    }
}
