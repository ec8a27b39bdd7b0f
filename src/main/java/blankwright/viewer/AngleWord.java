package blankwright.viewer;

import blankwright.num.Angles;
import blankwright.num.Lengths;
import blankwright.project.Recipe;
import blankwright.viewer.model.Bench;
import java.util.OptionalDouble;
import java.util.function.BiFunction;

/** An angle in a sentence, in degrees. */
final class AngleWord extends LengthWord {
    AngleWord(Bench bench, String name, String lesson, BiFunction<Recipe, OptionalDouble, Recipe> how) {
        super(bench, name, lesson, "", Math.toRadians(5), true, how);
    }

    @Override
    boolean isAngle() {
        return true;
    }

    @Override
    String typed(double rad) {
        return Lengths.plain(Math.rint(Math.toDegrees(rad) * 1e4) / 1e4) + "°";
    }

    @Override
    double read(String text) {
        return Angles.parse(text);
    }
}
