package blankwright.project;

import blankwright.mesh.cut.DrawnSeam;
import blankwright.num.Angles;
import blankwright.num.Lengths;
import blankwright.shape.Hole;
import blankwright.shop.DrawnTape;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Writes a recipe as {@link RecipeReader} reads it back: the same recipe, to the last bit of each number. */
public final class RecipeWriter {
    private RecipeWriter() { }

    /** UTF-8 text with a line end after each line. */
    public static String write(Recipe recipe) {
        StringBuilder out = new StringBuilder();
        line(out, "blankwright-recipe", Integer.toString(Recipe.VERSION));
        line(out, "name", text(recipe.name()));
        if (recipe.source() instanceof Source.OfPanel formula) {
            PanelWords.Kind<?> kind = PanelWords.of(formula.panel());
            out.append("panel:\n");
            line(out, "  kind", kind.word());
            Map<String, Object> values = kind.values(formula.panel());
            for (PanelWords.Key key : kind.keys()) {
                Object value = values.get(key.word());
                if (!value.equals(key.usual())) line(out, "  " + key.word(), value(key, value));
            }
            line(out, "chord", Lengths.exact(recipe.chord()));
        } else if (recipe.source() instanceof Source.OfMesh mesh) {
            out.append("mesh:\n");
            line(out, "  file", text(mesh.file()));
            mesh.units().ifPresent(u -> line(out, "  units", u.word()));
        }
        recipe.detail().ifPresent(d -> line(out, "detail", d == 0 ? "none" : Lengths.exact(d)));
        recipe.thickness().ifPresent(t -> line(out, "thickness", Lengths.exact(t)));
        recipe.metal().ifPresent(m -> line(out, "alloy", text(m.alloy().name())));
        recipe.metal().flatMap(Metal::table).ifPresent(t -> line(out, "alloys", text(t)));
        line(out, "face", recipe.face().word());
        line(out, "aim", recipe.aim().word());
        if (recipe.aim() == Aim.WORK) {
            Handwork work = recipe.handwork();
            if (work.lean() != 0) line(out, "lean", BigDecimal.valueOf(work.lean()).toPlainString());
            if (work.toolFile().isPresent()) line(out, "tools", text(work.toolFile().get()));
            else if (!work.tools().isEmpty()) out.append("tools:\n").append(ToolWriter.lines(work.tools()));
        }
        line(out, "stations", Lengths.exact(recipe.stations()));
        recipe.trim().ifPresent(t -> line(out, "trim", Lengths.exact(t)));
        scales(out, recipe.scales());
        recipe.hand().ifPresent(h -> line(out, "hand", h.word()));
        if (!recipe.notes().isEmpty()) line(out, "notes", text(recipe.notes()));
        if (!recipe.seams().isEmpty()) out.append("seams:\n");
        for (DrawnSeam seam : recipe.seams())
            out.append("  - [").append(seam.points().stream().map(p -> point(p.x(), p.y(), p.z())).collect(Collectors.joining(", "))).append("]\n");
        recipe.clamps().ifPresent(c -> line(out, "clamped", clamps(c)));
        if (!recipe.tapes().isEmpty()) out.append("tapes:\n");
        for (DrawnTape t : recipe.tapes())
            out.append("  - {straight-on: ").append(t.onBlank() ? "blank" : "form").append(", from: ").append(point(t.x0(), t.y0(), t.z0()))
                    .append(", to: ").append(point(t.x1(), t.y1(), t.z1())).append("}\n");
        if (recipe.sensitivity()) line(out, "sensitivity", "true");
        return out.toString();
    }

    private static void scales(StringBuilder out, Scales scales) {
        if (scales.equals(Scales.USUAL.withWork(scales.work()))) {
            scales.work().ifPresent(end -> line(out, "scale", Lengths.exact(end)));
            return;
        }
        out.append("scale:\n");
        scales.work().ifPresent(end -> line(out, "  work", Lengths.exact(end)));
        scales.thickness().ifPresent(end -> line(out, "  thickness", percent(end)));
        scales.crown().ifPresent(end -> line(out, "  crown", Angles.exact(end)));
        scales.limit().ifPresent(end -> line(out, "  limit", percent(end)));
        scales.buckling().ifPresent(end -> line(out, "  buckling", Lengths.plain(end)));
    }

    private static String percent(double share) {
        return Lengths.plain(Math.rint(share * 1e8) / 1e6) + " %";
    }

    private static String clamps(Clamps clamps) {
        if (clamps.word().isPresent()) return clamps.word().get();
        return clamps.spots().stream().map(s -> "\n  - [" + Lengths.exact(s.x()) + ", " + Lengths.exact(s.y()) + ", " + Lengths.exact(s.z())
                + ", " + Lengths.exact(s.radius()) + "]").collect(Collectors.joining());
    }

    private static String value(PanelWords.Key key, Object value) {
        return switch (key.measure()) {
            case LENGTH -> Lengths.exact((Double) value);
            case ANGLE -> Angles.exact((Double) value);
            case WORD -> (String) value;
            case HOLES -> ((List<?>) value).stream().map(h -> "\n    - " + hole((Hole) h)).collect(Collectors.joining());
        };
    }

    private static String hole(Hole hole) {
        String size = hole.length() == hole.width() ? "diameter: " + Lengths.exact(hole.length())
                : "length: " + Lengths.exact(hole.length()) + ", width: " + Lengths.exact(hole.width());
        return "{along: " + Lengths.exact(hole.along()) + ", across: " + Lengths.exact(hole.across()) + ", " + size + "}";
    }

    private static String point(double x, double y, double z) {
        return "[" + Lengths.exact(x) + ", " + Lengths.exact(y) + ", " + Lengths.exact(z) + "]";
    }

    private static void line(StringBuilder out, String key, String value) {
        out.append(key).append(value.startsWith("\n") ? ":" : ": ").append(value).append('\n');
    }

    /** Double-quoted, so that nothing in it can be taken for YAML. */
    static String text(String s) {
        StringBuilder out = new StringBuilder("\"");
        s.codePoints().forEach(c -> {
            if (c == '"' || c == '\\') out.append('\\').appendCodePoint(c);
            else if (c == '\n') out.append("\\n");
            else if (c < 0x20 || c == 0x7f || c >= 0x80 && c < 0xa0 || c == 0x2028 || c == 0x2029 || c == 0xfeff || c >= 0xd800 && c < 0xe000)
                out.append(String.format("\\u%04X", c));
            else out.appendCodePoint(c);
        });
        return out.append('"').toString();
    }
}
