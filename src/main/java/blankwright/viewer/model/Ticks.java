package blankwright.viewer.model;

import java.util.ArrayList;
import java.util.List;

/** Marks of a ruler between two lengths, near enough to read and far enough apart to be told. */
public final class Ticks {
    private static final double[] METRIC = {0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000};
    private static final double[] INCHES = {1 / 64.0, 1 / 32.0, 1 / 16.0, 1 / 8.0, 1 / 4.0, 1 / 2.0, 1, 2, 6, 12, 24, 60, 120, 240};

    /** @param label empty at a short mark */
    public record Tick(double mm, String label) { }

    private Ticks() { }

    /** @param perMm pixels for each mm */
    public static List<Tick> between(double from, double to, double perMm, LengthStyle style) {
        boolean metric = style == LengthStyle.MM;
        double unit = metric ? 1 : 25.4;
        double[] steps = metric ? METRIC : INCHES;
        double fine = step(steps, unit * perMm, 6), coarse = step(steps, unit * perMm, 64);
        List<Tick> ticks = new ArrayList<>();
        if (!((to - from) / (fine * unit) < 5000)) return ticks;
        for (long i = (long) Math.ceil(from / (fine * unit)); i * fine * unit <= to; i++) {
            double at = i * fine, over = at / coarse;
            boolean told = Math.abs(over - Math.rint(over)) < 1e-6;
            ticks.add(new Tick(at * unit, told ? label(at, style) : ""));
        }
        return ticks;
    }

    private static double step(double[] steps, double pixels, double least) {
        for (double step : steps) if (step * pixels >= least) return step;
        return steps[steps.length - 1];
    }

    private static String label(double at, LengthStyle style) {
        if (style == LengthStyle.FRACTION) return LengthStyle.FRACTION.length(at * 25.4).replace(" in", "");
        double rounded = Math.rint(at * 1e4) / 1e4;
        return rounded == Math.rint(rounded) ? Long.toString((long) rounded) : Double.toString(rounded);
    }
}
