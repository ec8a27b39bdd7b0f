package blankwright.shape;

import blankwright.num.Unfit;

/** A panel parameter that makes no panel: the words say the value, the range and the remedy. */
public final class UnfitValue extends Unfit {
    private static final long serialVersionUID = 1;
    private final String parameter;

    /**
     * @param parameter the recipe's word for it, e.g. {@code bend-radius}
     * @param form with its parts as for {@link blankwright.num.Sentence#say}
     */
    public UnfitValue(String parameter, String form, Object... parts) {
        super(form, parts);
        this.parameter = parameter;
    }

    /** The recipe's word for the parameter at fault. */
    public String parameter() {
        return parameter;
    }
}
