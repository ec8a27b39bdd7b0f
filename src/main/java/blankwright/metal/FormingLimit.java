package blankwright.metal;

/**
 * How far a sheet may be stretched in its plane before it necks: the forming-limit curve of one alloy in one thickness.
 *
 * <p>Strains are true and principal, e1 >= e2, reached along a straight path e2 = b e1. Steel: the level of Keeler and Brazier at plane strain,
 * FLD0 = (23.3 + 14.13 t)·n/0.21 percent engineering, t in mm up to 3, n up to 0.21; to the left constant thinning, e1 + e2 = ln(1 + FLD0);
 * to the right 0.6 of minor to one of major engineering strain up to 20 %, level beyond. Other metals: Hill's local neck to the left,
 * e1 = n/(1+b) - e0/c, Swift's diffuse neck to the right, both at the effective strain c·e1 less the e0 its temper has taken; von Mises. Swift's neck
 * is the earlier of two published ways, so on the safe side; both are estimates, no test of the alloy.
 * <p>Where e1 + e2 <= 0 nothing thins, so nothing necks: margin 0. Shrinking has other limits: it buckles and folds.
 * <p>Sources: [KB77] with its branches from a public page of application guidelines; Hill as [MDH02] eq. (5.26); [Sw52]; docs/sources.md.
 */
public final class FormingLimit {
    private static final double LARGEST_N = 0.21, THICKEST = 3, RISE = 0.6, LEVEL_FROM = 0.20;

    private final Alloy alloy;
    private final double thickness;
    private final boolean steel;
    private final double fld0;          // engineering, steel only
    private final double n, e0;

    private FormingLimit(Alloy alloy, double thickness) {
        this.alloy = alloy;
        this.thickness = thickness;
        steel = alloy.family() == Family.STEEL;
        n = alloy.hardening().value();
        e0 = alloy.law().e0();
        fld0 = (23.3 + 14.13 * Math.min(thickness, THICKEST)) * Math.min(n, LARGEST_N) / LARGEST_N / 100;
    }

    /** @param thickness mm, above 0; matters for steel only */
    public static FormingLimit of(Alloy alloy, double thickness) {
        if (!(thickness > 0)) throw new IllegalArgumentException("thickness " + thickness + " mm: must be above 0");
        return new FormingLimit(alloy, thickness);
    }

    public Alloy alloy() {
        return alloy;
    }

    /** mm. */
    public double thickness() {
        return thickness;
    }

    /** Largest major strain on the path e2 = b e1, true, 0 or above; +∞ for b <= -1. */
    public double limit(double b) {
        if (!(b <= 1)) throw new IllegalArgumentException("minor over major strain " + b + ": must be at most 1");
        if (b <= -1) return Double.POSITIVE_INFINITY;
        return steel ? steelLimit(b) : Math.max(0, (b <= 0 ? n / (1 + b) : swift(b, n)) - e0 / effective(b));
    }

    /**
     * How near the strain of a place is to the limit: 0 = nothing thins, 1 = at the limit, above = past it; +∞ where the temper has used up all.
     *
     * @param e1 larger true strain, @param e2 smaller
     */
    public double margin(double e1, double e2) {
        if (!(e1 >= e2)) throw new IllegalArgumentException("major strain " + e1 + " below minor " + e2);
        if (e1 <= 0 || e1 + e2 <= 0) return 0;
        double limit = limit(e2 / e1);
        return limit == 0 ? Double.POSITIVE_INFINITY : e1 / limit;
    }

    /** Level at plane strain, true. */
    public Known level() {
        return Known.from(limit(0), basis(), steel ? new Known[] {rule(), alloy.hardening()}
                : new Known[] {rule(), alloy.hardening(), alloy.strength(), alloy.yieldStress()});
    }

    private Known rule() {
        return new Known(1, steel ? Trust.PUBLISHED : Trust.TYPICAL, "rule");
    }

    /** False for steel, whose curve is a published rule; true for the others, whose curve is theory with the alloy's n. */
    public boolean isEstimate() {
        return !steel;
    }

    /** In a line, for keys and lists. */
    public String basis() {
        return steel ? "Keeler-Brazier level with published branches, for low-carbon steel"
                : "estimate: Hill's local neck left, Swift's diffuse neck right, with n of the alloy; no test of it";
    }

    private double steelLimit(double b) {
        double level = Math.log1p(fld0);
        if (b <= 0) return level / (1 + b);
        // engineering E1 = fld0 + 0.6 min(E2, 0.2), met by the straight true path: rises with e1 by less than e1 itself
        double low = level, high = Math.log1p(fld0 + RISE * LEVEL_FROM);
        for (int i = 0; i < 80; i++) {
            double e1 = (low + high) / 2;
            if (Math.expm1(e1) < fld0 + RISE * Math.min(Math.expm1(b * e1), LEVEL_FROM)) low = e1;
            else high = e1;
        }
        return (low + high) / 2;
    }

    /** Swift's diffuse neck of an even sheet: e1 = 2n(2-a)(1-a+a²)/(4-3a-3a²+4a³) with a = s2/s1 = (2b+1)/(2+b). */
    static double swift(double b, double n) {
        double a = (2 * b + 1) / (2 + b);
        return 2 * n * (2 - a) * (1 - a + a * a) / (4 - 3 * a - 3 * a * a + 4 * a * a * a);
    }

    /** Effective strain of von Mises over e1 on the path b. */
    private static double effective(double b) {
        return 2 / Math.sqrt(3) * Math.sqrt(1 + b + b * b);
    }
}
