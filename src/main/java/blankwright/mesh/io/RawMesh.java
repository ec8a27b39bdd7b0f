package blankwright.mesh.io;

import blankwright.mesh.Finding;
import java.util.List;

/**
 * Triangles as a file gave them: at least one; every coordinate finite and below {@value MeshReader#FARTHEST} in size; every corner
 * names a vertex. Lengths are in the file's unit, which most formats do not say. Nothing is welded, turned or dropped for its shape.
 */
public final class RawMesh {
    private final double[] xyz;
    private final int[] triangles;
    private final List<Finding> findings;
    private final Format format;

    RawMesh(double[] xyz, int[] triangles, List<Finding> findings, Format format) {
        this.xyz = xyz;
        this.triangles = triangles;
        this.findings = List.copyOf(findings);
        this.format = format;
    }

    /** A copy, 3 per vertex, in the file's unit. */
    public double[] xyz() {
        return xyz.clone();
    }

    /** A copy, 3 per triangle. */
    public int[] triangles() {
        return triangles.clone();
    }

    public int vertexCount() {
        return xyz.length / 3;
    }

    public int triangleCount() {
        return triangles.length / 3;
    }

    /** What was odd about the file, in the order of seeing. */
    public List<Finding> findings() {
        return findings;
    }

    public Format format() {
        return format;
    }
}
