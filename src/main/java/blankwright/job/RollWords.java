package blankwright.job;

import blankwright.num.Lengths;
import blankwright.shop.RollMark;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.DoubleStream;

/** Rolled areas in sentences for the bench. */
public final class RollWords {
    private RollWords() { }

    /** A sentence for each area: how far it reaches, which way it bends, between which radii, and what to set the roll to. */
    public static List<String> of(List<RollMark> rolls) {
        List<String> words = new ArrayList<>();
        for (int area = 1; area <= rolls.stream().mapToInt(RollMark::area).max().orElse(0); area++) {
            int number = area;
            List<RollMark> here = rolls.stream().filter(r -> r.area() == number).toList();
            RollMark any = here.get(0);
            double way = here.stream().map(r -> r.ruling().at()).max(Comparator.naturalOrder()).orElseThrow();
            String set = Double.isNaN(any.set1()) ? "" : "; roll to " + between(here.stream().flatMapToDouble(r -> DoubleStream.of(r.set1(), r.set2())))
                    + " so that it stays (springback, an estimate)";
            words.add(String.format(Locale.ROOT, "%s: %s from start to stop, the outside face %s, %s %s%s; only bent, its lines are on the blank", any.roll(),
                    Lengths.mm(way, 0), any.outside(), any.basis() == RollMark.Basis.NOTHING ? "radius" : "inside radius",
                    between(here.stream().flatMapToDouble(r -> DoubleStream.of(r.inside1(), r.inside2()))), set));
        }
        return words;
    }

    private static String between(DoubleStream radii) {
        var range = radii.summaryStatistics();
        String low = RollMark.radius(range.getMin()), high = RollMark.radius(range.getMax());
        return (low.equals(high) ? low : low + " to " + high) + " mm";
    }
}
