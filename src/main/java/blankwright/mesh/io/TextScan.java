package blankwright.mesh.io;

import java.nio.charset.StandardCharsets;
import java.util.Locale;

/**
 * Words and numbers of a text file, straight from its bytes. Lines end in LF, CR or both; any byte above 127 is a letter.
 *
 * <p>A position is an offset; line and column are counted only when someone must be told.
 */
final class TextScan {
    private static final double[] TEN = new double[23];

    static {
        TEN[0] = 1;
        for (int i = 1; i < TEN.length; i++) TEN[i] = TEN[i - 1] * 10;      // exact up to 1e22
    }

    private final byte[] b;
    private final int end;
    private final String file;
    private final boolean hashStartsComment;
    private final boolean backslashJoinsLines;
    private int at;
    private int start;      // of the current word
    private int stop;       // behind it

    TextScan(byte[] b, int from, int end, String file, boolean hashStartsComment, boolean backslashJoinsLines) {
        this.b = b;
        this.at = from;
        this.end = end;
        this.file = file;
        this.hashStartsComment = hashStartsComment;
        this.backslashJoinsLines = backslashJoinsLines;
    }

    /** Takes the next word of this line; false at the line's end, which stays unread. */
    boolean wordInLine() {
        int i = at;
        while (i < end) {
            byte c = b[i];
            if (c > ' ' || c < 0) {
                if (c == '#' && hashStartsComment) break;
                if (c == '\\' && backslashJoinsLines && lineEndAt(i + 1)) {
                    i = behindLineEnd(i + 1);
                    continue;
                }
                takeWord(i);
                return true;
            }
            if (c == '\n' || c == '\r') break;
            i++;
        }
        at = i;
        start = i;
        stop = i;
        return false;
    }

    /** Takes the next word of this or a later line; false at the end of the file. */
    boolean word() {
        while (!wordInLine()) {
            if (at >= end) return false;
            nextLine();
        }
        return true;
    }

    private void takeWord(int from) {
        int i = from;
        while (i < end && (b[i] > ' ' || b[i] < 0)) {
            if (b[i] == '\\' && backslashJoinsLines && i > from && lineEndAt(i + 1)) break;
            i++;
        }
        start = from;
        stop = i;
        at = i;
    }

    /** Skips the rest of this line. */
    void nextLine() {
        int i = at;
        while (i < end && b[i] != '\n' && b[i] != '\r') {
            if (b[i] == '\\' && backslashJoinsLines && lineEndAt(i + 1)) i = behindLineEnd(i + 1);
            else i++;
        }
        at = i < end ? behindLineEnd(i) : end;
    }

    private boolean lineEndAt(int i) {
        return i < end && (b[i] == '\n' || b[i] == '\r');
    }

    private int behindLineEnd(int i) {
        return b[i] == '\r' && i + 1 < end && b[i + 1] == '\n' ? i + 2 : i + 1;
    }

    /** Offset of the next unread byte. */
    int position() {
        return at;
    }

    void moveTo(int position) {
        at = position;
        start = position;
        stop = position;
    }

    /** Offset of the current word. */
    int wordStart() {
        return start;
    }

    /** The word in ASCII, letters of either case. */
    boolean is(String lower) {
        if (stop - start != lower.length()) return false;
        for (int i = 0; i < lower.length(); i++) {
            int c = b[start + i];
            if (c >= 'A' && c <= 'Z') c += 'a' - 'A';
            if (c != lower.charAt(i)) return false;
        }
        return true;
    }

    /** First byte of the current word when it is one byte long, else 0. */
    int single() {
        return stop - start == 1 ? b[start] : 0;
    }

    /** The current word as it may be shown: at most 40 letters, nothing unprintable. */
    String shown() {
        return shown(b, start, stop);
    }

    static String shown(byte[] b, int from, int to) {
        StringBuilder text = new StringBuilder();
        for (int i = from; i < to && i < from + 40; i++) text.append(b[i] >= ' ' && b[i] < 127 ? (char) b[i] : '?');
        return to - from > 40 ? text + "..." : text.toString();
    }

    String lowerWord() {
        return new String(b, start, stop - start, StandardCharsets.ISO_8859_1).toLowerCase(Locale.ROOT);
    }

    /**
     * The current word as a number, rounded as Double.parseDouble rounds; NaN or infinite where the word says so (nan, inf, 1.#QNAN).
     *
     * <p>Up to 2^53 with a power of ten up to 22 one multiplication or division is exact enough (both factors are exact doubles); the
     * rest goes through the library.
     */
    double number() throws FormatException {
        int i = start;
        boolean minus = false;
        if (i < stop && (b[i] == '-' || b[i] == '+')) minus = b[i++] == '-';
        long m = 0;
        int power = 0, digits = 0;
        boolean any = false, whole = true;
        for (; i < stop; i++) {
            int d = b[i] - '0';
            if (d < 0 || d > 9) break;
            any = true;
            if (digits == 18) whole = false;
            else if ((m = 10 * m + d) > 0) digits++;
        }
        if (i < stop && b[i] == '.') {
            for (i++; i < stop; i++) {
                int d = b[i] - '0';
                if (d < 0 || d > 9) break;
                any = true;
                if (digits == 18) {
                    whole = false;
                } else {
                    if ((m = 10 * m + d) > 0) digits++;
                    power--;
                }
            }
        }
        if (any && i + 1 < stop && (b[i] == 'e' || b[i] == 'E')) {
            int e = 0, j = i + 1;
            boolean down = false;
            if (b[j] == '-' || b[j] == '+') down = b[j++] == '-';
            int first = j;
            for (; j < stop && b[j] >= '0' && b[j] <= '9'; j++) e = Math.min(100_000, 10 * e + b[j] - '0');
            if (j > first) {
                power += down ? -e : e;
                i = j;
            }
        }
        if (!any || i != stop) return notPlain();
        if (whole && m <= 1L << 53 && power >= -22 && power <= 22) {
            double v = power < 0 ? m / TEN[-power] : m * TEN[power];
            return minus ? -v : v;
        }
        return Double.parseDouble(new String(b, start, stop - start, StandardCharsets.ISO_8859_1));
    }

    private double notPlain() throws FormatException {
        String word = stop - start > 24 ? "" : lowerWord();
        String bare = word.startsWith("-") || word.startsWith("+") ? word.substring(1) : word;
        if (bare.startsWith("nan") || bare.startsWith("inf") || bare.startsWith("1.#")) return Double.NaN;
        if (bare.matches("[0-9]+,[0-9]*")) throw bad("number \"" + shown() + "\" has a comma: write a decimal point");
        throw bad("\"" + shown() + "\" is not a number" + cutOff());
    }

    /** The current word up to {@code stopAt} (or all of it) as a whole number. */
    long whole(int stopAt) throws FormatException {
        int i = start;
        boolean minus = false;
        if (i < stop && (b[i] == '-' || b[i] == '+')) minus = b[i++] == '-';
        long v = 0;
        int first = i;
        for (; i < stop && b[i] >= '0' && b[i] <= '9'; i++) {
            if (v > 1L << 58) throw bad("\"" + shown() + "\" is too large a number");
            v = 10 * v + b[i] - '0';
        }
        if (i == first || i < stop && b[i] != stopAt) throw bad("\"" + shown() + "\" is not a whole number" + cutOff());
        return minus ? -v : v;
    }

    long whole() throws FormatException {
        return whole(-1);
    }

    /** What else to say of a word that nobody knows: nothing, or that it may be the half of one, where the file ends in it. */
    String cutOff() {
        return stop == end && start < stop ? "; the file ends in it and seems cut off, so fetch or export it again" : "";
    }

    /** Refusal at the current word. */
    FormatException bad(String message) {
        return badAt(start, message);
    }

    FormatException badAt(int position, String message) {
        int line = lineOf(position);
        int from = Math.min(position, end);
        while (from > 0 && b[from - 1] != '\n' && b[from - 1] != '\r') from--;
        return new FormatException(file, line, position - from + 1, message);
    }

    /** Line of a position, from 1. */
    int lineOf(int position) {
        int line = 1;
        for (int i = 0; i < position && i < end; i++) {
            if (b[i] == '\n' || b[i] == '\r' && (i + 1 >= end || b[i + 1] != '\n')) line++;
        }
        return line;
    }

    FormatException ended(String wanted) {
        return badAt(end, "the file ends where " + wanted + " should be; it seems cut off, so fetch or export it again");
    }
}
