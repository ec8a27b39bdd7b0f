package blankwright.job;

import blankwright.num.Lengths;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What a little off does, in sentences for the bench. */
public final class SensitivityWords {
    private static final double SEEN = 0.005;           // mm: below it two decimals show nothing

    private SensitivityWords() { }

    /** A sentence for each cause; one for both of the metal where the blank does not ask it. */
    public static List<String> of(Sensitivity sensitivity) {
        List<String> words = new ArrayList<>();
        for (Sensitivity.Cause cause : Sensitivity.Cause.values()) {
            if (!sensitivity.asksMetal() && cause == Sensitivity.Cause.STRENGTH) continue;
            if (!sensitivity.asksMetal() && cause == Sensitivity.Cause.HARDENING) {
                words.add("a little off: the metal's K and n do not move a blank that is not laid out for them (aim even)");
                continue;
            }
            words.add(cause(cause, sensitivity.alongSeam()) + sensitivity.cases().stream().filter(c -> c.cause() == cause).findFirst()
                    .map(one -> " " + outline(one) + crowns(sensitivity.crowns(), one)).orElse(": not known, the blank did not come out"));
        }
        return words;
    }

    private static String cause(Sensitivity.Cause cause, boolean alongSeam) {
        return switch (cause) {
            case WELD -> say("a little off: %s mm of weld shrink %s", Lengths.plain(Sensitivity.SHRINK),
                    alongSeam ? "along the longest seam" : "round the outer edge");
            case STRENGTH -> say("a little off: %.0f %% in the metal's K", 100 * Sensitivity.METAL);
            case HARDENING -> say("a little off: %.0f %% in the metal's n", 100 * Sensitivity.METAL);
            case SCAN -> say("a little off: scan noise of %s mm in waves of %.0f mm", Lengths.plain(Sensitivity.NOISE), Sensitivity.WAVELENGTH);
        };
    }

    private static String outline(Sensitivity.Case one) {
        return one.shift().largest() < SEEN ? "does not move the outline"
                : "moves the outline by up to " + length(one.shift().largest());
    }

    private static String crowns(List<Sensitivity.Crown> crowns, Sensitivity.Case one) {
        StringBuilder words = new StringBuilder();
        boolean weld = one.cause() == Sensitivity.Cause.WELD;
        for (int i = 0; i < crowns.size(); i++) {
            Sensitivity.Crown crown = crowns.get(i);
            double change = one.crown().get(i);
            if (Math.abs(change) < SEEN) continue;
            String begins = weld ? "; taken out of a line it lowers the crown " : "; it changes the crown ";
            words.append(words.isEmpty() ? begins : " and that ").append(crown.line());
            words.append(" (").append(Lengths.mm(crown.rise(), 1)).append(") by ");
            words.append(change <= -crown.rise() ? "all of it" : (weld ? "" : "up to ") + length(Math.abs(change)));
        }
        return words.toString();
    }

    private static String length(double mm) {
        return Lengths.mm(mm, 2) + " (" + Lengths.inches(mm, mm < 0.1 ? 4 : 3) + ")";
    }

    private static String say(String form, Object... values) {
        return String.format(Locale.ROOT, form, values);
    }
}
