package blankwright.mesh.cut;

import blankwright.num.Explained;
import blankwright.num.Sentence;

/** A drawn seam that cannot be cut: the words begin with its number, from 1, and end with the remedy. */
public final class UnfitSeam extends Exception implements Explained {
    private static final long serialVersionUID = 1;
    private final transient Sentence words;

    /** @param form with its parts as for {@link Sentence#say} */
    public UnfitSeam(int number, String form, Object... parts) {
        this(Sentence.say("seam %d: %s", number, Sentence.say(form, parts)));
    }

    private UnfitSeam(Sentence words) {
        super(words.text());
        this.words = words;
    }

    @Override public Sentence words() {
        return words;
    }
}
