/**
 * Curves in the plane, mm: what is cut.
 *
 * <p>In: rims of flat meshes as polygons. Out: curves of lines and arcs, regions with holes, and where a blank covers itself.
 * <p>May use num. The polygon library (JTS) lives here and appears in no public signature. Knows no mesh, no layer, no file.
 * <p>Start reading at {@link Curve}; then {@link RimFit}, {@link Region}, {@link Overlap}.
 */
package blankwright.outline;
