package blankwright.flatten.energy;

import java.util.Arrays;

/**
 * Work of forming the sheet from blank to form, per form area and thickness, over Young's modulus: no unit. Small strains in one direction
 * give e²/2.
 *
 * <p>With e = -ln s the true strains of the forming, q the square of the effective strain, w the work per volume: blank area over form area
 * s1·s2 times w(√q)/q times q, the last q with the costs of stretching and shrinking in it,
 * <pre>c q + (1+r)²/(1+2r) Σ (c(e_i) - c) e_i²,   c(e) = cost of stretching where e &gt; 0, of shrinking where e &lt; 0,  c the lower cost.</pre>
 * Equal costs multiply the work; strain in one direction alone costs its work times the cost of its kind. Value and slope are continuous;
 * the second derivative jumps where a strain changes sign under unequal costs, and at yield.
 * <p>s1·s2·w falls to nothing with a vanishing stretch, so beyond a forming stretch of {@value #FREE} a wall (1/({@value #FREE}·s) - 1)³ times
 * the higher cost is added, which keeps F rising all the way to s = 0. No sheet is stretched so far by hand: the wall is there for the way
 * to the answer.
 * <p>A little is added everywhere, so that a tolerance relative to the energy means something for panels that need no work.
 * <p>Source: the deformation theory of Guo, Batoz and others, 1990; docs/sources.md [GB90].
 */
public final class LeastWork implements TriangleEnergy {
    /** Stretch from blank to form up to which nothing is added: a little more is the most there can be. */
    public static final double FREE = 1.5;
    /** That of an even strain of 0.14 %. */
    private static final double FLOOR = 1e-6;

    private final Resistance metal;
    private final double square, coupling, elastic, start, exponent;
    private final double strength, plastic, before;   // over E; past the yield w = before + plastic (start + eb - elastic)^(n+1)
    private final double[] stretchCost;    // per triangle, or one for all
    private final double[] shrinkCost;
    private final double radius;

    private LeastWork(Resistance metal, double[] stretchCost, double[] shrinkCost, double radius) {
        this.metal = metal;
        this.radius = radius;
        this.stretchCost = stretchCost;
        this.shrinkCost = shrinkCost;
        square = metal.square();
        coupling = metal.coupling();
        elastic = metal.yield() / metal.modulus();
        start = metal.start();
        exponent = metal.exponent();
        strength = metal.strength() / metal.modulus();
        plastic = strength / (exponent + 1);
        before = elastic * elastic / 2 - plastic * Math.pow(start, exponent + 1);
    }

    /** Stretching and shrinking cost their work. */
    public static LeastWork of(Resistance metal) {
        return new LeastWork(metal, new double[] {1}, new double[] {1}, 0);
    }

    /**
     * @param stretchCost per triangle: what stretching costs more than its work there, as a factor above 0; likewise shrinkCost
     */
    public static LeastWork of(Resistance metal, double[] stretchCost, double[] shrinkCost) {
        if (stretchCost.length != shrinkCost.length) throw new IllegalArgumentException("costs for " + stretchCost.length + " and "
                + shrinkCost.length + " triangles");
        for (double[] cost : new double[][] {stretchCost, shrinkCost})
            for (double c : cost) if (!(c > 0 && c < Double.POSITIVE_INFINITY)) throw new IllegalArgumentException("cost " + c + ": must be above 0");
        return new LeastWork(metal, stretchCost.clone(), shrinkCost.clone(), 0);
    }

    /** How many triangles it has costs for; 0 where they are the same for any number. */
    public int triangles() {
        return stretchCost.length == 1 ? 0 : stretchCost.length;
    }

    /** Highest cost over lowest, 1 or above. */
    public double contrast() {
        double least = Double.POSITIVE_INFINITY, most = 0;
        for (double[] costs : new double[][] {stretchCost, shrinkCost})
            for (double c : costs) {
                least = Math.min(least, c);
                most = Math.max(most, c);
            }
        return most / least;
    }

    /** The same with all costs to a power: with 0 to 1 a milder case, on the way from no costs at all. */
    public LeastWork milder(double power) {
        return new LeastWork(metal, raised(stretchCost, power), raised(shrinkCost, power), radius);
    }

    private static double[] raised(double[] costs, double power) {
        return Arrays.stream(costs).map(c -> Math.pow(c, power)).toArray();
    }

    @Override public double value(int t, double s1, double s2) {
        if (!(s2 > 0)) return Double.POSITIVE_INFINITY;                  // NaN lands here too
        double x = -Math.log(s1), y = -Math.log(s2);
        double ct = cost(stretchCost, t), cs = cost(shrinkCost, t), c = Math.min(ct, cs);
        double q = square * (x * x + y * y + 2 * coupling * x * y);
        double costly = c * q + square * (((x > 0 ? ct : cs) - c) * x * x + ((y > 0 ? ct : cs) - c) * y * y);
        double free = FLOOR + s1 * s2 * costly * secant(q);
        return s2 < 1 / FREE ? free + Math.max(ct, cs) * (wall(s1) + wall(s2)) : free;
    }

    /** w(√q)/(E q). */
    private double secant(double q) {
        if (q <= elastic * elastic) return 0.5;
        double grown = start + Math.sqrt(q) - elastic;
        return (before + plastic * grown * Math.pow(grown, exponent)) / q;
    }

    private static double wall(double s) {
        double over = 1 / (FREE * s) - 1;
        return over > 0 ? over * over * over : 0;
    }

    @Override public void derivatives(int t, double s1, double s2, double[] out) {
        derivatives(t, s1, s2, false, out);
    }

    /**
     * The same with the secant of the hardening in place of its tangent, which is stiff enough for any change, and what is to be taken off for
     * the tangent: a factor times ∂eb ⊗ ∂eb. Writes after the five derivatives {that factor, secant over E, tangent over E, e1, e2}.
     */
    public void secants(int t, double s1, double s2, double[] out) {
        derivatives(t, s1, s2, true, out);
    }

    private void derivatives(int t, double s1, double s2, boolean secants, double[] out) {
        double x = -Math.log(s1), y = -Math.log(s2);
        double ct = cost(stretchCost, t), cs = cost(shrinkCost, t), c = Math.min(ct, cs);
        double q = square * (x * x + y * y + 2 * coupling * x * y);
        double qx = 2 * square * (x + coupling * y), qy = 2 * square * (y + coupling * x), qxx = 2 * square, qxy = 2 * square * coupling;
        double dear = Math.max(ct, cs), ex = square * ((x > 0 ? ct : cs) - c), ey = square * ((y > 0 ? ct : cs) - c);
        double p = c * q + ex * x * x + ey * y * y, px = c * qx + 2 * ex * x, py = c * qy + 2 * ey * y;
        double exx = ex + (square * (dear - c) - ex) * near(x), eyy = ey + (square * (dear - c) - ey) * near(y);
        double pxx = c * qxx + 2 * exx, pyy = c * qxx + 2 * eyy, pxy = c * qxy;
        double h = 0.5, h1 = 0, h2 = 0, secant = 1, tangent = 1;           // w(√q)/(E q) and its derivatives by q
        double per = q > 0 ? 1 / q : 0;
        if (q > elastic * elastic) {
            double eb = Math.sqrt(q), grown = start + eb - elastic, power = Math.pow(grown, exponent);
            double stress = strength * power;
            secant = stress * eb * per;
            tangent = exponent * stress / grown;
            double slope = secants ? secant : tangent + (secant - tangent) * radius * radius / (radius * radius + q);
            h = (before + plastic * grown * power) * per;
            double u = (stress * eb / 2 - h * q) * per;
            h1 = u * per;
            h2 = ((slope - secant) / 4 - 2 * u) * per * per;
        }
        double g = p * h, gx = px * h + p * h1 * qx, gy = py * h + p * h1 * qy;
        double gxx = pxx * h + 2 * px * h1 * qx + p * (h2 * qx * qx + h1 * qxx);
        double gyy = pyy * h + 2 * py * h1 * qy + p * (h2 * qy * qy + h1 * qxx);
        double gxy = pxy * h + (px * qy + py * qx) * h1 + p * (h2 * qx * qy + h1 * qxy);
        out[0] = s2 * (g - gx);
        out[1] = s1 * (g - gy);
        out[2] = s2 / s1 * (gxx - gx);
        out[3] = s1 / s2 * (gyy - gy);
        if (s2 < 1 / FREE) {
            out[0] += dear * wallSlope(s1);
            out[1] += dear * wallSlope(s2);
            out[2] += dear * wallCurvature(s1);
            out[3] += dear * wallCurvature(s2);
        }
        out[4] = g - gx - gy + gxy;
        if (secants) {
            out[5] = s1 * s2 * (secant - tangent) * p * per;
            out[6] = secant;
            out[7] = tangent;
            out[8] = x;
            out[9] = y;
        }
    }

    /** eb² is this times the square of the mean strain (e1 + e2)/2, and {@link #halfWeight} times that of half the difference. */
    public double meanWeight() {
        return 2 * square * (1 + coupling);
    }

    public double halfWeight() {
        return 2 * square * (1 - coupling);
    }

    /** 1 where a strain of 0 is near for changes up to the radius, 0 where it is out of reach. */
    private double near(double strain) {
        double u = radius - Math.abs(strain);
        return u > 0 ? u * u / (radius * radius) : 0;
    }

    private static double wallSlope(double s) {
        double over = 1 / (FREE * s) - 1;
        return over > 0 ? -3 * over * over / (FREE * s * s) : 0;
    }

    private static double wallCurvature(double s) {
        double over = 1 / (FREE * s) - 1, slope = 1 / (FREE * s * s);
        return over > 0 ? 6 * over * slope * (slope + over / s) : 0;
    }

    private static double cost(double[] costs, int t) {
        return costs.length == 1 ? costs[0] : costs[t];
    }

    @Override public boolean barrier() {
        return true;
    }

    /**
     * Hardening as stiff as a straight line to the strain where that is small against the radius, for the tangent of a power law promises
     * too much there: |e|^1.2 has its minimum at 0, Newton's step leads to -4 e. And the higher cost on both sides of a change of sign.
     */
    @Override public LeastWork overChanges(double radius) {
        return new LeastWork(metal, stretchCost, shrinkCost, radius);
    }

    @Override public LeastWork coarser(int triangles, int[] coarse, double[] area) {
        return new LeastWork(metal, mean(stretchCost, triangles, coarse, area), mean(shrinkCost, triangles, coarse, area), radius);
    }

    private static double[] mean(double[] costs, int triangles, int[] coarse, double[] area) {
        if (costs.length == 1) return costs;
        double[] sum = new double[triangles], whole = new double[triangles];
        for (int t = 0; t < coarse.length; t++) {
            sum[coarse[t]] += area[t] * costs[t];
            whole[coarse[t]] += area[t];
        }
        double least = Arrays.stream(costs).min().orElseThrow();
        for (int i = 0; i < triangles; i++) sum[i] = whole[i] > 0 ? sum[i] / whole[i] : least;
        return sum;
    }
}
