package blankwright.mesh.io;

/** A file that cannot be read, with the place and the reason: {@code wing.obj:118:7: vertex 0, but OBJ counts from 1}. */
public final class FormatException extends Exception {
    private static final long serialVersionUID = 1;

    private final String file;
    private final int line;
    private final int column;

    /**
     * @param file as the user named it
     * @param line from 1, or 0 where the file has no lines or the whole file is meant
     * @param column from 1 in bytes, or 0
     * @param message what is wrong and what would help, one sentence
     */
    public FormatException(String file, int line, int column, String message) {
        super(file + (line > 0 ? ":" + line : "") + (line > 0 && column > 0 ? ":" + column : "") + ": " + message);
        this.file = file;
        this.line = line;
        this.column = column;
    }

    public FormatException(String file, String message) {
        this(file, 0, 0, message);
    }

    public String file() {
        return file;
    }

    public int line() {
        return line;
    }

    public int column() {
        return column;
    }
}
