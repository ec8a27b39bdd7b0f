/**
 * Solves large symmetric positive systems that are sums of small dense blocks on a mesh.
 *
 * <p>In: {@link Elements}, places of the nodes, right-hand sides. Out: solutions, the same bits on any number of threads; {@link Eigenpairs}. May use num.
 * <p>Start reading at {@link Cholesky}; then {@link Dissection}, which orders the nodes, and {@link Fronts}, which finds the pattern.
 * {@link Multigrid} solves without a factor where there are coarser meshes.
 */
package blankwright.sparse;
