package blankwright.shop;

/**
 * A place on a piece, on blank and form.
 *
 * @param triangle that holds it
 * @param u on the blank, mm
 * @param x on the form, mm
 */
public record Spot(int triangle, double u, double v, double x, double y, double z) { }
