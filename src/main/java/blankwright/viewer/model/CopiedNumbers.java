package blankwright.viewer.model;

import java.util.List;

/** The numbers on the screen as text, for a letter or a table: a line each, parted by tabs. */
public final class CopiedNumbers {
    private CopiedNumbers() { }

    /**
     * The panel's name, the place pointed at, the tapes, the work, hardest first.
     *
     * @param facts of the place; none where none is pointed at
     */
    public static String text(Laid laid, Work work, List<SpotCard.Fact> facts, LengthStyle style) {
        StringBuilder out = new StringBuilder();
        line(out, work.recipe().name());
        for (SpotCard.Fact fact : facts) line(out, fact.what(), fact.amount());
        for (TapeRow row : TapeRow.of(laid, work)) line(out, "tape " + row.number(), row.words(style));
        for (WorkRow row : WorkRow.of(laid, false)) line(out, row.name(), row.todo(), row.amount(style), row.more(style));
        return out.toString();
    }

    private static void line(StringBuilder out, String... cells) {
        out.append(String.join("\t", cells)).append('\n');
    }
}
