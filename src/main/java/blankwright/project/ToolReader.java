package blankwright.project;

import blankwright.num.Lengths;
import blankwright.num.Spelling;
import blankwright.shop.Instruction;
import blankwright.shop.Tool;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Reads a list of tools at hand. Whatever the text holds, it comes out as tools or as a {@link RecipeException} with the place. */
public final class ToolReader extends Fields {
    private static final List<String> KEYS = List.of("name", "does", "reach", "cost");
    private static final int MOST_TOOLS = 100;

    private ToolReader(String path) {
        super(path);
    }

    /** @throws IOException where the file itself cannot be read */
    public static List<Tool> read(Path file) throws IOException, RecipeException {
        return read(file.toString(), text(file, Node.Kind.TOOLS));
    }

    /** @param path what messages call the text */
    public static List<Tool> read(String path, String text) throws RecipeException {
        return new ToolReader(path).tools(Node.read(path, text, Node.Kind.TOOLS));
    }

    private List<Tool> tools(Node node) throws RecipeException {
        Node.Keys top = keys(node, "a tool list");
        version(top, Node.Kind.TOOLS);
        onlyKnown(top, List.of(Node.Kind.TOOLS.key(), "tools"), "");
        return list(needed(top, "tools"));
    }

    /** A list that stands in a recipe itself. */
    static List<Tool> inside(String path, Node list) throws RecipeException {
        return new ToolReader(path).list(list);
    }

    private List<Tool> list(Node list) throws RecipeException {
        List<Tool> tools = new ArrayList<>();
        for (Node item : items(list, "tools", "one tool to a line beginning with -")) {
            if (tools.size() == MOST_TOOLS) throw at(item, "more than " + MOST_TOOLS + " tools");
            tools.add(tool(keys(item, "a tool")));
        }
        if (tools.isEmpty()) throw at(list, "no tool is given");
        return List.copyOf(tools);
    }

    private Tool tool(Node.Keys keys) throws RecipeException {
        onlyKnown(keys, KEYS, "a tool");
        Node.Word name = word(needed(keys, "name"), "name"), does = word(needed(keys, "does"), "does"), reach = word(needed(keys, "reach"), "reach");
        if (name.text().isBlank() || name.text().length() > 60 || name.text().chars().anyMatch(Character::isISOControl))
            throw at(name, "name: a tool has a name of one line, up to 60 characters");
        Instruction what = switch (does.text()) {
            case "shrink" -> Instruction.SHRINK;
            case "stretch" -> Instruction.STRETCH;
            default -> throw at(does, "does " + Spelling.quoted(does.text()) + ": must be shrink or stretch; a tool that does both stands there twice");
        };
        try {
            double far = reach.text().equals("anywhere") ? Double.POSITIVE_INFINITY : Lengths.parse(reach.text());
            return new Tool(name.text(), what, far, keys.values().containsKey("cost") ? cost(word(keys.values().get("cost"), "cost")) : 1);
        } catch (IllegalArgumentException e) {
            throw e.getMessage().startsWith("reach") ? at(reach, "", e) : at(reach, "reach: " + e.getMessage() + ", or anywhere");
        }
    }

    private double cost(Node.Word word) throws RecipeException {
        double cost = number(word, "cost");
        if (!(cost > 0 && cost <= Tool.DEAREST)) throw at(word, "cost " + word.text() + ": must be above 0, up to " + (int) Tool.DEAREST);
        return cost;
    }
}
