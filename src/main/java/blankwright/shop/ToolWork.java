package blankwright.shop;

import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.strain.StrainField;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Which tool does what on a blank, and what is left that none of them does.
 *
 * @param shares one for each tool, in their order
 * @param shrinkBeyond shrinking where no tool for it gets; empty where there is none worth telling
 * @param stretchBeyond likewise
 */
public record ToolWork(List<Share> shares, Optional<Beyond> shrinkBeyond, Optional<Beyond> stretchBeyond) {
    /** Strain below which a place needs no tool. */
    public static final double TELLING = 0.002;

    /** What one tool does: on how much of the form, mm², and its largest strain as written on the work map, above 0 to stretch. */
    public record Share(Tool tool, double area, double largest) { }

    /**
     * What is left.
     *
     * @param area of the form, mm²
     * @param largest strain, above 0 to stretch
     * @param at the middle of the triangle with the largest strain
     * @param distance of it from the nearest free edge, mm
     * @param amount strain times area, mm², without its sign
     */
    public record Beyond(int triangles, double area, double largest, Spot at, double distance, double amount) { }

    /** Strains are given to the tools by which the work was priced. */
    public static ToolWork of(StrainField strain, Reach reach) {
        List<Share> shares = new ArrayList<>();
        int n = reach.tools().size();
        double[] area = new double[n], largest = new double[n];
        TriMesh form = strain.map().form();
        for (int t = 0; t < strain.triangleCount(); t++) {
            if (strain.degenerate(t)) continue;
            for (Instruction what : new Instruction[] {Instruction.SHRINK, Instruction.STRETCH}) {
                double e = of(strain, what, t);
                int tool = reach.tool(what, t);
                if (tool < 0 || Math.abs(e) <= TELLING) continue;
                area[tool] += form.area(t);
                if (Math.abs(e) > Math.abs(largest[tool])) largest[tool] = e;
            }
        }
        for (int i = 0; i < n; i++) shares.add(new Share(reach.tools().get(i), area[i], largest[i]));
        return new ToolWork(List.copyOf(shares), beyond(strain, reach, Instruction.SHRINK), beyond(strain, reach, Instruction.STRETCH));
    }

    /** Of both, strain times area, mm². */
    public double amountBeyond() {
        return Stream.of(shrinkBeyond, stretchBeyond).flatMap(Optional::stream).mapToDouble(Beyond::amount).sum();
    }

    /** Where one kind of strain is found although no tool does it. */
    private static Optional<Beyond> beyond(StrainField strain, Reach reach, Instruction what) {
        return worst(strain, reach, what, t -> reach.tool(what, t) < 0);
    }

    /** One kind of strain wherever it is worth telling, tools or not. */
    public static Optional<Beyond> anywhere(StrainField strain, Reach reach, Instruction what) {
        return worst(strain, reach, what, t -> true);
    }

    /** One kind of strain where it is {@code least} or more in size, tools or not. */
    public static Optional<Beyond> from(StrainField strain, Reach reach, Instruction what, double least) {
        return worst(strain, reach, what, t -> Math.abs(of(strain, what, t)) >= least);
    }

    private static Optional<Beyond> worst(StrainField strain, Reach reach, Instruction what, IntPredicate counts) {
        int count = 0, worst = -1;
        double area = 0, amount = 0;
        TriMesh form = strain.map().form();
        for (int t = 0; t < strain.triangleCount(); t++) {
            if (strain.degenerate(t) || Math.abs(of(strain, what, t)) <= TELLING || !counts.test(t)) continue;
            count++;
            area += form.area(t);
            amount += form.area(t) * Math.abs(of(strain, what, t));
            if (worst < 0 || Math.abs(of(strain, what, t)) > Math.abs(of(strain, what, worst))) worst = t;
        }
        return worst < 0 ? Optional.empty()
                : Optional.of(new Beyond(count, area, of(strain, what, worst), middle(strain.map(), worst), reach.distance(worst), amount));
    }

    /** Triangles where strain worth telling is left to no tool, in their order. */
    public static int[] beyond(StrainField strain, Reach reach) {
        return IntStream.range(0, strain.triangleCount()).filter(t -> !strain.degenerate(t)
                && Stream.of(Instruction.SHRINK, Instruction.STRETCH).anyMatch(what -> reach.tool(what, t) < 0 && Math.abs(of(strain, what, t)) > TELLING)).toArray();
    }

    private static Spot middle(FlatMap map, int t) {
        double[] at = new double[5];
        for (int k = 0; k < 3; k++) {
            int v = map.form().corner(t, k);
            at[0] += map.u(v) / 3;
            at[1] += map.v(v) / 3;
            at[2] += map.form().x(v) / 3;
            at[3] += map.form().y(v) / 3;
            at[4] += map.form().z(v) / 3;
        }
        return new Spot(t, at[0], at[1], at[2], at[3], at[4]);
    }

    /** Strain of triangle t that has to be shrunk (0 or below) or stretched (0 or above). */
    private static double of(StrainField strain, Instruction what, int t) {
        return what == Instruction.SHRINK ? Math.min(0, strain.engineering2(t)) : Math.max(0, strain.engineering1(t));
    }
}
