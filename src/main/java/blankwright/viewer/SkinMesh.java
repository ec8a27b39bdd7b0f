package blankwright.viewer;

import blankwright.picture.Tints;
import blankwright.viewer.model.Painting;
import javafx.scene.shape.TriangleMesh;
import javafx.scene.shape.VertexFormat;

/**
 * A painting as triangles of the toolkit, on the form or flat, relative to a place so that single precision will do. Triangles keep their
 * order.
 */
final class SkinMesh {
    private SkinMesh() { }

    /** The form, with normals so that it is shaded round. */
    static TriangleMesh form(Painting painting, double[] origin) {
        int n = painting.vertexCount();
        float[] points = new float[3 * n];
        for (int v = 0; v < n; v++) for (int k = 0; k < 3; k++) points[3 * v + k] = (float) (painting.form(v, k) - origin[k]);
        TriangleMesh mesh = new TriangleMesh(VertexFormat.POINT_NORMAL_TEXCOORD);
        mesh.getPoints().setAll(points);
        mesh.getNormals().setAll(normals(painting));
        int[] faces = new int[9 * painting.triangleCount()];
        for (int i = 0; i < faces.length; i++) faces[i] = painting.corner(i / 9, i % 9 / 3);
        mesh.getTexCoords().setAll(new float[2 * n]);
        mesh.getFaces().setAll(faces);
        return mesh;
    }

    /** The blank: x = u, y = -v. */
    static TriangleMesh blank(Painting painting, double u0, double v0) {
        int n = painting.vertexCount();
        float[] points = new float[3 * n];
        for (int v = 0; v < n; v++) {
            points[3 * v] = (float) (painting.u(v) - u0);
            points[3 * v + 1] = (float) (v0 - painting.v(v));
        }
        TriangleMesh mesh = new TriangleMesh();
        mesh.getPoints().setAll(points);
        int[] faces = new int[6 * painting.triangleCount()];
        for (int i = 0; i < faces.length; i++) faces[i] = painting.corner(i / 6, i % 6 / 2);
        mesh.getTexCoords().setAll(new float[2 * n]);
        mesh.getFaces().setAll(faces);
        return mesh;
    }

    /** Each vertex to its number's place on the palette. */
    static void paint(TriangleMesh mesh, Painting painting, Tints tints) {
        float[] at = new float[2 * painting.vertexCount()];
        for (int v = 0; v < painting.vertexCount(); v++) {
            at[2 * v] = Palette.at(tints, painting.value(v));
            at[2 * v + 1] = 0.5f;
        }
        mesh.getTexCoords().setAll(at);
    }

    /** Mean of the triangles round each vertex, by area. */
    private static float[] normals(Painting painting) {
        double[] sum = new double[3 * painting.vertexCount()];
        for (int t = 0; t < painting.triangleCount(); t++) {
            int a = painting.corner(t, 0), b = painting.corner(t, 1), c = painting.corner(t, 2);
            double[] p = new double[3], q = new double[3];
            for (int k = 0; k < 3; k++) {
                p[k] = painting.form(b, k) - painting.form(a, k);
                q[k] = painting.form(c, k) - painting.form(a, k);
            }
            double[] n = {p[1] * q[2] - p[2] * q[1], p[2] * q[0] - p[0] * q[2], p[0] * q[1] - p[1] * q[0]};
            for (int k = 0; k < 3; k++) {
                sum[3 * a + k] += n[k];
                sum[3 * b + k] += n[k];
                sum[3 * c + k] += n[k];
            }
        }
        float[] unit = new float[sum.length];
        for (int v = 0; v < sum.length; v += 3) {
            double length = Math.sqrt(sum[v] * sum[v] + sum[v + 1] * sum[v + 1] + sum[v + 2] * sum[v + 2]);
            for (int k = 0; k < 3; k++) unit[v + k] = length > 0 ? (float) (sum[v + k] / length) : k == 2 ? 1 : 0;
        }
        return unit;
    }
}
