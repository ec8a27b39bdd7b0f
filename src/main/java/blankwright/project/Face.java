package blankwright.project;

/** Which side of the sheet the given form is. */
public enum Face {
    OUTSIDE, MIDDLE, INSIDE;

    /** The word in a recipe and on the command line. */
    public String word() {
        return name().toLowerCase(java.util.Locale.ROOT);
    }
}
