package blankwright.shop;

import blankwright.mesh.FlatMap;
import blankwright.mesh.RimLoops;

/**
 * How far the outline of one blank lies from that of another with the same triangles, once they are laid on each other.
 *
 * <p>The other blank is turned and moved, never scaled or mirrored, until the corresponding vertices of the rims lie on each other with the
 * least sum of squares, each weighted by its length of rim. What remains is measured square to the first outline, for sliding along it changes
 * nothing that is cut; holes count too.
 *
 * @param largest mm, 0 or above
 * @param rms root of the mean square along the outline, mm
 * @param u with v the place of the largest on the first blank, mm
 */
public record OutlineShift(double largest, double rms, double u, double v) {

    /** @param rims of the common form */
    public static OutlineShift between(FlatMap from, FlatMap to, RimLoops rims) {
        double[] weight = new double[from.form().vertexCount()];
        double total = 0, cu = 0, cv = 0, du = 0, dv = 0;
        for (int i = 0; i < rims.count(); i++) {
            int[] loop = rims.loop(i);
            for (int j = 0; j < loop.length; j++) {
                int a = loop[j], b = loop[(j + 1) % loop.length];
                double half = Math.hypot(from.u(b) - from.u(a), from.v(b) - from.v(a)) / 2;
                weight[a] += half;
                weight[b] += half;
            }
        }
        for (int v = 0; v < weight.length; v++) {
            total += weight[v];
            cu += weight[v] * from.u(v);
            cv += weight[v] * from.v(v);
            du += weight[v] * to.u(v);
            dv += weight[v] * to.v(v);
        }
        if (!(total > 0)) throw new IllegalArgumentException("a blank without an outline");
        double dot = 0, cross = 0;
        for (int v = 0; v < weight.length; v++) {
            double pu = from.u(v) - cu / total, pv = from.v(v) - cv / total, qu = to.u(v) - du / total, qv = to.v(v) - dv / total;
            dot += weight[v] * (pu * qu + pv * qv);
            cross += weight[v] * (qu * pv - qv * pu);
        }
        double angle = Math.atan2(cross, dot), cos = Math.cos(angle), sin = Math.sin(angle);
        double largest = 0, squares = 0, u = 0, v = 0;
        for (int i = 0; i < rims.count(); i++) {
            int[] loop = rims.loop(i);
            for (int j = 0; j < loop.length; j++) {
                int a = loop[j], before = loop[(j + loop.length - 1) % loop.length], after = loop[(j + 1) % loop.length];
                double eu = from.u(after) - from.u(before), ev = from.v(after) - from.v(before), length = Math.hypot(eu, ev);
                if (!(length > 0)) continue;
                double qu = to.u(a) - du / total, qv = to.v(a) - dv / total;
                double su = cos * qu - sin * qv + cu / total - from.u(a), sv = sin * qu + cos * qv + cv / total - from.v(a);
                double shift = Math.abs(su * ev - sv * eu) / length;
                squares += weight[a] * shift * shift;
                if (shift <= largest) continue;
                largest = shift;
                u = from.u(a);
                v = from.v(a);
            }
        }
        return new OutlineShift(largest, Math.sqrt(squares / total), u, v);
    }
}
