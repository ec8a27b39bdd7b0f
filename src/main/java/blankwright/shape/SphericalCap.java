package blankwright.shape;

import blankwright.mesh.TriMesh;

/**
 * A dish cut from a ball, the outer skin bulging up: radius of the ball in mm, half angle from the middle to the rim in rad.
 *
 * <p>Parameters of a point: the angle from the middle, rad, and the direction round it, 0 to 2π.
 */
public record SphericalCap(double radius, double halfAngle) implements Panel {
    public SphericalCap {
        Need.length("radius", radius);
        Need.angle("half-angle", halfAngle, 0, 170);
    }

    /** By what a builder measures: chord across the rim and rise of the middle above it, mm. */
    public static SphericalCap ofRise(double across, double rise) {
        Need.length("across", across);
        Need.length("rise", rise);
        Need.that(rise <= across, "rise", "rise %s over %s: at most as much as across", Need.mm(rise), Need.mm(across));
        double half = across / 2;
        return new SphericalCap((half * half + rise * rise) / (2 * rise), 2 * Math.atan2(rise, half));
    }

    @Override public Sample sample(Fineness fineness) {
        return rings(Rings.count(this::at, halfAngle, fineness));
    }

    /** n rings of triangles round the middle, 6n² of them. */
    public Sample rings(int n) {
        return Rings.sample(this::at, halfAngle, n);
    }

    /** Six-fold rings without the parameters. */
    public TriMesh ringMesh(int n) {
        return rings(n).mesh();
    }

    @Override public Truth truth() {
        double turned = 4 * Math.PI * Math.pow(Math.sin(halfAngle / 2), 2);
        return Truth.known(radius * radius * turned, turned, LeastSquares.onBall(halfAngle, radius));
    }

    private void at(double u, double v, double[] out) {
        out[0] = radius * Math.sin(u) * Math.cos(v);
        out[1] = radius * Math.sin(u) * Math.sin(v);
        out[2] = radius * Math.cos(u);
    }
}
