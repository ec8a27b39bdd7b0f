package blankwright.mesh.cut;

import blankwright.mesh.Finding;
import blankwright.mesh.TriMesh;
import java.util.List;

/**
 * A form, or the part of one that chosen seams leave together, which can be laid flat: a disk, perhaps with holes; its seams; what its maker
 * should know of those that were added.
 */
public final class Opened {
    /** The part with its seams closed, and its vertex for each vertex of the opened one. */
    record Sewn(TriMesh mesh, int[] vertexOf) { }

    private final TriMesh mesh;
    private final int[] inForm;
    private final Sewn sewn;
    private final List<Seam> seams;
    private final List<Finding> findings;

    /** Of a whole form. */
    Opened(Cut cut, List<Seam> seams, List<Finding> findings) {
        this(cut.mesh(), cut.vertexOf(), new Sewn(cut.sewn(), cut.vertexOf()), seams, findings);
    }

    Opened(TriMesh mesh, int[] inForm, Sewn sewn, List<Seam> seams, List<Finding> findings) {
        this.mesh = mesh;
        this.inForm = inForm;
        this.sewn = sewn;
        this.seams = List.copyOf(seams);
        this.findings = List.copyOf(findings);
    }

    /** Connected, no handle, at least one rim; its triangles in the order of the form's. */
    public TriMesh mesh() {
        return mesh;
    }

    /** Vertex of {@link #sewn} for each vertex of {@link #mesh}; a copy. */
    public int[] vertexOf() {
        return sewn.vertexOf().clone();
    }

    int vertexOf(int v) {
        return sewn.vertexOf()[v];
    }

    /** Vertex of the whole form that vertex v of {@link #mesh} is. */
    public int inForm(int v) {
        return inForm[v];
    }

    public List<Seam> seams() {
        return seams;
    }

    public List<Finding> findings() {
        return findings;
    }

    /** Closed again: the form, every number as it was, or the part of it that chosen seams leave together. */
    public TriMesh sewn() {
        return sewn.mesh();
    }
}
