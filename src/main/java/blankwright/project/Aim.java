package blankwright.project;

/** What the flattening makes least: distortion spread as evenly as geometry allows, or forming work in the metal. */
public enum Aim {
    EVEN, WORK;

    /** The word in a recipe and on the command line. */
    public String word() {
        return name().toLowerCase(java.util.Locale.ROOT);
    }
}
