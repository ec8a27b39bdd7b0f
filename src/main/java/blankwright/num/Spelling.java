package blankwright.num;

import java.util.Collection;

/** Words somebody wrote: how to show them, and what may have been meant by one that is not known. */
public final class Spelling {
    private Spelling() { }

    /** {@code ; did you mean "stations"?} where one is near, else all of them. */
    public static String nearest(String word, Collection<String> known) {
        String best = "";
        int least = Math.max(2, Math.min(word.length(), 40) / 3) + 1;
        for (String k : known) {
            int d = word.length() > 40 ? 99 : edits(word, k);
            if (d < least) {
                least = d;
                best = k;
            }
        }
        return best.isEmpty() ? "; known are " + String.join(", ", known) : "; did you mean \"" + best + "\"?";
    }

    /** Letters to insert, drop or change. */
    private static int edits(String a, String b) {
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) row[j] = j;
        for (int i = 1; i <= a.length(); i++) {
            int corner = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int above = row[j];
                row[j] = Math.min(Math.min(above, row[j - 1]) + 1, corner + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1));
                corner = above;
            }
        }
        return row[b.length()];
    }

    /** What somebody wrote, in quotes, safe and short enough to be shown. */
    public static String quoted(String text) {
        StringBuilder clean = new StringBuilder("\"");
        text.codePoints().limit(40).forEach(c -> clean.appendCodePoint(Character.isISOControl(c) ? ' ' : c));
        return clean.append(text.codePointCount(0, text.length()) > 40 ? "...\"" : "\"").toString();
    }
}
