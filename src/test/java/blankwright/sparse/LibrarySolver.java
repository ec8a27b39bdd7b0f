package blankwright.sparse;

import org.ejml.data.DMatrixRMaj;
import org.ejml.data.DMatrixSparseCSC;
import org.ejml.data.DMatrixSparseTriplet;
import org.ejml.interfaces.linsol.LinearSolverSparse;
import org.ejml.ops.DConvertMatrixStruct;
import org.ejml.sparse.FillReducing;
import org.ejml.sparse.csc.factory.LinearSolverFactory_DSCC;

/** Assembles an element system as one sparse matrix and hands it to EJML. Slow; an oracle. */
final class LibrarySolver {
    private LibrarySolver() { }

    static double[] solve(SparseSolverContract.TestMesh mesh, int d, Elements elements, double shift, double[] b) {
        int n = mesh.nodes() * d, m = 3 * d;
        DMatrixSparseTriplet triplets = new DMatrixSparseTriplet(n, n, mesh.tri().length * m * m / 3 + n);
        double[] block = new double[m * (m + 1) / 2];
        for (int e = 0; e < mesh.tri().length / 3; e++) {
            elements.lowerTriangle(e, block);
            for (int i = 0, s = 0; i < m; i++)
                for (int j = 0; j <= i; j++, s++) {
                    int r = mesh.tri()[3 * e + i / d] * d + i % d, c = mesh.tri()[3 * e + j / d] * d + j % d;
                    if (Double.isNaN(block[s])) return null;       // EJML does not look
                    triplets.addItem(r, c, block[s]);
                    if (i != j) triplets.addItem(c, r, block[s]);
                }
        }
        for (int i = 0; i < n; i++) triplets.addItem(i, i, shift);
        DMatrixSparseCSC a = DConvertMatrixStruct.convert(triplets, (DMatrixSparseCSC) null);
        a.sortIndices(null);
        org.ejml.sparse.csc.CommonOps_DSCC.duplicatesAdd(a, null);
        LinearSolverSparse<DMatrixSparseCSC, DMatrixRMaj> solver = LinearSolverFactory_DSCC.cholesky(FillReducing.NONE);
        if (!solver.setA(a)) return null;
        DMatrixRMaj x = new DMatrixRMaj(n, 1);
        solver.solve(DMatrixRMaj.wrap(n, 1, b.clone()), x);
        return x.getData();
    }
}
