/**
 * Thins a dense surface out: fewer triangles, within a stated distance of those given, the rims kept.
 *
 * <p>In: a surface as mesh.repair leaves it, mm. Out: a surface of the same topology, and how far apart the two are, measured.
 * <p>May use num, mesh, mesh.query. Knows no file, no flattening, no metal.
 * <p>Start reading at {@link Reduce}; then Collapses for what may be collapsed, Fans for how, {@link Deviation} for what came of it.
 */
package blankwright.mesh.reduce;
