package blankwright.shop;

import blankwright.mesh.FlatMap;
import java.util.List;
import java.util.Locale;

/**
 * A straight line on the blank about which the sheet is folded, sharp or about a small radius, with skin on both sides of it.
 *
 * <p>How it is found: {@link Folds}. Error on even meshes: angle to half a degree, ends to a side of a triangle, radius of a bend of eight
 * sides to a tenth; of two or three sides it is a guess.
 *
 * @param u1 with v1 one end of the middle of the bend on the blank, mm; u2 and v2 the other
 * @param angle turned through, rad, above 0
 * @param outward whether the outside face bulges at the fold
 * @param radius of the surface given, mm; 0 where it is sharp
 */
public record Fold(double u1, double v1, double u2, double v2, double angle, boolean outward, double radius) {
    /** All of a piece, the longest first. */
    public static List<Fold> of(FlatMap map) {
        return Folds.of(map).list();
    }

    /** Along the line, mm. */
    public double length() {
        return Math.hypot(u2 - u1, v2 - v1);
    }

    /** {@code down}, away from the outside face, or {@code up}. */
    public String way() {
        return outward ? "down" : "up";
    }

    /** {@code fold 1: 90° down, sharp} or {@code fold 1: 90° down, R 5}; up is towards the outside face. */
    public String words(int number) {
        return String.format(Locale.ROOT, "fold %d: %.0f° %s, %s", number, Math.toDegrees(angle), way(),
                radius == 0 ? "sharp" : String.format(Locale.ROOT, radius < 10 ? "R %.1f" : "R %.0f", radius));
    }
}
