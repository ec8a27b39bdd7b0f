package blankwright.outline;

import blankwright.outline.Curve.Box;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.locationtech.jts.operation.union.UnaryUnionOp;

/** A connected part of the plane: what lies within one closed curve and in none of its holes, mm. */
public final class Region {
    /** A rim of 20 000 sides with 1 mm of noise took minutes and gigabytes to grow by 25 mm at once: its round corners all meet each other. */
    private static final int ROUGH = 1000;
    private static final int RUN = 10;              // sides of such a rim that are grown at once
    private static final GeometryFactory SHAPES = new GeometryFactory();

    private final Curve outer;
    private final List<Curve> holes;

    private Region(Curve outer, List<Curve> holes) {
        this.outer = outer;
        this.holes = holes;
    }

    /** All curves closed; the outer one is kept turning left, the holes turning right. Holes are taken to lie within, apart from each other. */
    public static Region of(Curve outer, List<Curve> holes) {
        if (!outer.isClosed() || holes.stream().anyMatch(hole -> !hole.isClosed())) throw new IllegalArgumentException("a region has closed curves");
        return new Region(turning(outer, 1), holes.stream().map(hole -> turning(hole, -1)).toList());
    }

    /** The rims of a flat piece, fitted by lines and arcs within {@code tolerance} mm: the one round most area is the outer one. */
    public static Region ofRims(List<double[]> rings, double tolerance) {
        if (rings.isEmpty()) throw new IllegalArgumentException("a region has at least one rim");
        List<Curve> curves = new ArrayList<>(RimFit.of(rings, tolerance));
        Curve outer = curves.stream().max(Comparator.comparingDouble(c -> Math.abs(c.area()))).orElseThrow();
        curves.remove(outer);
        return of(outer, curves);
    }

    private static Curve turning(Curve curve, int way) {
        return curve.area() * way < 0 ? curve.reversed() : curve;
    }

    public Curve outer() {
        return outer;
    }

    public List<Curve> holes() {
        return holes;
    }

    /** The outer curve, then the holes. */
    public List<Curve> curves() {
        List<Curve> all = new ArrayList<>(List.of(outer));
        all.addAll(holes);
        return all;
    }

    /** mm². */
    public double area() {
        double sum = 0;
        for (Curve curve : curves()) sum += curve.area();
        return sum;
    }

    /** Length of all its curves, holes too, mm. */
    public double length() {
        double sum = 0;
        for (Curve curve : curves()) sum += curve.length();
        return sum;
    }

    public boolean contains(double x, double y) {
        return outer.contains(x, y) && holes.stream().noneMatch(hole -> hole.contains(x, y));
    }

    public Box box() {
        return outer.box();
    }

    /** The region turned by {@code angle} rad about the origin, then moved by (dx, dy) mm. */
    public Region moved(double angle, double dx, double dy) {
        return new Region(outer.moved(angle, dx, dy), holes.stream().map(hole -> hole.moved(angle, dx, dy)).toList());
    }

    /**
     * All points within {@code by} mm of the region: the blank with its trim allowance. Convex corners become round, holes shrink and may
     * close, a bay narrower than twice {@code by} may close to a hole.
     *
     * @param by mm, 0 or more; the region must not cover itself
     * @param tolerance of the result, mm, above 0
     */
    public Region grown(double by, double tolerance) {
        if (!(by >= 0) || Double.isInfinite(by)) throw new IllegalArgumentException("allowance " + by + " mm: must be 0 or more");
        if (by == 0) return this;
        int vertices = curves().stream().mapToInt(Curve::vertexCount).sum();
        double part = tolerance / 10;                              // a tenth for the lines of the input, a tenth for those of the output
        int quadrant = (int) Math.ceil(Math.PI / 4 / Math.acos(Math.max(0.7, 1 - part / by)));
        BufferParameters round = new BufferParameters(quadrant, BufferParameters.CAP_ROUND, BufferParameters.JOIN_ROUND, 1);
        round.setSimplifyFactor(part / by / 10);                   // the library's own 0.01 would lose a hundredth of the allowance
        Polygon given = polygon(part);
        Geometry grown = vertices < ROUGH ? BufferOp.bufferOp(given, by, round) : grownInRuns(given, by, round);
        Polygon most = null;
        for (int i = 0; i < grown.getNumGeometries(); i++) {
            Polygon polygon = (Polygon) grown.getGeometryN(i);
            if (most == null || polygon.getArea() > most.getArea()) most = polygon;
        }
        return ofPolygon(most, tolerance * 0.8);
    }

    /**
     * All within a distance of the rims, run by run, then neighbouring runs together, then neighbours of these: what is joined has shed all
     * corners that lie within it. The region itself comes last.
     */
    private static Geometry grownInRuns(Polygon given, double by, BufferParameters round) {
        List<Geometry> bands = new ArrayList<>();
        for (int i = -1; i < given.getNumInteriorRing(); i++) {
            Coordinate[] at = (i < 0 ? given.getExteriorRing() : given.getInteriorRingN(i)).getCoordinates();
            List<Geometry> runs = IntStream.range(0, (at.length - 2) / RUN + 1).parallel().mapToObj(r -> BufferOp.bufferOp(SHAPES.createLineString(
                    Arrays.copyOfRange(at, r * RUN, Math.min(at.length, (r + 1) * RUN + 1))), by, round)).toList();
            bands.add(joined(runs));
        }
        bands.add(given);
        return joined(bands);
    }

    private static Geometry joined(List<Geometry> neighbours) {
        List<Geometry> all = neighbours;
        while (all.size() > 1) {
            List<Geometry> two = all;
            all = IntStream.range(0, (two.size() + 1) / 2).parallel().mapToObj(i -> 2 * i + 1 == two.size() ? two.get(2 * i)
                    : OverlayNGRobust.overlay(two.get(2 * i), two.get(2 * i + 1), OverlayNG.UNION)).toList();
        }
        return all.get(0);
    }

    /** The regions together, those that touch or overlap as one; curves within {@code tolerance} mm of the true ones. */
    public static List<Region> union(List<Region> regions, double tolerance) {
        Geometry all = UnaryUnionOp.union(regions.stream().map(region -> region.polygon(tolerance / 10)).toList());
        List<Region> out = new ArrayList<>();
        for (int i = 0; all != null && i < all.getNumGeometries(); i++) {
            if (all.getGeometryN(i) instanceof Polygon polygon && !polygon.isEmpty()) out.add(ofPolygon(polygon, tolerance * 0.9));
        }
        return out;
    }

    private static Region ofPolygon(Polygon polygon, double tolerance) {
        List<double[]> rings = new ArrayList<>();
        rings.add(vertices(polygon.getExteriorRing()));
        for (int i = 0; i < polygon.getNumInteriorRing(); i++) rings.add(vertices(polygon.getInteriorRingN(i)));
        List<Curve> curves = RimFit.of(rings, tolerance);
        return of(curves.get(0), curves.subList(1, curves.size()));
    }

    /** Without the repeat of the first. */
    static double[] vertices(LinearRing ring) {
        Coordinate[] at = ring.getCoordinates();
        double[] xy = new double[2 * (at.length - 1)];
        for (int i = 0; i < at.length - 1; i++) {
            xy[2 * i] = at[i].x;
            xy[2 * i + 1] = at[i].y;
        }
        return xy;
    }

    private Polygon polygon(double tolerance) {
        return SHAPES.createPolygon(ring(outer, tolerance), holes.stream().map(hole -> ring(hole, tolerance)).toArray(LinearRing[]::new));
    }

    private static LinearRing ring(Curve curve, double tolerance) {
        double[] xy = curve.flattened(tolerance);
        if (xy.length < 6) xy = Arrays.copyOf(xy, 6);
        Coordinate[] at = new Coordinate[xy.length / 2 + 1];
        for (int i = 0; i < at.length; i++) at[i] = new Coordinate(xy[2 * i % xy.length], xy[2 * i % xy.length + 1]);
        return SHAPES.createLinearRing(at);
    }

    @Override
    public String toString() {
        return "region of " + area() + " mm² with " + holes.size() + " holes";
    }
}
