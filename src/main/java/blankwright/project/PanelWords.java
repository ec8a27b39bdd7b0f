package blankwright.project;

import blankwright.num.Spelling;
import blankwright.shape.Catenoid;
import blankwright.shape.ConeFrustum;
import blankwright.shape.CrownedPanel;
import blankwright.shape.Cylinder;
import blankwright.shape.EllipsoidalCap;
import blankwright.shape.FlangeStrip;
import blankwright.shape.FlangedOpening;
import blankwright.shape.Helicoid;
import blankwright.shape.Hole;
import blankwright.shape.ObliqueCone;
import blankwright.shape.Panel;
import blankwright.shape.Saddle;
import blankwright.shape.SphericalCap;
import blankwright.shape.TorusSection;
import blankwright.shape.TwistedPanel;
import blankwright.shape.UnfitValue;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** The kinds of panel a recipe may ask for and the keys of each: one row per kind. */
final class PanelWords {
    /** How the value of a key is written. */
    enum Measure { LENGTH, ANGLE, WORD, HOLES }

    /**
     * @param usual what it is when the key is missing; null where it must be written
     * @param choices of a word; empty for numbers
     */
    record Key(String word, Measure measure, Object usual, List<String> choices) {
        Key(String word, Measure measure, Object usual) {
            this(word, measure, usual, List.of());
        }
    }

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

    /** What was written, by key: Double in mm or rad, String, or a list of holes. */
    static final class Values {
        private final Map<String, Object> byKey;

        Values(Map<String, Object> byKey) {
            this.byKey = byKey;
        }

        double number(String key) {
            return (Double) byKey.get(key);
        }

        List<Hole> holes(String key) {
            List<Hole> holes = new ArrayList<>();
            for (Object hole : (List<?>) byKey.get(key)) holes.add((Hole) hole);
            return holes;
        }

        <E extends Enum<E>> E word(String key, Class<E> type) {
            String word = (String) byKey.get(key);
            for (E e : type.getEnumConstants()) if (spelled(e).equals(word)) return e;
            throw new UnfitValue(key, "%s %s: must be one of %s", key, Spelling.quoted(word), spellings(type));
        }
    }

    static final List<Kind<?>> KINDS = List.of(
            new Kind<>("cylinder", Cylinder.class,
                    List.of(length("radius"), length("length"), angle("sweep"), choice("ends", "none", Cylinder.Ends.class)),
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
            new Kind<>("dish", SphericalCap.class,                   // the same cap by what a builder measures; written back as spherical-cap
                    List.of(length("across"), length("rise")),
                    v -> SphericalCap.ofRise(v.number("across"), v.number("rise")),
                    p -> new Object[] {2 * p.radius() * Math.sin(p.halfAngle()), p.radius() * (1 - Math.cos(p.halfAngle()))}),
            new Kind<>("torus-section", TorusSection.class,
                    List.of(length("ring"), length("tube"), angle("sweep"), angle("round"), new Key("tilt", Measure.ANGLE, 0.0)),
                    v -> new TorusSection(v.number("ring"), v.number("tube"), v.number("sweep"), v.number("round"), v.number("tilt")),
                    p -> new Object[] {p.ring(), p.tube(), p.sweep(), p.round(), p.tilt()}),
            new Kind<>("oblique-cone", ObliqueCone.class,
                    List.of(length("bottom-radius"), length("top-radius"), length("height"), length("offset"), new Key("start", Measure.ANGLE, 0.0),
                            angle("sweep")),
                    v -> new ObliqueCone(v.number("bottom-radius"), v.number("top-radius"), v.number("height"), v.number("offset"),
                            v.number("start"), v.number("sweep")),
                    p -> new Object[] {p.bottomRadius(), p.topRadius(), p.height(), p.offset(), p.start(), p.sweep()}),
            new Kind<>("ellipsoidal-cap", EllipsoidalCap.class,
                    List.of(length("along"), length("across"), length("up"), new Key("half-angle", Measure.ANGLE, Math.PI / 2)),
                    v -> new EllipsoidalCap(v.number("along"), v.number("across"), v.number("up"), v.number("half-angle")),
                    p -> new Object[] {p.along(), p.across(), p.up(), p.halfAngle()}),
            new Kind<>("saddle", Saddle.class,
                    List.of(length("radius"), length("reach")),
                    v -> new Saddle(v.number("radius"), v.number("reach")),
                    p -> new Object[] {p.radius(), p.reach()}),
            new Kind<>("twisted-panel", TwistedPanel.class,
                    List.of(length("length"), length("width"), length("lift")),
                    v -> new TwistedPanel(v.number("length"), v.number("width"), v.number("lift")),
                    p -> new Object[] {p.length(), p.width(), p.lift()}),
            new Kind<>("catenoid", Catenoid.class,
                    List.of(length("waist"), length("low"), length("high"), angle("sweep")),
                    v -> new Catenoid(v.number("waist"), v.number("low"), v.number("high"), v.number("sweep")),
                    p -> new Object[] {p.waist(), p.low(), p.high(), p.sweep()}),
            new Kind<>("helicoid", Helicoid.class,
                    List.of(length("waist"), length("low"), length("high"), angle("sweep")),
                    v -> new Helicoid(v.number("waist"), v.number("low"), v.number("high"), v.number("sweep")),
                    p -> new Object[] {p.waist(), p.low(), p.high(), p.sweep()}),
            new Kind<>("crowned-panel", CrownedPanel.class,
                    List.of(length("length"), length("width"), length("length-rise"), length("width-rise"), none("step-depth"), none("step-land"),
                            none("step-radius"), new Key("step-fold", Measure.ANGLE, 0.0), new Key("holes", Measure.HOLES, List.of())),
                    v -> new CrownedPanel(v.number("length"), v.number("width"), v.number("length-rise"), v.number("width-rise"),
                            new CrownedPanel.Step(v.number("step-depth"), v.number("step-land"), v.number("step-radius"), v.number("step-fold")),
                            v.holes("holes")),
                    p -> new Object[] {p.length(), p.width(), p.lengthRise(), p.widthRise(), p.step().depth(), p.step().land(), p.step().radius(),
                            p.step().fold(), p.holes()}),
            new Kind<>("flange-strip", FlangeStrip.class,
                    List.of(length("edge-radius"), angle("sweep"), length("web"), length("flange"), length("bend-radius"),
                            new Key("fold", Measure.ANGLE, Math.PI / 2), choice("edge", null, FlangeStrip.Edge.class)),
                    v -> new FlangeStrip(v.number("edge-radius"), v.number("sweep"), v.number("web"), v.number("flange"), v.number("bend-radius"),
                            v.number("fold"), v.word("edge", FlangeStrip.Edge.class)),
                    p -> new Object[] {p.edgeRadius(), p.sweep(), p.web(), p.flange(), p.bendRadius(), p.fold(), spelled(p.edge())}),
            new Kind<>("flanged-opening", FlangedOpening.class,
                    List.of(length("length"), length("width"), length("length-rise"), length("width-rise"), length("opening-length"),
                            length("opening-width"), length("flange"), length("bend-radius"), new Key("fold", Measure.ANGLE, Math.PI / 2)),
                    v -> new FlangedOpening(v.number("length"), v.number("width"), v.number("length-rise"), v.number("width-rise"),
                            v.number("opening-length"), v.number("opening-width"), v.number("flange"), v.number("bend-radius"), v.number("fold")),
                    p -> new Object[] {p.length(), p.width(), p.lengthRise(), p.widthRise(), p.openingLength(), p.openingWidth(), p.flange(),
                            p.bendRadius(), p.fold()}));

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

    static String spelled(Enum<?> e) {
        return e.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    }

    static <E extends Enum<E>> String spellings(Class<E> type) {
        return String.join(", ", all(type));
    }

    private static <E extends Enum<E>> List<String> all(Class<E> type) {
        List<String> words = new ArrayList<>();
        for (E e : type.getEnumConstants()) words.add(spelled(e));
        return words;
    }

    private static Key length(String word) {
        return new Key(word, Measure.LENGTH, null);
    }

    private static Key none(String word) {
        return new Key(word, Measure.LENGTH, 0.0);
    }

    private static <E extends Enum<E>> Key choice(String word, String usual, Class<E> type) {
        return new Key(word, Measure.WORD, usual, all(type));
    }

    private static Key angle(String word) {
        return new Key(word, Measure.ANGLE, null);
    }
}
