package blankwright.outline;

import blankwright.outline.Curve.Box;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.noding.NodedSegmentString;
import org.locationtech.jts.noding.SegmentString;
import org.locationtech.jts.noding.snapround.SnapRoundingNoder;
import org.locationtech.jts.operation.polygonize.Polygonizer;
import org.locationtech.jts.operation.union.UnaryUnionOp;

/**
 * Where a flat piece covers itself.
 *
 * <p>How often the rims wind round a point, the metal on their left, is how many layers of metal lie there, as long as no triangle is turned over.
 * <ol>
 * <li>Rims are cut where they meet, on a grid of 1e-4 mm (snap rounding), and sides that run there and back cancel.
 * <li>What is left divides the plane into faces; each face with fewer than 0 or more than 1 layers is bad.
 * <li>Bad faces that touch are one place. A place nowhere wider than the tolerance is a seam that touches itself, not an overlap.
 * </ol>
 */
public final class Overlap {
    private static final double GRID = 1e4;           // steps per mm

    private final List<Place> places;

    /**
     * @param x of a point well inside the place, mm
     * @param area covered, mm²
     * @param layers the most found there; below 0 where the rim runs the wrong way round, as in the second loop of a figure eight
     */
    public record Place(double x, double y, double area, int layers, Box box) { }

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

        List<Polygon> bad = new ArrayList<>();
        List<Integer> layers = new ArrayList<>();
        for (Polygon face : faces(rings)) {
            if (2 * face.getArea() < tolerance * face.getLength() / 2) continue;       // a strip of width w: area w l, length 2 l
            Point inside = face.getInteriorPoint();
            int winding = way * winding(rings, inside.getX(), inside.getY());
            if (winding == 0 || winding == 1) continue;
            bad.add(face);
            layers.add(winding);
        }
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

    private static List<Polygon> faces(List<double[]> rings) {
        List<SegmentString> rims = new ArrayList<>();
        for (double[] ring : rings) {
            int n = ring.length / 2;
            if (n < 3) continue;
            Coordinate[] at = new Coordinate[n + 1];
            for (int i = 0; i <= n; i++) at[i] = new Coordinate(Math.rint(ring[2 * (i % n)] * GRID) / GRID, Math.rint(ring[2 * (i % n) + 1] * GRID) / GRID);
            rims.add(new NodedSegmentString(at, null));
        }
        if (rims.isEmpty()) return List.of();
        SnapRoundingNoder noder = new SnapRoundingNoder(new PrecisionModel(GRID));
        noder.computeNodes(rims);
        Map<List<Coordinate>, Integer> net = new LinkedHashMap<>();      // in order of first sight: hash order must not reach the result
        for (Object found : noder.getNodedSubstrings()) {
            Coordinate[] at = ((SegmentString) found).getCoordinates();
            for (int i = 0; i + 1 < at.length; i++) {
                int way = at[i].compareTo(at[i + 1]);
                if (way == 0) continue;
                List<Coordinate> key = way < 0 ? List.of(at[i], at[i + 1]) : List.of(at[i + 1], at[i]);
                net.merge(key, way, Integer::sum);
            }
        }
        GeometryFactory shapes = new GeometryFactory();
        Polygonizer polygonizer = new Polygonizer();
        net.forEach((side, times) -> {
            if (times != 0) polygonizer.add(shapes.createLineString(side.toArray(Coordinate[]::new)));
        });
        List<Polygon> faces = new ArrayList<>();
        for (Object face : polygonizer.getPolygons()) faces.add((Polygon) face);
        return faces;
    }

    /** How often the rings turn left round (x, y): upward sides to its right count 1, downward ones -1. */
    private static int winding(List<double[]> rings, double x, double y) {
        int sum = 0;
        for (double[] ring : rings) {
            int n = ring.length;
            if (n < 6) continue;
            double ax = ring[n - 2], ay = ring[n - 1];
            for (int i = 0; i < n; i += 2) {
                double bx = ring[i], by = ring[i + 1];
                if (ay > y != by > y && x < ax + (y - ay) / (by - ay) * (bx - ax)) sum += by > ay ? 1 : -1;
                ax = bx;
                ay = by;
            }
        }
        return sum;
    }

    private static List<Place> places(List<Polygon> bad, List<Integer> layers, double tolerance) {
        List<Place> places = new ArrayList<>();
        if (bad.isEmpty()) return places;
        Geometry all = UnaryUnionOp.union(bad);
        for (int i = 0; i < all.getNumGeometries(); i++) {
            Geometry place = all.getGeometryN(i);
            if (place.buffer(-tolerance / 2).isEmpty()) continue;
            int most = 0;
            for (int f = 0; f < bad.size(); f++) {
                if (Math.abs(layers.get(f)) <= Math.abs(most)) continue;
                if (place.getEnvelopeInternal().contains(bad.get(f).getEnvelopeInternal()) && place.intersects(bad.get(f).getInteriorPoint())) most = layers.get(f);
            }
            Point inside = place.getInteriorPoint();
            Envelope e = place.getEnvelopeInternal();
            places.add(new Place(inside.getX(), inside.getY(), place.getArea(), most, new Box(e.getMinX(), e.getMinY(), e.getMaxX(), e.getMaxY())));
        }
        places.sort(Comparator.comparingDouble(Place::area).reversed().thenComparingDouble(Place::x).thenComparingDouble(Place::y));
        return List.copyOf(places);
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
