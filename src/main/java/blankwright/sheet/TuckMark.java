package blankwright.sheet;

/**
 * A pleat to be raised at an edge.
 *
 * @param name written beside it, e.g. {@code T7}
 * @param rim which rim of the form, as {@link blankwright.mesh.RimLoops} counts them
 * @param place of its middle along that rim of the form, mm from the rim's first vertex
 * @param base width at the finished edge, mm, above 0
 * @param depth from the finished edge inwards, mm, above 0
 */
public record TuckMark(String name, int rim, double place, double base, double depth) { }
