package blankwright.shape;

import java.util.Arrays;

/**
 * A flange turned along a curved edge, with a band of the flat panel beside it: radius of the edge where the bend begins, sweep along it, width
 * of the flat web, width of the flange beyond the bend, bend radius (of the given face; 0 is a sharp fold) and the angle turned through.
 *
 * <p>On a convex edge the panel lies inside the curve and the flange must shrink; on a concave one it lies outside, as round an opening, and the
 * flange must stretch. The outer skin is the top of the web and the convex side of the bend. Parameters of a point: the angle along the edge, rad,
 * and the distance across the strip, mm, counted towards the middle of the curve.
 */
public record FlangeStrip(double edgeRadius, double sweep, double web, double flange, double bendRadius, double fold, Edge edge) implements Panel {
    /** Which way the edge curves, seen from the panel. */
    public enum Edge { CONVEX, CONCAVE }

    public FlangeStrip {
        Need.length("edge-radius", edgeRadius);
        Need.angle("sweep", sweep, 0, 360);
        Need.length("web", web);
        Need.length("flange", flange);
        Need.lengthOrNone("bend-radius", bendRadius);
        Need.angle("fold", fold, 0, 150);
        if (edge == Edge.CONVEX) {
            Need.that(web < edgeRadius, "web", "web %s inside an edge of radius %s: must be narrower", Need.mm(web), Need.mm(edgeRadius));
            double tip = edgeRadius + bendRadius * Math.sin(fold) + flange * Math.cos(fold);
            Need.that(tip > 0, "flange", "flange %s: folded back it would pass the middle of the curve; make it narrower", Need.mm(flange));
        } else {
            double blank = edgeRadius - bendRadius * fold - flange;
            Need.that(blank > 0, "flange", "flange %s with its bend on a concave edge of radius %s: the blank would have no edge left; make it narrower",
                    Need.mm(flange), Need.mm(edgeRadius));
        }
    }

    /**
     * What the flange's free edge must gain (positive) or lose, if the web stays as it is and the strip keeps its width: its radius on the form
     * over that on the blank, less 1. For a sharp fold through θ: -b(1-cos θ)/(R+b) convex, b(1-cos θ)/(R-b) concave.
     */
    public double edgeStrain() {
        int out = edge == Edge.CONVEX ? 1 : -1;
        double form = edgeRadius + out * (bendRadius * Math.sin(fold) + flange * Math.cos(fold));
        return form / (edgeRadius + out * (bendRadius * fold + flange)) - 1;
    }

    @Override public Sample sample(Fineness fineness) {
        return Grid.of(skin(), new double[] {0, sweep}, breaks(), fineness).sample(Cylinder.isRound(sweep));
    }

    @Override public Truth truth() {
        int out = edge == Edge.CONVEX ? 1 : -1;
        double flat = web * (edgeRadius - out * web / 2);
        double bend = edgeRadius * bendRadius * fold + out * bendRadius * bendRadius * (1 - Math.cos(fold));
        double turned = flange * (edgeRadius + out * (bendRadius * Math.sin(fold) + flange * Math.cos(fold) / 2));
        double curvature = bendRadius == 0 ? 0 : out * sweep * (1 - Math.cos(fold));
        boolean round = Cylinder.isRound(sweep);
        return Truth.curved(sweep * (flat + bend + turned), curvature, round ? 0 : 1, round ? 2 : 1);
    }

    private Skin skin() {
        Profile profile = profile();
        double whole = profile.length();
        return (u, v, point) -> {
            double s = edge == Edge.CONVEX ? whole - v : v, r = profile.x(s);
            point[0] = r * Math.cos(u);
            point[1] = r * Math.sin(u);
            point[2] = profile.z(s);
        };
    }

    /** From the web's free edge over the bend to the flange's. */
    private Profile profile() {
        Profile start = edge == Edge.CONVEX ? new Profile(edgeRadius - web, 0, 0) : new Profile(edgeRadius + web, 0, Math.PI);
        int down = edge == Edge.CONVEX ? -1 : 1;
        start.line(web);
        if (bendRadius > 0) start.arc(bendRadius * fold, down / bendRadius);
        else start.turn(down * fold);
        return start.line(flange);
    }

    private double[] breaks() {
        double[] breaks = profile().breaks();
        if (edge == Edge.CONCAVE) return breaks;
        double whole = breaks[breaks.length - 1];
        double[] turned = Arrays.copyOf(breaks, breaks.length);
        for (int i = 0; i < turned.length; i++) turned[i] = whole - breaks[breaks.length - 1 - i];
        return turned;
    }
}
