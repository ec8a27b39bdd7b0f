package blankwright.project;

import blankwright.num.Lengths;
import blankwright.num.Sentence;
import blankwright.num.Unfit;
import java.util.OptionalDouble;

/**
 * Where the colours of the maps end; empty where what is shown decides.
 *
 * @param work of the work map: mm on every 100 mm, 0.25 to 100
 * @param thickness of the map of what is left of the sheet: the thinnest, as a share of the sheet, 0.1 to 0.99
 * @param crown of the map of bowl and saddle: rad in a square of 100 mm, 0.05 to 10000 degrees
 * @param limit of the map of the forming limit: share of it, 0.05 to 10
 * @param buckling of the map of buckling: times what the sheet bears, 0.05 to 10
 */
public record Scales(OptionalDouble work, OptionalDouble thickness, OptionalDouble crown, OptionalDouble limit, OptionalDouble buckling) {
    private static final String MM = " mm";
    public static final Scales USUAL = new Scales(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty());

    /** Shares are kept to a millionth of a per cent, so that what is written as per cent is read back the same. */
    public Scales {
        within("scale", work, 0.25, 100, 1, MM);
        thickness = kept(thickness);
        limit = kept(limit);
        buckling = kept(buckling);
        within("thickness", thickness, 0.1, 0.99, 100, " %");
        if (crown.isPresent()) within("crown", OptionalDouble.of(degrees(crown.getAsDouble())), 0.05, 1e4, 1, " deg");
        within("limit", limit, 0.05, 10, 100, " %");
        within("buckling", buckling, 0.05, 10, 1, "");
    }

    public Scales withWork(OptionalDouble end) {
        return new Scales(end, thickness, crown, limit, buckling);
    }

    public Scales withThickness(OptionalDouble end) {
        return new Scales(work, end, crown, limit, buckling);
    }

    public Scales withCrown(OptionalDouble end) {
        return new Scales(work, thickness, end, limit, buckling);
    }

    public Scales withLimit(OptionalDouble end) {
        return new Scales(work, thickness, crown, end, buckling);
    }

    public Scales withBuckling(OptionalDouble end) {
        return new Scales(work, thickness, crown, limit, end);
    }

    /** Of the crown, without what the last bits of a product add. */
    private static double degrees(double rad) {
        return Math.rint(Math.toDegrees(rad) * 1e9) / 1e9;
    }

    private static OptionalDouble kept(OptionalDouble share) {
        return share.isPresent() ? OptionalDouble.of(Math.rint(share.getAsDouble() * 1e8) / 1e8) : share;
    }

    private static void within(String key, OptionalDouble end, double low, double high, double by, String unit) {
        if (end.isEmpty() || end.getAsDouble() >= low && end.getAsDouble() <= high) return;
        throw new Unfit("%s %s: must be %s to %s", key, told(by * end.getAsDouble(), unit), told(by * low, unit), told(by * high, unit));
    }

    private static Object told(double number, String unit) {
        return unit.equals(MM) ? Sentence.typed(number) : Lengths.plain(number) + unit;
    }
}
