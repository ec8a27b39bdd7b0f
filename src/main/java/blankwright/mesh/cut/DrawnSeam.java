package blankwright.mesh.cut;

import java.util.List;

/** A seam as its maker gives it: two or more points on or near the skin, joined in order by the shortest paths. */
public record DrawnSeam(List<Point> points) {
    /** Where a seam passes, mm in the coordinates of the form as it was given. */
    public record Point(double x, double y, double z) {
        public Point {
            if (!Double.isFinite(x + y + z)) throw new IllegalArgumentException("point (" + x + ", " + y + ", " + z + ") mm: must be three lengths");
            x += 0.0;                       // no -0, which is written as 0
            y += 0.0;
            z += 0.0;
        }
    }

    public DrawnSeam {
        points = List.copyOf(points);
        if (points.size() < 2) throw new IllegalArgumentException("a seam of " + points.size() + " points: give where it begins and where it ends");
    }
}
