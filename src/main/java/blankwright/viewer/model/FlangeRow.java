package blankwright.viewer.model;

import blankwright.shop.Flange;
import java.util.Locale;

/**
 * A flange in the list of work.
 *
 * @param piece from 0
 * @param name e.g. {@code F1} or {@code 2-F1}
 * @param number of it on its piece, from 1, as on paper
 */
public record FlangeRow(int piece, String name, int number, Flange flange) implements WorkRow {
    /** {@code flange 1: 85° down}, as at its line on the blank; down is away from the outside face. */
    @Override public String todo() {
        return flange.words(number);
    }

    /** {@code its edge: let out 89.4 mm of 1026 mm (8.7 %)}. */
    @Override public String amount(LengthStyle style) {
        return String.format(Locale.ROOT, "its edge: %s of %s (%.1f %%)", style.change(flange.change()), style.length(flange.blankLength()),
                100 * Math.abs(strain()));
    }

    /** Where its line is, and what the trade's rule says of the edge: width times sweep. */
    @Override public String more(LengthStyle style) {
        return String.format(Locale.ROOT, "line %s in from the edge; by the rule %s × %.2f rad: %s", style.length(flange.scribed()),
                style.length(flange.plan()), Math.abs(flange.sweep()), style.change(flange.byRule()));
    }

    /** Of its edge, the panel's own shape counted in. */
    @Override public double strain() {
        return flange.change() / flange.blankLength();
    }

    @Override public boolean isLeft() {
        return false;
    }

    @Override public String said(LengthStyle style) {
        return todo() + ", " + amount(style) + ", " + more(style);
    }
}
