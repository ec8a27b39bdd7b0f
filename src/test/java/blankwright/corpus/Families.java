package blankwright.corpus;

import static blankwright.corpus.Mutations.acrossDecades;
import static blankwright.corpus.Mutations.between;
import static java.lang.Math.PI;
import static java.lang.Math.toRadians;

import blankwright.mesh.Forms;
import blankwright.mesh.TriMesh;
import blankwright.mesh.repair.Repair;
import blankwright.num.Progress;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

/** The generated part of the corpus: what a shop would make, the same spoiled in many ways, and forms made to be hard. */
final class Families {
    static final List<Family> ALL = List.of(
            new Family("panels", false, 800, (i, r) -> RandomPanel.of(i, (int) acrossDecades(r, 300, 4000), r)),
            new Family("vertex noise 0.3 to 0.8 cells", false, 400, (i, r) -> Mutations.shaken(panel(i, r), between(r, 0.3, 0.8), r)),
            new Family("vertex noise 0.8 to 1.2 cells", false, 400, (i, r) -> Mutations.shaken(panel(i, r), between(r, 0.8, 1.2), r)),
            new Family("vertex noise 1.2 to 1.6 cells", false, 400, (i, r) -> Mutations.shaken(panel(i, r), between(r, 1.2, 1.6), r)),
            new Family("vertex noise 2 to 4 cells", false, 200, (i, r) -> Mutations.shaken(panel(i, r), between(r, 2, 4), r)),
            new Family("random edge flips", false, 400, (i, r) -> Mutations.flipped(panel(i, r), between(r, 0.05, 0.5), r)),
            new Family("random connectivity", false, 60,
                    (i, r) -> Mutations.flipped(RandomPanel.of(i, (int) acrossDecades(r, 100, 600), r), between(r, 1, 5), r)),
            new Family("scattered points", true, 400, (i, r) -> Mutations.scattered((int) acrossDecades(r, 200, 2500), r, skin(i, r))),
            new Family("points put into triangles", false, 200, (i, r) -> Mutations.peppered(panel(i, r), (int) between(r, 100, 1500), r)),
            new Family("slivers up to 1e6", false, 300, (i, r) ->
                    Mutations.slivered(panel(i, r), (int) between(r, 1, 400), acrossDecades(r, 10, 1e6), r)),
            new Family("needle rims", false, 100, (i, r) -> Mutations.needleRim(panel(i, r), (int) acrossDecades(r, 3, 60))),
            new Family("holes of every size", false, 400, (i, r) ->
                    Mutations.holed(panel(i, r), i % 2 == 0 ? acrossDecades(r, 1e-4, 0.9) : between(r, 0.1, 0.98), 1 + r.nextInt(40), r)),
            new Family("noise, flips, slivers and holes together", false, 300, (i, r) -> Mutations.slivered(Mutations.holed(
                    Mutations.flipped(Mutations.shaken(panel(i, r), between(r, 0.3, 1.2), r), between(r, 0.05, 0.3), r), between(r, 0, 0.4),
                    1 + r.nextInt(9), r), 20, acrossDecades(r, 10, 1e6), r)),
            new Family("nearly closed tubes", true, 60, Families::nearlyClosed),
            new Family("strips over themselves", true, 60, Families::spiral),
            new Family("cones to a needle", true, 60, Families::needle),
            new Family("spikes", true, 60, Families::spike),
            new Family("egg boxes", true, 60, Families::eggBox),
            new Family("caps up to 175 degrees", true, 60, Families::cap),
            new Family("one-ended tubes of 1 to 60 radii, uncut", true, 60, Families::oneEnded),
            new Family("combs and stars", true, 60, Families::comb),
            new Family("closed skins, opened", false, 60, Families::closed),
            new Family("zero-area triangles, mended", false, 60, Families::withoutArea),
            new Family("large", false, 6, (i, r) -> i % 2 == 0 ? RandomPanel.of(6, 60_000, r)
                    : Mutations.scattered(25_000, r, torus(330, 95, toRadians(150), toRadians(160)))));

    private Families() { }

    private static TriMesh panel(int kind, Random r) {
        return RandomPanel.of(kind, (int) acrossDecades(r, 300, 3000), r);
    }

    private static Forms.Skin torus(double ring, double tube, double sweep, double round) {
        return (u, v) -> {
            double a = sweep * (u - 0.5), b = round * (v - 0.5), q = ring + tube * Math.cos(b);
            return new double[] {q * Math.cos(a), q * Math.sin(a), tube * Math.sin(b)};
        };
    }

    /** Skins over the unit square, so that scattered points need no formula of their own. */
    private static Forms.Skin skin(int kind, Random r) {
        double a = between(r, 0.5, 2.6), b = between(r, 0.3, 2), c = between(r, 20, 140), k = between(r, 1, 4);
        return switch (kind % 5) {
            case 0 -> torus(330, c, a, b);
            case 1 -> (u, v) -> new double[] {300 * Math.sin(a * (u - 0.5)) * Math.cos(b * (v - 0.5)), 300 * Math.sin(b * (v - 0.5)),
                    300 * Math.cos(a * (u - 0.5)) * Math.cos(b * (v - 0.5))};
            case 2 -> (u, v) -> new double[] {300 * u, 300 * v, c / 4 * Math.sin(2 * k * u) * Math.cos(2 * k * v)};
            case 3 -> (u, v) -> new double[] {300 * u, 300 * v, c * 4 * (u - 0.5) * (v - 0.5)};
            default -> (u, v) -> new double[] {300 * u, 300 * v, 2 * c * Math.exp(-40 * ((u - 0.5) * (u - 0.5) + (v - 0.5) * (v - 0.5)))};
        };
    }

    /** Sweeps of 359 degrees and more, as a tube, a cone, or the outer or inner half of a ring. */
    private static TriMesh nearlyClosed(int i, Random r) {
        double open = acrossDecades(r, 1e-6, 1), sweep = 2 * PI - toRadians(open), radius = between(r, 30, 200), height = between(r, 20, 900);
        int round = (int) between(r, 24, 90), along = (int) between(r, 4, 40);
        double taper = i % 3 == 1 ? between(r, 0.1, 0.9) : 1;
        if (i % 3 == 2) return Forms.grid(round, along, false, false, torus(3 * radius, radius, sweep, toRadians(between(r, 20, 200))));
        return Forms.grid(round, along, false, false, (u, v) -> {
            double q = radius * (1 + (taper - 1) * v);
            return new double[] {q * Math.cos(sweep * u), q * Math.sin(sweep * u), height * v};
        });
    }

    /** A strip that winds round on nearly the same level, 300 degrees to three turns: flat it lies over itself. */
    private static TriMesh spiral(int i, Random r) {
        double sweep = toRadians(between(r, 300, 1080)), inner = between(r, 30, 200), width = between(r, 10, 150), rise = between(r, 0, 20);
        double bow = i % 2 == 0 ? 0 : between(r, 0.05, 0.4) * width;
        return Forms.grid((int) between(r, 40, 160), (int) between(r, 3, 16), false, false, (u, v) -> {
            double q = inner + width * v, a = sweep * u;
            return new double[] {-q * Math.cos(a), q * Math.sin(a), rise * u + bow * 4 * v * (1 - v)};
        });
    }

    private static TriMesh needle(int i, Random r) {
        double half = toRadians(acrossDecades(r, 0.2, 60));
        int rings = (int) between(r, 8, 26);
        return disk(rings, (s, a) -> new double[] {100 * s * Math.sin(half) * Math.cos(a), 100 * s * Math.sin(half) * Math.sin(a),
                -100 * s * Math.cos(half)});
    }

    private static TriMesh spike(int i, Random r) {
        double height = acrossDecades(r, 0.3, 8), width = acrossDecades(r, 0.03, 0.3);
        int n = (int) between(r, 14, 40);
        return Forms.grid(n, n, false, false, (u, v) -> {
            double d = ((u - 0.5) * (u - 0.5) + (v - 0.5) * (v - 0.5)) / (width * width);
            return new double[] {100 * u, 100 * v, 100 * height * Math.exp(-d)};
        });
    }

    private static TriMesh eggBox(int i, Random r) {
        double height = acrossDecades(r, 0.02, 0.6), waves = between(r, 1, 8);
        int n = (int) between(r, 20, 46);
        return Forms.grid(n, n, false, false, (u, v) ->
                new double[] {100 * u, 100 * v, 100 * height * Math.sin(2 * PI * waves * u) * Math.sin(2 * PI * waves * v)});
    }

    private static TriMesh cap(int i, Random r) {
        double half = toRadians(60 + 115.0 * i / 59);
        return disk((int) between(r, 8, 26), (s, a) -> new double[] {100 * Math.sin(half * s) * Math.cos(a), 100 * Math.sin(half * s) * Math.sin(a),
                100 * Math.cos(half * s)});
    }

    /** Closed by a flat end or a half ball, or pinched to nothing. */
    private static TriMesh oneEnded(int i, Random r) {
        double length = 1 + 59.0 * i / 59;
        double closed = i % 2 == 0 ? 1 : PI / 2, whole = closed + length;
        int rings = Math.min(60, (int) (whole * between(r, 1, 4)) + 6), round = (int) between(r, 10, 24);
        return disk(rings, round, (s, a) -> {
            double d = s * whole, q = d >= closed ? 1 : closed == 1 ? d : Math.sin(d);
            double z = d >= closed ? -1 - (d - closed) : closed == 1 ? -1 : Math.cos(d) - 1;
            return new double[] {20 * q * Math.cos(a), 20 * q * Math.sin(a), 20 * z};
        });
    }

    /** Long fingers on a bowed sheet, or a star of them: the circle has no room for what they need. */
    private static TriMesh comb(int i, Random r) {
        int fingers = (int) between(r, 3, 15), n = 4 * fingers, m = (int) between(r, 10, 60);
        double bow = between(r, 0, 60), length = between(r, 50, 600);
        if (i % 2 == 0) {
            TriMesh sheet = Forms.grid(n, m, false, false, (u, v) -> new double[] {100 * u, length * v, bow * u * (1 - u) * Math.cos(3 * v)});
            return Mutations.largest(Forms.without(sheet, t -> t / 2 / n > 2 && t / 2 % n % 4 == 3));
        }
        TriMesh star = disk(m, 4 * fingers, (s, a) -> new double[] {length * s * Math.cos(a), length * s * Math.sin(a), bow * s * s});
        return Mutations.largest(Forms.without(star, t -> t > 30 * fingers && (t - 4 * fingers) / 2 % 4 == 3));
    }

    private static TriMesh closed(int i, Random r) {
        return switch (i % 4) {
            case 0 -> Mutations.shaken(Forms.sphere(100, 3), between(r, 0, 0.7), r);
            case 1 -> Mutations.shaken(Forms.torus(between(r, 60, 200), between(r, 10, 50), (int) between(r, 12, 50), (int) between(r, 8, 30)),
                    between(r, 0, 0.7), r);
            case 2 -> Forms.cube((int) between(r, 2, 12));
            default -> Mutations.largest(Forms.cells(Forms.randomCells((int) between(r, 3, 7), between(r, 0.2, 0.6), r.nextLong())));
        };
    }

    /** Triangles squeezed to a point or a line at random, then mended as any file is. */
    private static TriMesh withoutArea(int i, Random r) {
        TriMesh mesh = panel(i, r);
        double[] xyz = mesh.positions();
        for (int k = (int) between(r, 1, mesh.triangleCount() / 20.0); k > 0; k--) {
            int t = r.nextInt(mesh.triangleCount()), a = mesh.corner(t, 0), b = mesh.corner(t, 1), c = mesh.corner(t, 2);
            double s = i % 2 == 0 ? 0 : r.nextDouble();
            for (int d = 0; d < 3; d++) xyz[3 * c + d] = xyz[3 * a + d] + s * (xyz[3 * b + d] - xyz[3 * a + d]);
        }
        return Mutations.largest(Repair.of(xyz, mesh.corners(), Progress.NONE).mesh());
    }

    /** Rings of 6, 12, 18 ... vertices round a middle; {@code skin} is given 0..1 from the middle out and the angle. */
    private static TriMesh disk(int rings, Forms.Skin skin) {
        int n = 1 + 3 * rings * (rings + 1);
        double[] xyz = new double[3 * n];
        System.arraycopy(skin.at(0, 0), 0, xyz, 0, 3);
        int[] tri = new int[18 * rings * rings];
        for (int ring = 1, v = 1; ring <= rings; ring++)
            for (int k = 0; k < 6 * ring; k++, v++) System.arraycopy(skin.at((double) ring / rings, 2 * PI * k / (6 * ring)), 0, xyz, 3 * v, 3);
        int at = 0;
        for (int ring = 1; ring <= rings; ring++) {
            int out = 1 + 3 * ring * (ring - 1), in = ring == 1 ? 0 : 1 + 3 * (ring - 1) * (ring - 2), inner = Math.max(1, 6 * (ring - 1));
            for (int side = 0; side < 6; side++)
                for (int k = 0; k < ring; k++) {
                    int o = side * ring + k, p = side * (ring - 1) + k;
                    for (int w : new int[] {out + o, out + (o + 1) % (6 * ring), in + p % inner}) tri[at++] = w;
                    if (k < ring - 1) for (int w : new int[] {out + (o + 1) % (6 * ring), in + (p + 1) % inner, in + p % inner}) tri[at++] = w;
                }
        }
        return TriMesh.of(xyz, Arrays.copyOf(tri, at));
    }

    /** The same number of vertices on every ring. */
    private static TriMesh disk(int rings, int round, Forms.Skin skin) {
        double[] xyz = new double[3 * (1 + rings * round)];
        System.arraycopy(skin.at(0, 0), 0, xyz, 0, 3);
        int[] tri = new int[3 * round * (2 * rings - 1)];
        int at = 0;
        for (int ring = 0; ring < rings; ring++)
            for (int k = 0; k < round; k++) {
                int a = 1 + ring * round + k, b = 1 + ring * round + (k + 1) % round;
                System.arraycopy(skin.at((ring + 1.0) / rings, 2 * PI * k / round), 0, xyz, 3 * a, 3);
                int[] two = ring == 0 ? new int[] {0, a, b} : new int[] {a - round, a, b, a - round, b, b - round};
                System.arraycopy(two, 0, tri, at, two.length);
                at += two.length;
            }
        return TriMesh.of(xyz, tri);
    }
}
