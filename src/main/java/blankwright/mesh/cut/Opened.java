package blankwright.mesh.cut;

import blankwright.mesh.Finding;
import blankwright.mesh.TriMesh;
import java.util.List;

/** A form that can be laid flat: a disk, perhaps with holes; the seams that were needed; what its maker should know of them. */
public final class Opened {
    private final Cut cut;
    private final List<Seam> seams;
    private final List<Finding> findings;

    Opened(Cut cut, List<Seam> seams, List<Finding> findings) {
        this.cut = cut;
        this.seams = List.copyOf(seams);
        this.findings = List.copyOf(findings);
    }

    /** Same triangles in the same order as the form; connected, no handle, at least one rim. */
    public TriMesh mesh() {
        return cut.mesh();
    }

    /** Vertex of the form for each vertex of {@link #mesh}; a copy. */
    public int[] vertexOf() {
        return cut.vertexOf();
    }

    public List<Seam> seams() {
        return seams;
    }

    public List<Finding> findings() {
        return findings;
    }

    /** The form again, every number as it was. */
    public TriMesh sewn() {
        return cut.sewn();
    }
}
