package blankwright.mesh.cut;

/** A drawn seam that cannot be cut: the message begins with its number, from 1, and ends with the remedy. */
public final class UnfitSeam extends Exception {
    private static final long serialVersionUID = 1;

    public UnfitSeam(int number, String message) {
        super("seam " + number + ": " + message);
    }
}
