package blankwright.job;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import blankwright.mesh.reduce.Reduce;
import blankwright.metal.Alloy;
import blankwright.metal.buckling.CriticalStrain;
import blankwright.metal.buckling.FacetStrain;
import blankwright.metal.buckling.OilCan;
import blankwright.metal.buckling.RimWaves;
import blankwright.metal.buckling.Sheet;
import blankwright.metal.buckling.Tuck;
import blankwright.metal.buckling.UnworkedBlank;
import blankwright.metal.buckling.UnworkedForce;
import blankwright.num.Progress;
import blankwright.num.Share;
import blankwright.project.Clamps;
import blankwright.strain.Curvature;
import blankwright.strain.StrainField;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;

/**
 * What a piece does if its blank is bent onto the form without being worked, and what it will do once made.
 *
 * @param map the strain at which each place gives way, against what it would have to bear
 * @param waves of the first mode along each rim; empty where it never buckles
 * @param oilCan of the finished panel, its seams closed, held all round
 */
public record Buckled(UnworkedBlank blank, CriticalStrain map, Optional<RimWaves> waves, Optional<OilCan> oilCan) {
    /** More triangles than that would take minutes and gigabytes. */
    static final int MOST_TRIANGLES = 120_000;
    private static final double MOST_TIMES = 10;     // beyond, a place gives way whatever the number
    private static final double FAR = 100;          // times the strain it misses
    private static final double CALM = 0.05;        // of the largest compressive strain

    /** Triangles to which the finished panel is thinned out, where it has more: each of some dozen pressures takes a factor. */
    private static final int MOST_PRESSED = 6_000;
    private static final int LEAST_PRESSED = 2_000;
    private static final double AT = 0.9;           // of the whole run, while it is thinned out
    private static final double STRAY = 0.2;        // of the thickness, by which the thinned panel may leave the form

    /** @param sewn the form with its seams closed */
    static Buckled of(StrainField strain, TriMesh sewn, Alloy alloy, double thickness, Clamps clamps, Progress progress) {
        BooleanSupplier cancelled = progress::cancelled;
        TriMesh form = strain.map().form();
        Sheet sheet = sheet(alloy, thickness);
        int n = form.triangleCount();
        double[] larger = new double[n], smaller = new double[n], direction = new double[3 * n];
        for (int t = 0; t < n; t++) {
            larger[t] = strain.strain1(t);
            smaller[t] = strain.strain2(t);
            direction[3 * t] = strain.directionX(t);
            direction[3 * t + 1] = strain.directionY(t);
            direction[3 * t + 2] = strain.directionZ(t);
        }
        double[] missing = FacetStrain.of(form, larger, smaller, direction);
        UnworkedForce force = UnworkedForce.of(form, missing, 1, Sheet.elastic(sheet.youngs(), sheet.poisson(), thickness), cancelled);
        boolean[] atRim = atRim(form), nothingIsCalm = new boolean[form.vertexCount()];
        CriticalStrain map = CriticalStrain.of(form, force.force(), sheet, held(clamps, form, atRim, nothingIsCalm));
        UnworkedBlank blank = UnworkedBlank.of(force, sheet, held(clamps, form, atRim, calm(form, map)), cancelled);
        Optional<RimWaves> waves = blank.modes().isEmpty() ? Optional.empty()
                : Optional.of(RimWaves.of(form, blank.modes().get(0).displacement(), missing));
        return new Buckled(blank, map, waves, oilCan(sewn, sheet, progress));
    }

    private static Optional<OilCan> oilCan(TriMesh sewn, Sheet sheet, Progress progress) {
        Curvature curvature = Curvature.of(sewn);
        double whole = (curvature.positive() + curvature.negative()) / sewn.area();
        Optional<OilCan> can = OilCan.of(sewn, whole, atRim(sewn), sheet);
        if (can.isEmpty()) return can;
        int enough = Math.min(MOST_PRESSED, Math.max(LEAST_PRESSED, 2 * can.get().triangles(sewn, sheet)));
        TriMesh panel = sewn.triangleCount() <= enough ? sewn
                : Reduce.of(sewn, STRAY * sheet.thickness(), enough, new Share(progress, AT, AT)).mesh();
        if (panel.triangleCount() > 2 * MOST_PRESSED) return can;
        return Optional.of(can.get().computed(panel, atRim(panel), sheet, progress::cancelled));
    }

    /** What buckling asks of an alloy; a law that does not harden keeps a hundredth, so that some stiffness is left. */
    private static Sheet sheet(Alloy alloy, double thickness) {
        return new Sheet(alloy.young().value(), alloy.poisson().value(), alloy.yieldStress().value(),
                Math.max(0.01, alloy.hardening().value()), thickness);
    }

    /** Vertices none of whose triangles is pressed together by more than a little of the most. */
    private static boolean[] calm(TriMesh form, CriticalStrain map) {
        double most = 0;
        for (int t = 0; t < map.triangleCount(); t++) most = Math.max(most, map.required(t));
        boolean[] calm = new boolean[form.vertexCount()];
        Arrays.fill(calm, true);
        for (int t = 0; t < map.triangleCount(); t++)
            for (int k = 0; k < 3; k++) if (map.required(t) > CALM * most) calm[form.corner(t, k)] = false;
        return calm;
    }

    /** Whether a place of the recipe holds any vertex of the form. */
    static boolean holdsAny(List<Clamps.Spot> spots, TriMesh form) {
        boolean[] none = new boolean[form.vertexCount()];
        for (boolean held : held(new Clamps(false, false, spots), form, none, none)) if (held) return true;
        return false;
    }

    private static boolean[] held(Clamps clamps, TriMesh form, boolean[] atRim, boolean[] calm) {
        boolean[] held = new boolean[form.vertexCount()];
        for (int v = 0; v < held.length; v++) {
            held[v] = clamps.rims() && atRim[v] || clamps.calm() && calm[v];
            for (Clamps.Spot spot : clamps.spots()) {
                double dx = form.x(v) - spot.x(), dy = form.y(v) - spot.y(), dz = form.z(v) - spot.z();
                held[v] |= dx * dx + dy * dy + dz * dz <= spot.radius() * spot.radius();
            }
        }
        return held;
    }

    private static boolean[] atRim(TriMesh form) {
        RimLoops rims = RimLoops.of(form, EdgeTable.of(form));
        boolean[] at = new boolean[form.vertexCount()];
        for (int i = 0; i < rims.count(); i++) for (int v : rims.loop(i)) at[v] = true;
        return at;
    }

    /** Whether the sheet gives way before it lies on the form. */
    public boolean buckles() {
        return blank.loadFactor() < 1;
    }

    /** Whether it would take more strain than any panel misses: how it gives way then is nothing to draw. */
    public boolean standsByFar() {
        return blank.loadFactor() > FAR;
    }

    public List<Tuck> tucks() {
        return buckles() ? waves.map(RimWaves::tucks).orElse(List.of()) : List.of();
    }

    /**
     * Largest strain borne over that at which a place gives way, and its triangle: {ratio, triangle}; {0, -1} where nothing is compressed.
     */
    public double[] worst() {
        double[] worst = {0, -1};
        for (int t = 0; t < map.triangleCount(); t++) if (map.ratio(t) > worst[0]) worst = new double[] {map.ratio(t), t};
        return worst;
    }

    /** How many times what it bears each vertex is pressed together, averaged by area, up to {@value #MOST_TIMES}. */
    public double[] pressed(TriMesh form) {
        double[] sum = new double[form.vertexCount()], area = new double[sum.length];
        for (int t = 0; t < form.triangleCount(); t++) {
            double a = form.area(t), ratio = Math.min(MOST_TIMES, map.ratio(t));
            for (int k = 0; k < 3; k++) {
                sum[form.corner(t, k)] += a * ratio;
                area[form.corner(t, k)] += a;
            }
        }
        for (int v = 0; v < sum.length; v++) if (area[v] > 0) sum[v] /= area[v];
        return sum;
    }
}
