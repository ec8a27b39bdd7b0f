package blankwright.viewer.model;

import blankwright.num.Explained;
import blankwright.num.LengthUnit;
import blankwright.num.Lengths;
import blankwright.num.Unfit;
import blankwright.shop.Instruction;
import blankwright.shop.Tool;
import java.util.ArrayList;
import java.util.List;

/** A tool as it is being typed: nothing is refused before all of it is asked for. */
public record ToolDraft(String name, Instruction does, String reach, String cost) {
    private static final String ANYWHERE = "anywhere";

    public static ToolDraft of(Tool tool, LengthStyle style) {
        return new ToolDraft(tool.name(), tool.does(), Double.isInfinite(tool.reach()) ? ANYWHERE : style.typed(tool.reach()),
                Lengths.plain(tool.cost()));
    }

    /** To be filled in. */
    public static ToolDraft blank(LengthStyle style) {
        return new ToolDraft("", Instruction.SHRINK, style.typed(style == LengthStyle.MM ? 25 : 25.4), "1");
    }

    /**
     * The tools of a list as it is typed.
     *
     * @throws IllegalArgumentException telling which line, what is wrong and what to write
     */
    public static List<Tool> tools(List<ToolDraft> drafts, LengthStyle style) {
        List<Tool> tools = new ArrayList<>();
        for (ToolDraft draft : drafts) {
            try {
                tools.add(draft.tool(style));
            } catch (IllegalArgumentException e) {
                throw new Unfit("Tool %d%s: %s.", tools.size() + 1, draft.name().isBlank() ? "" : ", " + draft.name().strip(), Explained.words(e));
            }
        }
        return tools;
    }

    private Tool tool(LengthStyle style) {
        String called = name.strip();
        if (called.isEmpty() || called.length() > 60) throw new IllegalArgumentException("give it a name of up to 60 letters");
        double far = reach.strip().equals(ANYWHERE) ? Double.POSITIVE_INFINITY : length(style);
        if (!cost.strip().matches("\\d{1,9}(\\.\\d{0,9})?|\\.\\d{1,9}"))
            throw new IllegalArgumentException("its cost is a number: 1 for the quickest tool, 2 for one that takes twice as long");
        return new Tool(called, does, far, Double.parseDouble(cost.strip()));
    }

    private double length(LengthStyle style) {
        try {
            return Lengths.parse(reach, style == LengthStyle.MM ? LengthUnit.MM : LengthUnit.IN);
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException("reach: " + e.getMessage() + ", or " + ANYWHERE);
        }
    }
}
