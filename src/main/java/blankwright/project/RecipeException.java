package blankwright.project;

import blankwright.num.Explained;
import blankwright.num.Sentence;

/** A recipe that cannot be followed: where it goes wrong and what to write instead. */
public final class RecipeException extends Exception implements Explained {
    private static final long serialVersionUID = 1;
    private final String path;
    private final int line;
    private final int column;
    private final transient Sentence text;

    public RecipeException(String path, int line, int column, String text) {
        this(path, line, column, Sentence.of(text));
    }

    /** @param line counted from 1, as is {@code column} */
    public RecipeException(String path, int line, int column, Sentence text) {
        super(path + ":" + line + ":" + column + ": " + text);
        this.path = path;
        this.line = line;
        this.column = column;
        this.text = text;
    }

    public String path() {
        return path;
    }

    public int line() {
        return line;
    }

    public int column() {
        return column;
    }

    /** The sentence without the place. */
    public String text() {
        return text.text();
    }

    /** With the place. */
    @Override public Sentence words() {
        return Sentence.say("%s:%d:%d: %s", path, line, column, text);
    }
}
