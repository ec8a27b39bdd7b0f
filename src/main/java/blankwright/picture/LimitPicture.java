package blankwright.picture;

import blankwright.metal.Alloy;
import blankwright.metal.FormingLimit;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * The forming-limit picture: each spot of the panel by its larger and smaller strain, with the curve it should stay under.
 *
 * <p>Landscape A4 at 300 elements an inch. Strains are true. Places are told apart by colour and by mark, so that a grey print still reads. Where spots
 * crowd one is drawn in each square of {@value #CELL} mm, of each place there in turn, so that none hides another; the worst of each place always is. The
 * spot nearest to the limit is ringed.
 * <p>Colours: the eight of Okabe and Ito, which most colour-blind eyes tell apart; docs/sources.md [OI08].
 */
public final class LimitPicture {
    private static final double PER_MM = 300 / 25.4, MARGIN = 7, COLUMN = 78, HEADING = 16.5, SPOT = 0.55, CELL = 1.3;
    private static final int[] COLOURS = {0x0072B2, 0xE69F00, 0x009E73, 0xCC79A7, 0x56B4E9, 0xD55E00, 0xF0E442};
    private static final double BANNER = 8;
    private static final double NEAR = 0.8;                 // of the limit: the dashed curve
    private static final int MOST_PLACES = 20;

    /**
     * The spots of one place, e.g. a zone.
     *
     * @param major larger principal true strain of each spot, @param minor smaller; the same number of both, NaN-free
     */
    public record Place(String name, double[] major, double[] minor) {
        public Place {
            if (major.length != minor.length) throw new IllegalArgumentException(major.length + " major and " + minor.length + " minor strains");
            major = major.clone();
            minor = minor.clone();
            for (int i = 0; i < major.length; i++) {
                if (!(major[i] >= minor[i]) || Double.isInfinite(major[i]) || Double.isInfinite(minor[i]))
                    throw new IllegalArgumentException("spot " + i + ": major " + major[i] + ", minor " + minor[i]);
            }
        }

        @Override public double[] major() {
            return major.clone();
        }

        @Override public double[] minor() {
            return minor.clone();
        }
    }

    private final Caption caption;
    private final FormingLimit limit;
    private final List<Place> places;
    private final Canvas canvas = new Canvas(Frame.WIDTH, Frame.HEIGHT, PER_MM);
    private final Frame frame = new Frame(canvas, null);
    private final Rectangle2D room;
    private double left, right, low, high;                  // strains at the sides of the room

    private LimitPicture(Caption caption, FormingLimit limit, List<Place> places) {
        this.caption = caption;
        this.limit = limit;
        this.places = places;
        double top = HEADING + 5 + (caption.warnings().isEmpty() ? 0 : BANNER);
        room = new Rectangle2D.Double(MARGIN + 17, top, Frame.WIDTH - 2 * MARGIN - COLUMN - 24, Frame.HEIGHT - MARGIN - 28 - top);
    }

    /** @param places in the order they are drawn and listed; the last may be named for the rest of the panel */
    public static Picture of(Caption caption, FormingLimit limit, List<Place> places) {
        return drawn(caption, limit, places).picture();
    }

    static Canvas drawn(Caption caption, FormingLimit limit, List<Place> places) {
        LimitPicture picture = new LimitPicture(caption, limit, List.copyOf(places));
        picture.scale();
        picture.heading();
        picture.frame.banner(caption.warnings());
        picture.axes();
        picture.curves();
        picture.spots();
        picture.key();
        return picture.canvas;
    }

    /** Everything in sight: the curve from uniaxial to equal stretch, and every spot. */
    private void scale() {
        double level = Math.max(limit.limit(0), 0.02), mostUp = 1.6 * level, mostLeft = -0.7 * level, mostRight = 0.7 * level, mostDown = -0.15 * level;
        for (Place place : places) {
            for (int i = 0; i < place.major.length; i++) {
                mostUp = Math.max(mostUp, place.major[i]);
                mostDown = Math.min(mostDown, place.major[i]);
                mostLeft = Math.min(mostLeft, place.minor[i]);
                mostRight = Math.max(mostRight, place.minor[i]);
            }
        }
        double air = 0.04 * Math.max(mostUp - mostDown, mostRight - mostLeft);
        left = mostLeft - air;
        right = mostRight + air;
        low = mostDown - air;
        high = mostUp + air;
    }

    private double x(double minor) {
        return room.getMinX() + (minor - left) / (right - left) * room.getWidth();
    }

    private double y(double major) {
        return room.getMaxY() - (major - low) / (high - low) * room.getHeight();
    }

    private void heading() {
        String what = "forming limit: how near each place comes to necking";
        canvas.words(caption.name(), MARGIN, 12.6, Math.min(5, 5 * 110 / Math.max(110, Canvas.wide(caption.name(), 5))), Canvas.INK);
        canvas.words(what, MARGIN + Math.min(Canvas.wide(caption.name(), 5), 110) + 5, 12.6, 3, Canvas.INK);
        canvas.segment(MARGIN, HEADING - 1, Frame.WIDTH - MARGIN, HEADING - 1, Canvas.INK, 0.5);
    }

    private void axes() {
        canvas.line(room, Canvas.INK, 0.3);
        double step = step(Math.max((right - left) / 9, (high - low) / 9));
        for (long i = (long) Math.ceil(left / step); i * step <= right; i++) {
            canvas.segment(x(i * step), room.getMinY(), x(i * step), room.getMaxY(), i == 0 ? Canvas.INK : 0xDDDDDD, i == 0 ? 0.3 : 0.15);
            canvas.wordsCentred(tick(i * step, step), x(i * step), room.getMaxY() + 4.2, 2.4, Canvas.INK);
        }
        for (long i = (long) Math.ceil(low / step); i * step <= high; i++) {
            canvas.segment(room.getMinX(), y(i * step), room.getMaxX(), y(i * step), i == 0 ? Canvas.INK : 0xDDDDDD, i == 0 ? 0.3 : 0.15);
            canvas.wordsEndingAt(tick(i * step, step), room.getMinX() - 1.5, y(i * step) + 0.9, 2.4, Canvas.INK);
        }
        canvas.words("Up: the larger strain of each spot.  Right: the smaller one, across it; left of 0 it shrinks. True strain: +0.10 is 10.5 % longer.",
                room.getMinX() - 12, room.getMaxY() + 9.2, 2.5, Canvas.INK);
        canvas.words("major", MARGIN, room.getMinY() - 1.6, 2.8, Canvas.INK);
        canvas.wordsEndingAt("minor", room.getMaxX(), room.getMinY() - 1.6, 2.8, Canvas.INK);
    }

    private static double step(double least) {
        double decade = Math.pow(10, Math.floor(Math.log10(least)));
        for (double times : new double[] {1, 2, 5}) if (times * decade >= least) return times * decade;
        return 10 * decade;
    }

    private static String tick(double strain, double step) {
        int digits = Math.max(0, (int) Math.ceil(-Math.log10(step) - 1e-9));
        return Math.abs(strain) < step / 2 ? "0" : String.format(Locale.ROOT, "%+." + digits + "f", strain);
    }

    private void curves() {
        Path2D kept = new Path2D.Double();
        double end = Math.min(-left, high);
        if (end > 0) {
            kept.moveTo(x(0), y(0));
            kept.lineTo(x(-end), y(end));
            canvas.dashed(kept, Canvas.FAINT, 0.25f, 0.6f, 1.2f);
        }
        Path2D near = curve(NEAR), full = curve(1);
        canvas.dashed(near, Canvas.INK, 0.35, 3, 1.6f);
        canvas.line(full, Canvas.INK, 0.8);
    }

    /** The limit times a share of it, along straight paths from uniaxial compression to equal stretch. */
    private Path2D curve(double share) {
        Path2D path = new Path2D.Double();
        boolean drawing = false;
        for (int i = 0; i <= 360; i++) {
            double b = -0.9 + 1.9 * i / 360, e1 = limit.limit(b) * share, e2 = b * e1;
            boolean inside = e1 <= high && e2 >= left && e2 <= right;
            if (inside && drawing) path.lineTo(x(e2), y(e1));
            else if (inside) path.moveTo(x(e2), y(e1));
            drawing = inside;
        }
        if (path.getCurrentPoint() == null) path.moveTo(x(0), y(0));
        return path;
    }

    /** A spot to be drawn. */
    private record Dot(int place, double x, double y) { }

    private void spots() {
        Map<Long, List<Dot>> cells = new LinkedHashMap<>();
        List<Dot> worsts = new ArrayList<>();
        double worst = 0;
        Dot ringed = null;
        for (int p = 0; p < places.size(); p++) {
            Place place = places.get(p);
            double most = Double.NEGATIVE_INFINITY;
            Dot nearest = null;
            for (int i = 0; i < place.major.length; i++) {
                Dot dot = new Dot(p, x(place.minor[i]), y(place.major[i]));
                double margin = limit.margin(place.major[i], place.minor[i]);
                if (margin > most) {
                    most = margin;
                    nearest = dot;
                }
                List<Dot> here = cells.computeIfAbsent(cell(dot.x, dot.y), k -> new ArrayList<>());
                if (here.isEmpty() || here.get(here.size() - 1).place != p) here.add(dot);
            }
            if (nearest != null) worsts.add(nearest);
            if (most > worst) {
                worst = most;
                ringed = nearest;
            }
        }
        for (Map.Entry<Long, List<Dot>> cell : cells.entrySet()) {
            List<Dot> here = cell.getValue();
            mark(here.get((int) Math.floorMod(cell.getKey() / 100_000 + 2 * (cell.getKey() % 100_000), (long) here.size())));
        }
        for (int i = worsts.size() - 1; i >= 0; i--) mark(worsts.get(i));
        if (ringed == null) return;
        canvas.line(new Ellipse2D.Double(ringed.x - 2, ringed.y - 2, 4, 4), Canvas.INK, 0.5);
        String words = percent(worst) + " of the limit";
        double half = Canvas.wide(words, 3) / 2 + 1;
        canvas.wordsOver(words, Math.max(room.getMinX() + half, Math.min(room.getMaxX() - half, ringed.x)), ringed.y < room.getMinY() + 8 ? ringed.y + 5
                : ringed.y - 5, 3, Canvas.INK);
    }

    private static long cell(double x, double y) {
        return Math.round(x / CELL) * 100_000 + Math.round(y / CELL);
    }

    private void mark(Dot dot) {
        mark(dot.place, dot.x, dot.y, SPOT);
    }

    /** Disc, square, triangle or diamond, in the colour of the place. */
    private void mark(int place, double x, double y, double r) {
        int colour = COLOURS[place % COLOURS.length], form = (place % COLOURS.length + place / COLOURS.length) % 4;     // 28 places alike in neither or one
        Path2D shape = new Path2D.Double();
        int corners = new int[] {24, 4, 3, 4}[form];
        double turn = form == 1 ? Math.PI / 4 : -Math.PI / 2;
        for (int c = 0; c < corners; c++) {
            double a = turn + 2 * Math.PI * c / corners, px = x + 1.15 * r * Math.cos(a), py = y + 1.15 * r * Math.sin(a);
            if (c == 0) shape.moveTo(px, py);
            else shape.lineTo(px, py);
        }
        shape.closePath();
        canvas.fill(shape, colour);
        canvas.line(shape, 0x333333, r * 0.12);
    }

    private void key() {
        double x = Frame.WIDTH - MARGIN - COLUMN, y = room.getMinY() + 1;
        Alloy alloy = limit.alloy();
        y = lines(x, y, 3.4, String.format(Locale.ROOT, "%s, %.2f mm", alloy.name(), limit.thickness()));
        canvas.segment(x, y - 1, x + 12, y - 1, Canvas.INK, 0.8);
        y = lines(x + 15, y, 2.6, "limit: here it necks");
        Path2D dashed = new Path2D.Double();
        dashed.moveTo(x, y - 1);
        dashed.lineTo(x + 12, y - 1);
        canvas.dashed(dashed, Canvas.INK, 0.35, 3, 1.6f);
        y = lines(x + 15, y, 2.6, percent(NEAR) + " of it: take care from here on");
        Path2D dotted = new Path2D.Double();
        dotted.moveTo(x, y - 1);
        dotted.lineTo(x + 12, y - 1);
        canvas.dashed(dotted, Canvas.FAINT, 0.25, 0.6f, 1.2f);
        y = lines(x + 15, y, 2.6, "thickness kept; left of it the metal thickens") + 2;
        List<String> basis = new ArrayList<>();
        basis.add("Basis: " + limit.basis() + ".");
        basis.add(String.format(Locale.ROOT, "n %.3f: %s", alloy.hardening().value(), alloy.hardening().trust().words()));
        basis.add("Shrinking has other limits: it buckles and folds.");
        for (String line : basis) y = lines(x, y, 2.3, line);
        y = lines(x, y + 3, 3.2, "Places, nearest to the limit");
        int shown = Math.min(MOST_PLACES, places.size());
        for (int p = 0; p < shown; p++) {
            Place place = places.get(p);
            double worst = 0;
            for (int i = 0; i < place.major.length; i++) worst = Math.max(worst, limit.margin(place.major[i], place.minor[i]));
            mark(p, x + 2, y - 1, 1.3);
            canvas.wordsEndingAt(percent(worst), x + COLUMN, y, 2.6, Canvas.INK);
            lines(x + 6, y, Math.min(2.6, 2.6 * 52 / Math.max(52, Canvas.wide(place.name(), 2.6))), place.name());
            y += 4.6;
        }
        if (shown < places.size()) lines(x, y, 2.3, "and " + (places.size() - shown) + " more");
        double foot = Frame.HEIGHT - MARGIN - 7;
        List<String> said = new ArrayList<>(caption.notes());
        said.add("A chart, not a blank: cut from blank.*");
        String notes = String.join("   ", said);
        canvas.words(notes, MARGIN, foot, Math.min(2.5, 2.5 * 280 / Math.max(280, Canvas.wide(notes, 2.5))), Canvas.INK);
        canvas.words("A guide, not a permit: strain paths of hand work are not straight, and edges with nicks split earlier. Stop when metal stops moving, thins or"
                + " brightens.", MARGIN, foot + 5, 2.5, Canvas.INK);
    }

    /** Words broken to the column, beginning at y; returns the line below. */
    private double lines(double x, double y, double tall, String text) {
        double wide = Frame.WIDTH - MARGIN - x;
        StringBuilder line = new StringBuilder();
        for (String word : text.split(" ")) {
            if (!line.isEmpty() && Canvas.wide(line + " " + word, tall) > wide) {
                canvas.words(line.toString(), x, y, tall, Canvas.INK);
                line.setLength(0);
                y += tall * 1.55;
            }
            line.append(line.isEmpty() ? "" : " ").append(word);
        }
        canvas.words(line.toString(), x, y, tall, Canvas.INK);
        return y + tall * 1.75;
    }

    private static String percent(double share) {
        return Double.isInfinite(share) ? "past all" : String.format(Locale.ROOT, "%.0f %%", 100 * share);
    }
}
