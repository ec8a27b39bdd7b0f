package blankwright.cli;

import blankwright.num.Sentence;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The units somebody writes in, so that a refusal answers in the same. */
final class Spoken {
    private static final Pattern LENGTH = Pattern.compile("\\d\\s*(?:(in|inch|inches|ft|foot|feet)|mm|cm|m)(?![\\p{L}\\d])", Pattern.CASE_INSENSITIVE);

    private Spoken() { }

    /** Inches where most lengths of a text are in inches or feet, mm where as many are metric; empty where none has a unit. */
    static Optional<Sentence.Units> in(String text) {
        int inches = 0, metric = 0;
        Matcher length = LENGTH.matcher(text);
        while (length.find()) {
            if (length.group(1) != null) inches++;
            else metric++;
        }
        if (inches + metric == 0) return Optional.empty();
        return Optional.of(inches > metric ? Sentence.INCHES : Sentence.FILES);
    }
}
