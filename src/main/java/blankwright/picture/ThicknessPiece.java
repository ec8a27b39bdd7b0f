package blankwright.picture;

import blankwright.mesh.FlatMap;
import blankwright.shop.SheetThickness;

/**
 * One piece as it is drawn on the map of thickness.
 *
 * @param map where it lies on the sheet
 * @param thickness of that very map
 */
public record ThicknessPiece(FlatMap map, SheetThickness thickness) { }
