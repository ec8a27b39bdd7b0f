/**
 * Asks where something is on the skin: shortest paths along edges, plane sections, nearest points.
 *
 * <p>In: a mesh and a question. Out: vertices, or points as a triangle and weights, which mean the same place on the form and on the blank.
 * May use num, mesh. Changes nothing, flattens nothing.
 * <p>Start reading at {@link SkinPoint}; then {@link PlaneSection}, {@link ShortestPath} and the {@link Wavefront} under it,
 * {@link NearestPoint}.
 */
package blankwright.mesh.query;
