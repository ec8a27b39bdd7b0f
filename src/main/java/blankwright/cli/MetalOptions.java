package blankwright.cli;

import blankwright.job.InputFile;
import blankwright.job.Refusal;
import blankwright.project.AlloyReader;
import blankwright.project.Metal;
import blankwright.project.RecipeException;
import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;

/** {@code --alloy} and {@code --alloys}, the same in every command. */
final class MetalOptions {
    private MetalOptions() { }

    /** A name that is not known is a wrong command line, a table that cannot be read is bad input. */
    static Metal metal(String name, Optional<String> table, CommandSpec spec) throws Refusal {
        try {
            return table.isPresent() ? Metal.own(name, table.get(), Path.of("").toAbsolutePath()) : Metal.shipped(name);
        } catch (RecipeException e) {
            throw new Refusal(e.getMessage());
        } catch (IOException | InvalidPathException e) {
            throw unreadable(table.orElse(""), e);
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), "--alloy: " + e.getMessage());
        }
    }

    /** The tables as one, the user's own first. */
    static AlloyReader.Table table(String file) throws Refusal {
        try {
            return AlloyReader.table(Path.of(file));
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
