package blankwright.shape;

import java.util.ArrayList;
import java.util.List;

/** A plane curve of lines, arcs and sharp turns by its length s: where it is (x, z) and where it heads, mm and rad from x towards z. */
final class Profile {
    private record Part(double s0, double length, double bend, double x, double z, double heading) {
        double x(double t) {
            return x + t * sinc(bend * t / 2) * Math.cos(heading + bend * t / 2);
        }

        double z(double t) {
            return z + t * sinc(bend * t / 2) * Math.sin(heading + bend * t / 2);
        }

        private static double sinc(double a) {
            return Math.abs(a) < 1e-8 ? 1 : Math.sin(a) / a;
        }
    }

    private final List<Part> parts = new ArrayList<>();
    private double s;
    private double x;
    private double z;
    private double heading;

    Profile(double x, double z, double heading) {
        this.x = x;
        this.z = z;
        this.heading = heading;
    }

    /** An arc over a chord, its middle {@code rise} above it (below, if negative), from (-chord/2, -rise) so that its top is the origin. */
    static Profile crown(double chord, double rise) {
        double half = 2 * Math.atan(2 * rise / chord);
        double bend = -2 * Math.sin(half) / chord;
        return new Profile(-chord / 2, -rise, half).arc(half == 0 ? chord : chord * half / Math.sin(half), bend);
    }

    Profile line(double length) {
        return arc(length, 0);
    }

    /** Length along it, mm, and heading gained per mm; nothing where the length is 0. */
    Profile arc(double length, double bend) {
        if (length <= 0) return this;
        Part part = new Part(s, length, bend, x, z, heading);
        parts.add(part);
        s += length;
        x = part.x(length);
        z = part.z(length);
        heading += bend * length;
        return this;
    }

    Profile turn(double angle) {
        heading += angle;
        return this;
    }

    double length() {
        return s;
    }

    /** Heading at the far end, rad. */
    double heading() {
        return heading;
    }

    /** 0, where the parts join, and the length. */
    double[] breaks() {
        double[] breaks = new double[parts.size() + 1];
        for (int i = 0; i < parts.size(); i++) breaks[i + 1] = parts.get(i).s0() + parts.get(i).length();
        return breaks;
    }

    double x(double at) {
        Part part = part(at);
        return part.x(at - part.s0());
    }

    double z(double at) {
        Part part = part(at);
        return part.z(at - part.s0());
    }

    private Part part(double at) {
        int i = 0;
        while (i + 1 < parts.size() && at > parts.get(i + 1).s0()) i++;
        return parts.get(i);
    }
}
