package blankwright.job;

import blankwright.num.Lengths;
import blankwright.shop.Spot;
import java.util.Locale;

/** Lengths, places and other people's words as a page of the packet writes them. */
final class PageWords {
    /** Rounds to no 64th of an inch, and no tape shows it, mm. */
    static final double LEAST = 25.4 / 128;

    private PageWords() { }

    /** {@code 963.0 mm (37 29/32 in)}. */
    static String length(double mm) {
        return Lengths.mm(mm, 1) + " (" + Lengths.sixtyFourths(mm) + ")";
    }

    static String change(double mm) {
        return Math.abs(mm) < LEAST ? "none to tape" : (mm < 0 ? "take in " : "let out ") + Lengths.both(Math.abs(mm));
    }

    static String place(Spot at) {
        return String.format(Locale.ROOT, "blank (%.0f, %.0f) mm, form (%.0f, %.0f, %.0f) mm", whole(at.u()), whole(at.v()), whole(at.x()),
                whole(at.y()), whole(at.z()));
    }

    /** Rounded, without the sign of a nought. */
    static double whole(double mm) {
        return Math.rint(mm) + 0.0;
    }

    /** Words of others on one line, with nothing that a table or a page would take for its own. */
    static String plain(String words) {
        return words.strip().replaceAll("[\\s\\p{Cntrl}]+", " ").replace("\\", "\\\\").replace("|", "\\|")
                .replace("<", "&lt;").replaceAll("([*_`\\[\\]])", "\\\\$1");
    }

    static String sentence(String words) {
        String closed = words.matches(".*[.!?]") ? words : words + ".";
        return closed.isEmpty() ? closed : closed.substring(0, 1).toUpperCase(Locale.ROOT) + closed.substring(1);
    }
}
