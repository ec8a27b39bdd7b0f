package blankwright.mesh.repair;

import blankwright.mesh.TriMesh;

/** One connected part of a mesh, with the way back: {@code vertexOf} and {@code triangleOf} name the whole's vertices and triangles. */
public final class Component {
    private final TriMesh mesh;
    private final int[] vertexOf;
    private final int[] triangleOf;
    private final double area;

    Component(TriMesh mesh, int[] vertexOf, int[] triangleOf) {
        this.mesh = mesh;
        this.vertexOf = vertexOf;
        this.triangleOf = triangleOf;
        this.area = mesh.area();
    }

    public TriMesh mesh() {
        return mesh;
    }

    /** Vertex of the whole that is vertex v here. */
    public int vertexOf(int v) {
        return vertexOf[v];
    }

    /** Triangle of the whole that is triangle t here; they keep their order. */
    public int triangleOf(int t) {
        return triangleOf[t];
    }

    /** mm². */
    public double area() {
        return area;
    }
}
