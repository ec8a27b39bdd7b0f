package blankwright.shape;

import blankwright.num.Quadrature;

/**
 * A nose: a cap of an ellipsoid, the outer skin bulging up. Half axes along, across and upwards in mm; half angle in rad on the ball it is
 * stretched from, 90 degrees for half of it. Parameters of a point: that angle from the middle and the direction on the same ball.
 */
public record EllipsoidalCap(double along, double across, double up, double halfAngle) implements Panel {
    public EllipsoidalCap {
        Need.length("along", along);
        Need.length("across", across);
        Need.length("up", up);
        Need.angle("half-angle", halfAngle, 0, 170);
        double most = Math.max(along, Math.max(across, up)), least = Math.min(along, Math.min(across, up));
        Need.that(most <= 20 * least, "up", "half axes from %s to %s: at most 20 to 1", Need.mm(least), Need.mm(most));
    }

    @Override public Sample sample(Fineness fineness) {
        return rings(Rings.count(this::at, halfAngle, fineness));
    }

    /** n rings of triangles round the middle, 6n² of them. */
    public Sample rings(int n) {
        return Rings.sample(this::at, halfAngle, n);
    }

    /** By quadrature of dA = sin u √D du dv and K dA = (abc)² sin u D^(-3/2) du dv, D = a²b² cos²u + c² sin²u (b² cos²v + a² sin²v). */
    @Override public Truth truth() {
        double volume = along * across * up;
        double area = integral((u, d) -> Math.sin(u) * Math.sqrt(d));
        double curvature = integral((u, d) -> volume * volume * Math.sin(u) / (d * Math.sqrt(d)));
        return Truth.curved(area, curvature, 1, 1);
    }

    private double integral(java.util.function.DoubleBinaryOperator f) {
        return 4 * Quadrature.of(v -> Quadrature.of(u -> {
            double ab = along * across * Math.cos(u), s = up * Math.sin(u);
            double b = across * Math.cos(v), a = along * Math.sin(v);
            return f.applyAsDouble(u, ab * ab + s * s * (a * a + b * b));
        }, 0, halfAngle, 6), 0, Math.PI / 2, 4);
    }

    private void at(double u, double v, double[] out) {
        out[0] = along * Math.sin(u) * Math.cos(v);
        out[1] = across * Math.sin(u) * Math.sin(v);
        out[2] = up * Math.cos(u);
    }
}
