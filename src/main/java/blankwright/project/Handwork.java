package blankwright.project;

import blankwright.shop.Tool;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * How the worker would rather work: aim {@code work} looks for the blank that suits it.
 *
 * @param lean -1 all shrinking, 0 whatever is less work, +1 all stretching
 * @param tools at hand; none listed means whatever is needed can be done anywhere
 * @param toolFile they were read from, as written, relative to the recipe; empty where they stand in the recipe itself
 */
public record Handwork(double lean, List<Tool> tools, Optional<String> toolFile) {
    /** No preference, any tool. */
    public static final Handwork ANY = new Handwork(0, List.of(), Optional.empty());

    public Handwork {
        if (!(lean >= -1 && lean <= 1)) throw new IllegalArgumentException("lean " + lean + ": must be -1 (all shrinking) to 1 (all stretching)");
        lean += 0.0;                                           // -0 is 0
        tools = List.copyOf(tools);
    }

    public Handwork withLean(double other) {
        return new Handwork(other, tools, toolFile);
    }

    /** Listed in the recipe itself. */
    public Handwork withTools(List<Tool> listed) {
        return new Handwork(lean, listed, Optional.empty());
    }

    /** @param folder that the file's name starts from */
    public Handwork withTools(String file, Path folder) throws IOException, RecipeException {
        return new Handwork(lean, ToolReader.read(folder.resolve(file)), Optional.of(file));
    }
}
