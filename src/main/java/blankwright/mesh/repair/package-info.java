/**
 * Makes a surface of what a file gave: welded, oriented, free of what no panel has; each change is a finding.
 *
 * <p>In: triangles in mm, in any state. Out: a {@link blankwright.mesh.TriMesh} that {@link blankwright.mesh.EdgeTable} accepts, its parts,
 * and the same moved to the middle of the sheet. May use num, mesh, mesh.query. Knows no file and no flattening.
 * <p>Start reading at {@link blankwright.mesh.repair.Repair}; then {@link blankwright.mesh.repair.Components} and
 * {@link blankwright.mesh.repair.MidSurface}.
 */
package blankwright.mesh.repair;
