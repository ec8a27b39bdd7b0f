/**
 * The work map: form and blank coloured by what the metal must do, and how near it comes to its limit; drawn without a display.
 *
 * <p>In: pieces laid flat with their strain, zones and stations. Out: pictures. May use num, mesh, outline, strain, metal, shop, drawing.
 * <p>Start reading at {@link blankwright.picture.WorkMap}; then {@link blankwright.picture.StrainScale}, the field, the depth painter;
 * {@link blankwright.picture.ThicknessPicture} uses the same painter; {@link blankwright.picture.LimitPicture} stands by itself.
 */
package blankwright.picture;
