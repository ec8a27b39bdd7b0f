package blankwright.cli;

import blankwright.job.InputFile;
import blankwright.job.Refusal;
import blankwright.num.Explained;
import blankwright.num.Sentence;
import blankwright.project.AlloyReader;
import blankwright.project.Metal;
import blankwright.project.RecipeException;
import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Function;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;

/** Reads the options that several commands have; what cannot be read is a wrong command line that names the option. */
final class Options {
    private final CommandSpec spec;

    Options(CommandSpec spec) {
        this.spec = spec;
    }

    ParameterException wrong(String sentence) {
        return new ParameterException(spec.commandLine(), sentence);
    }

    /** @param reading throws IllegalArgumentException for what it cannot read */
    <T> T read(String name, String text, Function<String, T> reading, T unsaid) {
        if (text == null) return unsaid;
        try {
            return reading.apply(text);
        } catch (IllegalArgumentException e) {
            throw wrong(name + ": " + Explained.words(e).text(Spoken.in(text).orElse(Sentence.FILES)));
        }
    }

    /**
     * {@code --alloy} with {@code --alloys}: a name that is not known is a wrong command line, a table that cannot be read is bad input.
     *
     * @param table of the user's own, may be null
     */
    Metal metal(String name, String table) throws Refusal {
        if (table == null) return read("--alloy", name, Metal::shipped, null);
        try {
            return Metal.own(name, table, Path.of("").toAbsolutePath());
        } catch (RecipeException e) {
            throw new Refusal(e.getMessage());
        } catch (IOException | InvalidPathException e) {
            throw unreadable(table, e);
        } catch (IllegalArgumentException e) {
            throw wrong("--alloy: " + e.getMessage());
        }
    }

    /** The user's own table; empty where there is none. */
    Optional<AlloyReader.Table> table(String file) throws Refusal {
        if (file == null) return Optional.empty();
        try {
            return Optional.of(AlloyReader.table(Path.of(file)));
        } catch (RecipeException e) {
            throw new Refusal(e.getMessage());
        } catch (IOException | InvalidPathException e) {
            throw unreadable(file, e);
        }
    }

    private static Refusal unreadable(String file, Exception e) {
        return new Refusal(file + ": the alloy table cannot be read: " + InputFile.words(e) + ".");
    }
}
