package blankwright.project;

import blankwright.mesh.cut.DrawnSeam;
import blankwright.metal.Gauge;
import blankwright.num.Angles;
import blankwright.num.LengthUnit;
import blankwright.num.Lengths;
import blankwright.num.Spelling;
import blankwright.shape.Fineness;
import blankwright.shape.Hole;
import blankwright.shape.Panel;
import blankwright.shape.UnfitValue;
import blankwright.shop.DrawnTape;
import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Reads a recipe. Whatever the text holds, it comes out as a {@link Recipe} or as a {@link RecipeException} with the place.
 *
 * <p>Bare numbers are mm and degrees. A key that is not known is refused with the nearest one that is.
 */
public final class RecipeReader extends Fields {
    private static final List<String> KEYS = List.of("blankwright-recipe", "name", "panel", "mesh", "chord", "detail", "thickness", "face", "aim",
            "stations", "trim", "hand", "notes", "seams", "alloy", "alloys", "lean", "tools", "clamped", "scale",
            "tapes", "sensitivity");
    private static final List<String> MAPS = List.of("work", "thickness", "crown", "limit", "buckling");
    static final int MOST_HOLES = 200;
    private static final int MOST_SEAMS = 200;
    private static final int MOST_TAPES = 200;

    private RecipeReader(String path) {
        super(path);
    }

    /** @throws IOException where the file itself cannot be read */
    public static Recipe read(Path file) throws IOException, RecipeException {
        return read(file.toString(), text(file, Node.Kind.RECIPE));
    }

    /** @param path what messages call the text */
    public static Recipe read(String path, String text) throws RecipeException {
        return new RecipeReader(path).recipe(Node.read(path, text, Node.Kind.RECIPE));
    }

    private Recipe recipe(Node node) throws RecipeException {
        Node.Keys top = keys(node, "a recipe");
        version(top, Node.Kind.RECIPE);
        onlyKnown(top, KEYS, "");
        Node.Word name = word(needed(top, "name"), "name");
        if (name.text().isBlank()) throw at(name, "name has no value");
        Source source = source(top);
        boolean formula = source instanceof Source.OfPanel;
        if (!formula && top.keys().containsKey("chord"))
            throw at(top.keys().get("chord"), "chord: a mesh file brings its own triangles; leave chord out");
        double chord = length(top, "chord").orElse(Fineness.USUAL.chord());
        if (formula && top.keys().containsKey("detail"))
            throw at(top.keys().get("detail"), "detail: a formula's triangles are as fine as chord says; leave detail out");
        OptionalDouble detail = none(top, "detail") ? OptionalDouble.of(0) : length(top, "detail");
        Optional<Metal> metal = metal(top);
        OptionalDouble thickness = sheet(top, metal);
        Face face = choice(top, "face", Face.class).orElse(Face.MIDDLE);
        Aim aim = choice(top, "aim", Aim.class).orElse(Aim.EVEN);
        Handwork handwork = handwork(top, aim);
        double stations = length(top, "stations").orElse(Recipe.USUAL_STATIONS);
        OptionalDouble trim = none(top, "trim") ? OptionalDouble.empty() : length(top, "trim");
        Optional<Hand> hand = choice(top, "hand", Hand.class);
        String notes = top.values().containsKey("notes") ? word(top.values().get("notes"), "notes").text() : "";
        List<DrawnSeam> seams = top.values().containsKey("seams") ? seams(top.values().get("seams")) : List.of();
        Optional<Clamps> clamps = top.values().containsKey("clamped") ? Optional.of(clamps(top.values().get("clamped"))) : Optional.empty();
        Scales scales = top.values().containsKey("scale") ? scales(top.values().get("scale")) : Scales.USUAL;
        List<DrawnTape> tapes = top.values().containsKey("tapes") ? tapes(top.values().get("tapes")) : List.of();
        try {
            return new Recipe(name.text(), source, chord, detail, thickness, face, aim, stations, trim, hand, notes, seams, metal, handwork,
                    clamps, scales, tapes, yes(top, "sensitivity"));
        } catch (IllegalArgumentException e) {
            String first = e.getMessage().split("[ :]", 2)[0];
            throw at(top.values().getOrDefault(first, top), "", e);
        }
    }

    /** A table of the maker's own is looked for from the recipe's folder. */
    private Optional<Metal> metal(Node.Keys top) throws RecipeException {
        boolean own = top.values().containsKey("alloys");
        if (!top.values().containsKey("alloy")) {
            if (own) throw at(top.keys().get("alloys"), "alloys: say which of them with alloy");
            return Optional.empty();
        }
        Node.Word name = word(top.values().get("alloy"), "alloy");
        if (name.text().isBlank()) throw at(name, "alloy has no value");
        Node.Word file = own ? word(top.values().get("alloys"), "alloys") : null;
        try {
            if (!own) return Optional.of(Metal.shipped(name.text()));
            Path folder = Path.of(path).toAbsolutePath().getParent();
            return Optional.of(Metal.own(name.text(), file.text(), folder));
        } catch (InvalidPathException e) {
            throw at(file, "alloys: " + Spelling.quoted(file.text()) + " is no file name");
        } catch (IOException e) {
            throw at(file, "alloys: " + Spelling.quoted(file.text()) + " cannot be read; check the name, which starts from the recipe's folder");
        } catch (IllegalArgumentException e) {
            throw at(name, "alloy: ", e);
        }
    }

    /** Lean and tools: a list that stands there, or the name of a file looked for from the recipe's folder. */
    private Handwork handwork(Node.Keys top, Aim aim) throws RecipeException {
        for (String key : List.of("lean", "tools"))
            if (aim != Aim.WORK && top.keys().containsKey(key)) throw at(top.keys().get(key), key + ": goes with aim: work; the other aim knows no tools");
        Handwork handwork = Handwork.ANY;
        if (top.values().containsKey("lean")) {
            Node.Word lean = word(top.values().get("lean"), "lean");
            try {
                handwork = handwork.withLean(number(lean, "lean"));
            } catch (IllegalArgumentException e) {
                throw at(lean, "", e);
            }
        }
        if (!top.values().containsKey("tools")) return handwork;
        if (top.values().get("tools") instanceof Node.Items list) return handwork.withTools(ToolReader.inside(path, list));
        Node.Word file = word(top.values().get("tools"), "tools");
        try {
            return handwork.withTools(file.text(), Path.of(path).toAbsolutePath().getParent());
        } catch (InvalidPathException e) {
            throw at(file, "tools: " + Spelling.quoted(file.text()) + " is no file name");
        } catch (IOException e) {
            throw at(file, "tools: " + Spelling.quoted(file.text()) + " cannot be read; check the name, which starts from the recipe's folder");
        }
    }

    /** A length, or a gauge number where the metal is known or named beside it. */
    private OptionalDouble sheet(Node.Keys top, Optional<Metal> metal) throws RecipeException {
        Node node = top.values().get("thickness");
        if (node == null) return OptionalDouble.empty();
        Node.Word word = word(node, "thickness");
        if (word.text().isBlank()) throw at(word, "thickness has no value");
        try {
            return OptionalDouble.of(Gauge.sheet(word.text(), metal.map(Metal::alloy)));
        } catch (IllegalArgumentException e) {
            throw at(word, "thickness: ", e);
        }
    }

    private Source source(Node.Keys top) throws RecipeException {
        boolean panel = top.values().containsKey("panel"), mesh = top.values().containsKey("mesh");
        if (panel && mesh) throw at(top.keys().get("mesh"), "panel and mesh stand side by side; a recipe has one of them");
        if (!panel && !mesh) throw at(top, "neither panel nor mesh is given; a recipe needs one of them");
        return panel ? new Source.OfPanel(panel(keys(top.values().get("panel"), "panel"))) : mesh(top.values().get("mesh"));
    }

    private Source mesh(Node node) throws RecipeException {
        Node.Word file;
        Optional<LengthUnit> units = Optional.empty();
        if (node instanceof Node.Keys keys) {
            onlyKnown(keys, List.of("file", "units"), "mesh");
            file = word(needed(keys, "file"), "file");
            if (keys.values().containsKey("units")) {
                Node.Word unit = word(keys.values().get("units"), "units");
                units = Optional.of(LengthUnit.of(unit.text()).orElseThrow(() -> at(unit, "units " + Spelling.quoted(unit.text())
                        + ": must be one of " + LengthUnit.words())));
            }
        } else {
            file = word(node, "mesh");
        }
        if (file.text().isBlank()) throw at(file, "the mesh has no file name");
        if (file.text().chars().anyMatch(Character::isISOControl)) throw at(file, "the file name holds characters that no file name should");
        return new Source.OfMesh(file.text(), units);
    }

    private Panel panel(Node.Keys keys) throws RecipeException {
        Node.Word word = word(needed(keys, "kind"), "kind");
        PanelWords.Kind<?> kind = PanelWords.kind(word.text()).orElseThrow(() -> at(word, "panel kind " + Spelling.quoted(word.text())
                + " is not known" + Spelling.nearest(word.text(), PanelWords.words())));
        List<String> known = new ArrayList<>(List.of("kind"));
        for (PanelWords.Key key : kind.keys()) known.add(key.word());
        onlyKnown(keys, known, kind.word());
        Map<String, Object> values = new LinkedHashMap<>();
        for (PanelWords.Key key : kind.keys()) {
            boolean written = keys.values().containsKey(key.word());
            if (!written && key.usual() == null) throw at(keys, kind.word() + " needs " + key.word() + ", which is missing");
            values.put(key.word(), written ? value(keys.values().get(key.word()), key) : key.usual());
        }
        try {
            return kind.panel(new PanelWords.Values(values));
        } catch (UnfitValue e) {
            throw at(keys.values().getOrDefault(e.parameter(), keys), "", e);
        }
    }

    private Object value(Node node, PanelWords.Key key) throws RecipeException {
        if (key.measure() == PanelWords.Measure.HOLES) return holes(node);
        Node.Word word = word(node, key.word());
        if (word.text().isBlank()) throw at(word, key.word() + " has no value");
        try {
            return switch (key.measure()) {
                case LENGTH -> Lengths.parse(word.text());
                case ANGLE -> Angles.parse(word.text());
                case WORD -> word.text();
                case HOLES -> throw new AssertionError("read above");
            };
        } catch (IllegalArgumentException e) {
            throw at(word, key.word() + ": ", e);
        }
    }

    private List<Hole> holes(Node node) throws RecipeException {
        List<Node> list = items(node, "holes", "one hole to a line beginning with -");
        if (list.size() > MOST_HOLES) throw at(node, list.size() + " holes: at most " + MOST_HOLES);
        List<Hole> holes = new ArrayList<>();
        for (Node item : list) {
            Node.Keys keys = keys(item, "a hole");
            onlyKnown(keys, List.of("along", "across", "diameter", "length", "width"), "a hole");
            double along = place(keys, "along"), across = place(keys, "across");
            boolean round = keys.values().containsKey("diameter");
            if (round == (keys.values().containsKey("length") || keys.values().containsKey("width")))
                throw at(keys, "a hole has either a diameter, or a length and a width");
            try {
                holes.add(round ? Hole.round(along, across, place(keys, "diameter"))
                        : new Hole(along, across, place(keys, "length"), place(keys, "width")));
            } catch (UnfitValue e) {
                throw at(keys.values().getOrDefault(e.parameter(), keys), "", e);
            }
        }
        return List.copyOf(holes);
    }

    private List<DrawnSeam> seams(Node node) throws RecipeException {
        List<DrawnSeam> seams = new ArrayList<>();
        for (Node item : items(node, "seams", "one seam to a line beginning with -")) {
            if (seams.size() == MOST_SEAMS) throw at(item, "more than " + MOST_SEAMS + " seams");
            String seam = "seam " + (seams.size() + 1);
            List<DrawnSeam.Point> points = new ArrayList<>();
            for (Node point : items(item, seam, "its points, as in [[0mm, 10mm, 5mm], [40mm, 10mm, 5mm]]")) {
                double[] place = point(point, seam);
                points.add(new DrawnSeam.Point(place[0], place[1], place[2]));
            }
            try {
                seams.add(new DrawnSeam(points));
            } catch (IllegalArgumentException e) {
                throw at(item, seam + ": ", e);
            }
        }
        return List.copyOf(seams);
    }

    /** One word, or balls. */
    private Clamps clamps(Node node) throws RecipeException {
        if (node instanceof Node.Word word) {
            return Clamps.named(word.text()).orElseThrow(() -> at(word, "clamped " + Spelling.quoted(word.text())
                    + ": must be nowhere, rims, calm, or balls as in [[0mm, 10mm, 5mm, 20mm]]"));
        }
        List<Clamps.Spot> spots = new ArrayList<>();
        for (Node item : items(node, "clamped", "one ball to a line beginning with -")) {
            if (spots.size() == Clamps.MOST) throw at(item, "more than " + Clamps.MOST + " clamps");
            List<Node> ball = items(item, "clamped", "each ball with x, y, z and radius, as in [0mm, 10mm, 5mm, 20mm]");
            if (ball.size() != 4) throw at(item, "clamped: a ball of " + ball.size() + " numbers; give x, y, z and radius");
            double[] mm = new double[4];
            for (int i = 0; i < 4; i++) mm[i] = length(ball.get(i), "clamped");
            try {
                spots.add(new Clamps.Spot(mm[0], mm[1], mm[2], mm[3]));
            } catch (IllegalArgumentException e) {
                throw at(ball.get(3), "clamped: ", e);
            }
        }
        if (spots.isEmpty()) throw at(node, "clamped: no ball; say nowhere where the sheet is held nowhere");
        return new Clamps(false, false, spots);
    }

    /** One length is that of the work map; else a key for each map. */
    private Scales scales(Node node) throws RecipeException {
        boolean several = node instanceof Node.Keys;
        Node.Keys maps = several ? (Node.Keys) node : null;
        if (several) onlyKnown(maps, MAPS, "scale");
        Scales scales = Scales.USUAL;
        for (String map : several ? List.copyOf(maps.values().keySet()) : MAPS.subList(0, 1)) {
            Node.Word word = word(several ? maps.values().get(map) : node, several ? map : "scale");
            if (word.text().isBlank()) throw at(word, (several ? map : "scale") + " has no value");
            try {
                scales = switch (map) {
                    case "work" -> scales.withWork(OptionalDouble.of(Lengths.parse(word.text())));
                    case "thickness" -> scales.withThickness(OptionalDouble.of(Quantity.SHARE.read(word.text())));
                    case "crown" -> scales.withCrown(OptionalDouble.of(Angles.parse(word.text())));
                    case "limit" -> scales.withLimit(OptionalDouble.of(Quantity.SHARE.read(word.text())));
                    default -> scales.withBuckling(OptionalDouble.of(Quantity.NUMBER.read(word.text())));
                };
            } catch (IllegalArgumentException e) {
                throw at(word, e.getMessage().startsWith("scale ") ? "" : "scale: ", e);
            }
        }
        return scales;
    }

    private List<DrawnTape> tapes(Node node) throws RecipeException {
        List<DrawnTape> tapes = new ArrayList<>();
        for (Node item : items(node, "tapes", "one tape to a line beginning with -")) {
            if (tapes.size() == MOST_TAPES) throw at(item, "more than " + MOST_TAPES + " tapes");
            String tape = "tape " + (tapes.size() + 1);
            Node.Keys keys = keys(item, tape);
            onlyKnown(keys, List.of("straight-on", "from", "to"), "a tape");
            Node.Word on = word(needed(keys, "straight-on"), "straight-on");
            if (!on.text().equals("blank") && !on.text().equals("form"))
                throw at(on, tape + ": straight-on " + Spelling.quoted(on.text()) + ": must be blank or form");
            double[] from = point(needed(keys, "from"), tape), to = point(needed(keys, "to"), tape);
            tapes.add(new DrawnTape(from[0], from[1], from[2], to[0], to[1], to[2], on.text().equals("blank")));
        }
        return List.copyOf(tapes);
    }

    /** x, y and z, mm. */
    private double[] point(Node node, String of) throws RecipeException {
        List<Node> place = items(node, of, "each point with x, y and z, as in [0mm, 10mm, 5mm]");
        if (place.size() != 3) throw at(node, of + ": a point of " + place.size() + " numbers; give x, y and z");
        return new double[] {length(place.get(0), of), length(place.get(1), of), length(place.get(2), of)};
    }

    private double place(Node.Keys keys, String key) throws RecipeException {
        needed(keys, key);
        return length(keys, key).getAsDouble();
    }

    private OptionalDouble length(Node.Keys keys, String key) throws RecipeException {
        if (!keys.values().containsKey(key)) return OptionalDouble.empty();
        return OptionalDouble.of(length(keys.values().get(key), key));
    }

    private double length(Node node, String key) throws RecipeException {
        return (Double) value(node, new PanelWords.Key(key, PanelWords.Measure.LENGTH, null));
    }

    /** True or false; false where nothing is said. */
    private boolean yes(Node.Keys keys, String key) throws RecipeException {
        if (!keys.values().containsKey(key)) return false;
        Node.Word word = word(keys.values().get(key), key);
        return switch (word.text()) {
            case "true" -> true;
            case "false" -> false;
            default -> throw at(word, key + " " + Spelling.quoted(word.text()) + ": must be true or false");
        };
    }

    private static boolean none(Node.Keys keys, String key) {
        return keys.values().get(key) instanceof Node.Word w && w.text().equals("none");
    }

    private <E extends Enum<E>> Optional<E> choice(Node.Keys keys, String key, Class<E> type) throws RecipeException {
        if (!keys.values().containsKey(key)) return Optional.empty();
        Node.Word word = word(keys.values().get(key), key);
        for (E e : type.getEnumConstants()) if (PanelWords.spelled(e).equals(word.text())) return Optional.of(e);
        throw at(word, key + " " + Spelling.quoted(word.text()) + ": must be one of " + PanelWords.spellings(type));
    }
}
