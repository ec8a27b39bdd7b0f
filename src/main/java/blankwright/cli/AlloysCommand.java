package blankwright.cli;

import blankwright.job.Refusal;
import blankwright.metal.Alloy;
import blankwright.metal.Alloys;
import blankwright.metal.Annealing;
import blankwright.metal.BendRadii;
import blankwright.metal.Known;
import blankwright.num.Lengths;
import blankwright.project.AlloyReader;
import java.io.PrintStream;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code blankwright alloys}: the metals there are, or all numbers of one with what they stand on. */
@Command(name = "alloys", mixinStandardHelpOptions = true, versionProvider = Blankwright.OwnVersion.class, sortOptions = false,
        description = "Lists the sheet metals; with a name, every number of one and where it comes from.")
final class AlloysCommand implements Callable<Integer> {
    private final PrintStream out;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "NAME", arity = "0..1", description = "an alloy with its temper, e.g. 3003-O")
    private String name;

    @Option(names = "--alloys", paramLabel = "FILE", description = "a table of your own alloys, added to those that come with the program")
    private String alloys;

    AlloysCommand(PrintStream out) {
        this.out = out;
    }

    @Override
    public Integer call() throws Refusal {
        Options options = new Options(spec);
        Alloys all = AlloyReader.shipped();
        var own = options.table(alloys);
        if (own.isPresent()) all = all.with(own.get().alloys());
        if (name == null) table(all);
        else one(options.read("NAME", name, all::named, null));
        return ExitCode.DONE.number();
    }

    private void table(Alloys all) {
        say("%-15s %9s %9s %8s %9s %8s %8s  %s", "alloy", "yield", "tensile", "elong.", "K", "n", "r", "what it is");
        say("%-15s %9s %9s %8s %9s %8s %8s", "", "MPa", "MPa", "%", "MPa", "", "");
        for (Alloy a : all.list()) {
            say("%-15s %9s %9s %8s %9s %8s %8s%s", a.name(), marked("%.0f", a.yieldStress(), 1), marked("%.0f", a.tensile(), 1),
                    marked("%.0f", a.elongation(), 100), marked("%.0f", a.strength(), 1), marked("%.2f", a.hardening(), 1),
                    marked("%.2f", a.anisotropy(), 1), a.about().isBlank() ? "" : "  " + a.about());
        }
        say("p published, t typical, m from memory. Every number with its source: blankwright alloys 3003-O");
    }

    private static String marked(String form, Known known, double times) {
        return String.format(Locale.ROOT, form, known.value() * times) + " " + switch (known.trust()) {
            case PUBLISHED -> "p";
            case TYPICAL -> "t";
            case FROM_MEMORY -> "m";
        };
    }

    private void one(Alloy a) {
        say("%s", a.about().isBlank() ? a.name() : a.name() + ": " + a.about());
        a.numbers().forEach((key, known) -> number(key, Alloy.written(key, known), known));
        a.bends().ifPresent(this::bends);
        a.annealing().ifPresent(heat -> {
            number("annealing", Annealing.written(heat.celsius()), heat.celsius());
            heat.melting().ifPresent(m -> number("melting from", Annealing.written(m), m));
            say("  annealing is %s: %s", heat.inShop() ? "done in the shop" : "no job for the shop", heat.how());
        });
        for (String caution : a.cautions()) say("  Caution: %s", caution);
        say("  A strip of your own sheet beats every number here.");
    }

    private void bends(BendRadii bends) {
        String rows = bends.rows().stream().map(r -> Lengths.mm(r.thickness(), 1) + ": " + Lengths.plain(r.multiple()))
                .collect(Collectors.joining(", "));
        say("  %-13s inside radius over thickness, 90 degrees cold, by thickness: %s", "bends", rows);
        say("  %-13s %s; %s", "", bends.trust().words(), bends.source());
    }

    private void number(String key, String value, Known known) {
        say("  %-13s %-14s %s", key, value, known.basis());
    }

    private void say(String form, Object... values) {
        out.println(String.format(Locale.ROOT, form, values).stripTrailing());
    }
}
