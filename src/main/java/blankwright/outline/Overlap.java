package blankwright.outline;

import blankwright.outline.Curve.Box;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.locationtech.jts.algorithm.RobustLineIntersector;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateArrays;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.index.intervalrtree.SortedPackedIntervalRTree;
import org.locationtech.jts.noding.MCIndexNoder;
import org.locationtech.jts.noding.NodedSegmentString;
import org.locationtech.jts.noding.NodingIntersectionFinder;
import org.locationtech.jts.noding.OrientedCoordinateArray;
import org.locationtech.jts.noding.SegmentString;
import org.locationtech.jts.noding.snap.SnappingNoder;
import org.locationtech.jts.operation.polygonize.Polygonizer;
import org.locationtech.jts.operation.union.UnaryUnionOp;

/**
 * Where a flat piece covers itself.
 *
 * <p>How often the rims wind round a point, the metal on their left, is how many layers of metal lie there, as long as no triangle is turned over.
 * <ol>
 * <li>Rims are cut where they meet, points within 1e-4 mm made one, and lines that run there and back cancel.
 * <li>What is left divides the plane into faces; each face with fewer than 0 or more than 1 layers is bad.
 * <li>Bad faces that touch are one place. A place nowhere wider than the tolerance is a seam that touches itself, not an overlap.
 * Where there are more than 10 000 bad faces only the 1000 largest are made places, so that the answer comes in seconds.
 * </ol>
 */
public final class Overlap {
    private static final double SNAP = 1e-4;          // mm
    /** A rim of 800 random points has 50 000 bad faces; making them one took 10 s. Above this many only the largest are told. */
    private static final int MANY = 10_000;

    private final List<Place> places;
    /**
     * @param x of a point well inside the place, mm
     * @param area covered, mm²
     * @param layers the most found there; below 0 where the rim runs the wrong way round, as in the second loop of a figure eight
     * @param edge round the place on the outside, closed, of lines
     */
    public record Place(double x, double y, double area, int layers, Box box, Curve edge) { }

    private Overlap(List<Place> places) {
        this.places = places;
    }

    /** As {@link #of(List, double)} with a tolerance of 0.01 mm. */
    public static Overlap of(List<double[]> rings) {
        return of(rings, 0.01);
    }

    /**
     * @param rings the rims of one piece, vertices x, y, x, y, ... in mm without a repeat of the first, the metal always on the same hand
     * @param tolerance mm, above 0: places nowhere wider are left out
     * @throws IllegalArgumentException when a number is not finite
     */
    public static Overlap of(List<double[]> rings, double tolerance) {
        if (!(tolerance > 0)) throw new IllegalArgumentException("tolerance " + tolerance + " mm: must be above 0");
        for (double[] ring : rings) {
            for (int i = 0; i < ring.length; i++)
                if (!Double.isFinite(ring[i])) throw new IllegalArgumentException("vertex " + i / 2 + " of a rim is at " + ring[i]);
        }
        double whole = 0;
        for (double[] ring : rings) whole += signedArea(ring);
        int way = whole < 0 ? -1 : 1;

        if (isPlainlyClear(rings, way)) return new Overlap(List.of());
        List<Polygon> bad = new ArrayList<>();
        List<Integer> layers = new ArrayList<>();
        List<Rim> rims = cutWhereTheyMeet(rings);
        Sides sides = new Sides(rims);
        for (Polygon face : faces(rims)) {
            if (face.getArea() < tolerance * tolerance / 2) continue;                  // a disk as wide as the tolerance has π/4 of its square
            Point inside = face.getInteriorPoint();
            int winding = way * sides.winding(inside.getX(), inside.getY());
            if (winding == 0 || winding == 1) continue;
            bad.add(face);
            layers.add(winding);
        }
        if (bad.size() > MANY) return new Overlap(places(largest(bad, layers, MANY / 10), layers, tolerance));
        return new Overlap(places(bad, layers, tolerance));
    }

    /** The places, largest area first. */
    public List<Place> places() {
        return places;
    }

    public boolean isEmpty() {
        return places.isEmpty();
    }

    /** Area of all places, mm². */
    public double area() {
        double sum = 0;
        for (Place place : places) sum += place.area();
        return sum;
    }

    private static List<SegmentString> rims(List<double[]> rings) {
        List<SegmentString> rims = new ArrayList<>();
        for (double[] ring : rings) {
            int n = ring.length / 2;
            if (n < 3) continue;
            Coordinate[] at = new Coordinate[n + 1];
            for (int i = 0; i <= n; i++) at[i] = new Coordinate(ring[2 * (i % n)], ring[2 * (i % n) + 1]);
            rims.add(new NodedSegmentString(CoordinateArrays.removeRepeatedPoints(at), null));
        }
        return rims;
    }

    /** True where no rim meets a rim and each, by the rims round it, bounds one layer: most blanks end here. */
    private static boolean isPlainlyClear(List<double[]> rings, int way) {
        NodingIntersectionFinder meetings = new NodingIntersectionFinder(new RobustLineIntersector());
        meetings.setFindAllIntersections(false);
        new MCIndexNoder(meetings).computeNodes(rims(rings));
        if (meetings.hasIntersection()) return false;
        for (double[] ring : rings) {
            if (ring.length < 6) continue;
            List<double[]> others = rings.stream().filter(other -> other != ring).toList();
            int beyond = way * windingOfRings(others, ring[0], ring[1]), turn = signedArea(ring) * way > 0 ? 1 : -1;
            if (turn == 1 ? beyond != 0 : beyond != 1) return false;
        }
        return true;
    }

    /** A line between two meetings, and how many times more it is run along than back. */
    private record Rim(Coordinate[] at, int times) { }

    private static List<Rim> cutWhereTheyMeet(List<double[]> rings) {
        SnappingNoder noder = new SnappingNoder(SNAP);
        noder.computeNodes(rims(rings));
        Map<OrientedCoordinateArray, Integer> net = new TreeMap<>();
        Map<OrientedCoordinateArray, Coordinate[]> forward = new TreeMap<>();
        for (Object found : noder.getNodedSubstrings()) {
            Coordinate[] at = ((SegmentString) found).getCoordinates();
            OrientedCoordinateArray eitherWay = new OrientedCoordinateArray(at);
            int direction = CoordinateArrays.increasingDirection(at);
            net.merge(eitherWay, direction, Integer::sum);
            if (direction < 0) CoordinateArrays.reverse(at = at.clone());
            forward.put(eitherWay, at);
        }
        List<Rim> rims = new ArrayList<>();
        net.forEach((line, times) -> {
            if (times != 0) rims.add(new Rim(forward.get(line), times));
        });
        return rims;
    }

    private static List<Polygon> faces(List<Rim> rims) {
        GeometryFactory shapes = new GeometryFactory();
        Polygonizer polygonizer = new Polygonizer();
        for (Rim rim : rims) polygonizer.add(shapes.createLineString(rim.at()));
        List<Polygon> faces = new ArrayList<>();
        for (Object face : polygonizer.getPolygons()) faces.add((Polygon) face);
        return faces;
    }

    /** The sides of the rims by their heights: a rim of 20 000 sides that crosses itself everywhere has thousands of faces to ask about. */
    private static final class Sides {
        private record Side(Coordinate a, Coordinate b, int times) { }

        private final SortedPackedIntervalRTree byHeight = new SortedPackedIntervalRTree();

        Sides(List<Rim> rims) {
            for (Rim rim : rims) {
                Coordinate[] at = rim.at();
                for (int i = 0; i + 1 < at.length; i++) {
                    double low = Math.min(at[i].y, at[i + 1].y), high = Math.max(at[i].y, at[i + 1].y);
                    byHeight.insert(low, high, new Side(at[i], at[i + 1], rim.times()));
                }
            }
        }

        /** How often the rims turn left round (x, y): upward sides to its right count 1, downward ones -1. */
        int winding(double x, double y) {
            int[] sum = {0};
            byHeight.query(y, y, found -> {
                Side side = (Side) found;
                sum[0] += side.times() * upward(side.a().x, side.a().y, side.b().x, side.b().y, x, y);
            });
            return sum[0];
        }
    }

    private static int windingOfRings(List<double[]> rings, double x, double y) {
        int sum = 0;
        for (double[] ring : rings) {
            int n = ring.length;
            for (int i = 0; i < n; i += 2) sum += upward(ring[i], ring[i + 1], ring[(i + 2) % n], ring[(i + 3) % n], x, y);
        }
        return sum;
    }

    private static int upward(double ax, double ay, double bx, double by, double x, double y) {
        if (ay > y == by > y || x >= ax + (y - ay) / (by - ay) * (bx - ax)) return 0;
        return by > ay ? 1 : -1;
    }

    /** The {@code count} largest faces; {@code layers} is brought into their order. */
    private static List<Polygon> largest(List<Polygon> bad, List<Integer> layers, int count) {
        List<Integer> order = IntStream.range(0, bad.size()).boxed()
                .sorted(Comparator.comparingDouble((Integer f) -> bad.get(f).getArea()).reversed()).limit(count).toList();
        List<Integer> theirs = order.stream().map(layers::get).toList();
        layers.clear();
        layers.addAll(theirs);
        return order.stream().map(bad::get).toList();
    }

    private static List<Place> places(List<Polygon> bad, List<Integer> layers, double tolerance) {
        List<Place> places = new ArrayList<>();
        if (bad.isEmpty()) return places;
        Geometry all = UnaryUnionOp.union(bad);
        for (int i = 0; i < all.getNumGeometries(); i++) {
            Geometry place = all.getGeometryN(i);
            if (!isWider(place, tolerance)) continue;
            int most = 0;
            for (int f = 0; f < bad.size(); f++) {
                if (Math.abs(layers.get(f)) <= Math.abs(most)) continue;
                if (place.getEnvelopeInternal().contains(bad.get(f).getEnvelopeInternal()) && place.intersects(bad.get(f).getInteriorPoint())) most = layers.get(f);
            }
            Point inside = place.getInteriorPoint();
            Envelope e = place.getEnvelopeInternal();
            places.add(new Place(inside.getX(), inside.getY(), place.getArea(), most, new Box(e.getMinX(), e.getMinY(), e.getMaxX(), e.getMaxY()),
                    Curve.polygon(Region.vertices(((Polygon) place).getExteriorRing()))));
        }
        places.sort(Comparator.comparingDouble(Place::area).reversed().thenComparingDouble(Place::x).thenComparingDouble(Place::y));
        return List.copyOf(places);
    }

    /** Whether a disk as wide as the tolerance fits in; sure where area > length · radius, as area < length · inradius (Bonnesen) without holes. */
    private static boolean isWider(Geometry place, double tolerance) {
        if (place instanceof Polygon polygon && polygon.getNumInteriorRing() == 0 && polygon.getArea() > polygon.getLength() * tolerance / 2) return true;
        return !place.buffer(-tolerance / 2).isEmpty();
    }

    private static double signedArea(double[] ring) {
        double twice = 0;
        int n = ring.length;
        for (int i = 0; i < n; i += 2) {
            double ax = ring[i] - ring[0], ay = ring[i + 1] - ring[1], bx = ring[(i + 2) % n] - ring[0], by = ring[(i + 3) % n] - ring[1];
            twice += ax * by - ay * bx;
        }
        return twice / 2;
    }
}
