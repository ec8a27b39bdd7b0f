package blankwright.picture;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * How a blank that is not worked gives way: the form as it buckles, in relief, and the blank with the same shape as lines of height and the
 * tucks at its edges.
 *
 * <p>A mode has a shape but no height: it is drawn with its crest at a share of the panel, and says so.
 */
public final class BucklingPicture {
    private static final double PER_MM = 300 / 25.4;
    private static final double CREST = 0.06;               // of the diagonal of the form's box
    private static final double DARKEST = 0.35;
    private static final double[] LEVELS = {-0.8, -0.6, -0.4, -0.2, 0.2, 0.4, 0.6, 0.8};
    private static final double GAP = 6;                    // mm on paper round each part
    private static final double DIGITS = 2.3, OUT = 1.3;    // mm on paper: numbers of tucks, and how far they keep from the edge
    private static final double TIE = 0.9;                  // mm on paper: where a line to a number begins, clear of the edge
    private static final double BETWEEN = 0.8;              // mm on paper: two numbers are not to be read as one
    private static final double STEP = 0.8;                 // mm on paper along the edge
    private static final int ROWS = 6, STEPS = 4;           // of numbers outside each other, and along the edge either way
    private static final double WAY = 4, HIDES = 1.4;       // mm on paper: the way out of a number, and how much it counts to be in it
    private static final int TIMES = 20;                    // that numbers are placed in another order

    private final Canvas canvas = new Canvas(Frame.WIDTH, Frame.HEIGHT, PER_MM);
    private final BucklingPiece piece;
    private final TriMesh form;
    private final double crest;

    private BucklingPicture(BucklingPiece piece) {
        this.piece = piece;
        form = piece.map().form();
        double[] size = form.size();
        crest = CREST * Math.sqrt(size[0] * size[0] + size[1] * size[1] + size[2] * size[2]);
    }

    /** @throws IllegalArgumentException where the mode is not one of the piece */
    public static Picture of(Caption caption, BucklingPiece piece) {
        if (piece.mode().length != 3 * piece.map().form().vertexCount())
            throw new IllegalArgumentException(piece.mode().length / 3 + " displacements for " + piece.map().form().vertexCount()
                    + " vertices");
        return drawn(caption, piece).picture();
    }

    static Canvas drawn(Caption caption, BucklingPiece piece) {
        BucklingPicture picture = new BucklingPicture(piece);
        picture.draw(caption);
        return picture.canvas;
    }

    private void draw(Caption caption) {
        Frame frame = new Frame(canvas, null);
        frame.heading(caption, "how the blank buckles if it is not worked" + (piece.name().isEmpty() ? "" : ", piece " + piece.name()));
        Rectangle2D room = Frame.room();
        double banner = frame.banner(caption.warnings());
        room.setRect(room.getX(), room.getY() + banner, room.getWidth(), room.getHeight() - banner);
        double half = room.getHeight() / 2;
        double wide = Frame.WIDTH - 2 * room.getX();
        List<View> views = View.round(form);
        relief(views.get(0), new Rectangle2D.Double(room.getX(), room.getY(), wide / 2, half));
        relief(views.get(3), new Rectangle2D.Double(room.getX(), room.getY() + half, wide / 2, half));
        blank(new Rectangle2D.Double(room.getX() + wide / 2, room.getY(), wide / 2, room.getHeight()));
        double y = room.getMaxY() + 6;
        for (String sentence : piece.says()) {
            canvas.words(sentence, room.getX(), y, Frame.fitting(sentence, 2.5, wide - 76), Canvas.INK);
            y += 4.6;
        }
        String drawn = String.format(Locale.ROOT, "Shape only: drawn with its crest %.0f mm high; how high it really goes this does not say.",
                crest);
        canvas.words(drawn, room.getX(), y, 2.5, Canvas.INK);
        String key = "Form: dashed = its edges as wanted. Blank: full lines = out, dashed = in, a fifth of the crest apart; triangles = tucks,"
                + " as in tucks.csv.";
        canvas.words(key, room.getX(), y + 4.6, Frame.fitting(key, 2.5, wide - 76), Canvas.INK);
        frame.cautions();
    }

    /** Moved by the mode. */
    private TriMesh moved() {
        double[] xyz = form.positions();
        for (int i = 0; i < xyz.length; i++) xyz[i] += crest * piece.mode()[i];
        return form.withPositions(xyz);
    }

    private void relief(View view, Rectangle2D room) {
        TriMesh mesh = moved();
        int n = mesh.vertexCount();
        double[] flat = new double[2 * n];
        for (int v = 0; v < n; v++) {
            flat[2 * v] = view.right(mesh.x(v), mesh.y(v), mesh.z(v));
            flat[2 * v + 1] = -view.up(mesh.x(v), mesh.y(v), mesh.z(v));
        }
        Placing at = new Placing(flat, room, 2 * GAP);
        double dots = canvas.perMm();
        int column0 = (int) Math.floor(room.getX() * dots), row0 = (int) Math.floor(room.getY() * dots);
        DepthPainter painter = new DepthPainter((int) Math.ceil(room.getWidth() * dots) + 2,
                (int) Math.ceil(room.getHeight() * dots) + 2, 2);
        float[] place = new float[3 * n], light = new float[n];
        double[] normal = normals(mesh);
        for (int v = 0; v < n; v++) {
            place[3 * v] = (float) (at.x(flat, v) * dots - column0);
            place[3 * v + 1] = (float) (at.y(flat, v) * dots - row0);
            place[3 * v + 2] = (float) (at.scale * dots * view.towards(mesh.x(v), mesh.y(v), mesh.z(v)));
            double towards = view.towards(normal[3 * v], normal[3 * v + 1], normal[3 * v + 2]), side = towards < 0 ? -1 : 1;
            double bright = side * (0.55 * towards + 0.55 * view.up(normal[3 * v], normal[3 * v + 1], normal[3 * v + 2])
                    - 0.62 * view.right(normal[3 * v], normal[3 * v + 1], normal[3 * v + 2]));
            light[v] = (float) (DARKEST + (1 - DARKEST) * Math.max(0, Math.min(1, bright)));
        }
        painter.paint(place, new double[n], light, mesh.corners(), Tints.of(StrainScale.of(1e-6)));
        painter.overlay(canvas.raster(), canvas.columns(), canvas.rows(), column0, row0);
        Path2D rim = new Path2D.Double();
        double slack = 1.5 * dots;
        RimLoops rims = RimLoops.of(mesh, EdgeTable.of(mesh));
        for (int i = 0; i < rims.count(); i++) {
            int[] loop = rims.loop(i);
            for (int j = 0; j < loop.length; j++) {
                int a = loop[j], b = loop[(j + 1) % loop.length];
                if (!painter.sees(place[3 * a], place[3 * a + 1], place[3 * a + 2], slack)) continue;
                if (!painter.sees(place[3 * b], place[3 * b + 1], place[3 * b + 2], slack)) continue;
                rim.moveTo(at.x(flat, a), at.y(flat, a));
                rim.lineTo(at.x(flat, b), at.y(flat, b));
            }
        }
        canvas.line(rim, Canvas.INK, 0.3);
        canvas.dashed(wanted(view, at), 0x777777, 0.2, 1.6f, 1.2f);
        canvas.wordsCentred(view.name(), room.getCenterX(), room.getMaxY() - 1.5, 2.6, Canvas.INK);
    }

    /** The edges of the form itself, hidden or not. */
    private Path2D wanted(View view, Placing at) {
        Path2D path = new Path2D.Double();
        RimLoops rims = RimLoops.of(form, EdgeTable.of(form));
        for (int i = 0; i < rims.count(); i++) {
            int[] loop = rims.loop(i);
            for (int j = 0; j < loop.length; j++) {
                double x = form.x(loop[j]), y = form.y(loop[j]), z = form.z(loop[j]);
                if (j == 0) path.moveTo(at.x(view.right(x, y, z)), at.y(-view.up(x, y, z)));
                else path.lineTo(at.x(view.right(x, y, z)), at.y(-view.up(x, y, z)));
            }
            path.closePath();
        }
        return path;
    }

    private void blank(Rectangle2D room) {
        int n = form.vertexCount();
        double[] flat = new double[2 * n];
        for (int v = 0; v < n; v++) {
            flat[2 * v] = piece.map().u(v);
            flat[2 * v + 1] = -piece.map().v(v);
        }
        Placing at = new Placing(flat, room, (piece.marks().isEmpty() ? 2 : 4) * GAP);
        double[] normal = normals(form), rise = new double[n];
        for (int i = 0; i < normal.length; i++) rise[i / 3] += normal[i] * piece.mode()[i];
        for (ContourLines.Line line : ContourLines.of(form.corners(), rise, LEVELS)) {
            Path2D path = new Path2D.Double();
            for (int i = 0; i < line.count(); i++) {
                double x = at.x(line.at(i, flat, 2, 0)), y = at.y(line.at(i, flat, 2, 1));
                if (i == 0) path.moveTo(x, y);
                else path.lineTo(x, y);
            }
            if (line.value() > 0) canvas.line(path, Canvas.INK, 0.2);
            else canvas.dashed(path, Canvas.INK, 0.2, 1.6f, 1f);
        }
        RimLoops rims = RimLoops.of(form, EdgeTable.of(form));
        Path2D outline = new Path2D.Double();
        double[] inward = new double[2 * n];                    // at rim vertices: into the metal on paper
        for (int i = 0; i < rims.count(); i++) {
            int[] loop = rims.loop(i);
            for (int j = 0; j < loop.length; j++) {
                int a = loop[j], before = loop[(j + loop.length - 1) % loop.length], after = loop[(j + 1) % loop.length];
                double dx = flat[2 * after] - flat[2 * before], dy = flat[2 * after + 1] - flat[2 * before + 1], l = Math.hypot(dx, dy);
                if (l > 0) {
                    inward[2 * a] = dy / l;                     // metal on the left hand; y runs downwards here
                    inward[2 * a + 1] = -dx / l;
                }
                if (j == 0) outline.moveTo(at.x(flat, a), at.y(flat, a));
                else outline.lineTo(at.x(flat, a), at.y(flat, a));
                canvas.takeLine(at.x(flat, a), at.y(flat, a), at.x(flat, after), at.y(flat, after));
            }
            outline.closePath();
        }
        canvas.line(outline, Canvas.INK, 0.5);
        String below = "blank, outside face up";
        canvas.wordsCentred(below, room.getCenterX(), room.getMaxY() - 1.5, 2.6, Canvas.INK);
        canvas.take(room.getCenterX(), room.getMaxY() - 2.8, Canvas.wide(below, 2.6), 3.2);
        for (BucklingPiece.Mark mark : piece.marks()) mark(mark, flat, inward, at);
        List<Number> numbers = new ArrayList<>();
        for (int i = 0; i < piece.marks().size(); i++) {
            int v = piece.marks().get(i).vertex();
            numbers.add(new Number(Integer.toString(i + 1), at.x(flat, v), at.y(flat, v), inward[2 * v], inward[2 * v + 1]));
        }
        numbers(numbers, room);
    }

    /** A number to be put outside the edge at (x, y); (ix, iy) points into the metal. Its box on paper stands so thick on the edge. */
    private record Number(String label, double x, double y, double ix, double iy) {
        double wide() {
            return Canvas.wide(label, DIGITS) + BETWEEN;
        }

        double high() {
            return 1.25 * DIGITS;
        }

        double thick() {
            return Math.abs(ix) * wide() + Math.abs(iy) * high();
        }

        /** Whether its own way out leads through a box round (atX, atY). */
        boolean wayCrosses(double atX, double atY, double w, double h) {
            return new Rectangle2D.Double(atX - w / 2, atY - h / 2, w, h).intersectsLine(x - TIE * ix, y - TIE * iy, x - WAY * ix, y - WAY * iy);
        }
    }

    /** Where a number stands, its middle; tied to its tuck by a line from (x0, y0) to (x1, y1) where it does not stand beside it. */
    private record Stands(Number number, double x, double y, boolean tied, double x0, double y0, double x1, double y1) { }

    /** Those for which there was no room come first the next time; the time with most of them is taken. */
    private void numbers(List<Number> all, Rectangle2D room) {
        List<Number> order = new ArrayList<>(all);
        List<Stands> best = List.of();
        int before = canvas.taken();
        for (int time = 0; time < TIMES && best.size() < all.size(); time++) {
            canvas.release(before);
            List<Stands> placed = new ArrayList<>();
            List<Number> left = new ArrayList<>();
            for (Number number : order) place(number, all, room).ifPresentOrElse(placed::add, () -> left.add(number));
            order.removeAll(left);
            order.addAll(0, left);
            if (placed.size() > best.size()) best = placed;
        }
        for (Stands one : best) {
            canvas.wordsCentred(one.number.label, one.x, one.y + DIGITS / 2, DIGITS, Canvas.INK);
            if (one.tied) canvas.segment(one.x0, one.y0, one.x1, one.y1, Canvas.INK, 0.15);
        }
    }

    /** Beside the edge where there is room, else a little along it, or in a row farther out; the nearest of these that hide few ways of others. */
    private Optional<Stands> place(Number n, List<Number> all, Rectangle2D room) {
        Stands best = null;
        double least = Double.POSITIVE_INFINITY, x0 = n.x - TIE * n.ix, y0 = n.y - TIE * n.iy, half = n.thick() / 2;
        for (int row = 0; row < ROWS; row++) {
            int steps = row == 0 ? 1 : STEPS;
            for (int step = -steps; step <= steps; step++) {
                double away = OUT + half + row * (2 * half + 0.5), along = STEP * step, cost = away + 1.5 * Math.abs(along);
                double x = n.x - away * n.ix - along * n.iy, y = n.y - away * n.iy + along * n.ix;
                if (cost >= least || !canvas.free(x, y, n.wide(), n.high(), room)) continue;
                cost += HIDES * all.stream().filter(other -> other != n && other.wayCrosses(x, y, n.wide(), n.high())).count();
                if (cost >= least) continue;
                double x1 = x + half * n.ix, y1 = y + half * n.iy;
                if (row > 0 && canvas.crosses(x0, y0, x1, y1)) continue;
                least = cost;
                best = new Stands(n, x, y, row > 0, x0, y0, x1, y1);
            }
        }
        if (best == null) return Optional.empty();
        canvas.take(best.x, best.y, n.wide(), n.high());
        if (best.tied) canvas.takeLine(x0, y0, best.x1, best.y1);
        return Optional.of(best);
    }

    /** A triangle as wide as the tuck and as deep. */
    private void mark(BucklingPiece.Mark mark, double[] flat, double[] inward, Placing at) {
        int v = mark.vertex();
        double x = at.x(flat, v), y = at.y(flat, v), ix = inward[2 * v], iy = inward[2 * v + 1];
        double half = at.scale * mark.base() / 2, deep = at.scale * mark.depth();
        Path2D triangle = new Path2D.Double();
        triangle.moveTo(x - iy * half, y + ix * half);
        triangle.lineTo(x + ix * deep, y + iy * deep);
        triangle.lineTo(x + iy * half, y - ix * half);
        canvas.line(triangle, Canvas.INK, 0.45);
        canvas.takeLine(x - iy * half, y + ix * half, x + ix * deep, y + iy * deep);
        canvas.takeLine(x + ix * deep, y + iy * deep, x + iy * half, y - ix * half);
    }

    /** Flat places, 2 per vertex, fitted into a box on paper with some room round them. */
    private static final class Placing {
        private final double scale, dx, dy;

        Placing(double[] flat, Rectangle2D room, double spare) {
            double[] box = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY};
            for (int i = 0; i < flat.length; i++) {
                box[i % 2] = Math.min(box[i % 2], flat[i]);
                box[2 + i % 2] = Math.max(box[2 + i % 2], flat[i]);
            }
            double w = Math.max(1e-6, box[2] - box[0]), h = Math.max(1e-6, box[3] - box[1]);
            scale = Math.min((room.getWidth() - spare) / w, (room.getHeight() - spare) / h);
            dx = room.getCenterX() - scale * (box[0] + box[2]) / 2;
            dy = room.getCenterY() - scale * (box[1] + box[3]) / 2;
        }

        double x(double u) {
            return dx + scale * u;
        }

        double y(double v) {
            return dy + scale * v;
        }

        double x(double[] flat, int v) {
            return x(flat[2 * v]);
        }

        double y(double[] flat, int v) {
            return y(flat[2 * v + 1]);
        }
    }

    /** At the vertices, the triangles' weighted by area. */
    private static double[] normals(TriMesh mesh) {
        double[] sum = new double[3 * mesh.vertexCount()];
        for (int t = 0; t < mesh.triangleCount(); t++) {
            double[] n = mesh.normal(t);
            double area = mesh.area(t);
            for (int k = 0; k < 3; k++) for (int i = 0; i < 3; i++) sum[3 * mesh.corner(t, k) + i] += area * n[i];
        }
        for (int v = 0; v < sum.length; v += 3) {
            double length = Math.sqrt(sum[v] * sum[v] + sum[v + 1] * sum[v + 1] + sum[v + 2] * sum[v + 2]);
            if (length > 0) for (int k = 0; k < 3; k++) sum[v + k] /= length;
        }
        return sum;
    }
}
