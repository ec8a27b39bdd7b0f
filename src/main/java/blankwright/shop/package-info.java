/**
 * What the bench is told: zones with one instruction each, lines to tape before and after, stations, and how the pieces lie on the sheet.
 *
 * <p>In: flat maps and their strain. Out: records in mm. May use num, mesh, mesh.query, outline, strain, metal. Knows no drawing
 * and no file.
 * <p>Numbers of the trade used here (bands of strain) are from memory of the trade and say so where they stand.
 * <p>Start reading at {@link Zones}; then {@link TapeLine}, {@link Stations}, {@link Layout}, {@link WorkList}, {@link Judge},
 * {@link RolledArea}.
 */
package blankwright.shop;
