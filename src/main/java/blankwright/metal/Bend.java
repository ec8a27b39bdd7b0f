package blankwright.metal;

/**
 * A bend and the lengths that go with it, all in one unit (mm inside the program).
 *
 * <p>Allowance: metal in the bend, measured along the line that keeps its length, K of the thickness from the inside. Setback: from the
 * tangent line to the corner where the outside faces would meet. Deduction: what the two outside legs are longer than the flat piece.
 *
 * @param thickness above 0
 * @param radius inside, 0 or above
 * @param angle bent through, rad, above 0 and at most π: 90 degrees for a square corner, not the angle left between the legs
 */
public record Bend(double thickness, double radius, double angle) {
    public Bend {
        if (!(thickness > 0)) throw new IllegalArgumentException("thickness " + thickness + ": must be above 0");
        if (!(radius >= 0)) throw new IllegalArgumentException("radius " + radius + ": must be 0 or above");
        if (!(angle > 0 && angle <= Math.PI * (1 + 1e-12))) throw new IllegalArgumentException("angle " + Math.toDegrees(angle)
                + " degrees: must be above 0 and at most 180, the angle bent through");
    }

    /** Metal in the bend, angle (R + K T), for a K of 0..0.5. */
    public double allowance(double k) {
        if (!(k >= 0 && k <= 0.5)) throw new IllegalArgumentException("K " + k + ": must be 0 to 0.5, the part of the thickness from the inside");
        return angle * (radius + k * thickness);
    }

    /** (R + T) tan(angle/2); +∞ at 180 degrees, where the faces never meet. */
    public double setback() {
        return angle >= Math.PI * (1 - 1e-12) ? Double.POSITIVE_INFINITY : (radius + thickness) * Math.tan(angle / 2);
    }

    /** Twice the setback less the allowance. */
    public double deduction(double allowance) {
        return 2 * setback() - allowance;
    }
}
