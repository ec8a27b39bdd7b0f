package blankwright.shop;

/** What is to be done to the metal of a zone. */
public enum Instruction {
    STRETCH, SHRINK, LEAVE;

    /** {@code stretch}, {@code shrink} or {@code leave}. */
    public String word() {
        return name().toLowerCase(java.util.Locale.ROOT);
    }
}
