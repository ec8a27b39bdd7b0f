package blankwright.outline;

/** Distance between a polygon and a curve by walking both in small steps: the dull way. */
final class TwoSided {
    private static final int STEPS = 7;

    private TwoSided() { }

    static double distance(double[] polygon, boolean closed, Curve curve) {
        return Math.max(fromPolygonToCurve(polygon, closed, curve), fromCurveToPolygon(curve, polygon, closed));
    }

    static double fromPolygonToCurve(double[] p, boolean closed, Curve curve) {
        double most = 0;
        int n = p.length / 2;
        for (int i = 0; i < (closed ? n : n - 1); i++) {
            int j = (i + 1) % n;
            for (int k = 0; k <= STEPS; k++) {
                double t = (double) k / STEPS;
                most = Math.max(most, curve.distance(p[2 * i] + t * (p[2 * j] - p[2 * i]), p[2 * i + 1] + t * (p[2 * j + 1] - p[2 * i + 1])));
            }
        }
        return most;
    }

    static double fromCurveToPolygon(Curve curve, double[] p, boolean closed) {
        Curve sides = closed ? Curve.polygon(p) : Curve.path(p);
        double step = curve.length() / 2000, most = 0;
        for (int i = 0; i < curve.segmentCount(); i++) {
            int parts = (int) Math.ceil(curve.length(i) / step) + 1;
            for (int k = 0; k <= parts; k++) {
                double t = (double) k / parts, x = curve.x(i) + t * (curve.x(i + 1) - curve.x(i)), y = curve.y(i) + t * (curve.y(i + 1) - curve.y(i));
                if (curve.isArc(i)) {
                    x = curve.centreForm(i).x(t);
                    y = curve.centreForm(i).y(t);
                }
                most = Math.max(most, sides.distance(x, y));
            }
        }
        return most;
    }
}
