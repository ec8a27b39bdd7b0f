package blankwright.job;

import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/** A kind of file that can be asked for; {@code summary.json} is always written. */
public enum Output {
    OBJ, DXF, SVG, PDF, PNG, VTU, CSV, MD;

    public static final Set<Output> ALL = Collections.unmodifiableSet(EnumSet.allOf(Output.class));

    /** {@code dxf}, {@code svg} ... */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** {@code obj, dxf, ...}, for messages. */
    public static String words() {
        return Arrays.stream(values()).map(Output::word).collect(Collectors.joining(", "));
    }

    /** Reads {@code dxf,svg}; throws IllegalArgumentException naming what is none. */
    public static Set<Output> list(String text) {
        Set<Output> asked = EnumSet.noneOf(Output.class);
        for (String word : text.split("[,\\s]+")) {
            if (word.isEmpty()) continue;
            asked.add(Arrays.stream(values()).filter(o -> o.word().equals(word.toLowerCase(Locale.ROOT))).findFirst()
                    .orElseThrow(() -> new IllegalArgumentException("\"" + word + "\" is no file we write; choose among " + words())));
        }
        if (asked.isEmpty()) throw new IllegalArgumentException("nothing is named; choose among " + words());
        return Collections.unmodifiableSet(asked);
    }
}
