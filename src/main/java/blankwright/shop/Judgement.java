package blankwright.shop;

import blankwright.metal.Trust;
import java.util.List;

/**
 * What a strain asks of one metal: its verdict, and the numbers it stands on. Made by {@link Judge}.
 *
 * @param e1 larger principal true strain, blank to form, @param e2 smaller
 * @param effective effective true strain, 0 or above
 * @param margin to the forming limit of the sheet as bought, in one go: 1 = at the limit; +∞ where its temper has nothing left
 * @param annealings on the way, 0 or more; {@link #BEYOND} where no number of them helps
 * @param thickness of the metal afterwards, mm
 * @param trust of the least trusted number it stands on
 * @param basis the numbers it stands on, a line each
 */
public record Judgement(Verdict verdict, double e1, double e2, double effective, double margin, int annealings, double thickness, Trust trust,
                        List<String> basis) {
    /** More annealings than anybody would do. */
    public static final int BEYOND = Integer.MAX_VALUE;

    public Judgement {
        basis = List.copyOf(basis);
    }

    Judgement withVerdict(Verdict other) {
        return new Judgement(other, e1, e2, effective, margin, annealings, thickness, trust, basis);
    }
}
