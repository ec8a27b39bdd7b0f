package blankwright.mesh.io;

import blankwright.mesh.Finding;
import blankwright.mesh.Finding.Kind;
import java.util.regex.Pattern;

/** OFF with or without colours, normals and texture places at the vertices, which are passed over; text only. */
final class OffReader {
    private static final Pattern KEYWORD = Pattern.compile("(st)?(c)?(n)?off");

    private OffReader() { }

    static boolean isKeyword(String lower) {
        return KEYWORD.matcher(lower).matches();
    }

    static RawMesh read(byte[] b, int from, String file, Gathered into) throws FormatException {
        TextScan scan = new TextScan(b, from, b.length, file, true, false);
        scan.word();                                                            // the keyword
        boolean extras = !scan.is("off");
        if (next(scan, "number of vertices").is("binary")) throw scan.bad("binary OFF cannot be read; export it as text");
        long vertices = scan.whole();
        if (vertices < 0) throw scan.bad(vertices + " vertices: must be 0 or more");
        long faces = next(scan, "number of faces").whole();
        if (faces < 0) throw scan.bad(faces + " faces: must be 0 or more");
        if (scan.wordInLine()) scan.whole();                                    // edges: often 0, never needed
        if (scan.wordInLine()) throw scan.bad("\"" + scan.shown() + "\" follows the three counts");
        if (vertices > b.length || faces > b.length) {
            throw scan.badAt(from, "the file promises " + vertices + " vertices and " + faces + " faces but holds only "
                    + StlReader.size(b.length) + "; the file is cut off, fetch or export it again");
        }
        for (long v = 0; v < vertices; v++) {
            into.tick(scan.position(), b.length);
            into.vertex(next(scan, "x of vertex " + v).number(), next(scan, "y of vertex " + v).number(),
                    next(scan, "z of vertex " + v).number());
            if (scan.wordInLine() && !extras) scan.number();                    // colours without the C; but never a word
            scan.nextLine();
        }
        for (long f = 0; f < faces; f++) {
            into.tick(scan.position(), b.length);
            long corners = next(scan, "face " + f).whole();
            int place = scan.wordStart();
            if (corners < 0 || corners > b.length) throw scan.bad("face of " + corners + " corners");
            for (long k = 0; k < corners; k++) {
                long v = next(scan, "corner " + k + " of face " + f).whole();
                if (v < 0 || v >= vertices) {
                    throw scan.bad("vertex " + v + ", but the file has " + vertices + " and OFF counts from 0");
                }
                into.corner.add((int) v);
            }
            into.closeFace(() -> "line " + scan.lineOf(place));
            scan.nextLine();
        }
        if (scan.word()) {
            into.findings.add(new Finding(Kind.WRONG_COUNT, 1, "more follows the last of " + faces + " promised faces, from line "
                    + scan.lineOf(scan.wordStart()) + " on; ignored, so look whether the panel is all there"));
        }
        return into.mesh(Format.OFF);
    }

    private static TextScan next(TextScan scan, String what) throws FormatException {
        if (!scan.word()) throw scan.ended(what);
        return scan;
    }
}
