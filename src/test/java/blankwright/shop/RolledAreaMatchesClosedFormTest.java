package blankwright.shop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.mesh.query.NearestPoint;
import blankwright.metal.Springback;
import blankwright.project.AlloyReader;
import blankwright.shape.ConeFrustum;
import blankwright.shape.Cylinder;
import blankwright.shape.Fineness;
import blankwright.shape.ObliqueCone;
import blankwright.shape.Panel;
import blankwright.shape.SphericalCap;
import blankwright.strain.StrainField;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class RolledAreaMatchesClosedFormTest {
    private static final Fineness FINE = Fineness.triangles(6000);

    private static FlatMap laid(Panel panel) {
        return panel.sample(FINE).laid(panel.truth().development().orElseThrow());
    }

    private static RolledArea only(FlatMap map) {
        List<RolledArea> areas = RolledArea.of(StrainField.of(map), 25);
        assertEquals(1, areas.size());
        return areas.get(0);
    }

    /** Both ends of a ruling carried back to the form: {x1, y1, z1, x2, y2, z2}. */
    private static double[] onForm(FlatMap map, Ruling ruling) {
        NearestPoint blank = NearestPoint.on(map);
        double[] a = blank.to(ruling.u1(), ruling.v1(), 0).on(map.form()), b = blank.to(ruling.u2(), ruling.v2(), 0).on(map.form());
        return new double[] {a[0], a[1], a[2], b[0], b[1], b[2]};
    }

    @Test
    void tube() {
        FlatMap map = laid(new Cylinder(100, 300, 2));
        RolledArea area = only(map);
        assertEquals(200, area.way(), 0.5);
        assertTrue(area.outward());
        assertEquals(1, area.share(), 1e-9);
        assertEquals(9, area.rulings().size());
        for (Ruling ruling : area.rulings()) {
            assertEquals(300, ruling.length(), 1);
            assertEquals(100, ruling.radius1(), 2);
            assertEquals(100, ruling.radius2(), 2);
            double[] ends = onForm(map, ruling);
            assertEquals(0, Math.toDegrees(Math.atan2(ends[1], ends[0]) - Math.atan2(ends[4], ends[3])), 0.5);
        }
    }

    /** Each ruling lies on one generator of the cone; the radius square to the skin is the ring's over the cosine of the half angle. */
    @Test
    void cone() {
        FlatMap map = laid(new ConeFrustum(100, 60, 90, 2.5));
        RolledArea area = only(map);
        double cosine = 90 / Math.hypot(90, 40);
        for (Ruling ruling : area.rulings()) {
            double[] ends = onForm(map, ruling);
            assertEquals(0, Math.toDegrees(Math.atan2(ends[1], ends[0]) - Math.atan2(ends[4], ends[3])), 1);
            double ring1 = Math.hypot(ends[0], ends[1]), ring2 = Math.hypot(ends[3], ends[4]);
            assertEquals(ring1 / cosine, ruling.radius1(), 0.04 * ring1);
            assertEquals(ring2 / cosine, ruling.radius2(), 0.04 * ring2);
            assertEquals(40, Math.abs(ring1 - ring2), 1.5);
        }
        // the way runs square to the generators, so along an arc about the point: sector times some distance between both rims
        double sector = 2.5 * 100 / (Math.hypot(90, 40) * 100 / 40);
        assertTrue(area.way() > sector * Math.hypot(90, 40) * 60 / 40 && area.way() < sector * Math.hypot(90, 40) * 100 / 40, area.way() + "");
    }

    /** Generators of a leaning cone meet in its point. */
    @Test
    void leaningCone() {
        ObliqueCone cone = new ObliqueCone(100, 60, 120, 20, 0.3, 2);
        FlatMap map = laid(cone);
        RolledArea area = only(map);
        assertTrue(area.rulings().size() >= 5);
        for (Ruling ruling : area.rulings()) {
            double[] e = onForm(map, ruling);
            double far = (cone.apexHeight() - e[2]) / (e[5] - e[2]);
            assertEquals(cone.apexOffset(), e[0] + far * (e[3] - e[0]), 4, "meets the point");
            assertEquals(0, e[1] + far * (e[4] - e[1]), 4);
        }
    }

    /** Flat, rolled to 80 mm over 1.2 rad, flat: start and stop are the tangent lines, laid out by arithmetic. */
    @Test
    void betweenTwoFlats() {
        int across = 120, along = 30;
        double radius = 80, turn = 1.2, flatPart = 60, width = 2 * flatPart + radius * turn, length = 200;
        double[] xyz = new double[3 * (across + 1) * (along + 1)], uv = new double[2 * (across + 1) * (along + 1)];
        int[] tri = new int[6 * across * along];
        for (int i = 0, t = 0; i <= across; i++) for (int j = 0; j <= along; j++) {
            int v = i * (along + 1) + j;
            double s = width * i / across, bent = Math.max(0, Math.min(turn, (s - flatPart) / radius)), rest = Math.max(0, s - flatPart - radius * turn);
            double x = Math.min(s, flatPart) + radius * Math.sin(bent) + rest * Math.cos(turn);
            double z = -(radius * (1 - Math.cos(bent)) + rest * Math.sin(turn));
            xyz[3 * v] = x;
            xyz[3 * v + 1] = length * j / along;
            xyz[3 * v + 2] = z;
            uv[2 * v] = s;
            uv[2 * v + 1] = length * j / along;
            if (i == across || j == along) continue;
            int right = v + along + 1;
            for (int c : new int[] {v, right, v + 1, right, right + 1, v + 1}) tri[t++] = c;
        }
        RolledArea area = only(FlatMap.of(TriMesh.of(xyz, tri), uv));
        double facet = width / across;
        assertEquals(flatPart, Math.min(area.start().u1(), area.stop().u1()), 2 * facet);
        assertEquals(flatPart + radius * turn, Math.max(area.start().u1(), area.stop().u1()), 2 * facet);
        Ruling middle = area.rulings().get(area.rulings().size() / 2);
        assertEquals(80, middle.radius1(), 2);
        assertTrue(area.outward());
        // what to set the roll for: inside 79.4 must stay
        Springback sheet = Springback.of(AlloyReader.shipped().named("3003-H14"), 1.2);
        assertEquals(middle.radius1() - 0.6, sheet.after(middle.rollTo(sheet)[0]), 1e-6);
    }

    /** A tube of ragged triangles: vertices moved by up to a third of a cell, diagonals either way. */
    @Test
    void raggedTube() {
        int across = 70, along = 50;
        double radius = 150, length = 200, sweep = 1.6;
        double[] xyz = new double[3 * (across + 1) * (along + 1)], uv = new double[2 * (across + 1) * (along + 1)];
        int[] tri = new int[6 * across * along];
        Random random = new Random(11);
        for (int i = 0, t = 0; i <= across; i++) for (int j = 0; j <= along; j++) {
            int v = i * (along + 1) + j, right = v + along + 1;
            double stray = random.nextDouble() - 0.5, other = random.nextDouble() - 0.5;
            double a = sweep * (i + (i == 0 || i == across ? 0 : stray / 1.5)) / across, z = length * (j + (j == 0 || j == along ? 0 : other / 1.5)) / along;
            xyz[3 * v] = radius * Math.cos(a);
            xyz[3 * v + 1] = radius * Math.sin(a);
            xyz[3 * v + 2] = z;
            uv[2 * v] = radius * a;
            uv[2 * v + 1] = z;
            if (i == across || j == along) continue;
            int[] corners = random.nextBoolean() ? new int[] {v, right, v + 1, right, right + 1, v + 1} : new int[] {v, right, right + 1, v, right + 1, v + 1};
            for (int c : corners) tri[t++] = c;
        }
        RolledArea area = only(FlatMap.of(TriMesh.of(xyz, tri), uv));
        assertEquals(radius * sweep, area.way(), 2 * radius * sweep / across);
        for (Ruling ruling : area.rulings()) {
            assertEquals(200, ruling.length(), 2);
            assertEquals(0, Math.toDegrees(Math.atan((ruling.u2() - ruling.u1()) / (ruling.v2() - ruling.v1()))), 1.5);
            assertEquals(150, (ruling.radius1() + ruling.radius2()) / 2, 12);
        }
    }

    @Test
    void aBowlOrAFlatSheetIsNotRolled() {
        TriMesh dish = new SphericalCap(300, 0.3).mesh(Fineness.triangles(3000));
        double[] uv = new double[2 * dish.vertexCount()];
        for (int v = 0; v < dish.vertexCount(); v++) {
            uv[2 * v] = dish.x(v);
            uv[2 * v + 1] = dish.y(v);
        }
        assertEquals(List.of(), RolledArea.of(StrainField.of(FlatMap.of(dish, uv)), 25));
        double[] flat = new double[3 * dish.vertexCount()];
        for (int v = 0; v < dish.vertexCount(); v++) {
            flat[3 * v] = uv[2 * v];
            flat[3 * v + 1] = uv[2 * v + 1];
        }
        StrainField none = StrainField.of(FlatMap.of(dish.withPositions(flat), uv));
        assertEquals(List.of(), RolledArea.of(none, 25));
        assertThrows(IllegalArgumentException.class, () -> RolledArea.of(none, 0));
    }
}
