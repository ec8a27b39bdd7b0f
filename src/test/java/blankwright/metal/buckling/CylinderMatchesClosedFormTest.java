package blankwright.metal.buckling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.TriMesh;
import blankwright.sparse.Eigenpairs;
import org.junit.jupiter.api.Test;

/**
 * A cylinder pressed along its axis: σ = E t / (R √(3 (1 - ν²))), 0.6052 E t / R at ν = 0.3, when its length is one half-wave
 * π (R² t² / (12 (1 - ν²)))^¼ of the ring-shaped mode (Timoshenko and Gere 1961, ch. 11; the formula from memory, the number computed).
 * Membrane, bending and curvature take part in it alike. A quarter of the cylinder between planes of symmetry.
 */
class CylinderMatchesClosedFormTest {
    private static final double R = 100, T = 1, NU = 0.3;

    private static double factor(int along, int round) {
        double length = Math.PI * Math.pow(R * R * T * T / (12 * (1 - NU * NU)), 0.25);
        TriMesh flat = Plates.rectangle(length, R * Math.PI / 2, along, round);
        double[] xyz = flat.positions();
        boolean[] held = new boolean[6 * flat.vertexCount()];
        for (int v = 0; v < flat.vertexCount(); v++) {
            double angle = flat.y(v) / R;
            xyz[3 * v] = R * Math.cos(angle);
            xyz[3 * v + 1] = R * Math.sin(angle);
            xyz[3 * v + 2] = flat.x(v);
            boolean end = flat.x(v) < 1e-9 || flat.x(v) > length - 1e-9;
            if (end) held[6 * v] = held[6 * v + 1] = true;              // neither outwards nor round; free to turn and to come together
            if (v % (round + 1) == 0) held[6 * v + 1] = held[6 * v + 3] = held[6 * v + 5] = true;           // plane y = 0
            if (v % (round + 1) == round) held[6 * v] = held[6 * v + 4] = held[6 * v + 5] = true;           // plane x = 0
            if (v == (along / 2) * (round + 1)) held[6 * v + 2] = true;
        }
        TriMesh mesh = flat.withPositions(xyz);
        double stress = Plates.E * T / (R * Math.sqrt(3 * (1 - NU * NU)));
        double[] force = new double[3 * mesh.triangleCount()];
        Facet f = new Facet();
        for (int t = 0; t < mesh.triangleCount(); t++) {
            f.of(mesh, t);
            double c = f.axis[2], s = f.axis[5];                                // the cylinder's axis in the triangle's frame
            force[3 * t] = -stress * T * c * c;
            force[3 * t + 1] = -stress * T * s * s;
            force[3 * t + 2] = -stress * T * c * s;
        }
        return Buckling.of(mesh, Sheet.elastic(Plates.E, NU, T), force, held, Eigenpairs.Limits.DEFAULT.withWanted(1), () -> false)
                .modes().get(0).loadFactor();
    }

    @Test
    void withinOnePercentAndConvergesAtOrderTwo() {
        assertEquals(0.6052, 1 / Math.sqrt(3 * (1 - NU * NU)), 1e-4);
        double coarse = factor(6, 40), fine = factor(12, 80);
        assertEquals(1, fine, 0.01);
        assertTrue(Math.abs(coarse - 1) > 2.5 * Math.abs(fine - 1), "error " + (coarse - 1) + " then " + (fine - 1));
    }
}
