package blankwright.cli;

import blankwright.job.InputFile;
import blankwright.job.Refusal;
import blankwright.job.Version;
import java.io.IOException;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The whole program as a command line: takes words, gives an {@link ExitCode}, never shows a stack trace. */
@Command(name = "blankwright", mixinStandardHelpOptions = true, versionProvider = Blankwright.OwnVersion.class,
        description = "Flat blanks and work maps for compound-curved sheet-metal panels made by hand.",
        subcommands = {FlattenCommand.class, BendCommand.class, AlloysCommand.class}, synopsisSubcommandLabel = "COMMAND",
        footer = {"", "Example: blankwright flatten models/mudguard.yaml", "What to know before cutting: docs/manual/cautions.md"})
public final class Blankwright implements Callable<Integer> {
    private final PrintStream out;
    private final PrintStream err;

    @Spec
    private CommandSpec spec;

    private Blankwright(PrintStream out, PrintStream err) {
        this.out = out;
        this.err = err;
    }

    /** Runs the program; results go to {@code out}, refusals and progress to {@code err}. */
    public static ExitCode run(PrintStream out, PrintStream err, String... args) {
        Blankwright program = new Blankwright(out, err);
        CommandLine line = new CommandLine(program, new CommandLine.IFactory() {
            @Override public <K> K create(Class<K> type) throws Exception {
                if (type == FlattenCommand.class) return type.cast(new FlattenCommand(out, err));
                if (type == BendCommand.class) return type.cast(new BendCommand(out));
                return type == AlloysCommand.class ? type.cast(new AlloysCommand(out)) : CommandLine.defaultFactory().create(type);
            }
        });
        line.setOut(new PrintWriter(out, true, StandardCharsets.UTF_8)).setErr(new PrintWriter(err, true, StandardCharsets.UTF_8));
        line.setColorScheme(CommandLine.Help.defaultColorScheme(Ansi.OFF)).setUsageHelpWidth(110);
        line.setParameterExceptionHandler((e, words) -> program.wrong(e));
        line.setExecutionExceptionHandler((e, command, words) -> program.failed(e));
        int number;
        try {
            number = line.execute(args);
        } catch (OutOfMemoryError e) {
            number = program.tooLarge();
        } catch (Error e) {
            number = program.failed(e);
        }
        for (ExitCode code : ExitCode.values()) if (code.number() == number) return code;
        throw new AssertionError("exit code " + number);
    }

    /** Without a command: says what there is. */
    @Override
    public Integer call() {
        spec.commandLine().usage(err, Ansi.OFF);
        return ExitCode.WRONG_COMMAND.number();
    }

    private int wrong(ParameterException e) {
        err.println(sentence(e));
        err.println("Try: " + e.getCommandLine().getCommandSpec().qualifiedName() + " --help");
        return ExitCode.WRONG_COMMAND.number();
    }

    /** Words too many and a file not named are what happens at a bench; the library's sentences for these tell of indices. */
    private String sentence(ParameterException e) {
        CommandLine line = e.getCommandLine();
        if (e instanceof CommandLine.MissingParameterException && line.getCommand() instanceof FlattenCommand) return "name the mesh or the recipe to lay flat";
        if (!(e instanceof CommandLine.UnmatchedArgumentException unmatched) || unmatched.getUnmatched().get(0).startsWith("-")) return e.getMessage();
        String word = unmatched.getUnmatched().get(0);
        if (line.getCommand() == this) return "\"" + word + "\" is no command; there are " + String.join(", ", line.getSubcommands().keySet())
                + (Files.exists(Path.of(word)) ? "; to lay it flat: blankwright flatten " + word : "");
        List<String> words = spec.commandLine().getParseResult().originalArgs();
        int at = words.lastIndexOf(word);
        String before = at > 1 ? words.get(at - 1) : "";
        return "\"" + word + "\" is a word too many" + (before.isEmpty() ? "" : "; what has a blank in it goes in quotes: \"" + before + " " + word + "\"");
    }

    private int failed(Throwable e) {
        if (e instanceof OutOfMemoryError) return tooLarge();
        if (e instanceof Refusal) {
            err.println(e.getMessage());
            return ExitCode.BAD_INPUT.number();
        }
        if (e instanceof IOException) {
            err.println("The files could not be written: " + InputFile.words(e) + ". Nothing there was changed; make room or choose another --out.");
            return ExitCode.FAILED.number();
        }
        err.println("The program failed, and that is our fault, not yours (" + e.getClass().getSimpleName() + "). " + noted(e));
        return ExitCode.FAILED.number();
    }

    private int tooLarge() {
        err.println("There was not enough memory: run it again with more, e.g. java -Xmx8g -jar blankwright.jar ..., or give a coarser mesh.");
        return ExitCode.FAILED.number();
    }

    /** Writes the details for those who mend the program; says where. */
    private static String noted(Throwable e) {
        try {
            Path note = Files.createTempFile("blankwright-failure-", ".txt");
            try (PrintWriter to = new PrintWriter(Files.newBufferedWriter(note))) {
                to.println("blankwright " + Version.TEXT + ", Java " + System.getProperty("java.version") + ", " + System.getProperty("os.name"));
                e.printStackTrace(to);
            }
            return "Details were written to " + note + "; whoever mends the program needs that file and your input.";
        } catch (IOException cannot) {
            return "Details could not be written: " + InputFile.words(cannot) + ".";
        }
    }

    /** For {@code --version}. */
    static final class OwnVersion implements IVersionProvider {
        @Override public String[] getVersion() {
            return new String[] {"blankwright " + Version.TEXT};
        }
    }
}
