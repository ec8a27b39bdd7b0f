package blankwright.shape;

/**
 * A waisted skin, the outer side away from its axis: ρ = waist cosh(z/waist) between two heights, swept round the axis. Lengths in mm, sweep in
 * rad. It bends without strain into the {@link Helicoid} of the same measures, so both have the same blank.
 *
 * <p>Parameters of a point: the angle v round the axis, rad, and u = z/waist.
 * <p>Source: do Carmo, "Differential Geometry of Curves and Surfaces", 4-2 [from memory]; docs/sources.md [dC76].
 */
public record Catenoid(double waist, double low, double high, double sweep) implements Panel {
    public Catenoid {
        check(waist, low, high, sweep, 350);
    }

    @Override public Sample sample(Fineness fineness) {
        return Grid.of(this::at, new double[] {0, sweep}, new double[] {low / waist, high / waist}, fineness).sample(false);
    }

    /** m cells round the axis, n along it. */
    public Sample cells(int m, int n) {
        return Grid.cells(this::at, 0, sweep, m, low / waist, high / waist, n).sample(false);
    }

    @Override public Truth truth() {
        return truth(waist, low / waist, high / waist, sweep);
    }

    static void check(double waist, double low, double high, double sweep, double mostDegrees) {
        Need.length("waist", waist);
        Need.angle("sweep", sweep, 0, mostDegrees);
        Need.that(low < high, "low", "low %s: must be below high, %s", Need.mm(low), Need.mm(high));
        Need.that(low >= -4 * waist, "low", "low %s: at most 4 waists below 0", Need.mm(low));
        Need.that(high <= 4 * waist, "high", "high %s: at most 4 waists above 0", Need.mm(high));
    }

    /** dA = waist² cosh²u du dv, K dA = -du dv / cosh²u. */
    static Truth truth(double waist, double u0, double u1, double sweep) {
        double area = waist * waist * sweep * ((u1 - u0) / 2 + (Math.sinh(2 * u1) - Math.sinh(2 * u0)) / 4);
        return Truth.curved(area, -sweep * (Math.tanh(u1) - Math.tanh(u0)), 1, 1);
    }

    private void at(double v, double u, double[] out) {
        out[0] = waist * Math.cosh(u) * Math.cos(v);
        out[1] = waist * Math.cosh(u) * Math.sin(v);
        out[2] = waist * u;
    }
}
