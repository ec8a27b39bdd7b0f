package blankwright.mesh.cut;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.Finding;
import blankwright.mesh.TriMesh;
import blankwright.mesh.query.EdgeStars;
import blankwright.num.Sentence;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntUnaryOperator;

/**
 * A form cut along the seams its maker chose. It may fall into parts; each part is then opened as far as it still needs it, and
 * {@link #part} puts both together.
 */
public final class ChosenCut {
    private final TriMesh form;
    private final EdgeTable edges;
    private final EdgeStars stars;
    private final List<Numbered> paths;
    private final Cut cut;

    /** A path with the number of its seam in the recipe, from 1. */
    public record Numbered(int number, int[] path) { }

    private ChosenCut(TriMesh form, List<Numbered> paths) {
        this.form = form;
        this.paths = List.copyOf(paths);
        edges = EdgeTable.of(form);
        stars = EdgeStars.of(form, edges);
        cut = Cut.along(form, edges, stars, paths.stream().map(Numbered::path).toList());
    }

    /** @param paths vertices in order; throws IllegalArgumentException naming the first two that no edge joins */
    public static ChosenCut along(TriMesh form, List<Numbered> paths) {
        return new ChosenCut(form, paths);
    }

    /** The form with its chosen seams open; same triangles, perhaps in several parts. */
    public TriMesh mesh() {
        return cut.mesh();
    }

    /**
     * One part of {@link #mesh}, opened further.
     *
     * @param added that part as it was opened to lie flat
     * @param vertexOf vertex of {@link #mesh} for each vertex of the part before that
     * @param triangleOf triangle of the form for each of the part
     */
    public Opened part(Opened added, IntUnaryOperator vertexOf, IntUnaryOperator triangleOf) {
        if (paths.isEmpty()) return added;
        TriMesh opened = added.mesh();
        int[] inForm = new int[opened.vertexCount()];
        for (int v = 0; v < inForm.length; v++) inForm[v] = cut.vertexOf(vertexOf.applyAsInt(added.vertexOf(v)));
        int[] here = new int[form.triangleCount()];
        Arrays.fill(here, -1);
        for (int t = 0; t < opened.triangleCount(); t++) here[triangleOf.applyAsInt(t)] = t;
        List<Seam> seams = new ArrayList<>();
        List<Finding> findings = new ArrayList<>();
        for (Numbered one : paths) {
            Seam seam = Seam.of(Seam.Kind.CHOSEN, one.number(), "chosen", one.path(), form, edges, stars, opened, here);
            if (!seam.isHere()) continue;
            seams.add(seam);
        }
        for (Seam seam : added.seams()) seams.add(seam.renamed(v -> cut.vertexOf(vertexOf.applyAsInt(v))));
        findings.addAll(added.findings());
        return new Opened(opened, inForm, sewn(opened, inForm), seams, findings);
    }

    /** What to tell of the chosen seams. */
    public List<Finding> findings() {
        List<Finding> findings = new ArrayList<>();
        for (Numbered one : paths) {
            int[] path = one.path();
            double length = 0;
            for (int i = 1; i < path.length; i++) length += form.distance(path[i - 1], path[i]);
            findings.add(new Finding(Finding.Kind.SEAM_CHOSEN, 1, Sentence.say("seam %d as asked for: %s from %s to %s", one.number(),
                    Sentence.length(length, 1), CutToDisk.place(form, path[0]), CutToDisk.place(form, path[path.length - 1]))));
        }
        return findings;
    }

    /** The part before any seam, with the vertices it uses in the order of the form. */
    private static Opened.Sewn sewn(TriMesh opened, int[] inForm) {
        int[] used = Arrays.stream(inForm).sorted().distinct().toArray();
        double[] xyz = new double[3 * used.length];
        int[] vertexOf = new int[inForm.length], tri = opened.corners();
        for (int v = 0; v < inForm.length; v++) {
            vertexOf[v] = Arrays.binarySearch(used, inForm[v]);
            xyz[3 * vertexOf[v]] = opened.x(v);
            xyz[3 * vertexOf[v] + 1] = opened.y(v);
            xyz[3 * vertexOf[v] + 2] = opened.z(v);
        }
        for (int i = 0; i < tri.length; i++) tri[i] = vertexOf[tri[i]];
        return new Opened.Sewn(TriMesh.of(xyz, tri), vertexOf);
    }
}
