package blankwright.shop;

import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.metal.FormingLimit;
import blankwright.strain.StrainField;
import blankwright.strain.VertexStrain;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * What the forming asks of the metal of one piece: margin and effective strain of every triangle, and of every zone its verdict.
 *
 * <p>A zone is judged at the places of it where one thing is most, from the strain averaged to the vertices: margin to the forming limit, effective
 * strain, thinning, stretch, shrink. The hardest judgement counts for the zone. A zone that is left alone springs in, whatever its numbers.
 */
public final class Demand {
    private final FormingLimit limit;
    private final double[] margin, effective;       // per triangle
    private final List<OfZone> zones;

    /**
     * What one zone asks.
     *
     * @param judgement the hardest of its places
     * @param at that place
     * @param margin the largest of its places, see {@link Judgement#margin}
     * @param effective the largest of its places, true strain
     * @param thinnest mm
     */
    public record OfZone(Zone zone, Judgement judgement, Spot at, double margin, double effective, double thinnest) { }

    private Demand(FormingLimit limit, double[] margin, double[] effective, List<OfZone> zones) {
        this.limit = limit;
        this.margin = margin;
        this.effective = effective;
        this.zones = zones;
    }

    public static Demand of(StrainField field, VertexStrain strain, Zones zones, Judge judge) {
        int n = field.triangleCount();
        double[] margin = new double[n], effective = new double[n];
        IntStream.range(0, n).parallel().filter(t -> !field.degenerate(t)).forEach(t -> {
            margin[t] = judge.limit().margin(field.strain1(t), field.strain2(t));
            effective[t] = judge.limit().alloy().sheet().effective(field.strain1(t), field.strain2(t));
        });
        return new Demand(judge.limit(), margin, effective, new Judging(field.map(), strain, zones, judge).zones());
    }

    public FormingLimit limit() {
        return limit;
    }

    /** Of triangle t, see {@link Judgement#margin}; 0 where it has no area. */
    public double margin(int t) {
        return margin[t];
    }

    /** Effective true strain of triangle t. */
    public double effective(int t) {
        return effective[t];
    }

    /** One for each zone, in their order. */
    public List<OfZone> zones() {
        return zones;
    }

    /** The zone nearest to its forming limit, or of those the one worked most; null where there is no zone. */
    public OfZone worst() {
        return zones.stream().max(Comparator.comparingDouble(OfZone::margin).thenComparingDouble(OfZone::effective)).orElse(null);
    }

    /** The zones with the verdicts of this metal. */
    public Zones judged(Zones plain) {
        return plain.withVerdicts(zones.stream().map(z -> z.judgement.verdict()).toList());
    }

    /** Finds the places to judge. */
    private static final class Judging {
        private static final int MARGIN = 0, EFFECTIVE = 1, THINNING = 2, STRETCH = 3, SHRINK = 4, KINDS = 5;

        private final FlatMap map;
        private final VertexStrain strain;
        private final Zones zones;
        private final Judge judge;

        Judging(FlatMap map, VertexStrain strain, Zones zones, Judge judge) {
            this.map = map;
            this.strain = strain;
            this.zones = zones;
            this.judge = judge;
        }

        List<OfZone> zones() {
            TriMesh form = map.form();
            double[][] amount = new double[form.vertexCount()][];
            int[][] corner = new int[zones.list().size()][KINDS];
            double[][] most = new double[corner.length][KINDS];
            for (double[] row : most) Arrays.fill(row, Double.NEGATIVE_INFINITY);
            for (int c = 0; c < 3 * form.triangleCount(); c++) {
                int v = form.corner(c / 3, c % 3), z = zones.zoneOf(c / 3) - 1;
                if (amount[v] == null) amount[v] = amounts(v);
                for (int k = 0; k < KINDS; k++) {
                    if (amount[v][k] <= most[z][k]) continue;
                    most[z][k] = amount[v][k];
                    corner[z][k] = c;
                }
            }
            List<OfZone> out = new ArrayList<>();
            for (int z = 0; z < corner.length; z++) out.add(zone(zones.list().get(z), corner[z], most[z]));
            return List.copyOf(out);
        }

        private double[] amounts(int v) {
            double e1 = strain.strain1(v), e2 = strain.strain2(v);
            return new double[] {judge.limit().margin(e1, e2), judge.limit().alloy().sheet().effective(e1, e2), e1 + e2, e1, -e2};
        }

        private OfZone zone(Zone zone, int[] corners, double[] most) {
            Judgement hardest = null;
            int at = 0;
            for (int c : Arrays.stream(corners).distinct().toArray()) {
                int v = map.form().corner(c / 3, c % 3);
                Judgement here = judge.of(strain.strain1(v), strain.strain2(v));
                if (hardest != null && HARDER.compare(here, hardest) <= 0) continue;
                hardest = here;
                at = c;
            }
            if (zone.instruction() == Instruction.LEAVE) hardest = hardest.withVerdict(Verdict.SPRINGS_IN);
            return new OfZone(zone, hardest, Spot.of(map, at / 3, at % 3), most[MARGIN], most[EFFECTIVE],
                    judge.thickness() * Math.exp(-most[THINNING]));
        }

        private static final Comparator<Judgement> HARDER = Comparator.comparing(Judgement::verdict).thenComparingInt(Judgement::annealings)
                .thenComparingDouble(j -> Math.max(1, j.margin())).thenComparingDouble(Judgement::effective);
    }
}
