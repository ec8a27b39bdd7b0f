package blankwright.viewer;

import java.util.List;
import javafx.scene.paint.Color;
import javafx.scene.paint.PhongMaterial;
import javafx.scene.shape.CullFace;
import javafx.scene.shape.MeshView;
import javafx.scene.shape.TriangleMesh;

/** Lines in space as thin three-sided rods, so that the form hides what lies behind it. */
final class Wire {
    private Wire() { }

    /**
     * @param lines x, y, z, x, y, z ..., mm
     * @param origin the scene's zero, mm
     * @param radius mm
     */
    static MeshView of(List<double[]> lines, double[] origin, double radius, Color colour) {
        int pieces = 0;
        for (double[] line : lines) pieces += Math.max(0, line.length / 3 - 1);
        float[] points = new float[18 * pieces];
        int[] faces = new int[36 * pieces];
        int p = 0, f = 0;
        for (double[] line : lines) {
            for (int i = 3; i + 2 < line.length; i += 3) {
                double[] d = {line[i] - line[i - 3], line[i + 1] - line[i - 2], line[i + 2] - line[i - 1]};
                double[] a = across(d), b = cross(d, a);
                double length = Math.sqrt(d[0] * d[0] + d[1] * d[1] + d[2] * d[2]);
                int first = p / 3;
                for (int end = 0; end < 2; end++) {
                    for (int k = 0; k < 3; k++) {
                        double angle = 2 * Math.PI * k / 3, c = radius * Math.cos(angle);
                        double s = length > 0 ? radius * Math.sin(angle) / length : 0;
                        for (int x = 0; x < 3; x++) points[p++] = (float) (line[i - 3 + 3 * end + x] - origin[x] + c * a[x] + s * b[x]);
                    }
                }
                for (int k = 0; k < 3; k++) {
                    int q = first + k, r = first + (k + 1) % 3;
                    for (int v : new int[] {q, r, r + 3, q, r + 3, q + 3}) {
                        faces[f] = v;
                        f += 2;
                    }
                }
            }
        }
        TriangleMesh mesh = new TriangleMesh();
        mesh.getPoints().setAll(points);
        mesh.getTexCoords().setAll(0, 0);
        mesh.getFaces().setAll(faces);
        MeshView view = new MeshView(mesh);
        view.setMaterial(new PhongMaterial(colour));
        view.setCullFace(CullFace.NONE);
        view.setMouseTransparent(true);
        return view;
    }

    /** Unit, square to d. */
    private static double[] across(double[] d) {
        int least = 0;
        for (int k = 1; k < 3; k++) if (Math.abs(d[k]) < Math.abs(d[least])) least = k;
        double[] axis = new double[3];
        axis[least] = 1;
        double[] a = cross(d, axis);
        double length = Math.sqrt(a[0] * a[0] + a[1] * a[1] + a[2] * a[2]);
        return length > 0 ? new double[] {a[0] / length, a[1] / length, a[2] / length} : new double[] {1, 0, 0};
    }

    private static double[] cross(double[] p, double[] q) {
        return new double[] {p[1] * q[2] - p[2] * q[1], p[2] * q[0] - p[0] * q[2], p[0] * q[1] - p[1] * q[0]};
    }
}
