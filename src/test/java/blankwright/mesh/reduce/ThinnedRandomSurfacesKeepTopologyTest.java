package blankwright.mesh.reduce;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.Forms;
import blankwright.mesh.TriMesh;
import blankwright.mesh.repair.Repair;
import blankwright.num.Progress;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/**
 * Surfaces made at random and thinned out, against what is read from their corners alone: each part keeps its Euler characteristic and its rims,
 * each vertex one fan; rim corners are given ones in their order, and those left out lie near the side that spans them.
 */
@Timeout(value = 300, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)     // a loop without end is a failure, not a wait
class ThinnedRandomSurfacesKeepTopologyTest {
    @Test
    void sheetsFullOfHoles() {
        for (int seed = 0; seed < 12; seed++) keeps(torn(Forms.plate(60, 60, 40, 40), 0.04 * (seed % 4), seed), 1 + seed % 3);
    }

    @Test
    void tubesAndRingsFullOfHoles() {
        for (int seed = 0; seed < 6; seed++) {
            keeps(torn(Forms.tube(20, 80, 40, 30), 0.03, seed), 1.5);
            keeps(torn(Forms.torus(40, 12, 60, 24), 0.02 * (seed % 2), seed), 1.5);
        }
    }

    @Test
    void skinsOfRandomHeapsOfCubes() {
        for (int seed = 0; seed < 8; seed++)
            for (TriMesh part : Forms.parts(Forms.cells(Forms.randomCells(7, 0.3, seed)))) keeps(torn(part, 0.05 * (seed % 3), seed), 0.8);
    }

    /** So large a distance that nothing but topology and shape stops it. */
    @Test
    void whereTheDistanceStopsNothing() {
        for (int seed = 0; seed < 8; seed++) {
            keeps(torn(Forms.plate(30, 30, 20, 20), 0.05 * (seed % 3), seed), 1e3);
            keeps(torn(Forms.sphere(20, 2), 0.05 * (seed % 3), seed), 1e3);
            keeps(torn(Forms.torus(30, 10, 24, 12), 0, seed), 1e3);
        }
    }

    /** Corners of three triangles, high ones and flat ones: with two of their neighbours made one they would fold onto themselves. */
    @Test
    void spikesOfThreeTriangles() {
        for (int seed = 0; seed < 8; seed++)
            for (double within : new double[] {0.5, 1e3}) {
                keeps(torn(spiked(Forms.plate(30, 30, 15, 15), seed), 0.03 * (seed % 2), seed), within);
                keeps(torn(spiked(Forms.sphere(10, 1), seed), 0, seed), within);
            }
    }

    /** With a corner over the middle of every third triangle. */
    private static TriMesh spiked(TriMesh mesh, long seed) {
        Random random = new Random(seed);
        List<double[]> places = new ArrayList<>();
        List<Integer> corners = new ArrayList<>();
        int next = mesh.vertexCount();
        for (int t = 0; t < mesh.triangleCount(); t++) {
            int[] at = {mesh.corner(t, 0), mesh.corner(t, 1), mesh.corner(t, 2)};
            if (random.nextInt(3) > 0) {
                corners.addAll(List.of(at[0], at[1], at[2]));
                continue;
            }
            double[] top = Forms.middle(mesh, t), normal = mesh.normal(t);
            double high = 3 * random.nextDouble() * Math.sqrt(mesh.area(t));
            for (int k = 0; k < 3; k++) top[k] += high * normal[k];
            places.add(top);
            for (int k = 0; k < 3; k++) corners.addAll(List.of(at[k], at[(k + 1) % 3], next));
            next++;
        }
        double[] xyz = Arrays.copyOf(mesh.positions(), 3 * next);
        for (int i = 0; i < places.size(); i++) System.arraycopy(places.get(i), 0, xyz, 3 * (mesh.vertexCount() + i), 3);
        return TriMesh.of(xyz, corners.stream().mapToInt(Integer::intValue).toArray());
    }

    /** Without a share of its triangles, mended, and every vertex a little elsewhere, so that no two share a place. */
    private static TriMesh torn(TriMesh mesh, double share, long seed) {
        Random random = new Random(seed);
        TriMesh rest = Forms.without(mesh, t -> random.nextDouble() < share);
        TriMesh mended = Repair.of(rest.positions(), rest.corners(), Progress.NONE).mesh();
        double[] xyz = mended.positions();
        for (int i = 0; i < xyz.length; i++) xyz[i] += 0.05 * random.nextGaussian();
        return Forms.renumbered(mended.withPositions(xyz), seed);
    }

    private static void keeps(TriMesh given, double within) {
        Reduced reduced = Reduce.of(given, within, 0, Progress.NONE);
        TriMesh mesh = reduced.mesh();
        assertTrue(reduced.deviation() <= within, reduced.deviation() + " beyond " + within);
        Shape before = new Shape(given), after = new Shape(mesh);
        assertEquals(before.parts(), after.parts());
        for (int v = 0; v < given.vertexCount(); v += 1 + given.vertexCount() / 200)
            assertTrue(Far.from(mesh, given.x(v), given.y(v), given.z(v)) <= reduced.deviation() * (1 + 1e-9), "vertex " + v);
        Map<List<Double>, Integer> at = new HashMap<>();
        for (int v = 0; v < given.vertexCount(); v++) assertNull(at.put(List.of(given.x(v), given.y(v), given.z(v)), v));
        for (List<Integer> rim : after.rims) {
            List<Integer> there = new ArrayList<>();
            for (int v : rim) there.add(at.get(List.of(mesh.x(v), mesh.y(v), mesh.z(v))));
            assertTrue(!there.contains(null), "a rim vertex moved");
            List<Integer> loop = before.rims.stream().filter(l -> l.contains(there.get(0))).findFirst().orElseThrow();
            int turned = 0;
            for (int i = 0; i < there.size(); i++) {
                int a = there.get(i), b = there.get((i + 1) % there.size()), from = loop.indexOf(a), steps = loop.indexOf(b) - from;
                assertTrue(from >= 0 && loop.contains(b), "another rim");
                steps += steps <= 0 ? loop.size() : 0;
                turned += steps;
                for (int k = 1; k < steps; k++) {
                    double off = Far.fromSide(place(given, a), place(given, b), place(given, loop.get((from + k) % loop.size())));
                    assertTrue(off <= within * (1 + 1e-9), off + " off the rim");
                }
            }
            assertEquals(loop.size(), turned, "once round");
        }
    }

    private static double[] place(TriMesh mesh, int v) {
        return new double[] {mesh.x(v), mesh.y(v), mesh.z(v)};
    }

    /** A surface as its corners tell it; asserts that it is one. */
    private static final class Shape {
        final List<List<Integer>> rims = new ArrayList<>();
        private final TriMesh mesh;
        private final int[] part;

        Shape(TriMesh mesh) {
            this.mesh = mesh;
            part = new int[mesh.vertexCount()];
            Arrays.setAll(part, v -> v);
            Map<List<Integer>, Integer> halves = new HashMap<>();
            List<Map<Integer, Integer>> round = new ArrayList<>();       // of each vertex: from neighbour to the next
            for (int v = 0; v < part.length; v++) round.add(new HashMap<>());
            for (int t = 0; t < mesh.triangleCount(); t++)
                for (int k = 0; k < 3; k++) {
                    int a = mesh.corner(t, k), b = mesh.corner(t, (k + 1) % 3), c = mesh.corner(t, (k + 2) % 3);
                    assertNull(halves.put(List.of(a, b), t), "two triangles run along one edge the same way");
                    assertNull(round.get(a).put(b, c));
                    part[root(a)] = root(b);
                }
            Map<Integer, Integer> rimAfter = new TreeMap<>();
            halves.keySet().stream().filter(h -> !halves.containsKey(List.of(h.get(1), h.get(0))))
                    .forEach(h -> assertNull(rimAfter.put(h.get(0), h.get(1)), "two rims at one vertex"));
            for (int v = 0; v < part.length; v++) {
                Map<Integer, Integer> fan = round.get(v);
                int start = rimAfter.getOrDefault(v, fan.keySet().stream().findFirst().orElseThrow()), w = start, met = 0;
                do {
                    w = fan.get(w);
                    met++;
                } while (w != start && fan.containsKey(w));
                assertEquals(fan.size(), met, "one fan at each vertex");
            }
            while (!rimAfter.isEmpty()) {
                List<Integer> rim = new ArrayList<>();
                for (Integer v = rimAfter.keySet().iterator().next(); v != null && rimAfter.containsKey(v); v = rimAfter.remove(v)) rim.add(v);
                rims.add(rim);
            }
        }

        private int root(int v) {
            while (part[v] != v) v = part[v] = part[part[v]];
            return v;
        }

        /** Of each part: vertices less edges and triangles, and how many rims; sorted. */
        List<List<Integer>> parts() {
            Map<Integer, int[]> of = new TreeMap<>();
            for (int v = 0; v < part.length; v++) of.computeIfAbsent(root(v), r -> new int[3])[0] += 2;
            for (int t = 0; t < mesh.triangleCount(); t++) of.get(root(mesh.corner(t, 0)))[0] -= 1;      // V - E + F, E = (3 F + rim sides) / 2
            for (List<Integer> rim : rims) {
                int[] here = of.get(root(rim.get(0)));
                here[0] -= rim.size();
                here[1]++;
            }
            List<List<Integer>> parts = new ArrayList<>();
            for (int[] one : of.values()) parts.add(List.of(one[0] / 2, one[1]));
            parts.sort((p, q) -> p.get(0) != q.get(0).intValue() ? p.get(0) - q.get(0) : p.get(1) - q.get(1));
            return Collections.unmodifiableList(parts);
        }
    }
}
