/**
 * Meshes in files: one reader and one writer per open format, and the door that finds out which it is.
 *
 * <p>In: bytes, believed in nothing. Out: a {@link blankwright.mesh.io.RawMesh} in the file's own units, or a
 * {@link blankwright.mesh.io.FormatException} that names the place.
 * <p>May use num, mesh. Welds and mends nothing: that is mesh.repair.
 * <p>Start reading at {@link blankwright.mesh.io.MeshReader}; then {@link blankwright.mesh.io.MeshWriter}.
 */
package blankwright.mesh.io;
