package blankwright.job;

/** Nobody said the unit of a mesh, and in millimetres it would be no panel: a question for its owner. */
public final class OddSize extends Refusal {
    private static final long serialVersionUID = 1;
    private final double across;

    OddSize(String question, double across) {
        super(question);
        this.across = across;
    }

    /** The longest side of the box round the mesh, in the numbers of its file. */
    public double across() {
        return across;
    }
}
