package blankwright.shape;

import java.util.Locale;

/** The checks every panel makes at its door. */
final class Need {
    /** A panel of 20 m; beyond it a unit was mistaken. */
    static final double LARGEST = 20_000;

    private Need() { }

    static void length(String name, double mm) {
        if (!(mm > 0 && mm <= LARGEST))
            throw new UnfitValue(name, name + " " + mm(mm) + ": must be above 0 and at most 20 m; check the unit");
    }

    static void lengthOrNone(String name, double mm) {
        if (!(mm >= 0 && mm <= LARGEST))
            throw new UnfitValue(name, name + " " + mm(mm) + ": must be 0 or more and at most 20 m; check the unit");
    }

    /** Bounds in degrees, the upper included. */
    static void angle(String name, double rad, double above, double upTo) {
        if (!(rad > Math.toRadians(above) && rad <= Math.toRadians(upTo)))
            throw new UnfitValue(name, name + " " + degrees(rad) + ": must be above " + plain(above) + " and at most " + plain(upTo) + " degrees");
    }

    static void that(boolean fits, String name, String message) {
        if (!fits) throw new UnfitValue(name, message);
    }

    static String mm(double mm) {
        return plain(mm) + " mm";
    }

    static String degrees(double rad) {
        return plain(Math.toDegrees(rad)) + " degrees";
    }

    private static String plain(double x) {
        String s = String.format(Locale.ROOT, "%.3f", x);
        return s.contains(".") ? s.replaceAll("0+$", "").replaceAll("\\.$", "") : s;
    }
}
