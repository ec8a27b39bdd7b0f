/**
 * Lays a 3D panel flat.
 *
 * <p>In: a {@link blankwright.mesh.TriMesh} that is a disk, holes allowed. Out: the same triangles in the plane, mm, none turned over.
 * <p>May use num, sparse, mesh, flatten.energy. Knows nothing of metals, shops, drawings or screens.
 * <p>Start reading at {@link Flattener}; then {@link Distortion}, the energy over all triangles, and {@link Descent};
 * {@link Coarser} and {@link MultigridNewton} are what makes large panels quick.
 */
package blankwright.flatten;
