package blankwright.job;

import blankwright.num.Sentence;
import java.util.ArrayList;
import java.util.List;

/** What a little off does, in sentences for the bench. */
public final class SensitivityWords {
    private static final double SEEN = 0.005;           // mm: below it two decimals show nothing

    private SensitivityWords() { }

    /** A sentence for each cause; one for both of the metal where the blank does not ask it. */
    public static List<Sentence> of(Sensitivity sensitivity) {
        List<Sentence> words = new ArrayList<>();
        for (Sensitivity.Cause cause : Sensitivity.Cause.values()) {
            if (!sensitivity.asksMetal() && cause == Sensitivity.Cause.STRENGTH) continue;
            if (!sensitivity.asksMetal() && cause == Sensitivity.Cause.HARDENING) {
                words.add(Sentence.of("a little off: the metal's K and n do not move a blank that is not laid out for them (aim even)"));
                continue;
            }
            Sentence off = cause(cause, sensitivity.alongSeam());
            words.add(sensitivity.cases().stream().filter(c -> c.cause() == cause).findFirst()
                    .map(one -> Sentence.say("%s %s%s", off, outline(one), crowns(sensitivity.crowns(), one)))
                    .orElse(Sentence.say("%s: not known, the blank did not come out", off)));
        }
        return words;
    }

    private static Sentence cause(Sensitivity.Cause cause, boolean alongSeam) {
        return switch (cause) {
            case WELD -> Sentence.say("a little off: %s of weld shrink %s", Sentence.exactly(Sensitivity.SHRINK),
                    alongSeam ? "along the longest seam" : "round the outer edge");
            case STRENGTH -> Sentence.say("a little off: %.0f %% in the metal's K", 100 * Sensitivity.METAL);
            case HARDENING -> Sentence.say("a little off: %.0f %% in the metal's n", 100 * Sensitivity.METAL);
            case SCAN -> Sentence.say("a little off: scan noise of %s in waves of %s", Sentence.exactly(Sensitivity.NOISE),
                    Sentence.length(Sensitivity.WAVELENGTH, 0));
        };
    }

    private static Sentence outline(Sensitivity.Case one) {
        return one.shift().largest() < SEEN ? Sentence.of("does not move the outline")
                : Sentence.say("moves the outline by up to %s", length(one.shift().largest()));
    }

    private static Sentence crowns(List<Sensitivity.Crown> crowns, Sensitivity.Case one) {
        List<Sentence> words = new ArrayList<>();
        boolean weld = one.cause() == Sensitivity.Cause.WELD;
        for (int i = 0; i < crowns.size(); i++) {
            Sensitivity.Crown crown = crowns.get(i);
            double change = one.crown().get(i);
            if (Math.abs(change) < SEEN) continue;
            String begins = weld ? "; taken out of a line it lowers the crown " : "; it changes the crown ";
            words.add(Sentence.say("%s%s (%s) by %s%s", words.isEmpty() ? begins : " and that ", crown.line(), Sentence.length(crown.rise(), 1),
                    change <= -crown.rise() || weld ? "" : "up to ", change <= -crown.rise() ? "all of it" : length(Math.abs(change))));
        }
        return Sentence.joined("", words);
    }

    private static Sentence.Measure length(double mm) {
        return Sentence.both(mm, 2, mm < 0.1 ? 4 : 3);
    }
}
