package blankwright.mesh.io;

import blankwright.mesh.Finding;
import blankwright.mesh.Finding.Kind;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;

/** STL: loose triangles, binary or text. Normals, names and attribute bytes are not used. */
final class StlReader {
    static final int HEADER = 84;
    static final int RECORD = 50;

    private StlReader() { }

    static long claimed(byte[] b) {
        return Integer.toUnsignedLong(ByteBuffer.wrap(b).order(ByteOrder.LITTLE_ENDIAN).getInt(80));
    }

    static RawMesh binary(byte[] b, String file, Gathered into) throws FormatException {
        if (b.length < HEADER) throw new FormatException(file, "binary STL needs 84 bytes before the first triangle, here are " + b.length + "; export it again");
        ByteBuffer data = ByteBuffer.wrap(b).order(ByteOrder.LITTLE_ENDIAN);
        long claimed = claimed(b);
        int there = (b.length - HEADER) / RECORD, over = (b.length - HEADER) % RECORD;
        long use = Math.min(claimed, there);
        if (claimed == 0) use = there;                  // written by those who count at the end, and then do not
        if (use == 0 && claimed == 0) throw new FormatException(file, "binary STL with 0 triangles; export the panel again");
        if (claimed > there) {                          // the blank of half a panel looks like that of a whole one
            throw new FormatException(file, "the header promises " + claimed + " triangles (" + size(RECORD * claimed) + ") but only "
                    + there + " are there; the file is cut off, fetch or export it again");
        }
        if (use < there || over > 0) {
            long extra = b.length - HEADER - RECORD * use;
            into.findings.add(new Finding(Kind.WRONG_COUNT, extra, extra + " bytes follow the last of " + use + " triangles; ignored"));
        } else if (claimed == 0) {
            into.findings.add(new Finding(Kind.WRONG_COUNT, use, "the header promises no triangle but " + use + " follow; they are used"));
        }
        double[] xyz = new double[9 * (int) use];           // the bytes are there, so this is no empty promise
        int size = 0;
        for (int t = 0; t < use; t++) {
            into.tick(t, use);
            int at = HEADER + RECORD * t + 12;
            boolean sound = true;
            for (int k = 0; k < 9; k++) {
                double c = data.getFloat(at + 4 * k);
                sound &= Gathered.usable(c);
                xyz[size + k] = c;
            }
            if (sound) size += 9;
            else into.badTriangle("triangle " + t);
        }
        return into.loose(size == xyz.length ? xyz : Arrays.copyOf(xyz, size), Format.STL_BINARY);
    }

    /** Whether the first records hold numbers a mesh could hold; noise almost never does. */
    static boolean looksBinary(byte[] b) {
        if (b.length < HEADER + RECORD) return false;
        ByteBuffer data = ByteBuffer.wrap(b).order(ByteOrder.LITTLE_ENDIAN);
        int records = Math.min(16, (b.length - HEADER) / RECORD), good = 0;
        for (int t = 0; t < records; t++) {
            boolean sane = true, something = false;
            for (int k = 0; k < 12 && sane; k++) {
                float c = Math.abs(data.getFloat(HEADER + RECORD * t + 4 * k));
                sane = c == 0 || c > 1e-20f && c < 1e9f;
                something |= c > 0;
            }
            if (sane && something) good++;
        }
        return 2 * good > records;
    }

    static RawMesh text(byte[] b, int from, String file, Gathered into) throws FormatException {
        TextScan scan = new TextScan(b, from, b.length, file, false, false);
        boolean open = false, inFacet = false, inLoop = false, unclosed = true;
        int facet = 0;
        while (scan.word()) {
            into.tick(scan.position(), b.length);
            if (scan.is("vertex")) {
                if (!inLoop) throw scan.bad("a vertex outside of a loop: \"outer loop\" must come first");
                into.corner.add(into.vertexCount());
                into.vertex(next(scan), next(scan), next(scan));
            } else if (scan.is("facet")) {
                if (inFacet) throw scan.bad("a facet begins before the last one has ended");
                inFacet = true;
                facet = scan.wordStart();
                scan.nextLine();
            } else if (scan.is("outer")) {
                if (!inFacet || inLoop) throw scan.bad("\"outer loop\" must follow \"facet\"");
                if (!scan.word() || !scan.is("loop")) throw scan.bad("\"loop\" must follow \"outer\"");
                inLoop = true;
            } else if (scan.is("endloop")) {
                if (!inLoop) throw scan.bad("\"endloop\" without \"outer loop\"");
                inLoop = false;
                int place = scan.wordStart();
                into.closeFace(() -> "line " + scan.lineOf(place));
            } else if (scan.is("endfacet")) {
                if (!inFacet || inLoop) throw scan.bad("\"endfacet\" without \"facet\" and \"endloop\"");
                inFacet = false;
            } else if (scan.is("solid")) {
                if (inFacet) throw scan.bad("\"solid\" inside of a facet");
                unclosed = true;
                open = true;
                scan.nextLine();
            } else if (scan.is("endsolid")) {
                if (inFacet) throw scan.bad("\"endsolid\" inside of a facet");
                unclosed = false;
                scan.nextLine();
            } else {
                throw scan.bad("\"" + scan.shown() + "\" is no word of text STL" + scan.cutOff());
            }
        }
        if (inFacet) {
            throw scan.badAt(facet, "the file ends inside of this facet; it is cut off, so fetch or export it again");
        }
        if (open && unclosed) {
            into.findings.add(new Finding(Kind.WRONG_COUNT, 1,
                    "the file ends without \"endsolid\"; look whether the panel is all there"));
        }
        return into.mesh(Format.STL_TEXT);
    }

    private static double next(TextScan scan) throws FormatException {
        if (!scan.word()) throw scan.ended("a coordinate");
        return scan.number();
    }

    /** Bytes in words. */
    static String size(long bytes) {
        if (bytes < 2000) return bytes + " bytes";
        String[] unit = {"kB", "MB", "GB", "TB", "PB", "EB"};
        double v = bytes / 1000.0;
        int i = 0;
        while (v >= 1000 && i + 1 < unit.length) {
            v /= 1000;
            i++;
        }
        return String.format(java.util.Locale.ROOT, "%.1f %s", v, unit[i]);
    }
}
