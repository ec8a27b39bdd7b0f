package blankwright.mesh.io;

import blankwright.mesh.Finding;
import blankwright.mesh.Finding.Kind;
import blankwright.num.Progress;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CancellationException;

/** What a reader has found so far: vertices and faces of any number of corners, turned into triangles at the end. */
final class Gathered {
    final DoubleRow xyz = new DoubleRow();
    final IntRow corner = new IntRow();
    final List<Finding> findings = new ArrayList<>();
    private final IntRow faceEnd = new IntRow();        // face f: corner[faceEnd[f-1] .. faceEnd[f]-1]
    private final String file;
    private final Progress progress;
    private long badCoordinates;
    private String firstBad;
    private long tooFew;
    private String firstTooFew;
    private int ticks;

    Gathered(String file, Progress progress) {
        this.file = file;
        this.progress = progress;
    }

    /** Tells the watcher now and then; throws CancellationException when nobody wants the mesh any more. */
    void tick(long done, long of) {
        if ((++ticks & 0xFFFF) != 0) return;
        progress.at("reading " + file, Math.min(1, (double) done / Math.max(1, of)));
        ask(file, progress);
    }

    static void ask(String file, Progress progress) {
        if (progress.cancelled()) throw new CancellationException("reading " + file);
    }

    int vertexCount() {
        return xyz.size() / 3;
    }

    void vertex(double x, double y, double z) {
        xyz.add(x);
        xyz.add(y);
        xyz.add(z);
    }

    static boolean usable(double c) {
        return Math.abs(c) <= MeshReader.FARTHEST;      // false for NaN
    }

    /** Counts triangles lost to a coordinate that is no place; {@code where} names the first. */
    void badTriangle(String where) {
        if (badCoordinates++ == 0) firstBad = where;
    }

    /** Closes the face whose corners were added since the last one; {@code place} as in "line 7". */
    void closeFace(java.util.function.Supplier<String> place) {
        int from = faceEnd.size() == 0 ? 0 : faceEnd.get(faceEnd.size() - 1);
        if (corner.size() - from < 3) {
            corner.shorten(from);
            if (tooFew++ == 0) firstTooFew = place.get();
            return;
        }
        faceEnd.add(corner.size());
    }

    RawMesh mesh(Format format) throws FormatException {
        double[] all = xyz.toArray();
        boolean[] bad = badVertices(all);
        IntRow triangles = new IntRow();
        Polygon polygon = new Polygon(all);
        long polygons = 0, crude = 0;
        for (int f = 0, from = 0; f < faceEnd.size(); from = faceEnd.get(f++)) {
            int to = faceEnd.get(f);
            tick(f, faceEnd.size());
            int culprit = firstBad(bad, from, to);
            if (culprit >= 0) {
                badTriangle("face " + f + " at vertex " + culprit);
            } else if (to - from == 3) {
                for (int i = from; i < to; i++) triangles.add(corner.get(i));
            } else {
                polygons++;
                if (!polygon.cut(corner, from, to, triangles)) crude++;
            }
        }
        if (polygons > 0) {
            findings.add(new Finding(Kind.TRIANGULATED_POLYGONS, polygons, polygons
                    + (polygons == 1 ? " face has" : " faces have") + " more than three corners; cut into triangles"
                    + (crude > 0 ? ", " + crude + " of them roughly because the outline crosses itself or is too long" : "")));
        }
        if (tooFew > 0) {
            findings.add(new Finding(Kind.IGNORED_ELEMENTS, tooFew, tooFew
                    + (tooFew == 1 ? " face has" : " faces have") + " fewer than three corners, the first at " + firstTooFew + "; ignored"));
        }
        addBadCoordinates();
        int[] tri = triangles.toArray();
        if (tri.length == 0) throw nothing(badCoordinates);
        return bad == null ? new RawMesh(all, tri, findings, format) : without(bad, all, tri, format);
    }

    /** Triangles that share no vertices, 9 usable coordinates each, and nothing else. */
    RawMesh loose(double[] all, Format format) throws FormatException {
        addBadCoordinates();
        if (all.length == 0) throw nothing(badCoordinates);
        int[] tri = new int[all.length / 3];
        for (int i = 0; i < tri.length; i++) tri[i] = i;
        return new RawMesh(all, tri, findings, format);
    }

    private void addBadCoordinates() {
        if (badCoordinates == 0) return;
        findings.add(new Finding(Kind.BAD_COORDINATES, badCoordinates, badCoordinates
                + (badCoordinates == 1 ? " face uses" : " faces use") + " a coordinate that is no number or beyond "
                + MeshReader.FARTHEST + ", the first is " + firstBad + "; left out"));
    }

    private FormatException nothing(long lost) {
        return new FormatException(file, lost > 0
                ? "all " + lost + " faces use coordinates that are no number or beyond " + MeshReader.FARTHEST + ", the first is " + firstBad
                        + "; export the mesh again"
                : vertexCount() > 0 ? "holds " + vertexCount() + " points but no face; export the panel as triangles"
                        : "holds no face; export the panel as triangles");
    }

    /** Flags, or null where every vertex is a place. */
    private static boolean[] badVertices(double[] all) {
        boolean[] bad = null;
        for (int i = 0; i < all.length; i++) {
            if (usable(all[i])) continue;
            if (bad == null) bad = new boolean[all.length / 3];
            bad[i / 3] = true;
        }
        return bad;
    }

    private int firstBad(boolean[] bad, int from, int to) {
        if (bad == null) return -1;
        for (int i = from; i < to; i++) if (bad[corner.get(i)]) return corner.get(i);
        return -1;
    }

    private RawMesh without(boolean[] bad, double[] all, int[] tri, Format format) {
        int[] there = new int[bad.length];
        int kept = 0;
        for (int v = 0; v < bad.length; v++) {
            there[v] = kept;
            if (bad[v]) continue;
            System.arraycopy(all, 3 * v, all, 3 * kept, 3);
            kept++;
        }
        for (int i = 0; i < tri.length; i++) tri[i] = there[tri[i]];
        return new RawMesh(Arrays.copyOf(all, 3 * kept), tri, findings, format);
    }
}
