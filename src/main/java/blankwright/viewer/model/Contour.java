package blankwright.viewer.model;

import blankwright.picture.ContourLines;
import blankwright.picture.Tints;
import java.util.ArrayList;
import java.util.List;

/** A line of equal number on the blank. */
public final class Contour {
    private final double value;
    private final double[] uv;

    private Contour(double value, double[] uv) {
        this.value = value;
        this.uv = uv;
    }

    static List<Contour> of(List<Skin> skins, MapKind kind, Tints tints) {
        List<Contour> all = new ArrayList<>();
        for (Skin skin : skins) {
            Painting painting = skin.painting(kind);
            for (ContourLines.Line line : ContourLines.of(painting.corners(), painting.values(), tints.boundaries())) {
                double[] uv = new double[2 * line.count()];
                for (int i = 0; i < line.count(); i++) {
                    uv[2 * i] = line.at(i, painting.flat(), 2, 0);
                    uv[2 * i + 1] = line.at(i, painting.flat(), 2, 1);
                }
                all.add(new Contour(line.value(), uv));
            }
        }
        return List.copyOf(all);
    }

    public double value() {
        return value;
    }

    public int count() {
        return uv.length / 2;
    }

    public double u(int i) {
        return uv[2 * i];
    }

    public double v(int i) {
        return uv[2 * i + 1];
    }

    /** mm. */
    public double length() {
        double sum = 0;
        for (int i = 1; i < count(); i++) sum += Math.hypot(u(i) - u(i - 1), v(i) - v(i - 1));
        return sum;
    }
}
