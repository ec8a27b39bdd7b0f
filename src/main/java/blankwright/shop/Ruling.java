package blankwright.shop;

import blankwright.metal.Springback;

/**
 * A straight line lying in a rolled area: the sheet is bent square to it and stays straight along it.
 *
 * @param u1 one end on the blank, mm; (u2, v2) the other
 * @param radius1 of the form's middle of the sheet at the first end, mm, above 0; {@code radius2} at the second: another one on a cone
 * @param at distance from the start of the rolling, mm, square to the rulings
 */
public record Ruling(double u1, double v1, double u2, double v2, double radius1, double radius2, double at) {
    /** mm, on the blank. */
    public double length() {
        return Math.hypot(u2 - u1, v2 - v1);
    }

    /** Inside radii to set the roll for at both ends so that the form's radii stay, mm: {first, second}. */
    public double[] rollTo(Springback sheet) {
        double half = sheet.thickness() / 2;
        return new double[] {sheet.toSet(Math.max(radius1 - half, half / 10)), sheet.toSet(Math.max(radius2 - half, half / 10))};
    }
}
