package blankwright.outline;

import blankwright.outline.Curve.Box;

/** Whether two segments of curves meet elsewhere than where one ends and the other begins. */
final class Crossing {
    /** Meetings nearer to a shared end than this, relative to the size of both, belong to the joint. */
    private static final double JOINT = 1e-7;

    private Crossing() { }

    /** A segment: a line from a to b when {@code arc} is null. */
    record Part(double ax, double ay, double bx, double by, Curve.CentreForm arc, Box box) { }

    static Part part(Curve curve, int i) {
        return new Part(curve.x(i), curve.y(i), curve.x(i + 1), curve.y(i + 1), curve.isArc(i) ? curve.centreForm(i) : null, curve.box(i));
    }

    static boolean meet(Part p, Part q) {
        if (!p.box().meets(q.box())) return false;
        if (p.arc() == null && q.arc() == null) return linesMeet(p, q);
        if (p.arc() == null) return lineMeetsArc(p, q);
        if (q.arc() == null) return lineMeetsArc(q, p);
        return arcsMeet(p, q);
    }

    private static boolean linesMeet(Part p, Part q) {
        double o1 = side(p, q.ax(), q.ay()), o2 = side(p, q.bx(), q.by()), o3 = side(q, p.ax(), p.ay()), o4 = side(q, p.bx(), p.by());
        if (o1 * o2 > 0 || o3 * o4 > 0) return false;
        if (o1 == 0 && o2 == 0) return overlapAlong(p, q);
        double t = o3 / (o3 - o4);
        return counts(p, q, p.ax() + t * (p.bx() - p.ax()), p.ay() + t * (p.by() - p.ay()));
    }

    private static double side(Part p, double x, double y) {
        return (p.bx() - p.ax()) * (y - p.ay()) - (p.by() - p.ay()) * (x - p.ax());
    }

    /** Both on one straight line, boxes meeting: more than a shared end? */
    private static boolean overlapAlong(Part p, Part q) {
        double dx = p.bx() - p.ax(), dy = p.by() - p.ay(), l = dx * dx + dy * dy;
        if (l == 0) return false;
        double ta = ((q.ax() - p.ax()) * dx + (q.ay() - p.ay()) * dy) / l, tb = ((q.bx() - p.ax()) * dx + (q.by() - p.ay()) * dy) / l;
        double from = Math.max(0, Math.min(ta, tb)), to = Math.min(1, Math.max(ta, tb));
        return (to - from) * Math.sqrt(l) > JOINT * size(p, q);
    }

    private static boolean lineMeetsArc(Part line, Part arc) {
        Curve.CentreForm c = arc.arc();
        double dx = line.bx() - line.ax(), dy = line.by() - line.ay(), l = Math.hypot(dx, dy);
        if (l == 0) return false;
        double along = ((c.cx() - line.ax()) * dx + (c.cy() - line.ay()) * dy) / l, off = ((c.cx() - line.ax()) * dy - (c.cy() - line.ay()) * dx) / l;
        double half = c.radius() * c.radius() - off * off;
        if (half < 0) return false;
        half = Math.sqrt(half);
        for (int s = -1; s <= 1; s += 2) {
            double t = (along + s * half) / l;
            if (t < 0 || t > 1) continue;
            double x = line.ax() + t * dx, y = line.ay() + t * dy;
            if (onArc(c, x, y) && counts(line, arc, x, y)) return true;
        }
        return false;
    }

    private static boolean arcsMeet(Part p, Part q) {
        Curve.CentreForm a = p.arc(), b = q.arc();
        double dx = b.cx() - a.cx(), dy = b.cy() - a.cy(), d = Math.hypot(dx, dy);
        if (d > a.radius() + b.radius() || d < Math.abs(a.radius() - b.radius())) return false;
        if (d < 1e-12 * (a.radius() + b.radius())) return onSameCircle(p, q);
        double along = (a.radius() * a.radius() - b.radius() * b.radius() + d * d) / (2 * d), half = a.radius() * a.radius() - along * along;
        half = Math.sqrt(Math.max(0, half));
        for (int s = -1; s <= 1; s += 2) {
            double x = a.cx() + (along * dx - s * half * dy) / d, y = a.cy() + (along * dy + s * half * dx) / d;
            if (onArc(a, x, y) && onArc(b, x, y) && counts(p, q, x, y)) return true;
        }
        return false;
    }

    /** Arcs of one circle meet when the middle of either lies on the other: arcs that only share ends do not. */
    private static boolean onSameCircle(Part p, Part q) {
        return onArc(p.arc(), q.arc().x(0.5), q.arc().y(0.5)) || onArc(q.arc(), p.arc().x(0.5), p.arc().y(0.5));
    }

    private static boolean onArc(Curve.CentreForm c, double x, double y) {
        double angle = (Math.atan2(y - c.cy(), x - c.cx()) - c.start()) * Math.signum(c.sweep());
        angle -= 2 * Math.PI * Math.floor(angle / (2 * Math.PI));
        return angle <= Math.abs(c.sweep());
    }

    /** False where the meeting is at an end that both share. */
    private static boolean counts(Part p, Part q, double x, double y) {
        double near = JOINT * size(p, q);
        return !(sharedEnd(p.ax(), p.ay(), q) && Math.hypot(x - p.ax(), y - p.ay()) <= near)
                && !(sharedEnd(p.bx(), p.by(), q) && Math.hypot(x - p.bx(), y - p.by()) <= near);
    }

    private static boolean sharedEnd(double x, double y, Part q) {
        return x == q.ax() && y == q.ay() || x == q.bx() && y == q.by();
    }

    private static double size(Part p, Part q) {
        double radii = (p.arc() == null ? 0 : p.arc().radius()) + (q.arc() == null ? 0 : q.arc().radius());
        return radii + p.box().width() + p.box().height() + q.box().width() + q.box().height();
    }
}
