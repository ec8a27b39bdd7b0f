package blankwright.shop;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import blankwright.mesh.query.EdgeCost;
import blankwright.mesh.query.EdgeStars;
import blankwright.mesh.query.Wavefront;
import java.util.List;

/**
 * What shrinking and stretching cost at each place of a form: the cheapest of the tools that get there, and the lean of the worker.
 *
 * <p>A tool gets to a triangle when the mean of its corners' distances from the nearest free edge is within its reach. Distances run along
 * the edges of the mesh, so they come out up to a few percent too long, and a reach too short rather than too far. Where no tool gets,
 * the strain costs {@value #BEYOND}, which leaves it only what the form cannot do without.
 * <p>A lean of x towards stretching, 0 to 1, multiplies the cost of shrinking by {@value #BEYOND} to the power x; towards shrinking the other.
 */
public final class Reach {
    /** Cost at which a strain all but vanishes: below 0.01 % where it is free to go elsewhere. */
    static final double BEYOND = 1e4;

    private final List<Tool> tools;
    private final double[] distance;
    private final int[] shrinks, stretches;        // per triangle, the tool's number or -1
    private final double lean;

    private Reach(List<Tool> tools, double[] distance, double lean) {
        this.tools = List.copyOf(tools);
        this.distance = distance;
        this.lean = lean;
        shrinks = cheapest(Instruction.SHRINK);
        stretches = cheapest(Instruction.STRETCH);
    }

    /**
     * @param form every vertex connected to a rim
     * @param tools none: whatever is needed can be done anywhere
     * @param lean -1 all shrinking, 0 whatever is less work, +1 all stretching
     */
    public static Reach of(TriMesh form, List<Tool> tools, double lean) {
        if (!(lean >= -1 && lean <= 1)) throw new IllegalArgumentException("lean " + lean + ": must be -1 to 1");
        return new Reach(tools, distances(form), lean);
    }

    /** Mean distance of each triangle's corners from the nearest rim along edges, mm. */
    private static double[] distances(TriMesh form) {
        EdgeTable edges = EdgeTable.of(form);
        Wavefront front = new Wavefront(form, EdgeStars.of(form, edges), Wavefront.costs(edges.edgeCount(), EdgeCost.length(edges)));
        RimLoops rims = RimLoops.of(form, edges);
        for (int i = 0; i < rims.count(); i++) for (int v : rims.loop(i)) front.start(v);
        front.run();
        double[] distance = new double[form.triangleCount()];
        for (int t = 0; t < distance.length; t++)
            for (int k = 0; k < 3; k++) distance[t] += front.distance(form.corner(t, k)) / 3;
        return distance;
    }

    private int[] cheapest(Instruction what) {
        int[] chosen = new int[distance.length];
        for (int t = 0; t < chosen.length; t++) {
            chosen[t] = -1;
            for (int i = 0; i < tools.size(); i++) {
                Tool tool = tools.get(i);
                if (tool.does() == what && distance[t] <= tool.reach() && (chosen[t] < 0 || tool.cost() < tools.get(chosen[t]).cost())) chosen[t] = i;
            }
        }
        return chosen;
    }

    public List<Tool> tools() {
        return tools;
    }

    /** Of triangle t from the nearest free edge, mm. */
    public double distance(int t) {
        return distance[t];
    }

    /** Number of the tool that does it at triangle t, -1 where none does; also where no tools are given at all. */
    public int tool(Instruction what, int t) {
        return (what == Instruction.SHRINK ? shrinks : stretches)[t];
    }

    /** Per triangle, what stretching costs there. */
    public double[] stretchCosts() {
        return costs(stretches, -lean);
    }

    /** Per triangle, what shrinking costs there. */
    public double[] shrinkCosts() {
        return costs(shrinks, lean);
    }

    private double[] costs(int[] tool, double away) {
        double[] costs = new double[tool.length];
        double leant = Math.pow(BEYOND, Math.max(0, away));
        for (int t = 0; t < costs.length; t++) {
            double alone = tools.isEmpty() ? 1 : tool[t] < 0 ? BEYOND : tools.get(tool[t]).cost();
            costs[t] = Math.min(BEYOND, alone * leant);
        }
        return costs;
    }
}
