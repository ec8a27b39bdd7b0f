package blankwright.shape;

/** A panel parameter that makes no panel: the message says the value, the range and the remedy. */
public final class UnfitValue extends IllegalArgumentException {
    private static final long serialVersionUID = 1;
    private final String parameter;

    /** @param parameter the recipe's word for it, e.g. {@code bend-radius} */
    public UnfitValue(String parameter, String message) {
        super(message);
        this.parameter = parameter;
    }

    /** The recipe's word for the parameter at fault. */
    public String parameter() {
        return parameter;
    }
}
