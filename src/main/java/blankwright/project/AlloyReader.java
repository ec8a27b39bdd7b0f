package blankwright.project;

import blankwright.metal.Alloy;
import blankwright.metal.Alloys;
import blankwright.metal.Annealing;
import blankwright.metal.BendRadii;
import blankwright.metal.Family;
import blankwright.metal.HandbookForm;
import blankwright.metal.Hardening;
import blankwright.metal.Known;
import blankwright.metal.Trust;
import blankwright.num.Lengths;
import blankwright.num.Spelling;
import blankwright.shop.VerdictBands;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Reads a table of alloys. Whatever the text holds, it comes out as {@link Alloys} or as a {@link RecipeException} with the place.
 *
 * <p>A number is written with its unit, alone or as {@code [41 MPa, typical, where from]}; alone it is trusted as from memory. K and n may be left
 * out together: they are then found from yield, tensile strength and half the elongation. r may be left out: the sheet is then taken as even.
 */
public final class AlloyReader extends Fields {
    private static final String SHIPPED = "/blankwright/metal/alloys.yaml";
    private static final List<String> KEYS = List.of("metal", "temper", "about", "family", "E", "nu", "density", "yield", "tensile", "elongation",
            "K", "n", "r", "allowance", "bends", "annealing", "cautions");
    private static final int MOST_ALLOYS = 500;

    private final Map<String, String> sources = new HashMap<>();

    private AlloyReader(String path) {
        super(path);
    }

    /** The table that comes with the program. */
    public static Alloys shipped() {
        return Shipped.TABLE;
    }

    private static final class Shipped {
        static final Alloys TABLE = read();

        private static Alloys read() {
            try (InputStream in = AlloyReader.class.getResourceAsStream(SHIPPED)) {
                if (in == null) throw new AssertionError("no table at " + SHIPPED);
                return AlloyReader.read(SHIPPED, new String(in.readAllBytes(), StandardCharsets.UTF_8));
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            } catch (RecipeException e) {
                throw new AssertionError(e.getMessage(), e);
            }
        }
    }

    /** What a file holds; its bands are the usual ones where it gives none. */
    public record Table(Alloys alloys, VerdictBands bands) { }

    /** @throws IOException where the file itself cannot be read */
    public static Table table(Path file) throws IOException, RecipeException {
        return table(file.toString(), text(file, Node.Kind.ALLOYS));
    }

    /** @param path what messages call the text */
    public static Table table(String path, String text) throws RecipeException {
        return new AlloyReader(path).table(Node.read(path, text, Node.Kind.ALLOYS));
    }

    /** The alloys of {@link #table(String, String)}. */
    public static Alloys read(String path, String text) throws RecipeException {
        return table(path, text).alloys();
    }

    private Table table(Node node) throws RecipeException {
        Node.Keys top = keys(node, "an alloy table");
        version(top, Node.Kind.ALLOYS);
        onlyKnown(top, List.of(Node.Kind.ALLOYS.key(), "sources", "alloys", "verdicts"), "");
        if (top.values().containsKey("sources")) {
            Node.Keys names = keys(top.values().get("sources"), "sources");
            for (Map.Entry<String, Node> e : names.values().entrySet()) sources.put(e.getKey(), text(e.getValue(), e.getKey()));
        }
        Node list = needed(top, "alloys");
        List<Alloy> alloys = new ArrayList<>();
        for (Node item : items(list, "alloys", "one alloy to a line beginning with -")) {
            if (alloys.size() == MOST_ALLOYS) throw at(item, "more than " + MOST_ALLOYS + " alloys");
            Alloy alloy = alloy(keys(item, "an alloy"));
            for (Alloy before : alloys) {
                if (before.name().equalsIgnoreCase(alloy.name())) throw at(item, "the alloy " + Spelling.quoted(alloy.name()) + " stands here twice");
            }
            alloys.add(alloy);
        }
        if (alloys.isEmpty()) throw at(list, "no alloy is given");
        return new Table(Alloys.of(alloys), top.values().containsKey("verdicts") ? bands(top.values().get("verdicts")) : VerdictBands.USUAL);
    }

    private VerdictBands bands(Node node) throws RecipeException {
        Node.Keys keys = keys(node, "verdicts");
        onlyKnown(keys, List.of("springs-in", "easy", "ordinary", "split-stretch", "split-shrink", "split-thinning", "care-thinning", "uniform-share",
                "annealings"), "verdicts");
        VerdictBands usual = VerdictBands.USUAL;
        double annealings = band(keys, "annealings", Quantity.NUMBER, usual.annealings());
        if (annealings != Math.rint(annealings)) throw at(keys.values().get("annealings"), "annealings " + annealings + ": a whole number belongs here");
        try {
            return new VerdictBands(band(keys, "springs-in", Quantity.SHARE, usual.springsIn()), band(keys, "easy", Quantity.SHARE, usual.easy()),
                    band(keys, "ordinary", Quantity.SHARE, usual.ordinary()), band(keys, "split-stretch", Quantity.SHARE, usual.splitStretch()),
                    band(keys, "split-shrink", Quantity.SHARE, usual.splitShrink()), band(keys, "split-thinning", Quantity.SHARE, usual.splitThinning()),
                    band(keys, "care-thinning", Quantity.SHARE, usual.careThinning()), band(keys, "uniform-share", Quantity.SHARE, usual.uniformShare()),
                    (int) annealings);
        } catch (IllegalArgumentException e) {
            throw at(keys.values().getOrDefault(e.getMessage().split("[ :]", 2)[0], keys), "", e);
        }
    }

    private double band(Node.Keys keys, String key, Quantity measure, double usual) throws RecipeException {
        return keys.values().containsKey(key) ? number(keys, key, measure).value() : usual;
    }

    private Alloy alloy(Node.Keys keys) throws RecipeException {
        onlyKnown(keys, KEYS, "an alloy");
        String metal = text(needed(keys, "metal"), "metal"), temper = optionalText(keys, "temper"), about = optionalText(keys, "about");
        Family family = keys.values().containsKey("family") ? pick(keys, "family", Family.values()) : Family.OTHER;
        Known young = number(keys, "E", Quantity.STRESS), poisson = number(keys, "nu", Quantity.NUMBER);
        Known density = number(keys, "density", Quantity.DENSITY), yield = number(keys, "yield", Quantity.STRESS);
        Known tensile = number(keys, "tensile", Quantity.STRESS), elongation = number(keys, "elongation", Quantity.SHARE);
        Known[] law = law(keys, young, yield, tensile, elongation);
        Known r = keys.values().containsKey("r") ? number(keys, "r", Quantity.NUMBER) : new Known(1, Trust.FROM_MEMORY, "not given: taken as even");
        HandbookForm form = keys.values().containsKey("allowance") ? pick(keys, "allowance", HandbookForm.values()) : usual(family);
        Optional<BendRadii> bends = bends(keys);
        Optional<Annealing> annealing = annealing(keys);
        List<String> cautions = new ArrayList<>();
        if (keys.values().containsKey("cautions")) {
            for (Node line : items(keys.values().get("cautions"), "cautions", "one sentence to a line beginning with -")) cautions.add(text(line, "cautions"));
        }
        try {
            return new Alloy(metal, temper, about, family, young, poisson, density, yield, tensile, elongation, law[0], law[1], r, form, bends,
                    annealing, cautions);
        } catch (IllegalArgumentException e) {
            throw at(keys.values().getOrDefault(e.getMessage().split("[ :]", 2)[0], keys), "", e);
        }
    }

    private Known[] law(Node.Keys keys, Known young, Known yield, Known tensile, Known elongation) throws RecipeException {
        boolean strength = keys.values().containsKey("K"), hardening = keys.values().containsKey("n");
        if (strength != hardening)
            throw at(keys.values().get(strength ? "K" : "n"), "K and n are a pair from one source: give both, or leave both out to have them found from "
                    + "yield, tensile and elongation");
        if (strength) return new Known[] {number(keys, "K", Quantity.STRESS), number(keys, "n", Quantity.NUMBER)};
        try {
            Hardening found = Hardening.throughTensile(young.value(), yield.value(), tensile.value(),
                    Math.log1p(Alloy.UNIFORM_SHARE * elongation.value()));
            String how = "so that Swift's law meets yield and tensile strength, with half the elongation before the neck (a planning value from memory)";
            Known half = new Known(Alloy.UNIFORM_SHARE, Trust.FROM_MEMORY, "planning value");
            return new Known[] {Known.from(found.strength(), how, yield, tensile, elongation, half),
                Known.from(found.n(), how, yield, tensile, elongation, half)};
        } catch (IllegalArgumentException e) {
            throw at(keys.values().get("tensile"), "", e);
        }
    }

    private static HandbookForm usual(Family family) {
        return switch (family) {
            case COPPER -> HandbookForm.SOFT;
            case STAINLESS -> HandbookForm.HARD;
            case ALUMINIUM, STEEL, OTHER -> HandbookForm.HALF_HARD;
        };
    }

    private Optional<BendRadii> bends(Node.Keys keys) throws RecipeException {
        if (!keys.values().containsKey("bends")) return Optional.empty();
        Node.Keys bends = keys(keys.values().get("bends"), "bends");
        onlyKnown(bends, List.of("trust", "source", "table"), "bends");
        Trust trust = bends.values().containsKey("trust") ? pick(bends, "trust", Trust.values()) : Trust.FROM_MEMORY;
        String source = bends.values().containsKey("source") ? source(bends.values().get("source")) : unsourced();
        Node.Keys table = keys(needed(bends, "table"), "table");
        List<BendRadii.Row> rows = new ArrayList<>();
        for (Map.Entry<String, Node> e : table.values().entrySet()) {
            Node place = table.keys().get(e.getKey());
            try {
                rows.add(new BendRadii.Row(Lengths.parse(e.getKey()), Quantity.NUMBER.read(text(e.getValue(), e.getKey()))));
            } catch (IllegalArgumentException refused) {
                throw at(place, "bends: ", refused);
            }
        }
        if (rows.isEmpty()) throw at(table, "bends: the table has no row; write e.g. 1/16in: 1");
        return Optional.of(new BendRadii(rows, trust, source));
    }

    private Optional<Annealing> annealing(Node.Keys keys) throws RecipeException {
        if (!keys.values().containsKey("annealing")) return Optional.empty();
        Node.Keys annealing = keys(keys.values().get("annealing"), "annealing");
        onlyKnown(annealing, List.of("temperature", "melting", "in-shop", "how"), "annealing");
        Known temperature = number(annealing, "temperature", Quantity.TEMPERATURE);
        Optional<Known> melting = annealing.values().containsKey("melting") ? Optional.of(number(annealing, "melting", Quantity.TEMPERATURE))
                : Optional.empty();
        String shop = text(needed(annealing, "in-shop"), "in-shop");
        if (!shop.equals("yes") && !shop.equals("no")) throw at(annealing.values().get("in-shop"), "in-shop " + Spelling.quoted(shop) + ": write yes or no");
        try {
            return Optional.of(new Annealing(temperature, melting, shop.equals("yes"), optionalText(annealing, "how")));
        } catch (IllegalArgumentException e) {
            throw at(annealing, "", e);
        }
    }

    private Known number(Node.Keys keys, String key, Quantity measure) throws RecipeException {
        Node node = needed(keys, key);
        Node place = node;
        Trust trust = Trust.FROM_MEMORY;
        String source = unsourced();
        if (node instanceof Node.Items list) {
            if (list.items().size() != 3) throw at(node, key + ": write one number, or [number, trust, source]");
            place = list.items().get(0);
            trust = trust(list.items().get(1));
            source = source(list.items().get(2));
        }
        try {
            return new Known(measure.read(text(place, key)), trust, source);
        } catch (IllegalArgumentException e) {
            throw at(place, key + ": ", e);
        }
    }

    /** By the file's name alone: the same wherever it lies. */
    private String unsourced() {
        return "no source given in " + Path.of(path).getFileName();
    }

    private Trust trust(Node node) throws RecipeException {
        String words = text(node, "trust");
        for (Trust trust : Trust.values()) if (trust.words().equals(words)) return trust;
        throw at(node, "trust " + Spelling.quoted(words) + ": must be one of published, typical, from memory");
    }

    private String source(Node node) throws RecipeException {
        String words = text(node, "source");
        if (sources.containsKey(words)) return sources.get(words);
        String near = Spelling.nearest(words, sources.keySet());        // a source may also be told in its own words
        if (!words.contains(" ") && near.contains("did you mean")) throw at(node, "source " + Spelling.quoted(words) + " does not stand under sources" + near);
        return words;
    }

    private <E extends Enum<E>> E pick(Node.Keys keys, String key, E[] all) throws RecipeException {
        Node node = keys.values().get(key);
        String word = text(node, key);
        for (E one : all) if (PanelWords.spelled(one).equals(word.replace(' ', '-'))) return one;
        throw at(node, key + " " + Spelling.quoted(word) + ": must be one of " + PanelWords.spellings(all[0].getDeclaringClass()));
    }

    private String optionalText(Node.Keys keys, String key) throws RecipeException {
        return keys.values().containsKey(key) ? text(keys.values().get(key), key) : "";
    }

    private String text(Node node, String key) throws RecipeException {
        Node.Word word = word(node, key);
        if (word.text().isBlank()) throw at(word, key + " has no value");
        if (word.text().length() > 400 || word.text().chars().anyMatch(Character::isISOControl))
            throw at(word, key + ": a line of at most 400 characters belongs here");
        return word.text().strip();
    }
}
