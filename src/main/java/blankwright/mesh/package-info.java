/**
 * The panel as triangles, and the same triangles in the plane.
 *
 * <p>In: arrays in mm. Out: immutable meshes. May use num. Knows no file, no flattening, no metal.
 * <p>Start reading at {@link TriMesh}; then {@link EdgeTable}, {@link RimLoops}, {@link AngleDefect}, {@link FlatMap}.
 */
package blankwright.mesh;
