package blankwright.cli;

import blankwright.job.Refusal;
import blankwright.metal.Alloy;
import blankwright.metal.Bend;
import blankwright.metal.Din6935;
import blankwright.metal.Family;
import blankwright.metal.Gauge;
import blankwright.metal.HandbookForm;
import blankwright.metal.Known;
import blankwright.metal.Springback;
import blankwright.metal.Trust;
import blankwright.num.Angles;
import blankwright.num.Lengths;
import blankwright.num.Sentence;
import blankwright.num.Unfit;
import java.io.PrintStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code blankwright bend}: what one bend or one roll asks, without a panel. */
@Command(name = "bend", mixinStandardHelpOptions = true, versionProvider = Blankwright.OwnVersion.class, sortOptions = false,
        description = "Answers questions on one bend: metal in it, setback, least radius, springback, what to set a roll to.",
        footer = {"", "Example: blankwright bend --thickness 1.6mm --radius 3mm --angle 90deg --alloy 3003-H14 --legs 40mm,25mm",
            "Rolling: blankwright bend --thickness 1.2mm --radius 300mm --alloy 3003-H14",
            "Exit codes: 0 done, 1 the program failed, 2 wrong command line, 3 bad input."})
final class BendCommand implements Callable<Integer> {
    private static final double LARGEST = 1e5;      // mm; a radius beyond is a flat sheet to any roll

    private final PrintStream out;
    private final List<String> lines = new ArrayList<>();       // printed when all questions are answered

    @Spec
    private CommandSpec spec;

    @Option(names = "--thickness", paramLabel = "LENGTH", required = true, description = "of the sheet; a gauge number needs the metal")
    private String thickness;

    @Option(names = "--radius", paramLabel = "LENGTH", required = true, description = "inside radius that is wanted when the piece is done")
    private String radius;

    @Option(names = "--angle", paramLabel = "ANGLE", description = "bent through, 90deg for a square corner; leave it out for rolling")
    private String angle;

    @Option(names = "--alloy", paramLabel = "NAME", description = "the metal and its temper, e.g. 3003-H14")
    private String alloy;

    @Option(names = "--alloys", paramLabel = "FILE", description = "a table of your own alloys")
    private String alloys;

    @Option(names = "--k", paramLabel = "NUMBER", description = "K from a test bend of your own, 0 to 0.5, in place of a rule")
    private String k;

    @Option(names = "--din", description = "by DIN 6935, for steel")
    private boolean din;

    @Option(names = "--legs", paramLabel = "A,B", description = "the two legs measured on the outside; gives the flat length")
    private String legs;

    BendCommand(PrintStream out) {
        this.out = out;
    }

    /** Metal in the bend by one rule. */
    private record Allowance(double length, double k, String basis, Optional<String> caution) { }

    @Override
    public Integer call() throws Refusal {
        Options options = new Options(spec);
        if (k != null && din) throw options.wrong("--k and --din: choose one of them");
        if (alloy == null && alloys != null) throw options.wrong("--alloys: say which of them with --alloy");
        Optional<Alloy> metal = alloy == null ? Optional.empty() : Optional.of(options.metal(alloy, alloys).alloy());
        double sheet = options.read("--thickness", thickness, t -> between(Gauge.sheet(t, metal), 0.01, 25), 0.0);
        double inside = options.read("--radius", radius, t -> between(Lengths.parse(t), 0, LARGEST), 0.0);
        if (angle == null && (k != null || din || legs != null)) throw options.wrong("--angle: needed to say how much metal the bend takes");
        if (angle == null && metal.isEmpty())
            throw options.wrong("--alloy: needed to say how far it springs back; or give --angle and --k for the metal in a bend");
        if (angle != null && metal.isEmpty() && k == null && !din)
            throw options.wrong("--alloy: name the metal for its rule, or give --k from a test bend, or --din for steel");
        say("Sheet %s%s, inside radius %s%s.", measure(sheet), metal.map(a -> " of " + a.name()).orElse(""), measure(inside),
                angle == null ? "" : ", bent through " + options.read("--angle", angle, a -> degrees(Angles.parse(a)), ""));
        if (angle != null) {
            Bend bend = options.read("--angle", angle, a -> new Bend(sheet, inside, Angles.parse(a)), null);
            bend(options, bend, allowance(options, bend, metal));
        }
        if (metal.isPresent()) {
            least(metal.get(), sheet, inside);
            springback(metal.get(), sheet, inside, angle == null ? 0 : Angles.parse(angle));
        }
        say("Caution: rules stand on other people's sheet: bend a strip of your own first and measure it. Bend across the grain where you can, file the"
                + " edge at the bend free of nicks. Fingers clear of brakes and rolls; edges are sharp. For parts that carry people or fly, licensed"
                + " practice and local codes decide.");
        for (String line : lines) out.println(line);
        return ExitCode.DONE.number();
    }

    private Allowance allowance(Options options, Bend bend, Optional<Alloy> metal) {
        if (k != null) {
            double factor = options.read("--k", k, BendCommand::factor, 0.0);
            return new Allowance(bend.allowance(factor), factor, "K as given: angle (R + K T)", Optional.empty());
        }
        if (din) {
            try {
                Optional<String> caution = metal.map(Alloy::family).filter(f -> f != Family.STEEL && f != Family.STAINLESS)
                        .map(f -> "DIN 6935 is for flat steel; for " + f.word() + " it is a habit, not a rule.");
                return new Allowance(Din6935.allowance(bend), Din6935.k(bend) / 2, "DIN 6935: K = k/2, k = 0.65 + 0.5 log10(R/T), 1 above R/T 5;"
                        + " from a reprinted page, the standard itself not read", caution);
            } catch (IllegalArgumentException e) {
                throw options.wrong("--din: " + e.getMessage());
            }
        }
        HandbookForm form = metal.orElseThrow().allowance();
        Optional<String> caution = metal.get().family() == Family.STAINLESS
                ? Optional.of("The handbook does not name stainless; the form for hard metals is nearest.") : Optional.empty();
        return new Allowance(form.allowance(bend), form.k(), "handbook form for " + switch (form) {
            case SOFT -> "soft copper and brass, 0.55 T";
            case HALF_HARD -> "soft steel, aluminium and half-hard copper, 0.64 T";
            case HARD -> "hard copper, bronze and cold-rolled steel, 0.71 T";
        } + " + 1.57 R at 90 degrees; published", caution);
    }

    private void bend(Options options, Bend bend, Allowance allowance) {
        say("Metal in the bend (allowance): %s, K %.3f. Basis: %s.", measure(allowance.length()), allowance.k(), allowance.basis());
        allowance.caution().ifPresent(c -> say("  %s", c));
        boolean closed = Double.isInfinite(bend.setback());
        if (closed) {
            say("Setback: none at 180 degrees, where the outside faces never meet.");
        } else {
            say("Setback, from where the bend begins to the outside corner: %s. Deduction from the two outside legs: %s.", measure(bend.setback()),
                    measure(bend.deduction(allowance.length())));
        }
        if (legs == null) return;
        double[] leg = options.read("--legs", legs, BendCommand::twoLengths, null);
        // beyond a square corner the corner of the outside faces runs away: legs are then measured to the outside of the bend, as on the bench
        boolean sharp = bend.angle() > Math.PI / 2 + 1e-12;
        double straight = sharp ? bend.radius() + bend.thickness() : bend.setback();
        if (Math.min(leg[0], leg[1]) < straight)
            throw options.wrong("--legs: a leg shorter than " + measure(straight) + " ends within the bend");
        say("Flat length for legs of %s and %s%s: %s; the bend begins %s from the end of the first.", measure(leg[0]), measure(leg[1]),
                sharp ? ", measured to the outside of the bend" : "", measure(leg[0] + leg[1] - 2 * straight + allowance.length()),
                measure(leg[0] - straight));
    }

    private void least(Alloy metal, double sheet, double inside) {
        Optional<Known> least = metal.bends().flatMap(b -> b.least(sheet));
        if (least.isEmpty()) {
            say("Least inside radius: not known for this metal and thickness.");
            return;
        }
        say("Least inside radius, cold, 90 degrees: %s (%s).", least.get().value() == 0 ? "0, it may be bent sharp" : measure(least.get().value()),
                least.get().basis());
        if (inside < least.get().value() - 1e-9)
            say("  Caution: %s is tighter than that: the outside may crack. Choose a softer temper or a larger radius.", measure(inside));
        else if (angle != null && Angles.parse(angle) > Math.PI / 2 + 1e-9) say("  The table is for 90 degrees; through more than that allow a larger radius.");
    }

    private void springback(Alloy metal, double sheet, double inside, double through) {
        Springback spring = Springback.of(metal, sheet);
        Trust trust = metal.yieldStress().trust().weaker(metal.young().trust());
        String basis = String.format(Locale.ROOT, "Gardiner, with yield %.0f MPa and E %.0f MPa of the sheet as bought (%s)", metal.yieldStress().value(),
                metal.young().value(), trust.words());
        if (inside == 0) {
            say("Springback: a bend with no radius keeps its shape but for a degree or two. Basis: %s.", basis);
            return;
        }
        double set = spring.toSet(inside);
        say("Springback: bent to %s it opens to %s.", measure(inside), Double.isInfinite(spring.after(inside)) ? "flat again: no set stays"
                : measure(spring.after(inside)));
        if (through > 0) {
            double over = through / spring.angleRatio(set);
            say("  To keep %s, bend round %s%s.", measure(inside), measure(set), over <= Math.PI ? " and through " + degrees(over)
                    : "; the angle would have to pass 180 degrees, so bend in two steps or over a smaller radius");
        } else {
            say("  To keep %s, set the roll for %s. Basis: %s.", measure(inside), measure(set), basis);
        }
        say("  Largest radius that takes a set in this sheet: %s; beyond it only springs. Worked sheet is harder and springs back more.",
                measure(spring.largestWithSet()));
        if (through > 0) {
            say("  Basis: %s. For sharp bends the trade reckons with more: 1 to 3 degrees in steel, 2 to 4 in soft aluminium, 5 to 9 in half-hard and"
                    + " heat-treated sheet (from memory).", basis);
        }
    }

    private static double between(double mm, double low, double high) {
        if (!(mm >= low && mm <= high))
            throw new Unfit("%s: must be %s to %s; check the unit", Sentence.typed(mm), Sentence.typed(low), Sentence.typed(high));
        return mm;
    }

    private static double factor(String text) {
        try {
            double factor = Double.parseDouble(text);
            if (factor >= 0 && factor <= 0.5) return factor;
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException("\"" + text + "\" is not a number; write e.g. 0.42");
        }
        throw new IllegalArgumentException("\"" + text + "\": must be 0 to 0.5, the part of the thickness from the inside");
    }

    private static double[] twoLengths(String text) {
        String[] parts = text.split(",", -1);
        if (parts.length != 2) throw new IllegalArgumentException("\"" + text + "\": give two lengths with a comma between, e.g. 40mm,25mm");
        return new double[] {between(Lengths.parse(parts[0]), 0.1, LARGEST), between(Lengths.parse(parts[1]), 0.1, LARGEST)};
    }

    /** {@code 5.73 mm (0.226 in)}. */
    private static String measure(double mm) {
        return Lengths.mm(mm, mm < 100 ? 2 : 1) + " (" + Lengths.inches(mm, mm < 2540 ? 3 : 1) + ")";
    }

    private static String degrees(double rad) {
        return String.format(Locale.ROOT, "%.1f degrees", Math.toDegrees(rad));
    }

    private void say(String form, Object... values) {
        lines.add(String.format(Locale.ROOT, form, values));
    }
}
