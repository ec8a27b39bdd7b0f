package blankwright.strain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.shape.SphericalCap;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.locationtech.proj4j.CRSFactory;
import org.locationtech.proj4j.ProjCoordinate;
import org.locationtech.proj4j.proj.Projection;

/**
 * Azimuthal map projections are flat patterns of a dish whose strain has been known for centuries.
 *
 * <p>Scales h' (radial) and k' (hoop) and the largest angular deformation sin(w/2) = |h'-k'|/(h'+k'): J. P. Snyder, "Map Projections: A
 * Working Manual", USGS Professional Paper 1395, 1987 [Sn87], ch. 4, 20, 21, 22, 24, 25 (chapters from memory); the table below was computed from
 * those formulas and rounded, not copied from a printed page. Positions come from proj4j and, independently, from the radius formulas.
 */
class StrainFieldMatchesMapProjectionsTest {
    private static final double RADIUS = 500;

    /** Radius on the unit sphere and both scales by angular distance c. */
    private record Azimuthal(String key, DoubleUnaryOperator radius, DoubleUnaryOperator h, DoubleUnaryOperator k) { }

    private static final List<Azimuthal> ALL = List.of(
            new Azimuthal("aeqd", c -> c, c -> 1, c -> c / Math.sin(c)),
            new Azimuthal("laea", c -> 2 * Math.sin(c / 2), c -> Math.cos(c / 2), c -> 1 / Math.cos(c / 2)),
            new Azimuthal("stere", c -> 2 * Math.tan(c / 2), c -> 2 / (1 + Math.cos(c)), c -> 2 / (1 + Math.cos(c))),
            new Azimuthal("gnom", Math::tan, c -> 1 / (Math.cos(c) * Math.cos(c)), c -> 1 / Math.cos(c)),
            new Azimuthal("ortho", Math::sin, Math::cos, c -> 1));

    /** c deg: aeqd k', aeqd w deg, laea h', laea k', laea w deg, stere k, gnom h', gnom k'. */
    private static final double[][] TABLE = {
        {5, 1.001270, 0.0727, 0.999048, 1.000953, 0.1091, 1.001906, 1.007654, 1.003820},
        {10, 1.005095, 0.2912, 0.996195, 1.003820, 0.4369, 1.007654, 1.031091, 1.015427},
        {15, 1.011515, 0.6560, 0.991445, 1.008629, 0.9846, 1.017332, 1.071797, 1.035276},
        {20, 1.020600, 1.1683, 0.984808, 1.015427, 1.7542, 1.031091, 1.132474, 1.064178},
        {30, 1.047198, 2.6421, 0.965926, 1.035276, 3.9719, 1.071797, 1.333333, 1.154701},
        {45, 1.110721, 6.0138, 0.923880, 1.082392, 9.0632, 1.171573, 2, 1.414214}};

    @Test
    void projectionLibraryAndRadiusFormulaGiveTheSamePattern() {
        TriMesh cap = new SphericalCap(RADIUS, Math.toRadians(60)).ringMesh(12);
        for (Azimuthal map : ALL) {
            FlatMap library = byLibrary(map, cap), formula = byFormula(map, cap);
            StrainField a = StrainField.of(library), b = StrainField.of(formula);
            for (int t = 0; t < cap.triangleCount(); t++) {
                assertEquals(b.stretch1(t), a.stretch1(t), 1e-6, map.key() + " triangle " + t);
                assertEquals(b.stretch2(t), a.stretch2(t), 1e-6, map.key() + " triangle " + t);
            }
        }
    }

    @Test
    void scalesConvergeAtSecondOrderInTheVertices() {
        for (Azimuthal map : ALL) {
            double[] error = new double[3];
            for (int i = 0; i < 3; i++) error[i] = scaleError(map, 12 << i);
            assertTrue(error[2] < 2.5e-3, map.key() + " error " + error[2]);
            for (int i = 1; i < 3; i++) {
                double ratio = error[i - 1] / error[i];
                assertTrue(ratio > 3.4 && ratio < 4.6, map.key() + " falls by " + ratio + " to " + error[i]);
            }
        }
    }

    @Test
    void scalesAndAngularDeformationMatchTheTable() {
        double[][] aeqd = rings(ALL.get(0)), laea = rings(ALL.get(1)), stere = rings(ALL.get(2)), gnom = rings(ALL.get(3));
        for (int i = 0; i < TABLE.length; i++) {
            double[] row = TABLE[i];
            double c = row[0], near = 2e-6;       // half a last place of the table, and the extrapolation's rest
            assertEquals(1, aeqd[i][0], near, "equidistant h' at " + c);
            assertEquals(row[1], aeqd[i][1], near, "equidistant k' at " + c);
            assertEquals(row[2], deformation(aeqd[i]), 1e-4, "equidistant w at " + c);
            assertEquals(row[3], laea[i][0], near, "equal-area h' at " + c);
            assertEquals(row[4], laea[i][1], near, "equal-area k' at " + c);
            assertEquals(row[5], deformation(laea[i]), 1e-4, "equal-area w at " + c);
            assertEquals(row[6], stere[i][0], near, "stereographic h' at " + c);
            assertEquals(row[6], stere[i][1], near, "stereographic k' at " + c);
            assertEquals(row[7], gnom[i][0], near, "gnomonic h' at " + c);
            assertEquals(row[8], gnom[i][1], near, "gnomonic k' at " + c);
        }
    }

    @Test
    void equalAreaPatternKeepsTheThicknessAndConformalPatternHasNoDirection() {
        double[] thickness = new double[2], mean = new double[2], shear = new double[2];
        for (int i = 0; i < 2; i++) {
            TriMesh cap = new SphericalCap(RADIUS, Math.toRadians(60)).ringMesh(24 << i);
            StrainField equal = StrainField.of(byFormula(ALL.get(1), cap)), conformal = StrainField.of(byFormula(ALL.get(2), cap));
            for (int t = 0; t < cap.triangleCount(); t++) {
                thickness[i] = Math.max(thickness[i], Math.abs(equal.thicknessStrain(t)));
                shear[i] = Math.max(shear[i], conformal.stretch1(t) / conformal.stretch2(t) - 1);
            }
            double total = 0, change = 0;
            for (int t = 0; t < cap.triangleCount(); t++) {
                total += equal.area(t);
                change += equal.area(t) * equal.thicknessStrain(t);
            }
            mean[i] = Math.abs(change / total);
        }
        assertTrue(thickness[1] < 4e-3 && thickness[0] / thickness[1] > 1.8, 
                "per triangle, first order: " + thickness[0] + " " + thickness[1]);
        assertTrue(mean[1] < 1e-4 && mean[0] / mean[1] > 3.4, "in the mean, second order: " + mean[0] + " " + mean[1]);
        assertTrue(shear[1] < 2e-2 && shear[0] / shear[1] > 1.8, "shear " + shear[0] + " " + shear[1]);
    }

    @Test
    void directionOfTheLargerStretchIsRadialWhereTheHoopShrinks() {
        TriMesh cap = new SphericalCap(RADIUS, Math.toRadians(60)).ringMesh(24);
        FlatMap map = byFormula(ALL.get(0), cap);
        VertexStrain strain = VertexStrain.of(StrainField.of(map));
        for (int v = 0; v < cap.vertexCount(); v++) {
            double c = Math.acos(Math.min(1, cap.z(v) / RADIUS));
            if (c < 0.2) continue;
            double across = Math.sin(strain.directionOnBlank(v) - Math.atan2(map.v(v), map.u(v)));
            assertEquals(0, across, 0.12, "vertex " + v + " at " + Math.toDegrees(c));
            double hoop = (-cap.y(v) * strain.directionX(v) + cap.x(v) * strain.directionY(v)) / Math.hypot(cap.x(v), cap.y(v));
            assertEquals(Math.abs(across), Math.abs(hoop), 0.02, "the same direction on the form");
        }
    }

    private static double deformation(double[] hk) {
        return 2 * Math.toDegrees(Math.asin(Math.abs(hk[0] - hk[1]) / (hk[0] + hk[1])));
    }

    private static double scaleError(Azimuthal map, int rings) {
        TriMesh cap = new SphericalCap(RADIUS, Math.toRadians(60)).ringMesh(rings);
        double[][] found = atAngles(map, cap, 10, 15, 20, 30, 45);
        double[] degrees = {10, 15, 20, 30, 45};
        double error = 0;
        for (int i = 0; i < degrees.length; i++) {
            double c = Math.toRadians(degrees[i]);
            error = Math.max(error, Math.abs(found[i][0] / map.h().applyAsDouble(c) - 1));
            error = Math.max(error, Math.abs(found[i][1] / map.k().applyAsDouble(c) - 1));
        }
        return error;
    }

    /** The second-order error taken out of two meshes (Richardson). */
    private static double[][] rings(Azimuthal map) {
        double[][] coarse = atAngles(map, new SphericalCap(RADIUS, Math.toRadians(60)).ringMesh(48), 5, 10, 15, 20, 30, 45);
        double[][] fine = atAngles(map, new SphericalCap(RADIUS, Math.toRadians(60)).ringMesh(96), 5, 10, 15, 20, 30, 45);
        for (int i = 0; i < fine.length; i++) for (int k = 0; k < 2; k++) fine[i][k] += (fine[i][k] - coarse[i][k]) / 3;
        return fine;
    }

    /** Radial and hoop scale, form to blank, from the tensor averaged to vertices: mean over the vertices at each angle from the middle. */
    private static double[][] atAngles(Azimuthal map, TriMesh cap, double... degrees) {
        FlatMap flat = byFormula(map, cap);
        VertexStrain strain = VertexStrain.of(StrainField.of(flat));
        double[][] out = new double[degrees.length][2];
        for (int i = 0; i < degrees.length; i++) {
            int count = 0;
            for (int v = 0; v < cap.vertexCount(); v++) {
                if (Math.abs(Math.toDegrees(Math.atan2(Math.hypot(cap.x(v), cap.y(v)), cap.z(v))) - degrees[i]) > 1e-6) continue;
                double r = Math.hypot(flat.u(v), flat.v(v)), cu = flat.u(v) / r, cv = flat.v(v) / r;
                double uu = strain.strainUu(v), uv = strain.strainUv(v), vv = strain.strainVv(v);
                out[i][0] += cu * cu * uu + 2 * cu * cv * uv + cv * cv * vv;
                out[i][1] += cv * cv * uu - 2 * cu * cv * uv + cu * cu * vv;
                count++;
            }
            assertTrue(count > 5, "no ring at " + degrees[i]);
            for (int k = 0; k < 2; k++) out[i][k] = Math.exp(-out[i][k] / count);
        }
        return out;
    }

    private static FlatMap byFormula(Azimuthal map, TriMesh cap) {
        double[] uv = new double[2 * cap.vertexCount()];
        for (int v = 0; v < cap.vertexCount(); v++) {
            double out = Math.hypot(cap.x(v), cap.y(v)), r = RADIUS * map.radius().applyAsDouble(Math.atan2(out, cap.z(v)));
            uv[2 * v] = out > 0 ? r * cap.x(v) / out : 0;
            uv[2 * v + 1] = out > 0 ? r * cap.y(v) / out : 0;
        }
        return FlatMap.of(cap, uv);
    }

    private static FlatMap byLibrary(Azimuthal map, TriMesh cap) {
        Projection projection = new CRSFactory().createFromParameters(map.key(), "+proj=" + map.key() + " +lat_0=90 +lon_0=0 +a=" + RADIUS
                + " +b=" + RADIUS + " +lat_ts=90 +units=m +no_defs").getProjection();
        double[] uv = new double[2 * cap.vertexCount()];
        List<String> wrong = new ArrayList<>();
        for (int v = 0; v < cap.vertexCount(); v++) {
            double latitude = Math.toDegrees(Math.atan2(cap.z(v), Math.hypot(cap.x(v), cap.y(v))));
            double longitude = Math.toDegrees(Math.atan2(cap.y(v), cap.x(v)));
            ProjCoordinate out = new ProjCoordinate();
            projection.project(new ProjCoordinate(longitude, latitude), out);
            if (!Double.isFinite(out.x) || !Double.isFinite(out.y)) wrong.add(longitude + " " + latitude);
            uv[2 * v] = -out.y;                       // from the pole longitude 0 runs down the map
            uv[2 * v + 1] = out.x;
        }
        assertEquals(List.of(), wrong);
        return FlatMap.of(cap, uv);
    }
}
