package blankwright.project;

import blankwright.shape.ConeFrustum;
import blankwright.shape.Cylinder;
import blankwright.shape.Panel;
import blankwright.shape.SphericalCap;
import blankwright.shape.TorusSection;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** The kinds of panel a recipe may ask for and the keys of each: one row per kind. */
final class PanelWords {
    /** How the value of a key is written. */
    enum Measure { LENGTH, ANGLE, WORD }

    /** @param usual what it is when the key is missing; null where it must be written */
    record Key(String word, Measure measure, Object usual) { }

    /** One kind; {@code make} is handed every key, {@code take} gives them back. */
    record Kind<P extends Panel>(String word, Class<P> type, List<Key> keys, Function<Values, P> make, Function<P, Object[]> take) {
        Panel panel(Values values) {
            return make.apply(values);
        }

        Map<String, Object> values(Panel panel) {
            Object[] taken = take.apply(type.cast(panel));
            Map<String, Object> values = new LinkedHashMap<>();
            for (int i = 0; i < taken.length; i++) values.put(keys.get(i).word(), taken[i]);
            return values;
        }
    }

    /** What was written, by key: Double in mm or rad, String. */
    static final class Values {
        private final Map<String, Object> byKey;

        Values(Map<String, Object> byKey) {
            this.byKey = byKey;
        }

        double number(String key) {
            return (Double) byKey.get(key);
        }

        <E extends Enum<E>> E word(String key, Class<E> type) {
            String word = (String) byKey.get(key);
            for (E e : type.getEnumConstants()) if (spelled(e).equals(word)) return e;
            throw new blankwright.shape.UnfitValue(key, key + " " + quoted(word) + ": must be one of " + spellings(type));
        }
    }

    static final List<Kind<?>> KINDS = List.of(
            new Kind<>("cylinder", Cylinder.class,
                    List.of(length("radius"), length("length"), angle("sweep"), new Key("ends", Measure.WORD, "none")),
                    v -> new Cylinder(v.number("radius"), v.number("length"), v.number("sweep"), v.word("ends", Cylinder.Ends.class)),
                    p -> new Object[] {p.radius(), p.length(), p.sweep(), spelled(p.ends())}),
            new Kind<>("cone-frustum", ConeFrustum.class,
                    List.of(length("bottom-radius"), length("top-radius"), length("height"), angle("sweep")),
                    v -> new ConeFrustum(v.number("bottom-radius"), v.number("top-radius"), v.number("height"), v.number("sweep")),
                    p -> new Object[] {p.bottomRadius(), p.topRadius(), p.height(), p.sweep()}),
            new Kind<>("spherical-cap", SphericalCap.class,
                    List.of(length("radius"), angle("half-angle")),
                    v -> new SphericalCap(v.number("radius"), v.number("half-angle")),
                    p -> new Object[] {p.radius(), p.halfAngle()}),
            new Kind<>("torus-section", TorusSection.class,
                    List.of(length("ring"), length("tube"), angle("sweep"), angle("round"), new Key("tilt", Measure.ANGLE, 0.0)),
                    v -> new TorusSection(v.number("ring"), v.number("tube"), v.number("sweep"), v.number("round"), v.number("tilt")),
                    p -> new Object[] {p.ring(), p.tube(), p.sweep(), p.round(), p.tilt()}));

    private PanelWords() { }

    static Optional<Kind<?>> kind(String word) {
        return KINDS.stream().filter(k -> k.word().equals(word)).<Kind<?>>map(k -> k).findFirst();
    }

    /** The kind of a panel; every panel of the shape room has one. */
    static Kind<?> of(Panel panel) {
        return KINDS.stream().filter(k -> k.type().isInstance(panel)).findFirst()
                .orElseThrow(() -> new AssertionError("no recipe word for " + panel.getClass()));
    }

    static List<String> words() {
        List<String> words = new ArrayList<>();
        for (Kind<?> kind : KINDS) words.add(kind.word());
        return words;
    }

    /** What somebody wrote, in quotes, safe and short enough to be shown. */
    static String quoted(String text) {
        StringBuilder clean = new StringBuilder("\"");
        text.codePoints().limit(40).forEach(c -> clean.appendCodePoint(Character.isISOControl(c) ? ' ' : c));
        return clean.append(text.codePointCount(0, text.length()) > 40 ? "...\"" : "\"").toString();
    }

    static String spelled(Enum<?> e) {
        return e.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    }

    static <E extends Enum<E>> String spellings(Class<E> type) {
        List<String> words = new ArrayList<>();
        for (E e : type.getEnumConstants()) words.add(spelled(e));
        return String.join(", ", words);
    }

    private static Key length(String word) {
        return new Key(word, Measure.LENGTH, null);
    }

    private static Key angle(String word) {
        return new Key(word, Measure.ANGLE, null);
    }
}
