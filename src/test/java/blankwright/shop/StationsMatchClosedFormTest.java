package blankwright.shop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.oracle.Patch;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Centre line and stations on panels whose sections are circles, lines and ellipses. */
class StationsMatchClosedFormTest {
    /** Tube section of radius 200, 90 degrees round, 700 long: the centre line is 700, stations are arcs of 100 π. */
    @Test
    void cylinder() {
        Stations stations = Stations.of(tube(64));
        assertEquals(List.of("-300", "-200", "-100", "0", "+100", "+200", "+300"), labels(stations));
        assertEquals(1, stations.centreLine().size());
        TapeLine centre = stations.centreLine().get(0);
        assertEquals(700, centre.formLength(), 1e-9);
        assertEquals(700, centre.blankLength(), 1e-9);
        for (int i = 0; i < centre.pointCount(); i++) {
            assertEquals(0, centre.v(i), 1e-9, "on the plane of symmetry");
            assertEquals(0, centre.y(i), 1e-9);
        }
        for (Stations.Station station : stations.stations()) {
            assertEquals(1, station.lines().size());
            TapeLine line = station.lines().get(0);
            assertEquals(100 * Math.PI, line.blankLength(), 1e-9, "the blank was laid out true");
            double facet = Math.PI / 2 / 64;
            assertEquals(100 * Math.PI * Math.sin(facet / 2) / (facet / 2), line.formLength(), 1e-9, "a chord for each arc");
            for (int i = 0; i < line.pointCount(); i++) assertEquals(station.at(), line.u(i), 1e-9, "straight on the blank");
        }
    }

    @Test
    void lengthsOfArcsConvergeAtSecondOrder() {
        double[] error = new double[3];
        for (int i = 0; i < 3; i++) {
            error[i] = 100 * Math.PI - Stations.of(tube(16 << i)).stations().get(3).lines().get(0).formLength();
        }
        for (int i = 1; i < 3; i++) assertEquals(4, error[i - 1] / error[i], 0.02);
    }

    /**
     * Half of a cone frustum, radii 300 and 200 over a height of 400: the middle ruling is the centre line, its slant sqrt(400² + 100²); a
     * plane square to the axis at radius r cuts half a circle, π r. The frustum's centroid and mean normal put along on the middle ruling's
     * direction no more than nearly, so stations here are checked on the form against the plane alone.
     */
    @Test
    void coneCentreLineIsItsMiddleRuling() {
        double slant = Math.hypot(400, 100), sin = 100 / slant;
        FlatMap map = Patch.grid(40, 60, 200, 300, -Math.PI / 2, Math.PI / 2,
                (r, q) -> new double[] {r / sin * Math.cos(q * sin), r / sin * Math.sin(q * sin)},
                (r, q) -> new double[] {r * Math.cos(q), r * Math.sin(q), -4 * r});
        Stations stations = Stations.of(map);
        TapeLine centre = stations.centreLine().get(0);
        for (int i = 0; i < centre.pointCount(); i++) {
            assertEquals(0, centre.y(i), 1e-9);
            assertEquals(0, centre.v(i), 1e-9);
        }
        assertEquals(slant, centre.formLength(), 1e-9);
        assertEquals(slant, centre.blankLength(), 1e-9);
        PanelFrame frame = stations.frame();
        for (Stations.Station station : stations.stations()) {
            for (TapeLine line : station.lines()) {
                for (int i = 0; i < line.pointCount(); i++) {
                    double at = (line.x(i) - frame.origin(0)) * frame.along(0) + (line.y(i) - frame.origin(1)) * frame.along(1)
                            + (line.z(i) - frame.origin(2)) * frame.along(2);
                    assertEquals(station.at(), at, 1e-8);
                }
                assertEquals(line.blankLength(), line.formLength(), 2e-3 * line.blankLength(), "developable: no length changes");
            }
        }
    }

    @Test
    void turnedMirroredAndRenumberedPanelsGetTheSameLines() {
        FlatMap map = nose();
        List<String> before = lengths(Stations.of(map, 60));
        assertTrue(before.size() > 5);
        assertEquals(before, lengths(Stations.of(Patch.turnedInSpace(map, 2.2), 60)));
        assertEquals(before, lengths(Stations.of(Patch.renumbered(map, 9), 60)));
        assertEquals(before, lengths(Stations.of(Patch.mirrored(map), 60)));
    }

    @Test
    void symmetricPanelHasItsCentreLineOnThePlaneOfSymmetryEvenIfThatIsTheShorterWay() {
        FlatMap wide = Patch.grid(40, 20, -300, 300, 0, 300, (p, q) -> new double[] {p, q},
                (p, q) -> new double[] {p * (1 - q / 900), q, 60 * Math.cos(p / 300) * Math.cos(q / 250)});
        TapeLine centre = Stations.of(wide).centreLine().get(0);
        for (int i = 0; i < centre.pointCount(); i++) assertEquals(0, centre.x(i), 1e-9);
        TapeLine turned = Stations.of(Patch.renumbered(Patch.turnedInSpace(wide, 0.9), 1)).centreLine().get(0);
        assertEquals(centre.formLength(), turned.formLength(), 1e-8);
        for (int i = 0; i < turned.pointCount(); i++) assertEquals(0, turned.u(i), 1e-7);
    }

    @Test
    void squarePanelIsStationedAlongItsSides() {
        FlatMap square = Patch.grid(20, 20, -150, 150, -150, 150, (p, q) -> new double[] {p, q},
                (p, q) -> new double[] {p, q, 40 * Math.cos(p / 150) * Math.cos(q / 150)});
        PanelFrame frame = PanelFrame.of(square.form());
        assertEquals(1, Math.max(Math.abs(frame.along(0)), Math.abs(frame.along(1))), 1e-9);
    }

    @Test
    void holesLeaveTheLineInParts() {
        FlatMap whole = tube(32);
        int[] tri = whole.form().corners();
        int[] kept = java.util.stream.IntStream.range(0, tri.length).filter(i -> {
            double u = 0, v = 0;
            for (int k = 0; k < 3; k++) {
                u += whole.u(tri[i / 3 * 3 + k]) / 3;
                v += whole.v(tri[i / 3 * 3 + k]) / 3;
            }
            return Math.abs(u) > 40 || Math.abs(v) > 40;
        }).map(i -> tri[i]).toArray();
        Stations stations = Stations.of(FlatMap.of(TriMesh.of(whole.form().positions(), kept), whole.positions()));
        assertEquals(2, stations.centreLine().size());
        assertEquals(2, stations.stations().get(3).lines().size());
        assertEquals("0", stations.stations().get(3).label());
    }

    @Test
    void refusesASpacingThatIsNone() {
        assertThrows(IllegalArgumentException.class, () -> Stations.of(tube(4), 0));
        assertThrows(IllegalArgumentException.class, () -> Stations.of(tube(4), Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> Stations.of(tube(4), 1e-9));
        assertEquals(1, Stations.of(tube(4), 1e6).stations().size());
        assertEquals("+33.3", Stations.of(tube(4), 33.3).stations().get(11).label());
    }

    /** u along the axis, v round it; up is -x so that the outer skin is outside. */
    private static FlatMap tube(int round) {
        return Patch.grid(35, round, -350, 350, -Math.PI / 4, Math.PI / 4, (p, q) -> new double[] {p, 200 * q},
                (p, q) -> new double[] {p, 200 * Math.sin(q), 200 * Math.cos(q)});
    }

    private static FlatMap nose() {
        return Patch.grid(30, 20, 0, 500, -150, 150, (p, q) -> new double[] {p, q},
                (p, q) -> new double[] {p, q * (1 - p / 1200) + 0.05 * p, 90 * Math.cos(p / 320) * Math.cos(q / 170) + 0.1 * q});
    }

    private static List<String> labels(Stations stations) {
        return stations.stations().stream().map(Stations.Station::label).collect(Collectors.toList());
    }

    private static List<String> lengths(Stations stations) {
        List<String> out = new java.util.ArrayList<>();
        for (Stations.Station station : stations.stations()) {
            for (TapeLine line : station.lines()) {
                out.add(String.format(java.util.Locale.ROOT, "%s %.5f %.5f", station.label(), line.blankLength(), line.formLength()));
            }
        }
        for (TapeLine line : stations.centreLine()) {
            out.add(String.format(java.util.Locale.ROOT, "%.5f %.5f", line.blankLength(), line.formLength()));
        }
        return out;
    }
}
