package blankwright.job;

import blankwright.num.Explained;
import blankwright.num.Sentence;

/** The input cannot be laid flat as it is; the words name the file or the place, and what to do about it. The message is as files have it. */
public class Refusal extends Exception implements Explained {
    private static final long serialVersionUID = 1;
    private final transient Sentence words;

    public Refusal(Sentence words) {
        super(words.text());
        this.words = words;
    }

    public Refusal(String sentence) {
        this(Sentence.of(sentence));
    }

    @Override public final Sentence words() {
        return words;
    }
}
