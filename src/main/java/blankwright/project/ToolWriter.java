package blankwright.project;

import blankwright.num.Lengths;
import blankwright.shop.Tool;
import java.util.List;

/** Writes a list of tools as {@link ToolReader} reads it back, to the last bit of each number. */
public final class ToolWriter {
    private ToolWriter() { }

    /** UTF-8 text with a line end after each line. */
    public static String write(List<Tool> tools) {
        return Node.Kind.TOOLS.key() + ": " + Node.Kind.TOOLS.version() + "\ntools:\n" + lines(tools);
    }

    /** One tool to a line, without the key above them. */
    static String lines(List<Tool> tools) {
        StringBuilder out = new StringBuilder();
        for (Tool tool : tools)
            out.append("  - {name: ").append(RecipeWriter.text(tool.name())).append(", does: ").append(tool.does().word())
                    .append(", reach: ")
                    .append(Double.isInfinite(tool.reach()) ? "anywhere" : Lengths.exact(tool.reach())).append(", cost: ")
                    .append(Lengths.plain(tool.cost())).append("}\n");
        return out.toString();
    }
}
