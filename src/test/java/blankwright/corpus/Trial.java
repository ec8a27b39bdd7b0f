package blankwright.corpus;

import blankwright.flatten.FlattenOptions;
import blankwright.flatten.Flattener;
import blankwright.flatten.Outcome;
import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.mesh.cut.CutToDisk;
import blankwright.num.Orientation;
import blankwright.num.Progress;
import java.util.Locale;

/**
 * How one mesh of the corpus came out.
 *
 * @param fault what went wrong, empty where nothing did
 * @param seconds of the flattening alone
 */
record Trial(String family, String name, int triangles, String start, int steps, double energy, int turned, String fault, double seconds) {
    /** Any exception is a finding of its own, so that one mesh cannot hide the others. */
    static Trial of(Family family, int number) {
        try {
            return of(family.name(), Integer.toString(number), family.mesh(number), family.uncut());
        } catch (RuntimeException | AssertionError e) {
            return failed(family.name(), Integer.toString(number), e);
        }
    }

    static Trial of(String family, String name, TriMesh form, boolean uncut) {
        try {
            TriMesh disk = uncut ? form : CutToDisk.of(form, Progress.NONE).mesh();
            long from = System.nanoTime();
            Outcome outcome = Flattener.flatten(disk, FlattenOptions.DEFAULT, Progress.NONE);
            double seconds = (System.nanoTime() - from) / 1e9;
            String fault = outcome instanceof Outcome.Stopped stopped ? stopped.reason().toString() : "";
            int turned = turnedOver(outcome.map());
            if (turned > 0) fault += " " + turned + " turned over";
            if (!(outcome.energy() >= 4 * (1 - 1e-12) && outcome.energy() < Double.POSITIVE_INFINITY)) fault += " energy " + outcome.energy();
            return new Trial(family, name, disk.triangleCount(), outcome.start().toString(), outcome.steps(), outcome.energy(), turned,
                    fault.trim(), seconds);
        } catch (RuntimeException | AssertionError e) {
            return failed(family, name, e);
        }
    }

    private static Trial failed(String family, String name, Throwable e) {
        return new Trial(family, name, 0, "", 0, Double.NaN, 0, e.toString(), 0);
    }

    private static int turnedOver(FlatMap map) {
        int count = 0;
        for (int t = 0; t < map.form().triangleCount(); t++) {
            int a = map.form().corner(t, 0), b = map.form().corner(t, 1), c = map.form().corner(t, 2);
            if (Orientation.sign(map.u(a), map.v(a), map.u(b), map.v(b), map.u(c), map.v(c)) <= 0) count++;
        }
        return count;
    }

    /** No triangle turned over, no error, but the descent was not done when it had taken all the steps it may. */
    boolean onlySlow() {
        return fault.equals(Outcome.Reason.STEP_LIMIT.toString());
    }

    String line() {
        return String.format(Locale.ROOT, "%s %s: %d triangles, %s, %d steps, %.9f %s", family, name, triangles, start, steps, energy, fault);
    }
}
