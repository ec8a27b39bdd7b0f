package blankwright.mesh.io;

/** The mesh formats we read and write. */
public enum Format {
    STL_BINARY("binary STL"), STL_TEXT("text STL"), OBJ("OBJ"), PLY_TEXT("text PLY"),
    PLY_LITTLE("binary PLY, low byte first"), PLY_BIG("binary PLY, high byte first"), OFF("OFF");

    private final String words;

    Format(String words) {
        this.words = words;
    }

    /** What it is called in a sentence. */
    public String words() {
        return words;
    }
}
