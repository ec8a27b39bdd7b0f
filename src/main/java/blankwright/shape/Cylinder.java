package blankwright.shape;

import blankwright.mesh.TriMesh;
import java.util.Arrays;

/**
 * Part or all of a round tube, the outer skin away from its axis: radius and length in mm, sweep in rad up to a full turn.
 *
 * <p>Parameters of a point: the angle round the axis, rad, and the height along it, mm. A full tube may carry flat ends with sharp corners:
 * with one it is a cup, with both closed.
 */
public record Cylinder(double radius, double length, double sweep, Ends ends) implements Panel {
    /** Which ends of a full tube are closed by a flat disc. */
    public enum Ends { NONE, ONE, BOTH }

    public Cylinder {
        Need.length("radius", radius);
        Need.length("length", length);
        Need.angle("sweep", sweep, 0, 360);
        Need.that(ends == Ends.NONE || isRound(sweep), "ends", "ends on a sweep of " + Need.degrees(sweep) + ": only a full 360 degrees takes ends");
    }

    public Cylinder(double radius, double length, double sweep) {
        this(radius, length, sweep, Ends.NONE);
    }

    @Override public Sample sample(Fineness fineness) {
        Skin skin = this::at;
        double[] us = {0, sweep}, vs = {0, length};
        if (ends == Ends.NONE) return laid(Grid.of(skin, us, vs, fineness));
        Fineness wall = fineness.triangles() == 0 ? fineness : Fineness.triangles(Math.max(2,
                (int) (fineness.triangles() * (sweep * radius * length) / truth().area())));
        return capped(Grid.of(skin, us, vs, Grid.none(us), Grid.none(vs), 6, wall));
    }

    @Override public Truth truth() {
        double wall = sweep * radius * length, disc = Math.PI * radius * radius;
        boolean round = isRound(sweep);
        return switch (ends) {
            case NONE -> Truth.developable(wall, round ? 0 : 1, round ? 2 : 1, (u, v) -> new double[] {radius * u, v});
            case ONE -> Truth.curved(wall + disc, 0, 1, 1);
            case BOTH -> Truth.curved(wall + 2 * disc, 0, 2, 0);
        };
    }

    private void at(double u, double v, double[] out) {
        out[0] = radius * Math.cos(u);
        out[1] = radius * Math.sin(u);
        out[2] = v;
    }

    private Sample laid(Grid grid) {
        if (isRound(sweep)) return grid.sample(true);
        double facet = 2 * radius * Math.sin(sweep / (grid.us().length - 1) / 2);
        return grid.sample((i, p) -> new double[] {facet * i, p[2]});
    }

    /** The tube's grid with ring meshes sewn on; the number of cells round is a multiple of six. */
    private Sample capped(Grid grid) {
        Sample tube = grid.sample(true);
        int m = grid.us().length - 1, rings = m / 6, inner = Rings.start(rings);
        int discs = ends == Ends.BOTH ? 2 : 1, wall = tube.mesh().vertexCount();
        double[] xyz = Arrays.copyOf(tube.mesh().positions(), 3 * (wall + discs * inner));
        double[] uv = new double[2 * (wall + discs * inner)];
        for (int v = 0; v < wall; v++) {
            uv[2 * v] = tube.u(v);
            uv[2 * v + 1] = tube.v(v);
        }
        int[] disc = Rings.corners(rings);
        int[] tri = Arrays.copyOf(tube.mesh().corners(), tube.mesh().corners().length + discs * disc.length);
        int at = tube.mesh().corners().length;
        for (int e = 0; e < discs; e++) {
            double z = e == 0 ? 0 : length;
            int first = wall + e * inner, rim = e == 0 ? 0 : wall - m;
            for (int k = 0, v = first; k < rings; k++) {
                for (int j = 0; j < Math.max(1, 6 * k); j++, v++) {
                    double r = radius * k / rings, angle = k == 0 ? 0 : Math.PI * j / (3 * k);
                    xyz[3 * v] = r * Math.cos(angle);
                    xyz[3 * v + 1] = r * Math.sin(angle);
                    xyz[3 * v + 2] = z;
                    uv[2 * v] = angle;
                    uv[2 * v + 1] = z;
                }
            }
            for (int i = 0; i < disc.length; i += 3) {
                for (int k = 0; k < 3; k++) {
                    int corner = disc[i + (e == 0 ? 2 - k : k)];      // the bottom looks down
                    tri[at++] = corner < inner ? first + corner : rim + corner - inner;
                }
            }
        }
        return new Sample(TriMesh.of(xyz, tri), uv, null);
    }

    static boolean isRound(double sweep) {
        return sweep >= 2 * Math.PI * (1 - 1e-12);
    }
}
