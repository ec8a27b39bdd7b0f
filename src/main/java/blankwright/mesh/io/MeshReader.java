package blankwright.mesh.io;

import blankwright.num.Progress;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.zip.GZIPInputStream;

/**
 * Reads a mesh of any format we know, plain or gzipped, and finds out which by its content, never by its name.
 *
 * <p>1. The bytes, unpacked if they begin as gzip does. 2. The format: a binary STL is known by its length, the others by their first
 * meaningful word. 3. That format's reader. Nothing a header promises is believed before the bytes are there.
 * <p>Formats: STL binary and text, OBJ, PLY text and binary in both byte orders, OFF with or without vertex extras.
 */
public final class MeshReader {
    /** Coordinates beyond this, in whatever unit, are taken for damage: their products would lose the panel in rounding. */
    public static final double FARTHEST = 1e12;

    private static final String READABLE = "readable are STL, OBJ, PLY and OFF, each also gzipped";

    private static final int PIECE = 1 << 22;       // bytes between two looks whether the mesh is still wanted

    private MeshReader() { }

    /**
     * @throws FormatException where the file cannot be read or is no mesh, with the place
     * @throws java.util.concurrent.CancellationException where the progress says that nobody wants it any more
     */
    public static RawMesh read(Path path, Progress progress) throws FormatException {
        String name = path.toString();
        try {
            return read(bytes(path, name, progress), name, progress);
        } catch (OutOfMemoryError e) {
            throw tooLarge(name);
        }
    }

    /** The same from memory; {@code name} is only used in messages. Keeps no reference to {@code bytes}. */
    public static RawMesh read(byte[] bytes, String name, Progress progress) throws FormatException {
        try {
            boolean packed = bytes.length >= 2 && (bytes[0] & 0xFF) == 0x1F && (bytes[1] & 0xFF) == 0x8B;
            return sniffed(packed ? unpacked(bytes, name, most(), progress) : bytes, name, progress);
        } catch (OutOfMemoryError e) {
            throw tooLarge(name);
        }
    }

    private static FormatException tooLarge(String name) {
        return new FormatException(name, "needs more memory to be read than the " + StlReader.size(Runtime.getRuntime().maxMemory())
                + " this run may use; thin the mesh out, or start java with a larger -Xmx");
    }

    private static byte[] bytes(Path path, String name, Progress progress) throws FormatException {
        try {
            if (Files.isDirectory(path)) throw new FormatException(name, "is a folder; name the mesh file in it");
            if (Files.exists(path) && !Files.isRegularFile(path)) throw new FormatException(name, "is no plain file; save the mesh as one");
            long size = Files.size(path), room = room();
            if (size > Math.min(room, Integer.MAX_VALUE - 8)) {
                throw new FormatException(name, "is " + StlReader.size(size) + ", more than the "
                        + StlReader.size(Math.min(room, Integer.MAX_VALUE - 8)) + " that can be read at once; thin the mesh out, save it as "
                        + "binary, or start java with a larger -Xmx");
            }
            try (InputStream in = Files.newInputStream(path)) {
                byte[] all = new byte[(int) size];
                int there = 0, got = 0;
                for (; there < size && got >= 0; there += Math.max(0, got)) {
                    Gathered.ask(name, progress);
                    got = in.read(all, there, Math.min(PIECE, (int) size - there));
                }
                return there == size ? all : Arrays.copyOf(all, there);
            }
        } catch (NoSuchFileException e) {
            throw new FormatException(name, "no such file; check the name and the folder");
        } catch (AccessDeniedException e) {
            throw new FormatException(name, "may not be read: ask its owner for permission");
        } catch (IOException e) {
            throw new FormatException(name, "cannot be read: " + e.getMessage());
        }
    }

    /** Memory not in use now, bytes. */
    private static long room() {
        Runtime run = Runtime.getRuntime();
        return run.maxMemory() - run.totalMemory() + run.freeMemory();
    }

    /** Unpacked bytes that leave room for the mesh made of them. */
    private static long most() {
        return Math.min(Integer.MAX_VALUE - 8, room() / 4);
    }

    /** Grows by what comes out, up to {@code most}. */
    static byte[] unpacked(byte[] packed, String name, long most, Progress progress) throws FormatException {
        byte[] out = new byte[(int) Math.min(most, Math.max(1024, 4L * packed.length))];
        int size = 0;
        try (GZIPInputStream in = new GZIPInputStream(new ByteArrayInputStream(packed), 1 << 16)) {
            while (true) {
                Gathered.ask(name, progress);
                int got = in.read(out, size, Math.min(PIECE, out.length - size));
                if (got < 0) return Arrays.copyOf(out, size);
                size += got;
                if (size < out.length) continue;
                if (size >= most) {
                    throw new FormatException(name, StlReader.size(packed.length) + " of gzip hold more than "
                            + StlReader.size(most) + ", too much for this run; thin the mesh out, or start java with a larger -Xmx");
                }
                out = Arrays.copyOf(out, (int) Math.min(most, size + (size >> 1) + 1024L));
            }
        } catch (IOException e) {
            throw new FormatException(name, "the gzip data is damaged after " + StlReader.size(size) + " unpacked"
                    + (e.getMessage() == null ? "" : " (" + e.getMessage() + ")") + "; fetch the file again");
        }
    }

    private static RawMesh sniffed(byte[] b, String name, Progress progress) throws FormatException {
        progress.at("reading " + name, 0);
        Gathered into = new Gathered(name, progress);
        if (b.length == 0) throw new FormatException(name, "is empty (0 bytes); export the mesh again");
        if (b.length >= StlReader.HEADER && StlReader.HEADER + StlReader.RECORD * StlReader.claimed(b) == b.length) {
            return StlReader.binary(b, name, into);
        }
        int from = textBegins(b);
        TextScan scan = new TextScan(b, from, b.length, name, true, false);
        if (scan.word()) {
            int at = scan.wordStart();
            if (scan.is("ply")) return PlyReader.read(b, at, name, into);
            if (scan.is("solid") && isText(b)) return StlReader.text(b, at, name, into);
            if (scan.is("4off") || scan.is("noff4")) throw scan.bad("OFF in four dimensions is no panel; export it in three");
            if (scan.shown().length() <= 5 && OffReader.isKeyword(scan.lowerWord())) return OffReader.read(b, at, name, into);
            if (ObjReader.knows(scan.lowerWord()) && isText(b)) return ObjReader.read(b, from, name, into);
        }
        if (StlReader.looksBinary(b)) return StlReader.binary(b, name, into);
        throw unknown(b, name);
    }

    /** Behind the mark that some put before text in UTF-8. */
    static int textBegins(byte[] b) {
        return b.length >= 3 && (b[0] & 0xFF) == 0xEF && (b[1] & 0xFF) == 0xBB && (b[2] & 0xFF) == 0xBF ? 3 : 0;
    }

    /** No zero byte in the first lines: a binary STL has some there, even where its title begins with "solid". */
    static boolean isText(byte[] b) {
        for (int i = 0; i < b.length && i < 1024; i++) if (b[i] == 0) return false;
        return true;
    }

    private static FormatException unknown(byte[] b, String name) {
        String[][] known = {{"PK\3\4", "a ZIP archive"}, {"glTF", "binary glTF"}, {"ISO-10303-21", "a STEP model"}, {"%PDF", "a PDF document"},
            {"<?xml", "XML"}, {"{", "JSON"}, {"BZh", "bzip2"}, {"\u00FD7zXZ", "xz"}, {"\u0089PNG", "a PNG picture"}, {"\u00FF\u00D8", "a JPEG picture"}};
        String head = new String(b, 0, Math.min(b.length, 16), StandardCharsets.ISO_8859_1);
        for (String[] kind : known) {
            if (head.startsWith(kind[0])) return new FormatException(name, "looks like " + kind[1] + "; " + READABLE);
        }
        boolean text = true;
        int shown = Math.min(b.length, 16);
        for (int i = 0; i < shown; i++) text &= b[i] >= ' ' && b[i] < 127 || b[i] == '\n' || b[i] == '\r' || b[i] == '\t';
        StringBuilder hex = new StringBuilder();
        for (int i = 0; i < Math.min(shown, 8); i++) hex.append(i == 0 ? "" : " ").append(String.format("%02x", b[i]));
        return new FormatException(name, "begins with " + (text ? "\"" + TextScan.shown(b, 0, shown).replace('?', ' ').strip() + "\"" : "bytes " + hex)
                + ", which is no mesh we know; " + READABLE);
    }
}
