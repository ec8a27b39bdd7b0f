package blankwright.flatten;

import blankwright.flatten.energy.TriangleEnergy;
import blankwright.mesh.EdgeTable;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import blankwright.num.Progress;
import blankwright.sparse.BlockRows;
import blankwright.sparse.Cholesky;
import blankwright.sparse.Transfer;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinTask;

/** A panel at one fineness, with what is found once for it: rims, patterns, the way to the next coarser. */
final class Level {
    private static final int SMALL = 4000;                // vertices: up to here a factor is as fast as coarser meshes
    private static final int COARSEST = 1500;             // vertices below which a mesh is not made coarser still
    private static final double SHRINKS = 0.6;            // of the vertices: a mesh that keeps more is not worth a level

    private final TriMesh mesh;
    private final ForkJoinTask<Distortion> form;          // made while the next coarser mesh is found
    private final ForkJoinTask<BlockRows> rows;           // likewise; null at the coarsest
    private Coarser coarser;                              // null at the coarsest
    private boolean closed;                               // found on the way to the coarser mesh
    private RimLoops rims;
    private Cholesky solver;
    private Transfer transfer;
    private int[] coarseCorners, inside, insideStart;                    // the next coarser level's triangles, and those that lie in each

    private Level(TriMesh mesh, boolean large) {
        this.mesh = mesh;
        form = ForkJoinPool.commonPool().submit(() -> new Distortion(mesh));
        rows = large ? ForkJoinPool.commonPool().submit(() -> new BlockRows(mesh.vertexCount(), mesh.corners())) : null;
    }

    /** The mesh and its coarser ones, finest first; the mesh alone if it is small. */
    static List<Level> of(TriMesh mesh, Progress progress) {
        List<Level> levels = new ArrayList<>();
        int few = mesh.vertexCount() <= SMALL ? SMALL : COARSEST;
        for (TriMesh m = mesh; m != null; ) {
            boolean large = m.vertexCount() > few;
            Level level = new Level(m, large);
            levels.add(level);
            m = null;
            if (large) {
                EdgeTable edges = EdgeTable.of(level.mesh);
                level.closed = level.mesh.triangleCount() * 3 == 2 * edges.edgeCount();
                Coarser next = Coarser.of(level.mesh, edges, progress);
                if (next.mesh().vertexCount() <= SHRINKS * level.mesh.vertexCount()) {
                    level.coarser = next;
                    m = next.mesh();
                }
            }
        }
        return levels;
    }

    TriMesh mesh() {
        return mesh;
    }

    /** The way to the next coarser mesh; null at the coarsest. */
    Coarser coarser() {
        return coarser;
    }

    Distortion form() {
        return form.join();
    }

    RimLoops rims() {
        if (rims == null) rims = RimLoops.of(mesh, EdgeTable.of(mesh));
        return rims;
    }

    /** Whether there is no rim. */
    boolean closed() {
        return closed || rows == null && rims().count() == 0;
    }

    /** Number of the outer rim, -1 if there is no rim. */
    int outer() {
        return rims().longest(mesh);
    }

    /**
     * Solver of a system on this mesh, 2 unknowns a vertex.
     *
     * @throws OutOfMemoryError where its factor cannot fit into the heap: before the memory is gone
     */
    Cholesky solver() {
        if (solver == null) {
            Cholesky made = new Cholesky(mesh.vertexCount(), mesh.corners(), mesh.positions(), 2);
            long need = 12 * made.factorSize();           // 8 bytes a number, and about half as much again while it is made
            if (need > Runtime.getRuntime().maxMemory()) throw new OutOfMemoryError("the factor takes " + need / 1_000_000 + " MB");
            solver = made;
        }
        return solver;
    }

    BlockRows rows() {
        return rows.join();
    }

    Transfer transfer() {
        if (transfer == null) transfer = new Transfer(coarser.mesh().vertexCount(), coarser.parents(), coarser.weights());
        return transfer;
    }

    /** The same energy on the next coarser level. */
    TriangleEnergy coarser(TriangleEnergy energy) {
        return energy.coarser(coarser.mesh().triangleCount(), coarser.triangleOf(), form().areas());
    }

    /** A layout of this level, or anything of 2 numbers a vertex, as the next coarser one has it, in the units of this. */
    double[] carriedDown(double[] uv) {
        return coarser.carried(uv);
    }

    /** How the next coarser level's part of a layout resists moves. */
    PlaneStiffness averaged(PlaneStiffness.Finer finer, double[] coarseLayout) {
        if (inside == null) find();
        return PlaneStiffness.averaged(coarseCorners, coarseLayout, insideStart, inside, finer);
    }

    /** The triangles that lie in each of the next coarser level; where none does, one at its first corner. */
    private void find() {
        coarseCorners = coarser.mesh().corners();
        int[] of = coarser.triangleOf();
        int m = coarser.mesh().triangleCount();
        int[] count = new int[m + 1];
        for (int t : of) count[t + 1]++;
        int[] at = new int[m];
        boolean[] empty = new boolean[m];
        insideStart = new int[m + 1];
        for (int t = 0; t < m; t++) {
            empty[t] = count[t + 1] == 0;
            insideStart[t + 1] = insideStart[t] + Math.max(1, count[t + 1]);
            at[t] = insideStart[t];
        }
        inside = new int[insideStart[m]];
        for (int t = 0; t < of.length; t++) inside[at[of[t]]++] = t;
        int[] some = new int[coarser.mesh().vertexCount()];           // coarse vertex -> a triangle here that touches it
        for (int c = 0; c < 3 * of.length; c++) {
            int p = 3 * mesh.corner(c / 3, c % 3);
            if (coarser.weights()[p] == 1) some[coarser.parents()[p]] = c / 3;
        }
        for (int t = 0; t < m; t++) if (empty[t]) inside[insideStart[t]] = some[coarseCorners[3 * t]];
    }

    /** A layout of the next coarser level as one of this. */
    double[] carriedUp(double[] uv, Level from) {
        double[] carried = new double[2 * mesh.vertexCount()];
        transfer().up(uv, carried);
        double unit = from.form().scale() / form().scale();
        for (int i = 0; i < carried.length; i++) carried[i] *= unit;
        return carried;
    }
}
