package blankwright.shape;

import blankwright.num.Quadrature;

/**
 * A saddle bent alike everywhere: a round patch of reach mm along the skin on a surface of Gaussian curvature -1/radius².
 *
 * <p>The patch is cut from a spool, ρ = b cosh t round its axis with unit speed along t; the outer skin looks away from the axis.
 * Parameters of a point: distance from the middle along the skin in radii of curvature, and the direction there.
 */
public record Saddle(double radius, double reach) implements Panel {
    /** Beyond it the patch would meet itself behind the spool. */
    private static final double MOST = 1.4;

    public Saddle {
        Need.length("radius", radius);
        Need.length("reach", reach);
        Need.that(reach <= MOST * radius, "reach", "reach %s on a radius of %s: at most 1.4 times the radius, or the patch meets itself", Need.mm(reach), Need.mm(radius));
    }

    @Override public Sample sample(Fineness fineness) {
        return rings(Rings.count(this::at, reach / radius, fineness));
    }

    /** n rings of triangles round the middle, 6n² of them. */
    public Sample rings(int n) {
        return Rings.sample(this::at, reach / radius, n);
    }

    @Override public Truth truth() {
        double c = reach / radius, turned = 4 * Math.PI * Math.pow(Math.sinh(c / 2), 2);
        return Truth.known(radius * radius * turned, -turned, LeastSquares.onSaddle(c, radius));
    }

    /** Polar to Fermi coordinates along the spool's waist: sinh t = sinh u sin v, tanh w = tanh u cos v. */
    private void at(double u, double v, double[] out) {
        double c = reach / radius, b = Math.sqrt(c / Math.PI / Math.sinh(c));
        double s = Math.sinh(u) * Math.sin(v), th = Math.tanh(u) * Math.cos(v);
        double t = Math.signum(s) * Math.log(Math.abs(s) + Math.sqrt(s * s + 1)), w = Math.log((1 + th) / (1 - th)) / 2;
        double r = radius * b * Math.sqrt(1 + s * s);
        out[0] = r * Math.cos(w / b);
        out[1] = r * Math.sin(w / b);
        out[2] = radius * Quadrature.of(x -> Math.sqrt(1 - b * b * Math.sinh(x) * Math.sinh(x)), 0, t, 2);
    }
}
