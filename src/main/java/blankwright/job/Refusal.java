package blankwright.job;

/** The input cannot be laid flat as it is; the message names the file or the place, and what to do about it. */
public class Refusal extends Exception {
    private static final long serialVersionUID = 1;

    public Refusal(String sentence) {
        super(sentence);
    }
}
