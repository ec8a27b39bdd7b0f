package blankwright.shape;

/**
 * A twisted strip, straight across and climbing waist times the angle as it turns: (sinh u sin v, -sinh u cos v, v) times waist, u from
 * low/waist to high/waist. Lengths in mm, sweep in rad. Has the same blank as the {@link Catenoid} of the same measures.
 *
 * <p>Parameters of a point: the angle v, rad, and u.
 */
public record Helicoid(double waist, double low, double high, double sweep) implements Panel {
    public Helicoid {
        Catenoid.check(waist, low, high, sweep, 1440);
    }

    @Override public Sample sample(Fineness fineness) {
        return Grid.of(this::at, new double[] {0, sweep}, new double[] {low / waist, high / waist}, fineness).sample(false);
    }

    /** m cells along the axis, n across. */
    public Sample cells(int m, int n) {
        return Grid.cells(this::at, 0, sweep, m, low / waist, high / waist, n).sample(false);
    }

    @Override public Truth truth() {
        return Catenoid.truth(waist, low / waist, high / waist, sweep);
    }

    private void at(double v, double u, double[] out) {
        out[0] = waist * Math.sinh(u) * Math.sin(v);
        out[1] = -waist * Math.sinh(u) * Math.cos(v);
        out[2] = waist * v;
    }
}
