package blankwright.sheet;

import blankwright.mesh.FlatMap;
import java.util.Arrays;
import java.util.Optional;

/**
 * Both sides of a tuck on the blank: two straight lines from the finished edge to the tip, and where metal is left on beyond that edge on
 * outwards, side by side, to the cut.
 *
 * <p>The mouth is measured along the edge of the blank; the tip stands square to the line across the mouth. A tuck whose sides would leave
 * the metal, as between an edge and a hole close to it, is drawn only as deep as they do not, in twentieths of its depth; one that has not a
 * quarter of it is not drawn.
 *
 * @param path from the cut by the tip back to the cut, two numbers a point, mm; no two points in the same place
 * @param midU middle of the mouth, with {@code midV}
 * @param inU direction from the mouth to the tip, with {@code inV} of length 1
 * @param depth drawn, from the mouth, mm
 */
record TuckSides(double[] path, double midU, double midV, double inU, double inV, double depth) {
    private static final int STEPS = 20, LEAST = STEPS / 4;
    private static final int FEELS = 16;            // places along a side where it is felt for the metal

    /** Whether a place lies in the metal. */
    interface Metal {
        boolean at(double u, double v);
    }

    /**
     * @param loop vertices of the tuck's rim, metal on the left hand
     * @param net metal within the finished edge
     * @param cut metal within the cut line; the same where nothing is left on
     * @param most how far the cut can lie from the finished edge, mm, 0 where it is that edge
     */
    static Optional<TuckSides> of(FlatMap map, int[] loop, TuckMark tuck, Metal net, Metal cut, double most) {
        double[] middle = onBlank(map, loop, tuck.place(), 0), from = onBlank(map, loop, tuck.place(), -tuck.base() / 2);
        double[] to = onBlank(map, loop, tuck.place(), tuck.base() / 2);
        double du = to[0] - from[0], dv = to[1] - from[1], wide = Math.hypot(du, dv);
        if (!(wide > 0)) return Optional.empty();
        double inU = -dv / wide, inV = du / wide;
        for (int k = STEPS; k >= LEAST; k--) {
            double deep = tuck.depth() * k / STEPS, u = middle[0] + deep * inU, v = middle[1] + deep * inV;
            if (!lies(net, from, u, v) || !lies(net, middle, u, v) || !lies(net, to, u, v)) continue;
            double out1 = outwards(cut, from, -inU, -inV, most), out2 = outwards(cut, to, -inU, -inV, most);
            double[] path = {from[0] - out1 * inU, from[1] - out1 * inV, from[0], from[1], u, v, to[0], to[1], to[0] - out2 * inU,
                to[1] - out2 * inV};
            path = Arrays.copyOfRange(path, out1 > 0 ? 0 : 2, out2 > 0 ? 10 : 8);
            return Optional.of(new TuckSides(path, middle[0], middle[1], inU, inV, deep));
        }
        return Optional.empty();
    }

    /** {u, v}: on the way from the middle of the mouth through the tip. */
    double[] in(double distance) {
        return new double[] {midU + distance * inU, midV + distance * inV};
    }

    /** {u, v}: so far along the rim of the form, then {@code on} mm farther along the rim of the blank, which may be below 0. */
    private static double[] onBlank(FlatMap map, int[] loop, double place, double on) {
        int n = loop.length, i = 0;
        double left = place;
        while (i < n - 1 && left > map.form().distance(loop[i], loop[i + 1])) left -= map.form().distance(loop[i], loop[++i]);
        double edge = map.form().distance(loop[i], loop[(i + 1) % n]), share = edge > 0 ? Math.min(1, left / edge) : 0;
        double at = share * length(map, loop, i) + on;
        for (int k = 0; k < n && at < 0; k++) {
            i = (i + n - 1) % n;
            at += length(map, loop, i);
        }
        for (int k = 0; k < n && at > length(map, loop, i); k++) {
            at -= length(map, loop, i);
            i = (i + 1) % n;
        }
        int a = loop[i], b = loop[(i + 1) % n];
        double along = length(map, loop, i), f = along > 0 ? at / along : 0;
        return new double[] {map.u(a) + f * (map.u(b) - map.u(a)), map.v(a) + f * (map.v(b) - map.v(a))};
    }

    /** Of the edge from place i of the rim to the next, on the blank, mm. */
    private static double length(FlatMap map, int[] loop, int i) {
        int a = loop[i], b = loop[(i + 1) % loop.length];
        return Math.hypot(map.u(b) - map.u(a), map.v(b) - map.v(a));
    }

    private static boolean lies(Metal net, double[] from, double u, double v) {
        for (int k = 1; k <= FEELS; k++) {
            double f = (double) k / FEELS;
            if (!net.at(from[0] + f * (u - from[0]), from[1] + f * (v - from[1]))) return false;
        }
        return true;
    }

    /** How far a line goes that way before it leaves the metal, mm, never beyond it. */
    private static double outwards(Metal cut, double[] from, double du, double dv, double most) {
        double in = 0, step = most / FEELS;
        while (in < most && cut.at(from[0] + (in + step) * du, from[1] + (in + step) * dv)) in += step;
        double out = Math.min(most, in + step);
        for (int k = 0; k < 40 && most > 0; k++) {
            double half = (in + out) / 2;
            if (cut.at(from[0] + half * du, from[1] + half * dv)) in = half;
            else out = half;
        }
        return in;
    }
}
