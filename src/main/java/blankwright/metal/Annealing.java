package blankwright.metal;

import java.util.Locale;
import java.util.Optional;

/**
 * How an alloy is made soft again.
 *
 * @param celsius temperature to reach
 * @param melting temperature at which it begins to melt, °C, where known
 * @param inShop whether it is done in the shop between rounds of working
 * @param how in a sentence
 */
public record Annealing(Known celsius, Optional<Known> melting, boolean inShop, String how) {
    public Annealing {
        if (melting.isPresent() && melting.get().value() <= celsius.value())
            throw new IllegalArgumentException("annealing at " + celsius.value() + " °C: it begins to melt at " + melting.get().value() + " °C");
    }

    /** {@code 413 °C (775 °F)}. */
    public static String written(Known celsius) {
        return String.format(Locale.ROOT, "%.0f °C (%.0f °F)", celsius.value(), celsius.value() * 9 / 5 + 32);
    }
}
