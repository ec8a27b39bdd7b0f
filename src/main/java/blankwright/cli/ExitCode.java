package blankwright.cli;

/** How a run ended, as other programs see it. */
public enum ExitCode {
    /** All done. */
    DONE(0),
    /** The program failed: our fault. */
    FAILED(1),
    /** The command line is wrong. */
    WRONG_COMMAND(2),
    /** The input is bad; the message says where and what to do. */
    BAD_INPUT(3),
    /** Done, but the blank is unsafe to cut: it covers itself, is not converged or has a triangle turned over. */
    UNSAFE_TO_CUT(4);

    private final int number;

    ExitCode(int number) {
        this.number = number;
    }

    public int number() {
        return number;
    }
}
