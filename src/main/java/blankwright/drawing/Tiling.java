package blankwright.drawing;

import blankwright.outline.Curve;
import blankwright.outline.Curve.Box;
import java.util.ArrayList;
import java.util.List;

/**
 * How a drawing is laid over sheets of paper: rows of cells A, B, ... from the top, columns 1, 2, ... from the left.
 *
 * <p>Each sheet shows its cell and half an {@link #OVERLAP overlap} more on every side (its window), so that neighbours show the same strip with
 * the corners of the cells in its middle. Cells partition the plane: a cell is printed when a line touches it or when it lies within the cut
 * outline, the others are left out. The paper stands or lies, whichever takes fewer sheets.
 */
public final class Tiling {
    static final double MARGIN = 10;      // no common printer reaches nearer to the edge, mm
    static final double OVERLAP = 10;
    static final double FOOT = 11;        // strip below the window for the sheet's label
    private static final int MOST = 4000;

    private final double pageWidth;
    private final double pageHeight;
    private final int columns;
    private final int rows;
    private final double left;            // of the first column's cell
    private final double top;             // of the first row's cell
    private final boolean[] printed;      // row-major

    private Tiling(Drawing drawing, double pageWidth, double pageHeight) {
        this.pageWidth = pageWidth;
        this.pageHeight = pageHeight;
        Box box = drawing.box().grown(1);
        columns = count(box.width(), cellWidth());
        rows = count(box.height(), cellHeight());
        if ((long) columns * rows > MOST)
            throw new IllegalArgumentException("a drawing of " + Math.round(box.width()) + " x " + Math.round(box.height()) + " mm is too large for paper");
        left = (box.x0() + box.x1() - columns * cellWidth()) / 2;
        top = (box.y0() + box.y1() + rows * cellHeight()) / 2;
        printed = new boolean[rows * columns];
        for (Entity entity : drawing.entities()) touch(entity);
        fill(drawing);
    }

    public static Tiling of(Drawing drawing, Paper paper) {
        Tiling standing = new Tiling(drawing, paper.width(), paper.height());
        Tiling lying = new Tiling(drawing, paper.height(), paper.width());
        return lying.sheets() < standing.sheets() ? lying : standing;
    }

    private static int count(double length, double cell) {
        return (int) Math.max(1, Math.min(1e6, Math.ceil(length / cell)));
    }

    public double pageWidth() {
        return pageWidth;
    }

    public double pageHeight() {
        return pageHeight;
    }

    public int rows() {
        return rows;
    }

    public int columns() {
        return columns;
    }

    public boolean isPrinted(int row, int column) {
        return row >= 0 && row < rows && column >= 0 && column < columns && printed[row * columns + column];
    }

    public int sheets() {
        int n = 0;
        for (boolean sheet : printed) if (sheet) n++;
        return n;
    }

    double cellWidth() {
        return pageWidth - 2 * MARGIN - OVERLAP;
    }

    double cellHeight() {
        return pageHeight - 2 * MARGIN - FOOT - OVERLAP;
    }

    /** The part of the drawing that belongs to one sheet, in the drawing's mm. */
    public Box cell(int row, int column) {
        double x = left + column * cellWidth(), y = top - row * cellHeight();
        return new Box(x, y - cellHeight(), x + cellWidth(), y);
    }

    /** The part of the drawing that one sheet shows. */
    public Box window(int row, int column) {
        return cell(row, column).grown(OVERLAP / 2);
    }

    /** A1, A2, ..., Z1, AA1, ... */
    public static String label(int row, int column) {
        StringBuilder letters = new StringBuilder();
        for (int r = row + 1; r > 0; r = (r - 1) / 26) letters.insert(0, (char) ('A' + (r - 1) % 26));
        return letters.append(column + 1).toString();
    }

    /** The two corners of printed cells furthest apart along either diagonal, {x0, y0, x1, y1} in the drawing's mm: a check of the taped sheets. */
    double[] longestDiagonal() {
        double[] best = new double[4];
        double most = -1;
        for (int slope = -1; slope <= 1; slope += 2) {
            double[] low = null, high = null;
            for (double[] corner : corners()) {
                if (low == null || corner[0] + slope * corner[1] < low[0] + slope * low[1]) low = corner;
                if (high == null || corner[0] + slope * corner[1] > high[0] + slope * high[1]) high = corner;
            }
            if (low != null && Math.hypot(high[0] - low[0], high[1] - low[1]) > most) {
                most = Math.hypot(high[0] - low[0], high[1] - low[1]);
                best = new double[] {low[0], low[1], high[0], high[1]};
            }
        }
        return best;
    }

    private List<double[]> corners() {
        List<double[]> corners = new ArrayList<>();
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                if (!isPrinted(row, column)) continue;
                Box cell = cell(row, column);
                for (double x : new double[] {cell.x0(), cell.x1()}) {
                    for (double y : new double[] {cell.y0(), cell.y1()}) corners.add(new double[] {x, y});
                }
            }
        }
        return corners;
    }

    private void touch(Entity entity) {
        if (entity instanceof Entity.Line line) {
            touchLine(line.x0(), line.y0(), line.x1(), line.y1());
        } else if (entity instanceof Entity.Text) {
            touchBox(entity.box(), null);
        } else {
            touchLines(entity);
        }
    }

    private void touchLines(Entity entity) {
        Curve curve = curve(entity);
        double[] p = curve.flattened(0.2);
        int n = p.length / 2, lines = curve.isClosed() ? n : n - 1;
        for (int i = 0; i < lines; i++) touchLine(p[2 * i], p[2 * i + 1], p[2 * ((i + 1) % n)], p[2 * ((i + 1) % n) + 1]);
    }

    private void touchLine(double x0, double y0, double x1, double y1) {
        touchBox(new Box(Math.min(x0, x1), Math.min(y0, y1), Math.max(x0, x1), Math.max(y0, y1)), new double[] {x0, y0, x1, y1});
    }

    private void touchBox(Box box, double[] line) {
        int c0 = (int) Math.floor((box.x0() - left) / cellWidth()), c1 = (int) Math.floor((box.x1() - left) / cellWidth());
        int r0 = (int) Math.floor((top - box.y1()) / cellHeight()), r1 = (int) Math.floor((top - box.y0()) / cellHeight());
        for (int row = Math.max(0, r0); row <= Math.min(rows - 1, r1); row++) {
            for (int column = Math.max(0, c0); column <= Math.min(columns - 1, c1); column++) {
                if (!isPrinted(row, column) && (line == null || cuts(line, cell(row, column).grown(0.3)))) printed[row * columns + column] = true;
            }
        }
    }

    /** True where the line enters the box: the share of it inside, narrowed edge by edge, is not empty. */
    private static boolean cuts(double[] line, Box box) {
        double dx = line[2] - line[0], dy = line[3] - line[1], from = 0, to = 1;
        double[] toward = {-dx, dx, -dy, dy}, room = {line[0] - box.x0(), box.x1() - line[0], line[1] - box.y0(), box.y1() - line[1]};
        for (int i = 0; i < 4; i++) {
            if (toward[i] == 0 && room[i] < 0) return false;
            if (toward[i] < 0) from = Math.max(from, room[i] / toward[i]);
            if (toward[i] > 0) to = Math.min(to, room[i] / toward[i]);
        }
        return from <= to;
    }

    /** Cells without a line that lie within the cut outline: without them the taped pattern has a hole. */
    private void fill(Drawing drawing) {
        List<Curve> cuts = new ArrayList<>();
        for (Entity entity : drawing.entities()) {
            if (entity.layer() == Layer.CUT && (entity instanceof Entity.Polyline || entity instanceof Entity.Circle)) cuts.add(curve(entity));
        }
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                if (isPrinted(row, column)) continue;
                Box cell = cell(row, column);
                boolean in = false;
                for (Curve cut : cuts) in ^= cut.contains((cell.x0() + cell.x1()) / 2, (cell.y0() + cell.y1()) / 2);
                printed[row * columns + column] = in;
            }
        }
    }

    private static Curve curve(Entity entity) {
        if (entity instanceof Entity.Polyline polyline) return polyline.curve();
        if (entity instanceof Entity.Circle circle) return Curve.circle(circle.cx(), circle.cy(), circle.radius());
        Entity.Arc arc = (Entity.Arc) entity;
        return Curve.arc(arc.cx(), arc.cy(), arc.radius(), arc.start(), arc.sweep());
    }
}
