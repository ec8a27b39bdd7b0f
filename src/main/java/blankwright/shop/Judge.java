package blankwright.shop;

import blankwright.metal.Alloy;
import blankwright.metal.FormingLimit;
import blankwright.metal.Known;
import blankwright.metal.Trust;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Says of one alloy in one thickness what a strain asks of it.
 *
 * <p>The effective strain (Hill, with the r of the alloy) is what hardens the sheet, whether stretched or shrunk. The first round may bring as much as
 * the temper has left, each round after an annealing as much as the soft metal takes: the smaller of its uniform strain n - e0, times the share of
 * the bands, and the effective strain at which this path meets its forming limit. Thickness from volume kept. Limits are worked out once, so that
 * one judge serves many strains; safe for use by many threads.
 */
public final class Judge {
    private final Alloy alloy;
    private final Alloy soft;
    private final double thickness;
    private final VerdictBands bands;
    private final FormingLimit limit;
    private final FormingLimit softLimit;
    private final double uniform, softUniform;

    /**
     * @param soft the same metal annealed; the alloy itself where no soft temper of it is known
     * @param thickness of the sheet, mm
     */
    public Judge(Alloy alloy, Alloy soft, double thickness, VerdictBands bands) {
        this.alloy = alloy;
        this.soft = soft;
        this.thickness = thickness;
        this.bands = bands;
        limit = FormingLimit.of(alloy, thickness);
        softLimit = FormingLimit.of(soft, thickness);
        uniform = alloy.law().uniform() * bands.uniformShare();
        softUniform = soft.law().uniform() * bands.uniformShare();
    }

    public FormingLimit limit() {
        return limit;
    }

    /** Of the sheet, mm. */
    public double thickness() {
        return thickness;
    }

    /** @param e1 larger principal true strain, blank to form, @param e2 smaller */
    public Judgement of(double e1, double e2) {
        if (!(e1 >= e2)) throw new IllegalArgumentException("major strain " + e1 + " below minor " + e2);
        double effective = alloy.sheet().effective(e1, e2), margin = limit.margin(e1, e2);
        double stretch = Math.max(0, Math.expm1(e1)), shrink = Math.max(0, -Math.expm1(e2)), left = Math.exp(-e1 - e2);
        Verdict byStrain = bands.ofStrain(Math.max(stretch, shrink));
        int annealings = byStrain == Verdict.SPRINGS_IN ? 0 : annealings(e1, e2, effective, margin);
        boolean canAnneal = alloy.annealing().isPresent() && alloy.annealing().get().inShop();
        List<String> basis = new ArrayList<>();
        say(basis, "strain %+.1f %% and %+.1f %%, thickness %.2f mm of %.2f mm; %s", 100 * Math.expm1(e1), 100 * Math.expm1(e2), left * thickness,
                thickness, bands.basis());
        Verdict verdict = byStrain;
        if (annealings > 0) verdict = canAnneal && annealings <= bands.annealings() ? Verdict.ANNEAL : Verdict.SPLIT;
        if (stretch >= bands.splitStretch()) {
            say(basis, "stretch of %.0f %% or more", 100 * bands.splitStretch());
            verdict = Verdict.SPLIT;
        }
        if (shrink >= bands.splitShrink()) {
            say(basis, "shrink of %.0f %% or more", 100 * bands.splitShrink());
            verdict = Verdict.SPLIT;
        }
        if (1 - left >= bands.splitThinning()) {
            say(basis, "%.0f %% or more of the thickness lost", 100 * bands.splitThinning());
            verdict = Verdict.SPLIT;
        }
        Known uniformKnown = alloy.uniform(), level = limit.level();
        say(basis, "worked to %.3f, of %.3f it bears before it necks (n - e0; %s)", effective, alloy.law().uniform(), uniformKnown.trust().words());
        if (margin > 0) say(basis, "%s of the forming limit (%s; %s)", Double.isInfinite(margin) ? "past all" : String.format(Locale.ROOT, "%.0f %%", 100 * margin),
                limit.isEstimate() ? "estimate" : "published rule for steel", level.trust().words());
        if (annealings == Judgement.BEYOND) say(basis, "no annealing helps");
        else if (annealings > 0) say(basis, "%d annealing%s%s", annealings, annealings == 1 ? "" : "s",
                canAnneal ? ", " + soft.name() + " between: " + soft.uniform().trust().words() : ", which is no job for the shop");
        Trust numbers = uniformKnown.trust().weaker(level.trust());
        Trust trust = bands.equals(VerdictBands.USUAL) ? Trust.FROM_MEMORY : numbers;       // no verdict is better than its bands
        return new Judgement(verdict, e1, e2, effective, margin, annealings, left * thickness, trust, basis);
    }

    private int annealings(double e1, double e2, double effective, double margin) {
        double first = Math.min(uniform, atLimit(effective, margin));
        if (effective <= first) return 0;
        double later = Math.min(softUniform, atLimit(effective, softLimit.margin(e1, e2)));
        double rounds = Math.ceil((effective - first) / later - 1e-12);
        return later > 0 && rounds < 1000 ? (int) rounds : Judgement.BEYOND;
    }

    private static double atLimit(double effective, double margin) {
        return margin == 0 ? Double.POSITIVE_INFINITY : effective / margin;
    }

    private static void say(List<String> basis, String form, Object... values) {
        basis.add(String.format(Locale.ROOT, form, values));
    }
}
