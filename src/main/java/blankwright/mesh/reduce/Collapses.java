package blankwright.mesh.reduce;

import blankwright.num.Progress;
import java.util.Arrays;
import java.util.concurrent.CancellationException;
import java.util.stream.IntStream;

/**
 * Collapses edges, the cheapest first, as long as any may be.
 *
 * <p>In rounds: each vertex whose surroundings changed finds its cheapest edge, all cores at once; then, one after another in their order,
 * the vertices among the cheaper share try theirs, and what lies round a collapsed edge waits for the next round. An edge that was refused
 * is not asked again before something beside it changes. Same bits on any number of threads.
 */
final class Collapses {
    /** Share of the vertices that may try in one round. */
    private static final double CHEAPER = 0.4;
    /** Of the length, squared and weighted: where all is flat, short edges go first; below dents of a ten-thousandth of their length. */
    private static final double SHORT_FIRST = 1e-8;
    private static final int CHUNK = 4096;

    private final Fans fans;
    private final Quadrics quadrics;
    private final Trial trial;
    private final double[] xyz;
    private final double within2;
    private final Progress progress;
    private final double[] cost;        // of the cheapest edge of a vertex
    private final double[] refused;     // edges of a vertex up to this cost were refused
    private final int[] edge;           // half-edge of that edge, -1 none
    private final boolean[] stale;      // must look again
    private int[] alive;

    /** @param xyz moved with the vertices */
    Collapses(Fans fans, Quadrics quadrics, Trial trial, double[] xyz, double within, Progress progress) {
        this.fans = fans;
        this.quadrics = quadrics;
        this.trial = trial;
        this.xyz = xyz;
        this.within2 = within * within;
        this.progress = progress;
        int n = xyz.length / 3;
        cost = new double[n];
        refused = new double[n];
        edge = new int[n];
        stale = new boolean[n];
        Arrays.fill(refused, -1);
        Arrays.fill(stale, true);
        alive = IntStream.range(0, n).toArray();
    }

    /** Until {@code enough} triangles are left, or no edge may go. */
    void run(int enough) {
        int before = fans.triangles;
        while (fans.triangles > enough) {
            lookAgain();
            double most = dearest();
            if (most < 0) return;
            round(most, enough);
            alive = Arrays.stream(alive).filter(v -> fans.way[v] >= 0).toArray();
            progress.at("thinning out", (double) (before - fans.triangles) / Math.max(1, before - enough));
        }
    }

    private void lookAgain() {
        int chunks = (alive.length + CHUNK - 1) / CHUNK;
        IntStream.range(0, chunks).parallel().forEach(c -> {
            stop();
            double[] sum = new double[Quadrics.SIZE], place = new double[3];
            for (int i = c * CHUNK; i < Math.min(alive.length, (c + 1) * CHUNK); i++) if (stale[alive[i]]) look(alive[i], sum, place);
        });
    }

    private void stop() {
        if (progress.cancelled()) throw new CancellationException("thinning out");
    }

    private void look(int v, double[] sum, double[] place) {
        stale[v] = false;
        cost[v] = Double.POSITIVE_INFINITY;
        edge[v] = -1;
        for (int h = fans.way[v]; h >= 0; ) {
            offer(v, h, sum, place);
            int following = fans.left(h, v), last = Fans.before(h);
            if (following < 0 && fans.twin[last] < 0) offer(v, last, sum, place);
            h = following;
        }
    }

    private void offer(int v, int h, double[] sum, double[] place) {
        int a = fans.tri[h], b = fans.tri[Fans.next(h)];
        if (fans.rim[a] && fans.rim[b] && fans.twin[h] >= 0) return;
        place(h, sum, place);
        double weight = Quadrics.weight(sum), off = quadrics.at(sum, place[0], place[1], place[2]), length2 = 0;
        if (off > within2 * weight) return;
        for (int k = 0; k < 3; k++) length2 += (xyz[3 * a + k] - xyz[3 * b + k]) * (xyz[3 * a + k] - xyz[3 * b + k]);
        double dear = off + SHORT_FIRST * (1 + jitter(Math.min(a, b), Math.max(a, b))) * length2 * weight;
        if (!(dear > refused[v]) || !(dear < cost[v])) return;
        cost[v] = dear;
        edge[v] = h;
    }

    /** Where the ends of h meet: at the rim if one is there, at the end that costs less if both are, else where the quadric is least. Which end stays. */
    private int place(int h, double[] sum, double[] place) {
        int a = fans.tri[h], b = fans.tri[Fans.next(h)];
        quadrics.sum(a, b, sum);
        if (fans.rim[a] || fans.rim[b]) {
            int keep = a;
            if (fans.rim[a] && fans.rim[b]) {
                double first = quadrics.at(sum, xyz[3 * a], xyz[3 * a + 1], xyz[3 * a + 2]), second = quadrics.at(sum, xyz[3 * b], xyz[3 * b + 1], xyz[3 * b + 2]);
                if (second < first || second == first && b < a) keep = b;
            } else if (fans.rim[b]) {
                keep = b;
            }
            System.arraycopy(xyz, 3 * keep, place, 0, 3);
            return keep;
        }
        for (int k = 0; k < 3; k++) place[k] = (xyz[3 * a + k] + xyz[3 * b + k]) / 2;
        quadrics.least(sum, place);
        return Math.min(a, b);
    }

    /** 0..1, the same for the same edge: of equal edges of a grid some are then cheaper than all their neighbours. */
    private static double jitter(int low, int high) {
        int h = low * 0x9E3779B9 + high * 0x85EBCA6B;
        h = (h ^ h >>> 15) * 0x2C1B3C6D;
        return (h >>> 8) / (double) (1 << 24);
    }

    /** The cost up to which edges are tried this round, from a sample; negative where there is none left to try. */
    private double dearest() {
        double[] sample = new double[4096];
        int step = Math.max(1, alive.length / 2048), size = 0;
        for (int i = 0; i < alive.length && size < sample.length; i += step) if (edge[alive[i]] >= 0) sample[size++] = cost[alive[i]];
        if (size > 64) {
            Arrays.sort(sample, 0, size);
            return sample[(int) (CHEAPER * size)];
        }
        for (int v : alive) if (edge[v] >= 0) return Double.MAX_VALUE;
        return -1;
    }

    private void round(double most, int enough) {
        double[] sum = new double[Quadrics.SIZE], place = new double[3];
        int tried = 0;
        for (int v : alive) {
            if (fans.way[v] < 0 || stale[v] || edge[v] < 0 || cost[v] > most) continue;
            int h = edge[v], w = fans.tri[h] == v ? fans.tri[Fans.next(h)] : fans.tri[h];
            if (stale[w]) continue;
            if ((++tried & 0xFF) == 0) stop();
            int keep = place(h, sum, place), gone = keep == v ? w : v;
            if (!trial.collapsed(h, keep, place)) {
                refused[v] = cost[v];
                stale[v] = true;
                continue;
            }
            quadrics.merge(keep, gone);
            freshRound(keep);
            if (fans.triangles <= enough) return;
        }
    }

    /** What touches v is another ground now. */
    private void freshRound(int v) {
        refused[v] = -1;
        stale[v] = true;
        for (int h = fans.way[v]; h >= 0; h = fans.left(h, v)) {
            for (int w : new int[] {fans.tri[Fans.next(h)], fans.tri[Fans.before(h)]}) {
                refused[w] = -1;
                stale[w] = true;
            }
        }
    }
}
