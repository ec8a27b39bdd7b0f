/**
 * Panels given by a formula, with the true answer where one exists.
 *
 * <p>In: a few lengths and angles. Out: a {@link blankwright.mesh.TriMesh} within a chord tolerance, its outer skin counter-clockwise, and a
 * {@link Truth}: area, total curvature, exact development, least-squares answer. May use num, mesh, outline. Knows no file and no flattener.
 * <p>Start reading at {@link Panel}; then {@link TorusSection} for a panel on a grid, {@link SphericalCap} for one on rings.
 */
package blankwright.shape;
