package blankwright.job;

import blankwright.mesh.Finding;
import blankwright.metal.buckling.OilCan;
import blankwright.shop.Demand;
import blankwright.shop.Judgement;
import blankwright.shop.Flange;
import blankwright.shop.Fold;
import blankwright.shop.RollMark;
import blankwright.shop.RolledArea;
import blankwright.shop.Ruling;
import blankwright.shop.Tapes;
import blankwright.shop.ToolWork;
import blankwright.shop.Verdict;
import blankwright.strain.StrainField;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import java.util.List;

/** The run in numbers, as {@code summary.json}: stable keys in a stable order, null for what does not apply. */
final class Summary {
    private final JsonNodeFactory make = JsonNodeFactory.instance;
    private final Result result;
    private final LaidTapes tapes;

    private Summary(Result result, LaidTapes tapes) {
        this.result = result;
        this.tapes = tapes;
    }

    /**
     * @param write seconds spent on writing so far
     * @param total seconds of the whole run so far
     */
    static void write(Result result, LaidTapes tapes, double write, double total, double peakMemoryMb, OutputStream out) throws IOException {
        ObjectNode root = new Summary(result, tapes).tree(write, total, peakMemoryMb);
        DefaultPrettyPrinter plain = new DefaultPrettyPrinter(
                Separators.createDefaultInstance().withObjectFieldValueSpacing(Separators.Spacing.AFTER))
                .withObjectIndenter(new DefaultIndenter("  ", "\n"));
        byte[] bytes = new ObjectMapper().configure(JsonGenerator.Feature.AUTO_CLOSE_TARGET, false).writer(plain).writeValueAsBytes(root);
        out.write(bytes);
        out.write("\n".getBytes(StandardCharsets.US_ASCII));
    }

    private ObjectNode tree(double write, double total, double peakMemoryMb) {
        ObjectNode root = make.objectNode();
        root.put("blankwright", Version.TEXT);
        Result.Input in = result.input();
        ObjectNode input = root.putObject("input");
        input.put("name", result.name()).put("units", result.units().word()).put("vertices", in.vertices()).put("triangles", in.triangles());
        number(input, "area_mm2", in.area());
        input.putArray("size_mm").add(in.dx()).add(in.dy()).add(in.dz());
        result.reduction().ifPresentOrElse(r -> {
            ObjectNode reduced = root.putObject("reduced");
            reduced.put("triangles_before", r.before()).put("triangles_after", r.after());
            number(reduced, "within_mm", r.within());
            number(reduced, "deviation_mm", r.deviation());
        }, () -> root.putNull("reduced"));
        root.put("aim", result.recipe().aim().word()).put("outcome", result.outcome()).put("steps", result.steps());
        ArrayNode findings = root.putArray("findings");
        for (Finding f : result.findings()) {
            findings.addObject().put("kind", f.kind().key()).put("count", f.count()).put("text", f.text());
        }
        ArrayNode pieces = root.putArray("pieces");
        for (Piece piece : result.pieces()) pieces.add(tree(piece));
        ArrayNode lines = root.putArray("tapes");
        for (Tapes.Laid tape : tapes.laid()) {
            ObjectNode line = lines.addObject().put("name", tape.line().name()).put("piece", tape.piece() + 1);
            number(line, "blank_mm", tape.line().blankLength());
            number(line, "form_mm", tape.line().formLength());
        }
        if (result.proposal().isPresent()) root.set("proposal", tree(result.proposal().get()));
        else root.putNull("proposal");
        ObjectNode seconds = root.putObject("seconds");
        seconds.put("read", millis(result.seconds().read())).put("prepare", millis(result.seconds().prepare()))
                .put("flatten", millis(result.seconds().flatten())).put("write", millis(write)).put("total", millis(total));
        root.put("peak_memory_mb", Math.round(10 * peakMemoryMb) / 10.0);
        return root;
    }

    private ObjectNode tree(Proposal proposal) {
        ObjectNode node = make.objectNode();
        ArrayNode seams = node.putArray("seams");
        for (Proposal.Line line : proposal.lines()) {
            ObjectNode seam = seams.addObject().put("number", line.number()).put("length_mm", line.length());
            for (double x : line.from()) seam.withArray("from_mm").add(x);
            for (double x : line.to()) seam.withArray("to_mm").add(x);
        }
        node.put("outcome", proposal.taken().outcome());
        ArrayNode pieces = node.putArray("pieces");
        for (Piece piece : proposal.taken().pieces()) pieces.add(tree(piece));
        return node;
    }

    private ObjectNode tree(Piece piece) {
        StrainField field = piece.strain();
        ObjectNode node = make.objectNode();
        double[] size = piece.map().size();
        node.put("triangles", field.triangleCount());
        number(node, "form_area_mm2", piece.map().form().area());
        number(node, "flat_area_mm2", piece.map().area());
        node.putArray("flat_size_mm").add(size[0]).add(size[1]);
        number(node, "outline_mm", piece.outline());
        node.put("holes", piece.holes()).put("turned_over", field.turnedOverCount()).put("overlaps_itself", piece.overlaps());
        ObjectNode energy = node.putObject("energy");
        number(energy, "symmetric_dirichlet_mean", field.symmetricDirichletMean());
        number(energy, "arap_mean", field.arapMean());
        number(energy, "work_J", result.work(piece));
        ObjectNode strain = node.putObject("strain");
        number(strain, "stretch_max", field.stretchMax());
        number(strain, "shrink_max", field.shrinkMax());
        number(strain, "area_gain_max", field.areaGainMax());
        number(strain, "area_loss_max", field.areaLossMax());
        ObjectNode thickness = node.putObject("thickness_mm");
        double sheet = result.recipe().thickness().orElse(Double.NaN);
        double[] factors = piece.thicknessFactors();
        number(thickness, "min", sheet * factors[0]);
        number(thickness, "max", sheet * factors[1]);
        if (piece.demand().isPresent()) metal(node.putObject("metal"), piece.demand().get());
        else node.putNull("metal");
        if (piece.tools().isPresent()) {
            ArrayNode tools = node.putArray("tools");
            for (ToolWork.Share share : piece.tools().get().shares()) {
                ObjectNode one = tools.addObject().put("name", share.tool().name()).put("does", share.tool().does().word());
                number(one, "area_mm2", share.area());
                number(one, "strain_max", Math.abs(share.largest()));
            }
        } else {
            node.putNull("tools");
        }
        rolled(node.putArray("rolled"), piece);
        ArrayNode flanges = node.putArray("flanges");
        for (Flange flange : piece.flanges()) flange(flanges.addObject(), flange);
        ArrayNode folds = node.putArray("folds");
        for (Fold fold : piece.folds()) {
            ObjectNode one = folds.addObject().put("way", fold.way());
            number(one, "angle_deg", Math.toDegrees(fold.angle()));
            number(one, "radius_mm", fold.radius());
            one.putArray("from_mm").add(fold.u1()).add(fold.v1());
            one.putArray("to_mm").add(fold.u2()).add(fold.v2());
        }
        piece.buckled().ifPresentOrElse(b -> buckling(node.putObject("buckling"), b), () -> node.putNull("buckling"));
        piece.sensitivity().ifPresentOrElse(s -> sensitivity(node.putObject("sensitivity"), s), () -> node.putNull("sensitivity"));
        return node;
    }

    private void flange(ObjectNode node, Flange flange) {
        node.put("rim", flange.rim() + 1).put("whole", flange.whole()).put("way", flange.way());
        node.putArray("angle_deg").add(Math.toDegrees(flange.least())).add(Math.toDegrees(flange.most()));
        number(node, "width_mm", flange.width());
        number(node, "line_mm", flange.scribed());
        number(node, "radius_mm", flange.radius());
        number(node, "sweep_deg", Math.toDegrees(flange.sweep()));
        number(node, "edge_blank_mm", flange.blankLength());
        number(node, "edge_form_mm", flange.formLength());
        number(node, "by_rule_mm", flange.byRule());
    }

    private void rolled(ArrayNode areas, Piece piece) {
        List<RollMark> rolls = result.rolls(piece);
        for (RollMark roll : rolls) {
            if (roll.isStart()) {
                RolledArea area = piece.rolled().get(roll.area() - 1);
                ObjectNode node = areas.addObject().put("name", roll.roll()).put("outside", area.outward() ? "bulges" : "hollow");
                number(node, "share", area.share());
                number(node, "way_mm", area.way());
                node.putArray("rulings");
            }
            Ruling line = roll.ruling();
            ObjectNode one = ((ArrayNode) areas.get(roll.area() - 1).get("rulings")).addObject().put("name", roll.name());
            number(one, "at_mm", line.at());
            one.putArray("from_mm").add(line.u1()).add(line.v1());
            one.putArray("to_mm").add(line.u2()).add(line.v2());
            one.putArray("radius_mm").add(line.radius1()).add(line.radius2());
            if (Double.isNaN(roll.set1())) one.putNull("roll_to_mm");
            else one.putArray("roll_to_mm").add(roll.set1()).add(roll.set2());
        }
    }

    private void buckling(ObjectNode node, Buckled buckled) {
        number(node, "load_factor", buckled.blank().loadFactor());
        node.put("buckles", buckled.buckles());
        ArrayNode factors = node.putArray("load_factors");
        for (int i = 0; i < buckled.blank().modes().size(); i++) factors.add(buckled.blank().loadFactor(i));
        ArrayNode waves = node.putArray("waves_along_rims");
        buckled.waves().ifPresent(w -> {
            for (int count : w.waves()) waves.add(count);
        });
        node.put("tucks", buckled.tucks().size());
        number(node, "yielded_share", buckled.blank().force().yielded());
        number(node, "compression_over_critical_max", buckled.worst()[0]);
        buckled.oilCan().ifPresentOrElse(can -> {
            ObjectNode held = node.putObject("oil_can");
            held.put("verdict", can.verdict().words());
            number(held, "parameter", can.parameter());
            number(held, "push_N", can.push());
            held.put("basis", can.held().isEmpty() ? "formula" : "computed");
            number(held, "formula_N", can.formulaPush());
            ArrayNode edges = held.putArray("held");
            for (OilCan.Held one : can.held()) {
                ObjectNode each = edges.addObject().put("edge", one.edge().words());
                number(each, "snap_N", one.snap());
                number(each, "linear_N", one.linear());
            }
            number(held, "radius_mm", can.radius());
            number(held, "half_span_mm", can.halfSpan());
            number(held, "spare_length_mm", can.spareLength());
        }, () -> node.putNull("oil_can"));
    }

    private static void sensitivity(ObjectNode node, Sensitivity sensitivity) {
        node.put("weld_along", sensitivity.alongSeam() ? "longest seam" : "outer edge");
        ArrayNode crowns = node.putArray("crowns");
        for (Sensitivity.Crown crown : sensitivity.crowns()) crowns.addObject().put("line", crown.line()).put("rise_mm", crown.rise());
        ArrayNode cases = node.putArray("cases");
        for (Sensitivity.Case one : sensitivity.cases()) {
            ObjectNode each = cases.addObject().put("cause", one.cause().word());
            each.put("outline_mm", one.shift().largest()).put("outline_rms_mm", one.shift().rms());
            each.putArray("at_mm").add(one.shift().u()).add(one.shift().v());
            for (double change : one.crown()) each.withArray("crown_mm").add(change);
        }
    }

    /** Of the zone nearest to its forming limit, and the most annealings of any. */
    private static void metal(ObjectNode node, Demand demand) {
        Demand.OfZone worst = demand.worst();
        number(node, "limit_margin_max", worst == null ? Double.NaN : worst.margin());
        number(node, "effective_strain_max", demand.zones().stream().mapToDouble(Demand.OfZone::effective).max().orElse(Double.NaN));
        if (worst == null) node.putNull("worst_zone");
        else node.put("worst_zone", worst.zone().number());
        int rounds = demand.zones().stream().mapToInt(z -> z.judgement().annealings()).max().orElse(0);
        if (rounds == Judgement.BEYOND) node.putNull("annealings");
        else node.put("annealings", rounds);
        node.put("hardest_verdict", demand.zones().stream().map(z -> z.judgement().verdict()).max(Comparator.naturalOrder())
                .map(Verdict::words).orElse(null));
        node.put("limit_basis", demand.limit().basis());
        node.put("limit_trust", demand.limit().level().trust().words());
    }

    /** What is not finite does not apply. */
    private static void number(ObjectNode node, String key, double value) {
        if (Double.isFinite(value)) node.put(key, value);
        else node.putNull(key);
    }

    private static double millis(double seconds) {
        return Math.round(1000 * seconds) / 1000.0;
    }
}
