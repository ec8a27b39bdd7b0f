package blankwright.shop;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.TriMesh;
import blankwright.strain.StrainField;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;

/** Joins triangles under one instruction to areas, and areas too small to be worked on their own to their neighbours. */
final class ZoneAreas {
    private record Entry(double area, int id) { }

    private final byte[] instruction;
    private final int[] owner;                          // union-find over areas
    private final double[] area;
    private final byte[] todo;
    private final List<Map<Integer, Double>> border;    // area -> neighbouring area -> length of the common border on the form, mm

    private ZoneAreas(byte[] instruction, double[] area, byte[] todo, List<Map<Integer, Double>> border) {
        this.instruction = instruction;
        this.area = area;
        this.todo = todo;
        this.border = border;
        owner = new int[area.length];
        for (int i = 0; i < owner.length; i++) owner[i] = i;
    }

    /**
     * Area of each triangle, numbered from 0 in the order of their first triangles. Overwrites {@code instruction} with that of the area
     * each triangle ends in.
     */
    static int[] of(StrainField field, EdgeTable edges, byte[] instruction, double smallestShare) {
        TriMesh form = field.map().form();
        int[] of = connected(edges, instruction);
        int count = 0;
        for (int a : of) count = Math.max(count, a + 1);
        double[] area = new double[count];
        byte[] todo = new byte[count];
        double total = 0;
        for (int t = 0; t < of.length; t++) {
            area[of[t]] += field.area(t);
            todo[of[t]] = instruction[t];
            total += field.area(t);
        }
        List<Map<Integer, Double>> border = new ArrayList<>();
        for (int a = 0; a < count; a++) border.add(new HashMap<>());
        for (int e = 0; e < edges.edgeCount(); e++) {
            if (edges.right(e) < 0) continue;
            int a = of[edges.left(e)], b = of[edges.right(e)];
            if (a == b) continue;
            double length = form.distance(edges.from(e), edges.to(e));
            border.get(a).merge(b, length, Double::sum);
            border.get(b).merge(a, length, Double::sum);
        }
        ZoneAreas areas = new ZoneAreas(instruction, area, todo, border);
        areas.joinSmall(total * smallestShare);
        return areas.number(of);
    }

    private static int[] connected(EdgeTable edges, byte[] instruction) {
        int n = instruction.length, count = 0;
        int[] of = new int[n], stack = new int[n];
        Arrays.fill(of, -1);
        for (int seed = 0; seed < n; seed++) {
            if (of[seed] >= 0) continue;
            int top = 0;
            stack[top++] = seed;
            of[seed] = count;
            while (top > 0) {
                int t = stack[--top];
                for (int k = 0; k < 3; k++) {
                    int other = edges.neighbour(t, k);
                    if (other < 0 || of[other] >= 0 || instruction[other] != instruction[t]) continue;
                    of[other] = count;
                    stack[top++] = other;
                }
            }
            count++;
        }
        return of;
    }

    private void joinSmall(double limit) {
        PriorityQueue<Entry> smallest = new PriorityQueue<>((p, q) ->
                p.area() != q.area() ? Double.compare(p.area(), q.area()) : Integer.compare(p.id(), q.id()));
        for (int a = 0; a < area.length; a++) {
            if (area[a] < limit) smallest.add(new Entry(area[a], a));
        }
        while (!smallest.isEmpty()) {
            Entry entry = smallest.poll();
            int a = entry.id();
            if (owner[a] != a || area[a] != entry.area() || border.get(a).isEmpty()) continue;
            int root = longest(a);
            int[] alike = alike(a, todo[root], root);       // what the small one kept apart
            root = join(root, a);
            for (int same : alike) root = join(root, same);
            if (area[root] < limit) smallest.add(new Entry(area[root], root));
        }
    }

    private int longest(int a) {
        int best = -1;
        double most = -1;
        for (Map.Entry<Integer, Double> side : border.get(a).entrySet()) {
            if (side.getValue() > most || side.getValue() == most && side.getKey() < best) {
                most = side.getValue();
                best = side.getKey();
            }
        }
        return best;
    }

    /** Neighbours of a under the given instruction but for one, in ascending order. */
    private int[] alike(int a, byte wanted, int except) {
        return border.get(a).keySet().stream().mapToInt(Integer::intValue).filter(o -> todo[o] == wanted && o != except).sorted().toArray();
    }

    /** Joins both under the instruction of the first; the one with more neighbours lends its number, so that all joins cost n log n. */
    private int join(int first, int second) {
        byte kept = todo[first];
        int root = border.get(first).size() >= border.get(second).size() ? first : second, gone = root == first ? second : first;
        Map<Integer, Double> sides = border.get(root);
        sides.remove(gone);
        for (Map.Entry<Integer, Double> side : border.get(gone).entrySet()) {
            int other = side.getKey();
            if (other == root) continue;
            sides.merge(other, side.getValue(), Double::sum);
            Map<Integer, Double> back = border.get(other);
            back.remove(gone);
            back.merge(root, side.getValue(), Double::sum);
        }
        border.set(gone, Map.of());
        owner[gone] = root;
        area[root] += area[gone];
        todo[root] = kept;
        return root;
    }

    private int[] number(int[] of) {
        int[] number = new int[area.length], out = new int[of.length];
        Arrays.fill(number, -1);
        int count = 0;
        for (int t = 0; t < of.length; t++) {
            int root = of[t];
            while (owner[root] != root) root = owner[root] = owner[owner[root]];
            if (number[root] < 0) number[root] = count++;
            out[t] = number[root];
            instruction[t] = todo[root];
        }
        return out;
    }
}
