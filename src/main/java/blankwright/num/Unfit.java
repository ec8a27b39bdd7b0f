package blankwright.num;

/** A value out of its range: the words say the value, the range and the remedy. The message is as files have it. */
public class Unfit extends IllegalArgumentException implements Explained {
    private static final long serialVersionUID = 1;
    private final transient Sentence words;

    public Unfit(Sentence words) {
        super(words.text());
        this.words = words;
    }

    /** @param form with its parts as for {@link Sentence#say} */
    public Unfit(String form, Object... parts) {
        this(Sentence.say(form, parts));
    }

    @Override public final Sentence words() {
        return words;
    }
}
