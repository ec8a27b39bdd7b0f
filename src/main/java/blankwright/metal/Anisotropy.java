package blankwright.metal;

/**
 * Effective strain of a sheet that is the same in all directions of its plane but not through its thickness (Hill 1948, plane stress).
 *
 * <p>e = (1+r)/sqrt(1+2r) · sqrt(e1² + e2² + 2r/(1+r)·e1·e2). r = 1 is von Mises; above 1 the sheet resists thinning.
 * <p>Source: Hill, "The Mathematical Theory of Plasticity", 1950, chapter XII; docs/sources.md [H50].
 *
 * @param r ratio of width strain to thickness strain of a pulled strip, 0..10
 */
public record Anisotropy(double r) {
    public Anisotropy {
        if (!(r >= 0 && r <= 10)) throw new IllegalArgumentException("r " + r + ": must be 0 to 10");
    }

    /** Effective strain of two principal true strains in the plane of the sheet; 0 or above. */
    public double effective(double e1, double e2) {
        double mix = 2 * r / (1 + r);
        return factor() * Math.sqrt(Math.max(0, e1 * e1 + e2 * e2 + mix * e1 * e2));
    }

    /** (1+r)/sqrt(1+2r). */
    public double factor() {
        return (1 + r) / Math.sqrt(1 + 2 * r);
    }
}
