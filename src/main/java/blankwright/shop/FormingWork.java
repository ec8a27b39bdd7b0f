package blankwright.shop;

import blankwright.metal.Alloy;
import blankwright.strain.StrainField;

/**
 * The plastic and elastic work that takes a blank to its form, J: the work per volume to each triangle's effective strain, by the volume of
 * its blank, summed. What the metal takes in, not what the worker spends on it.
 */
public final class FormingWork {
    private FormingWork() { }

    /** @param thickness of the sheet before forming, mm */
    public static double joules(StrainField strain, Alloy alloy, double thickness) {
        double sum = 0;                                                     // N mm
        for (int t = 0; t < strain.triangleCount(); t++) {
            if (strain.degenerate(t) || strain.turnedOver(t)) continue;
            double blank = strain.map().form().area(t) / (strain.stretch1(t) * strain.stretch2(t));
            sum += blank * thickness * alloy.law().work(alloy.sheet().effective(strain.strain1(t), strain.strain2(t)));
        }
        return sum / 1000;
    }
}
