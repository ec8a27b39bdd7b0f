package blankwright.shape;

/**
 * Diameters of round blanks as large as the drawn shell: right where the metal keeps its thickness, mm for mm. An oracle.
 *
 * <p>Source: equal areas. The cylinder is eq. (39) of Machinery's Handbook, 31st ed., p. 1426; docs/sources.md [MH31].
 */
final class BlankDiameter {
    private BlankDiameter() { }

    /** For an area, mm². */
    static double ofArea(double area) {
        return Math.sqrt(4 * area / Math.PI);
    }

    /** Flat-bottomed cup with a sharp corner. */
    static double cup(double diameter, double height) {
        return Math.sqrt(diameter * diameter + 4 * diameter * height);
    }

    /** The same with a flat flange of outer diameter {@code flange}. */
    static double flangedCup(double diameter, double height, double flange) {
        return Math.sqrt(flange * flange + 4 * diameter * height);
    }

    /** Cup with a rounded corner; diameter, height and corner radius of the middle surface. */
    static double roundedCup(double diameter, double height, double corner) {
        return Math.sqrt(diameter * diameter + 4 * diameter * height - (8 - 2 * Math.PI) * corner * diameter
                - (4 * Math.PI - 12) * corner * corner);
    }

    /** Dish cut from a ball: chord across its rim and rise. */
    static double dish(double across, double rise) {
        return Math.sqrt(across * across + 4 * rise * rise);
    }

    /** Half ball. */
    static double halfBall(double diameter) {
        return Math.sqrt(2) * diameter;
    }

    /** Half ball with a straight wall above it. */
    static double halfBallWithWall(double diameter, double height) {
        return Math.sqrt(2 * diameter * diameter + 4 * diameter * height);
    }

    /** Cone with a flat bottom: bottom and top diameter and slant. */
    static double conicalVessel(double bottom, double top, double slant) {
        return Math.sqrt(bottom * bottom + 2 * slant * (bottom + top));
    }
}
