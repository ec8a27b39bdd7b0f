/**
 * Lines, arcs and lettering on layers, and the files they become.
 *
 * <p>In: {@link Entity entities} in mm, y up. Out: bytes of DXF, SVG and PDF at true size, the same bytes for the same drawing.
 * <p>May use num, outline. Knows lines, not panels. PDFBox (its file structure and its font) lives here; no system font is asked for.
 * <p>Start reading at {@link Drawing}; then {@link Layer}, {@link Entity}, {@link Lettering}, then the writers.
 */
package blankwright.drawing;
