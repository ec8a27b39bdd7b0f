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
    /** Done, but unsafe to cut: covers itself, not converged, a triangle turned over, or more asked of the metal than it bears. */
    UNSAFE_TO_CUT(4);

    private final int number;

    ExitCode(int number) {
        this.number = number;
    }

    public int number() {
        return number;
    }
}
