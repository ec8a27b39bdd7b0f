package blankwright.metal.buckling;

import blankwright.mesh.TriMesh;

/** Unit normals of the vertices: those of the triangles round each, by their areas. */
final class VertexNormals {
    private VertexNormals() { }

    /** 3 per vertex; zeros where no triangle has an area. */
    static double[] of(TriMesh mesh) {
        double[] normal = new double[3 * mesh.vertexCount()];
        for (int t = 0; t < mesh.triangleCount(); t++) {
            double[] n = mesh.normal(t);
            double area = mesh.area(t);
            for (int k = 0; k < 3; k++)
                for (int i = 0; i < 3; i++) normal[3 * mesh.corner(t, k) + i] += area * n[i];
        }
        for (int v = 0; v < normal.length; v += 3) {
            double length = Math.sqrt(normal[v] * normal[v] + normal[v + 1] * normal[v + 1] + normal[v + 2] * normal[v + 2]);
            if (length > 0) for (int i = 0; i < 3; i++) normal[v + i] /= length;
        }
        return normal;
    }
}
