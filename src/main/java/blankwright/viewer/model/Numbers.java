package blankwright.viewer.model;

import blankwright.shop.Judgement;
import blankwright.shop.Zone;
import java.util.Optional;

/**
 * What is known of one place.
 *
 * @param u with v the place on the blank, mm
 * @param form on the form, mm, 3
 * @param normal of the skin there, out of the outside, unit, 3
 * @param most the principal strain larger in size, engineering, blank to form, with its sign: what the work map colours
 * @param across the other one, at right angles
 * @param direction of {@code most} on the blank, rad
 * @param left thickness after forming as a factor of the sheet's
 * @param crown Gaussian curvature, 1/mm²
 * @param zone the place lies in
 * @param metal what the metal says, where it is known
 */
public record Numbers(double u, double v, double[] form, double[] normal, double most, double across, double direction, double left,
        double crown,
                      Zone zone, Optional<Judgement> metal) {
    /** Degrees of crown in a square of 100 mm. */
    public double crownDegrees() {
        return Math.toDegrees(crown * 1e4);
    }
}
