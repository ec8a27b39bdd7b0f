package blankwright.shop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.oracle.Patch;
import blankwright.strain.StrainField;
import blankwright.strain.VertexStrain;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Zones and their lines on fields put in by hand, where every number can be worked out on paper. */
class ZonesMatchHandPutFieldsTest {
    /** 600 x 300 sheet, x from 200 to 400 made 3 % longer: three zones, and the middle one's let-out is 3 % of its line. */
    @Test
    void stretchedStripe() {
        Zones zones = Zones.of(StrainField.of(stripe(0.03)));
        assertEquals(3, zones.list().size());
        Zone stripe = zones.at(triangleAt(zones.field().map(), 303, 151));
        assertEquals(Instruction.STRETCH, stripe.instruction());
        assertEquals(0, stripe.directionOnBlank(), 1e-9);
        assertEquals(1, Math.abs(stripe.directionX()), 1e-9);
        assertEquals(0.03, stripe.largestStrain(), 1e-9);
        TapeLine line = stripe.line();
        // smoothing lets the band reach one facet of 10 mm, or two, beyond the stripe on either side
        assertEquals(220, line.blankLength(), 20.001);
        assertEquals(0.03 * 200, line.change(), 1e-9);
        assertEquals(6, line.letOut(), 1e-9);
        assertEquals(0, line.takeIn());
        assertEquals(Verdict.ORDINARY, stripe.verdict());
        assertEquals(300, stripe.label().u(), 40);
        assertEquals(2, zones.list().stream().filter(z -> z.instruction() == Instruction.LEAVE).count());
        for (Zone zone : zones.list()) {
            if (zone.instruction() != Instruction.LEAVE) continue;
            assertEquals(Verdict.SPRINGS_IN, zone.verdict());
        }
    }

    @Test
    void shrunkWholeSheetIsOneZoneWithTheTakeInOfItsLongestLine() {
        FlatMap map = Patch.grid(30, 20, 0, 600, 0, 300, (p, q) -> new double[] {p, q}, (p, q) -> new double[] {p, 0.97 * q, 0});
        Zones zones = Zones.of(StrainField.of(map));
        assertEquals(1, zones.list().size());
        Zone zone = zones.list().get(0);
        assertEquals(Instruction.SHRINK, zone.instruction());
        assertEquals(Math.PI / 2, Math.abs(zone.directionOnBlank()), 1e-9, "shrunk along v");
        assertEquals(1, Math.abs(zone.directionY()), 1e-9);
        assertEquals(-0.03, zone.largestStrain(), 1e-12);
        assertEquals(-0.03, zone.meanStrain(), 1e-12);
        assertEquals(0, zone.acrossStrain(), 1e-12);
        assertEquals(300, zone.line().blankLength(), 1e-9);
        assertEquals(291, zone.line().formLength(), 1e-9);
        assertEquals(9, zone.line().takeIn(), 1e-9);
        assertEquals(600 * 291, zone.area(), 1e-6);
        assertEquals(Verdict.ORDINARY, zone.verdict());
    }

    /**
     * One bad triangle of a scan: a sheet stretched 2 %, and in it a vertex a hundredth of a facet's height above an edge on the blank, half
     * as much again on the form. The summary's number is that sliver's; the zone's is the largest mean round a vertex, hardly more than 2 %.
     */
    @Test
    void oneBadTriangleDoesNotSetTheLargestStrain() {
        FlatMap sheet = Patch.grid(30, 20, 0, 600, 0, 300, (p, q) -> new double[] {p, q}, (p, q) -> new double[] {1.02 * p, q, 0});
        TriMesh form = sheet.form();
        int t = triangleAt(sheet, 303, 151), n = form.vertexCount(), a = form.corner(t, 0), b = form.corner(t, 1), c = form.corner(t, 2);
        double[] xyz = Arrays.copyOf(form.positions(), 3 * n + 3), uv = Arrays.copyOf(sheet.positions(), 2 * n + 2);
        for (int k = 0; k < 2; k++) uv[2 * n + k] = 0.495 * (uv[2 * a + k] + uv[2 * b + k]) + 0.01 * uv[2 * c + k];
        for (int k = 0; k < 3; k++) xyz[3 * n + k] = 0.4925 * (xyz[3 * a + k] + xyz[3 * b + k]) + 0.015 * xyz[3 * c + k];
        int[] tri = Arrays.copyOf(form.corners(), form.corners().length + 6);
        System.arraycopy(new int[] {a, b, n}, 0, tri, 3 * t, 3);
        System.arraycopy(new int[] {b, c, n, c, a, n}, 0, tri, tri.length - 6, 6);
        StrainField field = StrainField.of(FlatMap.of(TriMesh.of(xyz, tri), uv));
        assertTrue(field.stretchMax() > 0.45, "the sliver is stretched " + field.stretchMax());
        Zones zones = Zones.of(field);
        assertEquals(1, zones.list().size());
        Zone zone = zones.list().get(0);
        assertTrue(zone.largestStrain() > 0.02 && zone.largestStrain() < 0.03, "largest " + zone.largestStrain());
        VertexStrain means = VertexStrain.of(field);
        double most = 0;
        for (int v = 0; v <= n; v++) most = Math.max(most, means.stretch1(v) - 1);
        assertEquals(most, zone.largestStrain(), 1e-12);
    }

    /** Skew field: stretched 4 % along 30 degrees, shrunk 1 % across; the line runs along 30 degrees through the sheet. */
    @Test
    void lineRunsAlongTheMainDirection() {
        double angle = Math.toRadians(30), c = Math.cos(angle), s = Math.sin(angle);
        FlatMap map = Patch.grid(37, 23, 0, 600, 0, 300, (p, q) -> new double[] {p, q}, (p, q) -> {
            double along = 1.04 * (c * p + s * q), across = 0.99 * (c * q - s * p);
            return new double[] {c * along - s * across, s * along + c * across, 0};
        });
        Zone zone = Zones.of(StrainField.of(map)).list().get(0);
        assertEquals(Instruction.STRETCH, zone.instruction());
        assertEquals(angle, zone.directionOnBlank(), 1e-9);
        assertEquals(-0.01, zone.acrossStrain(), 1e-9, "and the other way it must be shrunk");
        TapeLine line = zone.line();
        assertEquals(300 / s, line.blankLength(), 30, "from edge to edge: sin 30 of it is the width");
        assertEquals(1.04 * line.blankLength(), line.formLength(), 1e-9);
        int last = line.pointCount() - 1;
        assertEquals(Math.tan(angle), (line.v(last) - line.v(0)) / (line.u(last) - line.u(0)), 1e-9);
        assertEquals(0, Math.min(Math.min(line.u(0), line.v(0)), 300 - line.v(0)), 1e-9, "starts on the rim");
    }

    /**
     * A ring shrunk along its hoops by 5 %: blank an annulus sector of 300 degrees, form the cone-like one with hoops 0.95 long. The line
     * follows the outermost hoop its grid of places finds; take-in is 5 % of it to second order in the facets.
     */
    @Test
    void hoopLineFollowsTheRing() {
        double sweep = Math.toRadians(300), outer = 200;
        FlatMap map = Patch.grid(8, 180, 150, outer, 0, sweep, (p, q) -> new double[] {p * Math.cos(q), p * Math.sin(q)},
                (p, q) -> new double[] {0.95 * p * Math.cos(q), 0.95 * p * Math.sin(q), p * Math.sqrt(1 - 0.95 * 0.95)});
        Zone zone = Zones.of(StrainField.of(map)).list().get(0);
        assertEquals(Instruction.SHRINK, zone.instruction());
        TapeLine line = zone.line();
        assertTrue(line.blankLength() > 0.95 * sweep * outer && line.blankLength() < sweep * outer, "hoop " + line.blankLength());
        assertEquals(0.05 * line.blankLength(), line.takeIn(), 2e-3 * line.takeIn());
        assertEquals(-0.05, zone.meanStrain(), 1e-4);
        assertEquals(0, zone.acrossStrain(), 2e-4);
    }

    /** A closed ring: the line stops when it has come round. */
    @Test
    void hoopLineStopsWhenItHasComeRound() {
        FlatMap open = Patch.grid(6, 120, 150, 200, 0, 2 * Math.PI, (p, q) -> new double[] {p * Math.cos(q), p * Math.sin(q)},
                (p, q) -> new double[] {0.97 * p * Math.cos(q), 0.97 * p * Math.sin(q), p * Math.sqrt(1 - 0.97 * 0.97)});
        int[] tri = open.form().corners();                         // last row of vertices onto the first
        for (int i = 0; i < tri.length; i++) if (tri[i] >= 120 * 7) tri[i] -= 120 * 7;
        FlatMap map = FlatMap.of(TriMesh.of(open.form().positions(), tri), open.positions());
        Zone zone = Zones.of(StrainField.of(map)).list().get(0);
        assertTrue(zone.line().blankLength() > 2 * Math.PI * 190 && zone.line().blankLength() < 2 * Math.PI * 200.001,
                "once round " + zone.line().blankLength());
        assertEquals(0.03 * zone.line().blankLength(), zone.line().takeIn(), 2e-3 * zone.line().takeIn());
    }

    /** A ring with a waist, where the line turns both ways: it still ends abreast of its beginning. Along it the form is 4 % shorter. */
    @Test
    void lineRoundAWaistedRingNeverRunsBesideItself() {
        Patch.Place blank = (p, q) -> {
            double r = p * (1 + 0.4 * Math.cos(2 * q));
            return new double[] {r * Math.cos(q), r * Math.sin(q)};
        };
        FlatMap open = Patch.grid(12, 200, 150, 200, 0, 2 * Math.PI, blank, (p, q) -> {
            double[] at = blank.at(p, q);
            return new double[] {0.96 * at[0], 0.96 * at[1], 0.2 * p};
        });
        int[] tri = open.form().corners();
        for (int i = 0; i < tri.length; i++) if (tri[i] >= 200 * 13) tri[i] -= 200 * 13;
        FlatMap map = FlatMap.of(TriMesh.of(open.form().positions(), tri), open.positions());
        Zone zone = Zones.of(StrainField.of(map)).list().get(0);
        assertEquals(Instruction.SHRINK, zone.instruction());
        double round = 0;
        for (int i = 0; i < 2000; i++) {
            double[] a = blank.at(200, Math.PI * i / 1000), b = blank.at(200, Math.PI * (i + 1) / 1000);
            round += Math.hypot(a[0] - b[0], a[1] - b[1]);
        }
        TapeLine line = zone.line();
        assertTrue(line.blankLength() > 0.85 * round && line.blankLength() < round, line.blankLength() + " of " + round);
        assertEquals(0.04 * line.blankLength(), line.takeIn(), 0.03 * line.takeIn());
    }

    /**
     * Turned flange of width w on an edge of radius R, out of a flat annulus: let-out of the outer edge is w times the sweep for 90
     * degrees.
     */
    @Test
    void concaveFlangeIsLetOutByWidthTimesSweep() {
        double edge = 300, width = 20, sweep = Math.toRadians(60);
        FlatMap map = Patch.grid(120, 10, -sweep / 2, sweep / 2, 0, width,
                (p, q) -> new double[] {(edge - q) * Math.cos(p), (edge - q) * Math.sin(p)},
                (p, q) -> new double[] {edge * Math.cos(p), edge * Math.sin(p), -q});
        Zones zones = Zones.of(StrainField.of(map));
        Zone zone = zones.list().stream().filter(z -> z.instruction() == Instruction.STRETCH).findFirst().orElseThrow();
        assertEquals(width / (edge - width), zone.largestStrain(), 0.06 * width / (edge - width), "w/(R-w) at the edge, less half a facet");
        TapeLine line = zone.line();
        double radius = line.blankLength() / sweep;
        assertEquals((edge - radius) * sweep, line.letOut(), 0.02 * line.letOut() + 0.02);
        assertTrue(zone.line().letOut() <= width * sweep);
        assertEquals(edge * sweep, line.formLength(), 2e-3 * edge * sweep);
    }

    /** Speckle: every other facet of a neutral sheet pushed about by 5 %; what is left is few zones, and they are connected. */
    @Test
    void speckleMakesNoHundredsOfZones() {
        Random random = new Random(4);
        FlatMap map = Patch.grid(60, 40, 0, 600, 0, 400, (p, q) -> new double[] {p, q},
                (p, q) -> new double[] {p + 0.25 * random.nextGaussian(), q + 0.25 * random.nextGaussian(), 0});
        StrainField field = StrainField.of(map);
        Zones zones = Zones.of(field);
        assertTrue(zones.list().size() <= 200, zones.list().size() + " zones");
        Zones coarse = Zones.of(field, ZoneOptions.DEFAULT.withSmallestShare(0.05));
        assertTrue(coarse.list().size() <= 20, coarse.list().size() + " zones");
        for (Zones some : new Zones[] {zones, coarse}) assertPartition(some);
        for (Zone zone : coarse.list()) assertTrue(zone.area() >= 0.05 * 600 * 400 * 0.99);
        assertEquals(1, Zones.of(field, ZoneOptions.DEFAULT.withSmallestShare(0.9)).list().size());
        assertEquals(Instruction.LEAVE, Zones.of(field, ZoneOptions.DEFAULT.withNeutral(0.5)).list().get(0).instruction());
    }

    /** Stretched, a narrow strip shrunk, left: the strip goes to one of its neighbours and takes over what is to be done there. */
    @Test
    void areaTooSmallTakesTheInstructionOfItsNeighbour() {
        Zones zones = Zones.of(StrainField.of(strips(200, 240, 0.03, -0.03, 0)), ZoneOptions.DEFAULT.withSmallestShare(0.15));
        assertPartition(zones);
        assertEquals(2, zones.list().size());
        assertTrue(zones.list().stream().noneMatch(z -> z.instruction() == Instruction.SHRINK));
        assertEquals(3, Zones.of(StrainField.of(strips(200, 240, 0.03, -0.03, 0))).list().size());
    }

    @Test
    void areasKeptApartByOneTooSmallBecomeOne() {
        Zones zones = Zones.of(StrainField.of(strips(280, 340, 0.03, 0, 0.03)), ZoneOptions.DEFAULT.withSmallestShare(0.15));
        assertPartition(zones);
        assertEquals(1, zones.list().size());
        assertEquals(Instruction.STRETCH, zones.list().get(0).instruction());
        assertEquals(0.03 * (600 - 60), zones.list().get(0).line().letOut(), 1e-9);
        assertEquals(3, Zones.of(StrainField.of(strips(280, 340, 0.03, 0, 0.03))).list().size());
    }

    @Test
    void renumberedInputGivesTheSameZones() {
        FlatMap map = stripe(-0.04);
        Zones zones = Zones.of(StrainField.of(map));
        for (int seed = 0; seed < 5; seed++) {
            Zones other = Zones.of(StrainField.of(Patch.renumbered(map, seed)));
            assertEquals(zones.list().size(), other.list().size());
            for (int i = 0; i < zones.list().size(); i++) {
                Zone a = zones.list().get(i), b = other.list().get(i);
                assertEquals(a.instruction(), b.instruction());
                assertEquals(a.number(), b.number());
                assertEquals(a.area(), b.area(), 1e-6);
                assertEquals(a.largestStrain(), b.largestStrain(), 1e-9);
                assertEquals(a.line().blankLength(), b.line().blankLength(), 1e-6);
                assertEquals(a.line().change(), b.line().change(), 1e-9);
                assertEquals(a.label().u(), b.label().u(), 1e-6);
                assertEquals(a.label().v(), b.label().v(), 1e-6);
                assertEquals(a.worst().u(), b.worst().u(), 1e-6);
                assertEquals(a.worst().v(), b.worst().v(), 1e-6);
            }
        }
    }

    @Test
    void labelAndWorstSpotLieInTheirZoneAndOnTheForm() {
        Zones zones = Zones.of(StrainField.of(stripe(0.03)));
        for (Zone zone : zones.list()) {
            for (Spot spot : new Spot[] {zone.label(), zone.worst()}) {
                assertEquals(zone.number(), zones.zoneOf(spot.triangle()));
                assertTrue(Barycentre.holds(zones.field().map(), spot.triangle(), spot.u(), spot.v()));
                assertEquals(spot.v(), spot.y(), 1e-9);
            }
        }
    }

    @Test
    void aSheetThatNeedsNothingIsLeft() {
        FlatMap flat = Patch.grid(8, 5, 0, 80, 0, 50, (p, q) -> new double[] {p, q}, (p, q) -> new double[] {p, q, 7});
        Zones zones = Zones.of(StrainField.of(flat));
        assertEquals(1, zones.list().size());
        Zone zone = zones.list().get(0);
        assertEquals(Instruction.LEAVE, zone.instruction());
        assertEquals(0, zone.line().change(), 1e-12);
        assertTrue(zone.line().blankLength() > 0);
        assertFalse(Double.isNaN(zone.directionOnBlank()));
    }

    @Test
    void nothingAndNonsenseHaveZonesToo() {
        FlatMap none = FlatMap.of(TriMesh.of(new double[0], new int[0]), new double[0]);
        assertEquals(0, Zones.of(StrainField.of(none)).list().size());
        assertEquals(0, Stations.of(none).centreLine().size());
        FlatMap sheet = Patch.grid(8, 5, 0, 80, 0, 50, (p, q) -> new double[] {p, q}, (p, q) -> new double[] {p, q, 7});
        FlatMap faceDown = FlatMap.of(Patch.mirrored(sheet).form(), sheet.positions());
        Zone zone = Zones.of(StrainField.of(faceDown)).list().get(0);
        assertEquals(1, zone.line().pointCount());
        assertEquals(0, zone.line().change());
        FlatMap collapsed = FlatMap.of(sheet.form(), new double[2 * sheet.form().vertexCount()]);
        Zone point = Zones.of(StrainField.of(collapsed)).list().get(0);
        assertEquals(4000, point.area(), 1e-9);
        assertTrue(Double.isFinite(point.label().x()) && Double.isFinite(point.largestStrain()) && Double.isFinite(point.directionZ()));
    }

    private static FlatMap stripe(double strain) {
        return Patch.grid(60, 30, 0, 600, 0, 300, (p, q) -> new double[] {p, q},
                (p, q) -> new double[] {p + strain * Math.max(0, Math.min(200, p - 200)), q, 0});
    }

    /** 600 x 300 sheet with one strain along u up to {@code from}, another to {@code to}, a third beyond. */
    private static FlatMap strips(double from, double to, double first, double second, double third) {
        return Patch.grid(60, 30, 0, 600, 0, 300, (p, q) -> new double[] {p, q}, (p, q) -> new double[] {p + first * Math.min(p, from)
                + second * Math.max(0, Math.min(p, to) - from) + third * Math.max(0, p - to), q, 0});
    }

    private static int triangleAt(FlatMap map, double u, double v) {
        for (int t = 0; t < map.form().triangleCount(); t++) if (Barycentre.holds(map, t, u, v)) return t;
        throw new AssertionError("no triangle at " + u + " " + v);
    }

    /** Areas add up, numbers run from the largest, and each zone is one connected area. */
    static void assertPartition(Zones zones) {
        TriMesh form = zones.field().map().form();
        EdgeTable edges = EdgeTable.of(form);
        double area = 0;
        int triangles = 0;
        for (int i = 0; i < zones.list().size(); i++) {
            Zone zone = zones.list().get(i);
            assertEquals(i + 1, zone.number());
            if (i > 0) assertTrue(zone.area() <= zones.list().get(i - 1).area() * (1 + 1e-6));
            area += zone.area();
            triangles += zone.triangles();
        }
        assertEquals(form.area(), area, 1e-9 * area);
        assertEquals(form.triangleCount(), triangles);
        boolean[] seen = new boolean[form.triangleCount()];
        int parts = 0;
        for (int t = 0; t < seen.length; t++) {
            if (seen[t]) continue;
            parts++;
            ArrayDeque<Integer> open = new ArrayDeque<>();
            open.add(t);
            seen[t] = true;
            while (!open.isEmpty()) {
                int at = open.remove();
                for (int k = 0; k < 3; k++) {
                    int other = edges.neighbour(at, k);
                    if (other >= 0 && zones.zoneOf(other) != zones.zoneOf(at))
                        assertTrue(zones.at(other).instruction() != zones.at(at).instruction(), "neighbours told the same are one zone");
                    if (other < 0 || zones.zoneOf(other) != zones.zoneOf(at)) continue;
                    if (!seen[other]) open.add(other);
                    seen[other] = true;
                }
            }
        }
        assertEquals(zones.list().size(), parts, "zones in one piece each");
    }
}
