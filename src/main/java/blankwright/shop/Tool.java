package blankwright.shop;

import blankwright.num.Sentence;
import blankwright.num.Unfit;

/**
 * One way of working the metal that the builder has at hand.
 *
 * @param name as the builder calls it, not blank
 * @param does {@link Instruction#SHRINK} or {@link Instruction#STRETCH}
 * @param reach how far in from a free edge it works, along the skin, mm; +∞ where it works anywhere
 * @param cost of a given work by it against others: 1 for the quickest, above 0 and at most {@value #DEAREST}
 */
public record Tool(String name, Instruction does, double reach, double cost) {
    /** Above this a tool is no choice any more. */
    public static final double DEAREST = 100;

    public Tool {
        if (name.isBlank()) throw new IllegalArgumentException("name: must not be empty");
        if (does == Instruction.LEAVE) throw new IllegalArgumentException("does: a tool shrinks or stretches");
        if (!(reach > 0)) throw new Unfit("reach %s: must be above 0", Sentence.typed(reach));
        if (!(cost > 0 && cost <= DEAREST)) throw new IllegalArgumentException("cost " + cost + ": must be above 0, up to " + (int) DEAREST);
    }
}
