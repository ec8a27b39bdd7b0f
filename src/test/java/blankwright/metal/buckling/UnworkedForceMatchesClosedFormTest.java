package blankwright.metal.buckling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.TriMesh;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class UnworkedForceMatchesClosedFormTest {
    private static final double E = Plates.E, NU = 0.33, T = 1.2;

    /**
     * A disc pressed onto a sphere: N_r = E t (a² - r²) / (16 R²), N_θ = E t (a² - 3 r²) / (16 R²), for a much less than R (Majidi and
     * Fearing 2008, from memory; it is Föppl's plate of constant Gaussian curvature). The blank is laid out by true arcs, which is not the
     * one in equilibrium: radial strain 0, hoop strain sin(c)/c - 1.
     */
    @Test
    void discPressedOntoASphere() {
        double radius = 4000, a = 80;
        double coarse = worstOnSphere(radius, a, 12), fine = worstOnSphere(radius, a, 24);
        assertTrue(fine < 0.01, "of the largest force: " + fine);
        assertTrue(coarse > 1.6 * fine, "order one at least: " + coarse + " then " + fine);
    }

    private static double worstOnSphere(double radius, double a, int rings) {
        TriMesh disc = Plates.disc(a, rings);
        double[] xyz = disc.positions();
        for (int v = 0; v < disc.vertexCount(); v++) {
            double c = Math.hypot(disc.x(v), disc.y(v)) / radius, k = c > 0 ? Math.sin(c) / c : 1;
            xyz[3 * v] *= k;
            xyz[3 * v + 1] *= k;
            xyz[3 * v + 2] = radius * Math.cos(c);
        }
        TriMesh cap = disc.withPositions(xyz);
        int n = cap.triangleCount();
        double[] hoop = new double[n], along = new double[3 * n];
        for (int t = 0; t < n; t++) {
            double x = middle(cap, t, 0), y = middle(cap, t, 1), r = Math.hypot(x, y), c = Math.asin(r / radius);
            hoop[t] = Math.log(Math.sin(c) / c);
            double z = Math.sqrt(radius * radius - r * r) / radius;
            along[3 * t] = x / r * z;
            along[3 * t + 1] = y / r * z;
            along[3 * t + 2] = -r / radius;
        }
        UnworkedForce force = UnworkedForce.of(cap, FacetStrain.of(cap, new double[n], hoop, along), 1, Sheet.elastic(E, NU, T),
                () -> false);
        double[] found = force.force();
        double unit = E * T / (16 * radius * radius), worst = 0;
        double[] hoopForce = new double[n], radialForce = new double[n];
        for (int t = 0; t < n; t++) {
            double r = Math.hypot(middle(cap, t, 0), middle(cap, t, 1));
            radialForce[t] = unit * (a * a - r * r);
            hoopForce[t] = unit * (a * a - 3 * r * r);
        }
        double[] wanted = FacetStrain.of(cap, radialForce, hoopForce, along);
        for (int i = 0; i < wanted.length; i++) worst = Math.max(worst, Math.abs(wanted[i] - found[i]));
        assertEquals(0, force.yielded());
        return worst / (2 * unit * a * a);
    }

    private static double middle(TriMesh mesh, int t, int k) {
        double[] xyz = mesh.positions();
        return (xyz[3 * mesh.corner(t, 0) + k] + xyz[3 * mesh.corner(t, 1) + k] + xyz[3 * mesh.corner(t, 2) + k]) / 3;
    }

    /**
     * A strip whose middle is e(y) too short, far from its ends: plane sections stay plane, so σ(e(y) - e0) with no resultant. Elastic and
     * with yielding, e0 from the same stress-strain curve by bisection.
     */
    @Test
    void stripWithAShortMiddle() {
        double b = 40, length = 400;
        Sheet soft = new Sheet(E, NU, 41, 0.2, T);
        DoubleUnaryOperator elastic = e -> E * e;
        DoubleUnaryOperator hardening = e -> Math.signum(e)
                * (Math.abs(e) * E <= 41 ? E * Math.abs(e) : 41 * Math.pow(Math.abs(e) * E / 41, 0.2));
        assertTrue(worstInStrip(b, length, Sheet.elastic(E, NU, T), elastic) < 0.02);
        assertTrue(worstInStrip(b, length, soft, hardening) < 0.05, "first order: constant strain in 20 squares across");
    }

    private static double worstInStrip(double b, double length, Sheet sheet, DoubleUnaryOperator stress) {
        TriMesh mesh = Plates.rectangle(length, b, 100, 20);
        int n = mesh.triangleCount();
        double[] strain = new double[n], none = new double[n], along = new double[3 * n];
        for (int t = 0; t < n; t++) {
            strain[t] = shortness(middle(mesh, t, 1) / b);
            along[3 * t] = 1;
        }
        UnworkedForce force = UnworkedForce.of(mesh, FacetStrain.of(mesh, strain, none, along), 1, sheet, () -> false);
        double low = -0.01, high = 0.01;
        for (int i = 0; i < 60; i++) {
            double e0 = (low + high) / 2, sum = 0;
            for (int j = 0; j < 1000; j++) sum += stress.applyAsDouble(shortness((j + 0.5) / 1000) - e0);
            if (sum > 0) low = e0;
            else high = e0;
        }
        double[] found = force.force(), wanted = new double[n];
        double largest = 0, worst = 0;
        for (int t = 0; t < n; t++) wanted[t] = sheet.thickness() * stress.applyAsDouble(shortness(middle(mesh, t, 1) / b) - low);
        double[] tensor = FacetStrain.of(mesh, wanted, none, along);
        for (int t = 0; t < n; t++) {
            if (Math.abs(middle(mesh, t, 0) - length / 2) > length / 6) continue;
            largest = Math.max(largest, Math.abs(wanted[t]));
            for (int i = 0; i < 3; i++) worst = Math.max(worst, Math.abs(tensor[3 * t + i] - found[3 * t + i]));
        }
        assertTrue(largest > 40, "the strip is meant to yield: " + largest);
        return worst / largest;
    }

    /** Forming strain: the middle must be stretched by 0.3 %. */
    private static double shortness(double y) {
        return 0.003 * (1 - 4 * (y - 0.5) * (y - 0.5));
    }

    @Test
    void slidesFreeOfWhatIsNoShape() {
        TriMesh plate = Plates.rectangle(100, 60, 10, 6);
        int n = plate.triangleCount();
        double[] same = new double[n], along = new double[3 * n];
        for (int t = 0; t < n; t++) {
            same[t] = 0.02;
            along[3 * t] = 1;
        }
        UnworkedForce force = UnworkedForce.of(plate, FacetStrain.of(plate, same, new double[n], along), 1, Sheet.elastic(E, NU, T),
                () -> false);
        for (double f : force.force()) assertEquals(0, f, 1e-5, "a blank only too short is a longer blank");
    }

    @Test
    void refusesWhatDoesNotFit() {
        TriMesh plate = Plates.rectangle(100, 60, 2, 2);
        Sheet sheet = Sheet.elastic(E, NU, T);
        assertThrows(IllegalArgumentException.class, () -> UnworkedForce.of(plate, new double[3], 1, sheet, () -> false));
        assertThrows(IllegalArgumentException.class, () -> UnworkedForce.of(plate, new double[24], 0, sheet, () -> false));
        assertThrows(IllegalArgumentException.class, () -> new Sheet(E, 0.5, 40, 0.2, 1));
        assertThrows(IllegalArgumentException.class, () -> new Sheet(E, 0.3, 40, 0, 1));
        assertThrows(IllegalArgumentException.class, () -> new Sheet(E, 0.3, Double.NaN, 0.2, 1));
    }
}
