package blankwright.flatten;

import blankwright.flatten.energy.LeastWork;

/**
 * The stresses of all triangles as unknowns of their own, for steps towards the least work of a sheet that hardens.
 *
 * <p>With strain e, effective strain eb, its weights A and stress φ(eb), the second derivative by e is φ/eb·A less (φ/eb - φ')·(A e/eb) ⊗ (A e/eb).
 * Where strain is small against a step the tangent φ' promises too much: |e|^1.2 has its minimum at 0, Newton's step leads to -4 e. Here e/eb
 * stands once only; in its other place stands τ, the direction and share of the stress that the last step led one to expect: φ·τ was kept as
 * if stress were linear about the last strain, φ/eb·(e + Δe) less (φ/eb - φ')·τ·Δeb, and cut to a length of 1. So a strain that swings over
 * meets a stiffer sheet, one that stays meets Newton's own, and at the minimum τ is e/eb. A length of at most 1 leaves the matrix positive, but
 * for what the change of area has in it.
 *
 * <p>Source: Chan, Golub and Mulet, "A Nonlinear Primal-Dual Method for Total Variation-Based Image Restoration", 1999; Rudi, Shih and Stadler,
 * "Advanced Newton Methods for Geodynamical Models of Stokes Flow with Viscoplastic Rheologies", 2020; docs/sources.md [CGM99], [RSS20].
 */
final class Stresses {
    /** Numbers that {@link LeastWork#secants} writes. */
    static final int SECANTS = 10;
    private static final int SIZE = 8;                    // of a triangle: strain, τ, secant and tangent

    private final double meanWeight, halfWeight;
    private final double[] state;                         // strain and τ by mean, and half the difference along and across the triangle's own frame
    private double radius;

    /**
     * @param radius change of strain that the first step is for: there τ is e/eb times q/(radius² + q), q = eb²
     */
    Stresses(int triangles, LeastWork energy, double radius) {
        state = new double[SIZE * triangles];
        meanWeight = energy.meanWeight();
        halfWeight = energy.halfWeight();
        this.radius = radius;
    }

    /** To be told once the stresses of all triangles at a first layout have been used. */
    void begun() {
        radius = 0;
    }

    /**
     * Takes off the second derivative with the secant in it what the hardening leaves over: κ (∂eb ⊗ τ) made symmetric. By several threads at
     * once, each with triangles of its own.
     *
     * @param secants as {@link LeastWork#secants} writes them for this triangle at this layout
     */
    void soften(int t, double area, Distortion.Parts parts, double[] secants, Distortion.Second second) {
        double x = secants[8], y = secants[9], mean = (x + y) / 2, half = (x - y) / 2;
        double cos = parts.mf * parts.re + parts.mg * parts.rh, sin = parts.mg * parts.re - parts.mf * parts.rh;    // of twice the angle of e1
        double eb = Math.sqrt(meanWeight * mean * mean + halfWeight * half * half);
        expect(SIZE * t, mean, half * cos, half * sin, eb, secants[6], secants[7]);
        double kappa = secants[5] * area;
        if (!(kappa > 0)) return;
        // How the effective strain in the direction of a strain changes with J: by the modes u1v1ᵀ = (R + M)/2, u2v2ᵀ = (R - M)/2 and flip.
        double one = -meanWeight / (2 * parts.s1), two = -meanWeight / (2 * parts.s2), r = (one + two) / 2, m = (one - two) / 2;
        double ratio = halfWeight / meanWeight, e = mean / eb, h = ratio * half / eb;
        double tm = state[SIZE * t + 3], along = state[SIZE * t + 4], across = state[SIZE * t + 5];
        double th = ratio * (along * cos + across * sin), tf = -halfWeight * (across * cos - along * sin) / (2 * parts.q);
        second.less(kappa, r * e + m * h, m * e + r * h, r * tm + m * th, m * tm + r * th, tf);
    }

    /**
     * Notes the strain, and what stress its change led one to expect.
     *
     * @param o of the triangle in the state
     */
    private void expect(int o, double mean, double along, double across, double eb, double secant, double tangent) {
        double share, onMean = mean, onAlong = along, onAcross = across;
        if (radius > 0) share = eb > 0 ? eb / (radius * radius + eb * eb) : 0;
        else {
            double m = state[o], a = state[o + 1], c = state[o + 2], before = Math.sqrt(meanWeight * m * m + halfWeight * (a * a + c * c));
            double change = before > 0 ? (meanWeight * m * (mean - m) + halfWeight * (a * (along - a) + c * (across - c))) / before : 0;
            double was = state[o + 6], off = (was - state[o + 7]) * change;
            onMean = was * mean - off * state[o + 3];
            onAlong = was * along - off * state[o + 4];
            onAcross = was * across - off * state[o + 5];
            double size = Math.sqrt(meanWeight * onMean * onMean + halfWeight * (onAlong * onAlong + onAcross * onAcross));
            share = size > 0 ? 1 / Math.max(size, secant * eb) : 0;
        }
        state[o] = mean;
        state[o + 1] = along;
        state[o + 2] = across;
        state[o + 3] = share * onMean;
        state[o + 4] = share * onAlong;
        state[o + 5] = share * onAcross;
        state[o + 6] = secant;
        state[o + 7] = tangent;
    }
}
