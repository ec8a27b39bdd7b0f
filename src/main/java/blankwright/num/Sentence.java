package blankwright.num;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * A sentence for people with measures in it. They stay numbers: who shows the sentence says in which units it is read. Equal where words and numbers are.
 */
public final class Sentence {
    /** How files and the command line are written: mm and cm2, and inches beside them where a sentence gives both. */
    public static final Units FILES = new Units() {
        @Override public String length(double mm, int decimals) {
            return Lengths.mm(mm, decimals);
        }

        @Override public String both(double mm, int decimals, int inchDecimals) {
            return length(mm, decimals) + " (" + Lengths.inches(mm, inchDecimals) + ")";
        }

        @Override public String typed(double mm) {
            return Lengths.plain(mm) + " mm";
        }

        @Override public String place(int decimals, double... mm) {
            return "(" + numbers(decimals, mm) + ") mm";
        }

        @Override public String area(double mm2, int decimals) {
            return numbers(decimals, mm2 / 100) + " cm2";
        }
    };

    /** For those who write in inches: two decimals more than in mm, areas in square inches. */
    public static final Units INCHES = new Units() {
        @Override public String length(double mm, int decimals) {
            return Lengths.inches(mm, decimals + 2);
        }

        @Override public String typed(double mm) {
            return Lengths.plain(Math.round(mm / 25.4 * 1e5) / 1e5) + " in";
        }

        @Override public String metres(double m) {
            return numbers(1, m / 0.3048) + " ft";
        }

        @Override public String place(int decimals, double... mm) {
            return "(" + numbers(decimals + 1, Arrays.stream(mm).map(x -> x / 25.4).toArray()) + ") in";
        }

        @Override public String area(double mm2, int decimals) {
            return numbers(decimals + 1, mm2 / (25.4 * 25.4)) + " sq in";
        }
    };

    private final String form;
    private final List<Object> parts;

    private Sentence(String form, List<Object> parts) {
        this.form = form;
        this.parts = parts;
    }

    /** How measures are written for one reader. */
    public interface Units {
        /** @param decimals that the length is worth in mm */
        String length(double mm, int decimals);

        /** A length that files give in mm and in inches. */
        default String both(double mm, int decimals, int inchDecimals) {
            return length(mm, decimals);
        }

        /** A length as somebody types it, to the last digit that counts. */
        String typed(double mm);

        /** A length that files give in whole metres. */
        default String metres(double m) {
            return Lengths.plain(m) + " m";
        }

        /** Coordinates in brackets. */
        String place(int decimals, double... mm);

        /** @param decimals that the area is worth in cm² */
        String area(double mm2, int decimals);
    }

    /** A number with a unit. */
    public interface Measure {
        String in(Units units);
    }

    private record Length(double mm, int decimals) implements Measure {
        @Override public String in(Units units) {
            return units.length(mm, decimals);
        }
    }

    private record Both(double mm, int decimals, int inchDecimals) implements Measure {
        @Override public String in(Units units) {
            return units.both(mm, decimals, inchDecimals);
        }
    }

    private record Typed(double mm) implements Measure {
        @Override public String in(Units units) {
            return Double.isFinite(mm) ? units.typed(mm) : mm + " mm";
        }
    }

    private record Metres(double m) implements Measure {
        @Override public String in(Units units) {
            return units.metres(m);
        }
    }

    private record Place(int decimals, List<Double> mm) implements Measure {
        @Override public String in(Units units) {
            return units.place(decimals, mm.stream().mapToDouble(x -> x).toArray());
        }
    }

    private record Area(double mm2, int decimals) implements Measure {
        @Override public String in(Units units) {
            return units.area(mm2, decimals);
        }
    }

    /** @param decimals in mm */
    public static Measure length(double mm, int decimals) {
        return new Length(mm, decimals);
    }

    /** With as many decimals as it has in mm. */
    public static Measure exactly(double mm) {
        return new Length(mm, Math.max(0, new BigDecimal(Lengths.plain(mm)).scale()));
    }

    /** What somebody typed or may type, with every digit it has in mm. */
    public static Measure typed(double mm) {
        return new Typed(mm);
    }

    /** A bound of whole metres. */
    public static Measure metres(double m) {
        return new Metres(m);
    }

    /** Files give it in mm and in inches, each with its decimals. */
    public static Measure both(double mm, int decimals, int inchDecimals) {
        return new Both(mm, decimals, inchDecimals);
    }

    /** @param mm coordinates */
    public static Measure place(int decimals, double... mm) {
        return new Place(decimals, Arrays.stream(mm).boxed().toList());
    }

    /** @param decimals in cm² */
    public static Measure area(double mm2, int decimals) {
        return new Area(mm2, decimals);
    }

    /** Words alone. */
    public static Sentence of(String words) {
        return new Sentence("%s", List.of(words));
    }

    /**
     * @param form as for {@link String#format}; a measure or a sentence stands at {@code %s}
     * @param parts numbers, words, measures, sentences
     */
    public static Sentence say(String form, Object... parts) {
        return new Sentence(form, List.of(parts));
    }

    /** One after the other. */
    public static Sentence joined(String between, List<Sentence> all) {
        List<Object> parts = new ArrayList<>(all);
        return new Sentence(all.stream().map(s -> "%s").collect(Collectors.joining(between.replace("%", "%%"))), parts);
    }

    /** As files have it. */
    public String text() {
        return text(FILES);
    }

    public String text(Units units) {
        Object[] words = parts.stream().map(part -> part instanceof Measure measure ? measure.in(units)
                : part instanceof Sentence sentence ? sentence.text(units) : part).toArray();
        return String.format(Locale.ROOT, form, words);
    }

    /** Numbers with a comma between, never -0. */
    public static String numbers(int decimals, double... numbers) {
        return Arrays.stream(numbers).mapToObj(x -> Lengths.fixed(x, decimals)).collect(Collectors.joining(", "));
    }

    @Override public boolean equals(Object other) {
        return other instanceof Sentence s && s.form.equals(form) && s.parts.equals(parts);
    }

    @Override public int hashCode() {
        return 31 * form.hashCode() + parts.hashCode();
    }

    @Override public String toString() {
        return text();
    }
}
