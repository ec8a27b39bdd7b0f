package blankwright.mesh.io;

import blankwright.mesh.Finding;
import blankwright.mesh.Finding.Kind;
import java.util.Set;

/** OBJ: vertices and faces; texture places, normals, groups and materials are passed over, curves and points named in a finding. */
final class ObjReader {
    private static final Set<String> QUIET = Set.of("vn", "vt", "vp", "g", "o", "s", "mg", "usemtl", "mtllib", "usemap", "maplib",
            "bevel", "c_interp", "d_interp", "lod", "shadow_obj", "trace_obj", "call", "csh", "deg", "bmat", "step", "cstype", "ctech", "stech",
            "parm", "trim", "hole", "scrv", "sp", "end", "con");
    private static final Set<String> NOT_FACES = Set.of("p", "l", "curv", "curv2", "surf", "bsp", "bzp", "cdc", "cdp", "res");

    private ObjReader() { }

    static boolean knows(String word) {
        return word.equals("v") || word.equals("f") || word.equals("fo") || QUIET.contains(word) || NOT_FACES.contains(word);
    }

    static RawMesh read(byte[] b, int from, String file, Gathered into) throws FormatException {
        TextScan scan = new TextScan(b, from, b.length, file, true, true);
        long others = 0;
        int highest = -1, highestAt = 0, firstOther = 0;
        String otherWord = "";
        while (scan.word()) {
            into.tick(scan.position(), b.length);
            int one = scan.single();
            if (one == 'v') {
                into.vertex(coordinate(scan, "x"), coordinate(scan, "y"), coordinate(scan, "z"));
            } else if (one == 'f' || scan.is("fo")) {
                int place = scan.wordStart();
                while (scan.wordInLine()) {
                    int v = vertex(scan, into.vertexCount());
                    if (v > highest) {
                        highest = v;
                        highestAt = scan.wordStart();
                    }
                    into.corner.add(v);
                }
                into.closeFace(() -> "line " + scan.lineOf(place));
            } else {
                String word = scan.lowerWord();
                if (NOT_FACES.contains(word)) {
                    if (others++ == 0) {
                        otherWord = word;
                        firstOther = scan.wordStart();
                    }
                } else if (!QUIET.contains(word)) {
                    throw scan.bad("\"" + scan.shown() + "\" begins no line of OBJ; if it is a note, put # before it" + scan.cutOff());
                }
            }
            scan.nextLine();
        }
        if (highest >= into.vertexCount()) {
            throw scan.badAt(highestAt, "vertex " + (highest + 1L) + ", but the file has " + into.vertexCount()
                    + "; it seems cut off, so fetch or export it again");
        }
        if (others > 0) {
            into.findings.add(new Finding(Kind.IGNORED_ELEMENTS, others, others + (others == 1 ? " line or point is" : " lines, points or curves are")
                    + " no face, the first is \"" + otherWord + "\" in line " + scan.lineOf(firstOther) + "; ignored"));
        }
        return into.mesh(Format.OBJ);
    }

    private static double coordinate(TextScan scan, String axis) throws FormatException {
        if (!scan.wordInLine()) throw scan.bad("the line ends where " + axis + " of the vertex should be; a vertex has three coordinates");
        return scan.number();
    }

    /** 1 is the first vertex, -1 the last one so far. */
    private static int vertex(TextScan scan, int sofar) throws FormatException {
        long v = scan.whole('/');
        if (v == 0) throw scan.bad("vertex 0, but OBJ counts from 1");
        if (v < 0) {
            if (-v > sofar) throw scan.bad("vertex " + v + ", but only " + sofar + " came before this line");
            return (int) (sofar + v);
        }
        if (v > Integer.MAX_VALUE) throw scan.bad("vertex " + v + " is more than any file holds");
        return (int) (v - 1);
    }
}
