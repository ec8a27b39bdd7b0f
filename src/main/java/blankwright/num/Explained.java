package blankwright.num;

/** What went wrong, its measures still numbers: who shows it says in which units it is read. */
public interface Explained {
    Sentence words();

    /** Of any failure: one that knows only its message has that. */
    static Sentence words(Throwable e) {
        return e instanceof Explained explained ? explained.words() : Sentence.of(String.valueOf(e.getMessage()));
    }
}
