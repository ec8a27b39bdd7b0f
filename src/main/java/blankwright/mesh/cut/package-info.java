/**
 * Opens a surface so that it can be laid flat, and remembers which edges belong together.
 *
 * <p>In: a connected manifold mesh. Out: the same triangles in the same order, fewer of them joined; the {@link Seam}s; findings.
 * May use num, mesh, mesh.query. Flattens nothing and moves no vertex.
 * <p>Start reading at {@link CutToDisk}; then {@link Cut}, {@link Seam}; {@link HandleCut} only for forms with handles.
 */
package blankwright.mesh.cut;
