package blankwright.shop;

import blankwright.metal.Springback;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A ruling as the bench knows it: by name, and with radii that a sweep and a roll are set to.
 *
 * @param area number of the rolled area, from 1
 * @param place {@code start}, {@code +50} (mm from the start, square to the rulings) or {@code stop}
 * @param outward whether the outer skin is on the outside of the roll
 * @param basis what the radii stand on
 * @param inside1 radius that must stay at the first end, mm, {@code inside2} at the second
 * @param set1 inside radius to set the roll for there, so that it stays, mm; NaN where the metal is not known; likewise {@code set2}
 */
public record RollMark(int area, String place, Ruling ruling, boolean outward, Basis basis, double inside1, double inside2, double set1, double set2) {
    private static final double ALIKE = 0.02;           // of the larger radius: less than the radii are known to

    /** How much is known of the sheet. */
    public enum Basis {
        NOTHING("R: radius of the form that must stay, mm (say the thickness for that of the inside)"),
        THICKNESS("R: inside radius that must stay, mm"),
        METAL("R: inside radius that must stay, mm; set: inside radius to roll to, so that it stays (springback, an estimate)");

        private final String key;

        Basis(String key) {
            this.key = key;
        }
    }

    /**
     * All rulings of the areas.
     *
     * @param thickness of the sheet, mm
     * @param sheet how it springs back, where its metal is known too
     */
    public static List<RollMark> of(List<RolledArea> areas, OptionalDouble thickness, Optional<Springback> sheet) {
        Basis basis = sheet.isPresent() ? Basis.METAL : thickness.isPresent() ? Basis.THICKNESS : Basis.NOTHING;
        double half = thickness.orElse(0) / 2;
        List<RollMark> marks = new ArrayList<>();
        for (int i = 0; i < areas.size(); i++) {
            RolledArea area = areas.get(i);
            for (Ruling ruling : area.rulings()) {
                String place = ruling == area.start() ? "start" : ruling == area.stop() ? "stop" : String.format(Locale.ROOT, "+%.0f", ruling.at());
                double[] set = sheet.map(ruling::rollTo).orElse(new double[] {Double.NaN, Double.NaN});
                marks.add(new RollMark(i + 1, place, ruling, area.outward(), basis, Math.max(0, ruling.radius1() - half),
                        Math.max(0, ruling.radius2() - half), set[0], set[1]));
            }
        }
        return List.copyOf(marks);
    }

    /** {@code roll 1}. */
    public String roll() {
        return "roll " + area;
    }

    /** {@code roll 1 start}. */
    public String name() {
        return roll() + " " + place;
    }

    public boolean isStart() {
        return place.equals("start");
    }

    /** What the outside face does: {@code bulges} or {@code is hollow}. */
    public String outside() {
        return outward ? "bulges" : "is hollow";
    }

    /** What R and set mean, in a sentence without a stop. */
    public String key() {
        return basis.key;
    }

    /** Whether one radius does for the whole ruling, as on a tube; else the roll is set apart at both ends, as for a cone. */
    public boolean even() {
        return Math.abs(inside1 - inside2) <= ALIKE * Math.max(inside1, inside2);
    }

    /** {@code R 99, set 92}: what must stay and what to set the roll for, mm, in the middle of the ruling. */
    public String middle() {
        return words((inside1 + inside2) / 2, (set1 + set2) / 2);
    }

    /** The same at the first end. */
    public String first() {
        return words(inside1, set1);
    }

    /** The same at the second end. */
    public String second() {
        return words(inside2, set2);
    }

    private static String words(double inside, double set) {
        return "R " + radius(inside) + (Double.isNaN(set) ? "" : ", set " + radius(set));
    }

    /** Whole mm; tenths below 20 mm. */
    public static String radius(double mm) {
        return String.format(Locale.ROOT, mm < 20 ? "%.1f" : "%.0f", mm);
    }
}
