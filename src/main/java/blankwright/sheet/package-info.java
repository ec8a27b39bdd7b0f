/**
 * Turns what the shop knows of a panel into drawings at true size.
 *
 * <p>In: pieces laid flat with zones, marks and seams. Out: a {@link blankwright.drawing.Drawing}, mm, y up, outside face up. May use num,
 * mesh, outline, strain, shop, drawing. Knows no file format.
 * <p>Start reading at {@link blankwright.sheet.BlankSheet}.
 */
package blankwright.sheet;
