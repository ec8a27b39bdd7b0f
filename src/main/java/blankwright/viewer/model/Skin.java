package blankwright.viewer.model;

import blankwright.job.Buckled;
import blankwright.job.Piece;
import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.mesh.query.NearestPoint;
import blankwright.mesh.query.SkinPoint;
import blankwright.picture.WorkField;
import blankwright.shop.Judge;
import blankwright.strain.VertexStrain;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/** One piece of the blank with what the screen asks of it: its colours, the place under a pointer, the numbers of a place. */
public final class Skin {
    /** Part of the forming limit beyond which nothing more need be told. */
    private static final double MOST = 10;

    private final Piece piece;
    private final Optional<Judge> judge;
    private final Map<MapKind, Painting> paintings = new EnumMap<>(MapKind.class);
    private final double[] thicknessLeft, crown;
    private final NearestPoint onBlank;

    private Skin(Piece piece, WorkField field, Optional<Judge> judge) {
        this.piece = piece;
        this.judge = judge;
        FlatMap map = piece.map();
        int n = map.form().vertexCount();
        thicknessLeft = new double[n];
        crown = new double[n];
        int[] before = piece.opened().vertexOf();
        for (int v = 0; v < n; v++) {
            thicknessLeft[v] = Math.exp(piece.vertices().thicknessStrain(v));
            crown[v] = piece.curvature().gaussian(before[v]);
        }
        double[] degrees = new double[n];
        for (int v = 0; v < n; v++) degrees[v] = Math.toDegrees(crown[v] * 1e4);
        paintings.put(MapKind.WORK, Painting.of(field));
        paintings.put(MapKind.THICKNESS, Painting.of(map, thicknessLeft));
        paintings.put(MapKind.CURVATURE, Painting.of(map, degrees));
        if (judge.isPresent()) {
            paintings.put(MapKind.LIMIT, Painting.of(map, used(piece.vertices(), judge.get(), n)));
        }
        piece.buckled().ifPresent(b -> paintings.put(MapKind.BUCKLING, Painting.of(map, b.pressed(map.form()))));
        onBlank = NearestPoint.on(map);
    }

    /** Part of the forming limit used at each of n vertices. */
    static double[] used(VertexStrain strain, Judge judge, int n) {
        double[] used = new double[n];
        for (int v = 0; v < n; v++) used[v] = Math.min(MOST, judge.limit().margin(strain.strain1(v), strain.strain2(v)));
        return used;
    }

    /** @param judge where metal and thickness are known */
    static Skin of(Piece piece, WorkField field, Optional<Judge> judge) {
        return new Skin(piece, field, judge);
    }

    public Piece piece() {
        return piece;
    }

    public FlatMap map() {
        return piece.map();
    }

    /**
     * Its triangles with the numbers of a map: strain; part of the thickness left; degrees of crown in a square of 100 mm; part of the
     * forming limit used; part of the strain it bears unworked. Null for the last two where they are not known.
     */
    public Painting painting(MapKind kind) {
        return paintings.get(kind);
    }

    /** The place of the blank at (u, v); empty beside it, farther than {@code reach} mm. */
    Optional<SkinPoint> onBlank(double u, double v, double reach) {
        SkinPoint near = nearest(u, v);
        double[] there = near.on(map());
        return Math.hypot(there[0] - u, there[1] - v) <= Math.max(reach, 1e-6) ? Optional.of(near) : Optional.empty();
    }

    /** The place of the blank nearest to (u, v). */
    SkinPoint nearest(double u, double v) {
        return onBlank.to(u, v, 0);
    }

    /** The number of a map at a place. */
    double value(MapKind kind, SkinPoint at) {
        if (kind == MapKind.WORK) return numbers(at).most();
        Painting painting = paintings.get(kind);
        TriMesh form = map().form();
        return mixed(at, painting.value(form.corner(at.triangle(), 0)), painting.value(form.corner(at.triangle(), 1)),
                painting.value(form.corner(at.triangle(), 2)));
    }

    Numbers numbers(SkinPoint at) {
        VertexStrain strain = piece.vertices();
        TriMesh form = map().form();
        int a = form.corner(at.triangle(), 0), b = form.corner(at.triangle(), 1), c = form.corner(at.triangle(), 2);
        double uu = mixed(at, strain.strainUu(a), strain.strainUu(b), strain.strainUu(c));
        double uv = mixed(at, strain.strainUv(a), strain.strainUv(b), strain.strainUv(c));
        double vv = mixed(at, strain.strainVv(a), strain.strainVv(b), strain.strainVv(c));
        double m = (uu + vv) / 2, r = Math.hypot((uu - vv) / 2, uv), angle = Math.atan2(2 * uv, uu - vv) / 2;
        boolean stretched = m >= 0;
        double most = Math.expm1(stretched ? m + r : m - r), across = Math.expm1(stretched ? m - r : m + r);
        if (!stretched) angle += angle > 0 ? -Math.PI / 2 : Math.PI / 2;
        double[] flat = at.on(map());
        return new Numbers(flat[0], flat[1], at.on(form), form.normal(at.triangle()), most, across, angle, Math.exp(-2 * m),
                mixed(at, crown[a], crown[b], crown[c]), piece.zones().at(at.triangle()), judge.map(j -> j.of(m + r, m - r)));
    }

    private static double mixed(SkinPoint at, double p, double q, double r) {
        return at.a() * p + at.b() * q + at.c() * r;
    }
}
