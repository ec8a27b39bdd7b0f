package blankwright.metal;

import blankwright.num.Lengths;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * A sheet metal in one temper, each number with what it stands on.
 *
 * @param metal e.g. {@code 3003}
 * @param temper e.g. {@code O} or {@code H14}; empty where the name alone says it
 * @param about one line for a list
 * @param young E, MPa
 * @param density kg/m³
 * @param yieldStress MPa
 * @param tensile engineering tensile strength, MPa
 * @param elongation at break over a gauge length of 50 or 80 mm, 0.30 = 30 %
 * @param strength K of Swift's law, MPa; goes with {@code hardening} as a pair from one source
 * @param hardening n of Swift's law
 * @param anisotropy r, width over thickness strain of a pulled strip, mean over the directions
 * @param allowance which of the handbook's three bend allowances suits it
 * @param bends smallest bend radii, where known
 * @param annealing where it can be softened
 * @param cautions sentences for whoever works it; may be empty
 */
public record Alloy(String metal, String temper, String about, Family family, Known young, Known poisson, Known density, Known yieldStress,
                    Known tensile, Known elongation, Known strength, Known hardening, Known anisotropy, HandbookForm allowance,
                    Optional<BendRadii> bends, Optional<Annealing> annealing, List<String> cautions) {
    /** Share of the elongation of a strip that comes before it necks, where nothing better is known; planning value from memory. */
    public static final double UNIFORM_SHARE = 0.5;
    private static final Map<String, String> UNITS = Map.of("E", " MPa", "density", " kg/m3", "yield", " MPa", "tensile", " MPa", "K", " MPa");

    public Alloy {
        if (metal.isBlank()) throw new IllegalArgumentException("an alloy without a name");
        within("E", young, 1_000, 1_000_000, "MPa");
        within("nu", poisson, 0, 0.499, "");
        within("density", density, 500, 25_000, "kg/m3");
        within("yield", yieldStress, 1, 5_000, "MPa");
        within("tensile", tensile, 1, 5_000, "MPa");
        if (tensile.value() <= yieldStress.value())
            throw new IllegalArgumentException("tensile " + stress(tensile) + ": must be above the yield " + stress(yieldStress));
        within("elongation", elongation, 0.001, 2, "");
        within("K", strength, 1, 20_000, "MPa");
        within("n", hardening, 0, 0.99, "");
        within("r", anisotropy, 0.05, 10, "");
        if (strength.value() < yieldStress.value())
            throw new IllegalArgumentException("K " + stress(strength) + ": must not be below the yield " + stress(yieldStress));
        cautions = List.copyOf(cautions);
    }

    private static void within(String key, Known known, double low, double high, String unit) {
        double v = known.value();
        if (!(v >= low && v <= high)) throw new IllegalArgumentException((key + " " + Lengths.plain(v) + " " + unit).strip() + ": must be "
                + (Lengths.plain(low) + " to " + Lengths.plain(high) + " " + unit).strip() + (unit.isEmpty() ? "" : "; mind the unit, a bare number is " + unit));
    }

    /** {@code 151.7 MPa}. */
    private static String stress(Known known) {
        return Lengths.plain(Math.rint(10 * known.value()) / 10) + " MPa";
    }

    /** {@code 3003-H14}, or {@code 304} where there is no temper. */
    public String name() {
        return temper.isEmpty() ? metal : metal + "-" + temper;
    }

    public Hardening law() {
        return new Hardening(young.value(), strength.value(), hardening.value(), yieldStress.value());
    }

    public Anisotropy sheet() {
        return new Anisotropy(anisotropy.value());
    }

    /** Strain the temper has already taken: e0 of Swift's law, K e0^n = yield. */
    public Known e0() {
        return Known.from(law().e0(), "e0 = (yield / K)^(1/n)", yieldStress, strength, hardening);
    }

    /** True strain it takes in tension before it necks, n - e0: what may be put in between two annealings. */
    public Known uniform() {
        return Known.from(law().uniform(), "n - e0 (Considère)", yieldStress, strength, hardening);
    }

    /** The number under a key of {@link #numbers} as lists show it, with its unit. */
    public static String written(String key, Known known) {
        if (key.equals("elongation")) return String.format(Locale.ROOT, "%.0f %%", 100 * known.value());
        if (key.equals("e0") || key.equals("uniform") || key.equals("n")) return String.format(Locale.ROOT, "%.4f", known.value());
        double v = known.value();
        return String.format(Locale.ROOT, v < 10 ? "%.2f" : "%.0f", v) + UNITS.getOrDefault(key, "");
    }

    /** Every number of it under the key of the alloy file, in order, for lists. */
    public Map<String, Known> numbers() {
        Map<String, Known> all = new LinkedHashMap<>();
        all.put("E", young);
        all.put("nu", poisson);
        all.put("density", density);
        all.put("yield", yieldStress);
        all.put("tensile", tensile);
        all.put("elongation", elongation);
        all.put("K", strength);
        all.put("n", hardening);
        all.put("e0", e0());
        all.put("uniform", uniform());
        all.put("r", anisotropy);
        return all;
    }
}
