package blankwright.mesh.reduce;

import blankwright.num.Progress;
import java.util.Arrays;
import java.util.concurrent.CancellationException;
import java.util.stream.IntStream;

/**
 * Collapses edges, the cheapest first, as long as any may be.
 *
 * <p>In rounds: each vertex whose surroundings changed finds its cheapest edge; then the vertices among the cheaper share try theirs, and what
 * lies round a collapsed edge waits for the next round. An edge that was refused is not asked again before something beside it changes.
 * <p>All cores at once: the vertices lie in {@link Blocks}. A block's own collapses go one after another in the order of the vertices, those
 * that touch what another block could touch come after all blocks, block by block. So the same bits on any number of threads.
 */
final class Collapses {
    /** Share of the vertices that may try in one round. */
    private static final double CHEAPER = 0.4;
    /** Of the length, squared and weighted: where all is flat, short edges go first; below dents of a ten-thousandth of their length. */
    private static final double SHORT_FIRST = 1e-8;
    /** Of the distance allowed, squared: from such a mean distance from the planes round it on a place may stand out too far. */
    private static final double STANDS_OUT = 0.1;
    /** With fewer triangles to go they go one after another: shared out, each block would get next to none. */
    private static final int LAST = 4096;

    private final Fans fans;
    private final Quadrics quadrics;
    private final Trial.Ground ground;
    private final double[] xyz;
    private final double within2;
    private final Progress progress;
    private final double[] cost;        // of the cheapest edge of a vertex
    private final double[] refused;     // edges of a vertex up to this cost were refused
    private final int[] edge;           // half-edge of that edge, -1 none
    private final boolean[] stale;      // must look again
    private final boolean[] joined;     // two became this one since all looked
    private final Blocks blocks;

    Collapses(Quadrics quadrics, Trial.Ground ground, Progress progress) {
        this.fans = ground.fans();
        this.quadrics = quadrics;
        this.ground = ground;
        this.xyz = ground.xyz();
        this.within2 = ground.within2();
        this.progress = progress;
        int n = xyz.length / 3;
        cost = new double[n];
        refused = new double[n];
        edge = new int[n];
        stale = new boolean[n];
        joined = new boolean[n];
        Arrays.fill(refused, -1);
        Arrays.fill(edge, -1);
        Arrays.fill(stale, true);
        blocks = new Blocks(fans, xyz);
    }

    /** Until {@code enough} triangles are left, or no edge may go. */
    void run(int enough) {
        int before = fans.triangles;
        while (fans.triangles > enough) {
            blocks.renew();
            each(b -> {
                double[] sum = new double[Quadrics.SIZE], place = new double[3];
                for (int v : blocks.alive(b)) if (stale[v]) look(v, sum, place);
                return null;
            });
            each(b -> {
                for (int v : blocks.alive(b)) joined[v] = false;
                return null;
            });
            double most = dearest();
            if (most < 0) return;
            round(most, enough);
            progress.at("thinning out", (double) (before - fans.triangles) / Math.max(1, before - enough));
        }
    }

    private Visit[] each(java.util.function.IntFunction<Visit> work) {
        return IntStream.range(0, blocks.count()).parallel().mapToObj(b -> {
            stop();
            return work.apply(b);
        }).toArray(Visit[]::new);
    }

    private void stop() {
        if (progress.cancelled()) throw new CancellationException("thinning out");
    }

    /** Where no edge of v was refused and its cheapest is still there, only those are new whose other end is. */
    private void look(int v, double[] sum, double[] place) {
        stale[v] = false;
        int was = edge[v];
        boolean all = refused[v] >= 0 || joined[v] || was < 0 || fans.tri[was / 3 * 3] < 0 || joined[other(v, was)];
        if (all) {
            cost[v] = Double.POSITIVE_INFINITY;
            edge[v] = -1;
        }
        for (int h = fans.way[v]; h >= 0; ) {
            if (all || joined[fans.tri[Fans.next(h)]]) offer(v, h, sum, place);
            int following = fans.left(h, v), last = Fans.before(h);
            if (following < 0 && fans.twin[last] < 0 && (all || joined[fans.tri[last]])) offer(v, last, sum, place);
            h = following;
        }
    }

    private int other(int v, int h) {
        return fans.tri[h] == v ? fans.tri[Fans.next(h)] : fans.tri[h];
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
        int step = Math.max(1, blocks.size() / 2048), size = 0, next = 0, many = 0;
        boolean any = false;
        for (int b = 0; b < blocks.count(); b++) {
            for (int v : blocks.alive(b)) {
                any |= edge[v] >= 0;
                if (many++ != next) continue;
                next += step;
                if (edge[v] >= 0 && size < sample.length) sample[size++] = cost[v];
            }
        }
        if (size <= 64) return any ? Double.MAX_VALUE : -1;
        Arrays.sort(sample, 0, size);
        return sample[(int) (CHEAPER * size)];
    }

    private void round(double most, int enough) {
        int toGo = fans.triangles - enough;
        if (blocks.count() == 1 || toGo < LAST) {
            for (int b = 0; b < blocks.count() && fans.triangles > enough; b++)
                fans.triangles -= new Visit(-1, most, fans.triangles - enough).to(blocks.alive(b)).gone;
            return;
        }
        int[] wish = new int[blocks.count()];
        each(b -> {
            for (int v : blocks.alive(b)) if (tries(v, most)) wish[b] += 2;
            return null;
        });
        long wishes = Arrays.stream(wish).asLongStream().sum();
        Visit[] visits = each(b -> new Visit(b, most, wishes <= toGo ? toGo : (int) ((long) toGo * wish[b] / wishes)).to(blocks.alive(b)));
        for (Visit visit : visits) fans.triangles -= visit.gone;
        for (Visit visit : visits)
            if (fans.triangles > enough) fans.triangles -= new Visit(-1, most, fans.triangles - enough).to(visit.left()).gone;
    }

    private boolean tries(int v, double most) {
        return fans.way[v] >= 0 && !stale[v] && edge[v] >= 0 && cost[v] <= most;
    }

    /** Vertices trying their edges one after another. */
    private final class Visit {
        private final int block;        // which alone may be touched, -1 any
        private final double most;
        private final int allowed;      // triangles
        private final Trial trial = new Trial(ground);
        private int[] left = new int[64];
        private int many;
        int gone;                       // triangles

        Visit(int block, double most, int allowed) {
            this.block = block;
            this.most = most;
            this.allowed = allowed;
        }

        Visit to(int[] vertices) {
            double[] sum = new double[Quadrics.SIZE], place = new double[3];
            int tried = 0;
            for (int v : vertices) {
                if (gone >= allowed) break;
                if (!tries(v, most)) continue;
                int h = edge[v], w = other(v, h);
                if (stale[w]) continue;
                if (block >= 0 && !(blocks.holds(block, v) && blocks.holds(block, w))) {
                    leave(v);
                    continue;
                }
                if ((++tried & 0xFF) == 0) stop();
                int keep = place(h, sum, place);
                boolean standsOut = quadrics.at(sum, place[0], place[1], place[2]) > STANDS_OUT * within2 * Quadrics.weight(sum);
                int went = trial.collapsed(h, keep, place, standsOut);
                if (went == 0) {
                    refused[v] = cost[v];
                    stale[v] = true;
                    continue;
                }
                gone += went;
                quadrics.merge(keep, keep == v ? w : v);
                freshRound(keep);
            }
            return this;
        }

        private void leave(int v) {
            if (many == left.length) left = Arrays.copyOf(left, 2 * many);
            left[many++] = v;
        }

        int[] left() {
            return Arrays.copyOf(left, many);
        }
    }

    /** What touches v is another ground now. */
    private void freshRound(int v) {
        fresh(v);
        joined[v] = true;
        for (int h = fans.way[v]; h >= 0; h = fans.left(h, v)) {
            fresh(fans.tri[Fans.next(h)]);
            fresh(fans.tri[Fans.before(h)]);
        }
    }

    /** Edges refused before may be asked again. */
    private void fresh(int v) {
        if (refused[v] >= 0) edge[v] = -1;
        refused[v] = -1;
        stale[v] = true;
    }
}
