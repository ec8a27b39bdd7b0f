package blankwright.shape;

import blankwright.mesh.TriMesh;

/**
 * A mudguard: part of a ring-shaped tube, the metal on the tube's outside. Ring (wheel axle to the middle of the tube) and tube radius in mm,
 * sweep round the ring and round the tube in rad.
 *
 * <p>{@code tilt} turns the middle of the round: 0 looks away from the axle as a mudguard does, 180 degrees towards it, where the skin is a
 * saddle. Parameters of a point: the angle round the ring and the angle round the tube from the outermost line, rad.
 */
public record TorusSection(double ring, double tube, double sweep, double round, double tilt) implements Panel {
    public TorusSection {
        Need.length("ring", ring);
        Need.length("tube", tube);
        Need.angle("sweep", sweep, 0, 360);
        Need.angle("round", round, 0, 359);
        Need.angle("tilt", tilt, -180.001, 180);
        Need.that(tube < ring, "tube", "tube %s in a ring of %s: must be smaller than the ring", Need.mm(tube), Need.mm(ring));
    }

    public TorusSection(double ring, double tube, double sweep, double round) {
        this(ring, tube, sweep, round, 0);
    }

    /**
     * The regular grid used for timing: n by n cells with 2n² triangles as near as possible to the count (10 082, 100 352, 500 000, ...).
     *
     * @param sweep round the ring, rad; @param round round the tube, rad; radii in mm
     */
    public static TriMesh grid(double sweep, double round, double ring, double tube, int triangles) {
        int n = (int) Math.max(1, Math.round(Math.sqrt(triangles / 2.0)));
        return new TorusSection(ring, tube, sweep, round).cells(n, n).mesh();
    }

    /** m cells round the ring, n round the tube. */
    public Sample cells(int m, int n) {
        return Grid.cells(this::at, 0, sweep, m, low(), low() + round, n).sample(Cylinder.isRound(sweep));
    }

    @Override public Sample sample(Fineness fineness) {
        return Grid.of(this::at, new double[] {0, sweep}, new double[] {low(), low() + round}, fineness).sample(Cylinder.isRound(sweep));
    }

    @Override public Truth truth() {
        double turned = Math.sin(low() + round) - Math.sin(low());
        boolean closed = Cylinder.isRound(sweep);
        return Truth.curved(tube * sweep * (ring * round + tube * turned), sweep * turned, closed ? 0 : 1, closed ? 2 : 1);
    }

    private double low() {
        return tilt - round / 2;
    }

    private void at(double u, double v, double[] out) {
        double r = ring + tube * Math.cos(v);
        out[0] = r * Math.cos(u);
        out[1] = r * Math.sin(u);
        out[2] = tube * Math.sin(v);
    }
}
