package blankwright.metal.buckling;

/**
 * A pleat to raise at an edge and beat down into itself.
 *
 * @param rim which rim of the form, as {@link blankwright.mesh.RimLoops} counts them
 * @param vertex of that rim nearest to its middle
 * @param place of its middle along that rim, mm from the rim's first vertex
 * @param base width at the edge, mm
 * @param depth from the edge inwards, mm
 * @param takeIn what the edge must lose here, mm
 * @param rounds how often it must be raised and beaten down
 */
public record Tuck(int rim, int vertex, double place, double base, double depth, double takeIn, int rounds) { }
