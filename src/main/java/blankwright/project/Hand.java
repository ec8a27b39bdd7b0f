package blankwright.project;

/** Side of the machine the panel belongs to; the other one is its mirror image. */
public enum Hand {
    LEFT, RIGHT;

    /** The word in a recipe. */
    public String word() {
        return name().toLowerCase(java.util.Locale.ROOT);
    }
}
