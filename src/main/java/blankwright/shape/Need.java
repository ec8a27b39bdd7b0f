package blankwright.shape;

import blankwright.num.Sentence;
import java.util.Locale;

/** The checks every panel makes at its door. */
final class Need {
    /** A panel of 20 m; beyond it a unit was mistaken. */
    static final double LARGEST = 20_000;

    /** The same in words. */
    static final Sentence.Measure FAR = Sentence.metres(LARGEST / 1e3);

    private Need() { }

    static void length(String name, double mm) {
        if (!(mm > 0 && mm <= LARGEST))
            throw new UnfitValue(name, "%s %s: must be above 0 and at most %s; check the unit", name, mm(mm), FAR);
    }

    static void lengthOrNone(String name, double mm) {
        if (!(mm >= 0 && mm <= LARGEST))
            throw new UnfitValue(name, "%s %s: must be 0 or more and at most %s; check the unit", name, mm(mm), FAR);
    }

    /** Bounds in degrees, the upper included. */
    static void angle(String name, double rad, double above, double upTo) {
        if (!(rad > Math.toRadians(above) && rad <= Math.toRadians(upTo)))
            throw new UnfitValue(name, "%s %s: must be above %s and at most %s degrees", name, degrees(rad), plain(above), plain(upTo));
    }

    /** @param form with its parts as for {@link Sentence#say} */
    static void that(boolean fits, String name, String form, Object... parts) {
        if (!fits) throw new UnfitValue(name, form, parts);
    }

    /** To a thousandth of a mm. */
    static Sentence.Measure mm(double mm) {
        return Sentence.typed(Math.rint(1e3 * mm) / 1e3);
    }

    static String degrees(double rad) {
        return plain(Math.toDegrees(rad)) + " degrees";
    }

    private static String plain(double x) {
        String s = String.format(Locale.ROOT, "%.3f", x);
        return s.contains(".") ? s.replaceAll("0+$", "").replaceAll("\\.$", "") : s;
    }
}
