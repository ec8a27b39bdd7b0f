package blankwright.picture;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.TriMesh;
import blankwright.shop.SeamEdges;
import blankwright.shop.TapeLine;
import blankwright.shop.Zone;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** Draws the form from several sides at one scale, hidden lines left out. */
final class FormPicture {
    private static final double ARROW_SPACING = 14;     // mm on paper
    private static final double SHORTEST_LINE = 7;      // mm on paper
    private static final double GAP = 7, NAME = 6;      // mm on paper: round each view, and below it for its name
    private static final double DARKEST = 0.62;         // light on a skin seen edge-on: darker would pass for the next class

    private final Canvas canvas;
    private final StrainScale scale;
    private final List<MapPiece> pieces;
    private final List<WorkField> fields;
    private final Rectangle2D room = Frame.room();
    private double perMm;

    /** A view with the box of the form in it, mm of metal to the right and up, and its place on paper. */
    private static final class Placed {
        private final View view;
        private double left, low, right, high, near = Double.NEGATIVE_INFINITY;
        private double x, y;            // of (left, high) on paper

        Placed(View view, List<MapPiece> pieces) {
            this.view = view;
            left = low = Double.POSITIVE_INFINITY;
            right = high = Double.NEGATIVE_INFINITY;
            for (MapPiece piece : pieces) {
                TriMesh form = piece.map().form();
                for (int v = 0; v < form.vertexCount(); v++) {
                    double r = view.right(form.x(v), form.y(v), form.z(v)), u = view.up(form.x(v), form.y(v), form.z(v));
                    left = Math.min(left, r);
                    right = Math.max(right, r);
                    low = Math.min(low, u);
                    high = Math.max(high, u);
                    near = Math.max(near, view.towards(form.x(v), form.y(v), form.z(v)));
                }
            }
        }

        double wide() {
            return right - left;
        }

        double tall() {
            return high - low;
        }
    }

    FormPicture(Canvas canvas, StrainScale scale, List<MapPiece> pieces, List<WorkField> fields) {
        this.canvas = canvas;
        this.scale = scale;
        this.pieces = pieces;
        this.fields = fields;
    }

    void draw(Caption caption) {
        List<Placed> views = View.round(together()).stream().map(v -> new Placed(v, pieces)).toList();
        arrange(views);
        Skin[] skins = new Skin[fields.size()];
        for (int i = 0; i < skins.length; i++) skins[i] = new Skin(fields.get(i), pieces.get(i));
        for (Placed placed : views) name(placed);
        for (Placed placed : views) draw(placed, skins);
        new Frame(canvas, scale).draw(caption, "work map on the form", pieces, perMm);
    }

    /** All pieces as one mesh. */
    private TriMesh together() {
        if (pieces.size() == 1) return pieces.get(0).map().form();
        int vertices = 0, triangles = 0;
        for (MapPiece piece : pieces) {
            vertices += piece.map().form().vertexCount();
            triangles += piece.map().form().triangleCount();
        }
        double[] xyz = new double[3 * vertices];
        int[] tri = new int[3 * triangles];
        int base = 0, at = 0;
        for (MapPiece piece : pieces) {
            double[] some = piece.map().form().positions();
            System.arraycopy(some, 0, xyz, 3 * base, some.length);
            for (int corner : piece.map().form().corners()) tri[at++] = base + corner;
            base += some.length / 3;
        }
        return TriMesh.of(xyz, tri);
    }

    /** Rows of views, kept in order, so that the common scale is largest; each view is then centred in its share. */
    private void arrange(List<Placed> views) {
        int n = views.size();
        double best = -1;
        int bestBreaks = 0;
        for (int breaks = 0; breaks < 1 << n - 1; breaks++) {
            double fits = scaleOf(rows(views, breaks));
            if (fits > best * (1 + 1e-9)) {
                best = fits;
                bestBreaks = breaks;
            }
        }
        perMm = best;
        List<List<Placed>> rows = rows(views, bestBreaks);
        double used = 0;
        for (List<Placed> row : rows) used += perMm * row.stream().mapToDouble(Placed::tall).max().orElse(0) + GAP + NAME;
        double y = room.getY(), spare = (room.getHeight() - used) / rows.size();
        for (List<Placed> row : rows) {
            double tall = perMm * row.stream().mapToDouble(Placed::tall).max().orElse(0);
            double wide = 0;
            for (Placed p : row) wide += perMm * p.wide();
            double gap = (room.getWidth() - wide) / row.size(), x = room.getX() + gap / 2;
            for (Placed p : row) {
                p.x = x;
                p.y = y + spare / 2 + GAP / 2 + (tall - perMm * p.tall()) / 2;
                x += perMm * p.wide() + gap;
            }
            y += tall + GAP + NAME + spare;
        }
    }

    private static List<List<Placed>> rows(List<Placed> views, int breaks) {
        List<List<Placed>> rows = new ArrayList<>();
        rows.add(new ArrayList<>());
        for (int i = 0; i < views.size(); i++) {
            if (i > 0 && (breaks >> i - 1 & 1) == 1) rows.add(new ArrayList<>());
            rows.get(rows.size() - 1).add(views.get(i));
        }
        return rows;
    }

    private double scaleOf(List<List<Placed>> rows) {
        double high = 0, fits = Double.POSITIVE_INFINITY;
        for (List<Placed> row : rows) {
            double wide = row.stream().mapToDouble(Placed::wide).sum();
            fits = Math.min(fits, (room.getWidth() - 2 * GAP * row.size()) / Math.max(wide, 1e-6));
            high += row.stream().mapToDouble(Placed::tall).max().orElse(0);
        }
        return Math.min(fits, (room.getHeight() - (GAP + NAME) * rows.size()) / Math.max(high, 1e-6));
    }

    /** What of a piece does not depend on where it is seen from. */
    private final class Skin {
        private final WorkField field;
        private final MapPiece piece;
        private final double[] normal;              // 3 per vertex of the field, unit
        private final int[] rim;                    // two vertices per free edge
        private final List<ContourLines.Line> contours;
        private final List<Samples.Sample> samples;

        Skin(WorkField field, MapPiece piece) {
            this.field = field;
            this.piece = piece;
            normal = normals(field);
            TriMesh form = piece.map().form();
            EdgeTable edges = EdgeTable.of(form);
            int[] ends = new int[2 * edges.edgeCount()];
            int n = 0;
            for (int e = 0; e < edges.edgeCount(); e++) {
                if (edges.right(e) >= 0) continue;
                ends[n++] = edges.from(e);
                ends[n++] = edges.to(e);
            }
            rim = java.util.Arrays.copyOf(ends, n);
            contours = ContourLines.of(field.corners(), field.amounts(), scale.boundaries());
            samples = Samples.spread(field, ARROW_SPACING / perMm);
        }
    }

    /** Normals at the vertices, the triangles' weighted by area. */
    private static double[] normals(WorkField field) {
        double[] sum = new double[3 * field.vertexCount()];
        int[] tri = field.corners();
        for (int t = 0; t < tri.length; t += 3) {
            int a = tri[t], b = tri[t + 1], c = tri[t + 2];
            double ux = field.x(b) - field.x(a), uy = field.y(b) - field.y(a), uz = field.z(b) - field.z(a);
            double vx = field.x(c) - field.x(a), vy = field.y(c) - field.y(a), vz = field.z(c) - field.z(a);
            double nx = uy * vz - uz * vy, ny = uz * vx - ux * vz, nz = ux * vy - uy * vx;
            for (int k = 0; k < 3; k++) {
                int v = 3 * tri[t + k];
                sum[v] += nx;
                sum[v + 1] += ny;
                sum[v + 2] += nz;
            }
        }
        for (int v = 0; v < sum.length; v += 3) {
            double length = Math.sqrt(sum[v] * sum[v] + sum[v + 1] * sum[v + 1] + sum[v + 2] * sum[v + 2]);
            if (length > 0) for (int k = 0; k < 3; k++) sum[v + k] /= length;
        }
        return sum;
    }

    private void draw(Placed placed, Skin[] skins) {
        Look look = new Look(placed, skins);
        look.lines(skins);
        for (Skin skin : skins) look.numbers(skin);
        for (Skin skin : skins) look.seamNames(skin);
        for (Skin skin : skins) look.contourNumbers(skin);
        for (Skin skin : skins) look.arrows(skin);
    }

    private void name(Placed placed) {
        double wide = Canvas.wide(placed.view.name(), 2.6), y = placed.y + perMm * placed.tall() + 5.2;
        double x = Math.max(room.getX(), placed.x + perMm * placed.wide() / 2 - wide / 2);
        canvas.words(placed.view.name(), x, y, 2.6, Canvas.INK);
        canvas.take(x + wide / 2, y - 1, wide, 4);
    }

    /** One view being drawn: painted first, then lines and words where they are not hidden. */
    private final class Look {
        private final Placed placed;
        private final DepthPainter painter;
        private final int column0, row0;
        private final double dots = canvas.perMm();

        Look(Placed placed, Skin[] skins) {
            this.placed = placed;
            column0 = (int) Math.floor(placed.x * dots) - 2;
            row0 = (int) Math.floor(placed.y * dots) - 2;
            painter = new DepthPainter((int) Math.ceil(perMm * placed.wide() * dots) + 5, (int) Math.ceil(perMm * placed.tall() * dots) + 5, 2);
            int vertices = 0, corners = 0;
            for (Skin skin : skins) {
                vertices += skin.field.vertexCount();
                corners += skin.field.corners().length;
            }
            float[] place = new float[3 * vertices], light = new float[vertices];
            double[] amount = new double[vertices];
            int[] tri = new int[corners];
            int base = 0, at = 0;
            for (Skin skin : skins) {
                WorkField field = skin.field;
                for (int v = 0; v < field.vertexCount(); v++) {
                    double x = field.x(v), y = field.y(v), z = field.z(v);
                    place[3 * (base + v)] = (float) column(x, y, z);
                    place[3 * (base + v) + 1] = (float) row(x, y, z);
                    place[3 * (base + v) + 2] = (float) depth(x, y, z);
                    light[base + v] = (float) lit(skin.normal, 3 * v);
                    amount[base + v] = field.amount(v);
                }
                for (int corner : field.corners()) tri[at++] = base + corner;
                base += field.vertexCount();
            }
            painter.paint(place, amount, light, tri, Tints.of(scale));
            painter.overlay(canvas.raster(), canvas.columns(), canvas.rows(), column0, row0);
        }

        /** Light from above the left shoulder, the same on both sides of the skin. */
        private double lit(double[] normal, int at) {
            View view = placed.view;
            double t = view.towards(normal[at], normal[at + 1], normal[at + 2]);
            double r = view.right(normal[at], normal[at + 1], normal[at + 2]), u = view.up(normal[at], normal[at + 1], normal[at + 2]);
            double side = t < 0 ? -1 : 1;
            double bright = side * (0.80 * t + 0.42 * u - 0.42 * r);
            return DARKEST + (1 - DARKEST) * Math.max(0, Math.min(1, bright * 1.08));
        }

        private double column(double x, double y, double z) {
            return (placed.x + perMm * (placed.view.right(x, y, z) - placed.left)) * dots - column0;
        }

        private double row(double x, double y, double z) {
            return (placed.y + perMm * (placed.high - placed.view.up(x, y, z))) * dots - row0;
        }

        private double depth(double x, double y, double z) {
            return perMm * dots * (placed.view.towards(x, y, z) - placed.near);
        }

        private double paperX(double column) {
            return (column + column0) / dots;
        }

        private double paperY(double row) {
            return (row + row0) / dots;
        }

        void lines(Skin[] skins) {
            for (Skin skin : skins) {
                WorkField field = skin.field;
                for (TapeLine mark : skin.piece.marks()) canvas.dashed(seen(new Visible(), mark), 0x444444, 0.15, 2f, 0.6f);
                Visible jumps = new Visible();
                for (int i = 0; i < field.jumps().length; i += 2) jumps.edge(field, field.jumps()[i], field.jumps()[i + 1]);
                canvas.line(jumps.path, Canvas.INK, 0.22);
                for (ContourLines.Line line : skin.contours) {
                    Path2D path = seen(line, field);
                    if (Contours.length(path) >= SHORTEST_LINE)
                        canvas.line(path, Canvas.INK, Math.abs(line.value()) <= scale.neutral() ? 0.13 : 0.22);
                }
                double[] facing = new double[field.vertexCount()];
                for (int v = 0; v < facing.length; v++)
                    facing[v] = placed.view.towards(skin.normal[3 * v], skin.normal[3 * v + 1], skin.normal[3 * v + 2]);
                Path2D outline = new Path2D.Double();
                for (ContourLines.Line line : ContourLines.of(field.corners(), facing, 0)) outline.append(seen(line, field), false);
                canvas.line(outline, Canvas.INK, 0.35);
                Visible rim = new Visible();
                for (int i = 0; i < skin.rim.length; i += 2) rim.edge(field, skin.rim[i], skin.rim[i + 1]);
                canvas.line(rim.path, Canvas.INK, 0.5);
            }
        }

        private Path2D seen(ContourLines.Line line, WorkField field) {
            Visible seen = new Visible();
            for (int i = 0; i < line.count(); i++) {
                double x = line.form(i, 0, field), y = line.form(i, 1, field), z = line.form(i, 2, field);
                seen.to(column(x, y, z), row(x, y, z), depth(x, y, z), i == 0);
            }
            return seen.path;
        }

        private Path2D seen(Visible seen, TapeLine line) {
            for (int i = 0; i < line.pointCount(); i++) {
                double x = line.x(i), y = line.y(i), z = line.z(i);
                seen.to(column(x, y, z), row(x, y, z), depth(x, y, z), i == 0);
            }
            return seen.path;
        }

        void numbers(Skin skin) {
            for (Zone zone : skin.piece.worked()) {
                double x = zone.label().x(), y = zone.label().y(), z = zone.label().z();
                double c = column(x, y, z), r = row(x, y, z);
                if (!painter.sees(c, r, depth(x, y, z), 3)) continue;
                Point2D at = Callout.place(canvas, paperX(c), paperY(r), 6, 6, 0, room);
                if (at == null) continue;
                if (at.distance(paperX(c), paperY(r)) > 1) Callout.leader(canvas, paperX(c), paperY(r), at.getX(), at.getY());
                Frame.number(canvas, skin.piece.label(zone), at.getX(), at.getY());
                canvas.take(at.getX(), at.getY(), 6, 6);
            }
        }

        /** On the seam, where it is seen. */
        void seamNames(Skin skin) {
            TriMesh form = skin.piece.map().form();
            for (SeamEdges seam : skin.piece.seams()) {
                for (SeamEdges.Mark mark : seam.marks()) {
                    if (!seam.has(mark, true) && !seam.has(mark, false)) continue;
                    double[] at = seam.onForm(form, mark);
                    double c = column(at[0], at[1], at[2]), r = row(at[0], at[1], at[2]), x = paperX(c), y = paperY(r), tall = 2;
                    double wide = Canvas.wide(mark.name(), tall);
                    if (!painter.sees(c, r, depth(at[0], at[1], at[2]), 2) || !canvas.free(x, y, wide, tall, room)) continue;
                    canvas.take(x, y, wide, tall);
                    canvas.wordsOver(mark.name(), x, y, tall, Canvas.INK);
                }
            }
        }

        void contourNumbers(Skin skin) {
            Contours.Crowd crowd = new Contours.Crowd();
            for (ContourLines.Line line : skin.contours) crowd.add(seen(line, skin.field), line.value());
            Visible rim = new Visible();
            for (int i = 0; i < skin.rim.length; i += 2) rim.edge(skin.field, skin.rim[i], skin.rim[i + 1]);
            crowd.add(rim.path, Double.NaN);
            for (ContourLines.Line line : skin.contours) {
                Path2D path = seen(line, skin.field);
                if (Math.abs(line.value()) > scale.neutral() && Contours.length(path) >= 2 * SHORTEST_LINE)
                    Contours.number(canvas, path, line.value(), Contours.strain(line.value()), room, 90, crowd);
            }
        }

        void arrows(Skin skin) {
            View view = placed.view;
            TriMesh form = skin.piece.map().form();
            for (Samples.Sample s : skin.samples) {
                if (Math.abs(s.amount()) < scale.neutral()) continue;
                double[] n = form.normal(s.triangle());
                if (Math.abs(view.towards(n[0], n[1], n[2])) < 0.3) continue;
                double c = column(s.x(), s.y(), s.z()), r = row(s.x(), s.y(), s.z());
                if (!painter.sees(c, r, depth(s.x(), s.y(), s.z()), 2)) continue;
                double dx = view.right(s.dx(), s.dy(), s.dz()), dy = -view.up(s.dx(), s.dy(), s.dz()), seen = Math.hypot(dx, dy);
                if (seen < 0.35) continue;
                double length = (3.6 + 5 * Math.min(1, Math.abs(s.amount()) / scale.limit())) * Math.max(0.7, seen);
                double w = Math.max(1.6, Math.abs(dx) / seen * length), h = Math.max(1.6, Math.abs(dy) / seen * length);
                if (!canvas.free(paperX(c), paperY(r), w * 0.8, h * 0.8, room)) continue;
                canvas.take(paperX(c), paperY(r), w * 0.8, h * 0.8);
                Arrows.draw(canvas, paperX(c), paperY(r), dx / seen, dy / seen, length, s.amount() < 0, 0.32);
            }
        }

        /** Collects the parts of lines that are not hidden, on paper. */
        private final class Visible {
            private final Path2D path = new Path2D.Double();
            private boolean drawing;
            private double c, r, z;

            void edge(WorkField field, int a, int b) {
                double x = field.x(a), y = field.y(a), w = field.z(a);
                to(column(x, y, w), row(x, y, w), depth(x, y, w), true);
                x = field.x(b);
                y = field.y(b);
                w = field.z(b);
                to(column(x, y, w), row(x, y, w), depth(x, y, w), false);
            }

            /** Goes on to a point given in picture elements, or begins there. */
            void to(double column, double row, double depth, boolean begin) {
                if (begin) {
                    drawing = false;
                    mark(column, row, depth);
                } else {
                    int steps = Math.max(1, (int) Math.ceil(Math.max(Math.abs(column - c), Math.abs(row - r)) / 2));
                    for (int i = 1; i <= steps; i++) {
                        double w = (double) i / steps;
                        mark(c + w * (column - c), r + w * (row - r), z + w * (depth - z));
                    }
                }
                c = column;
                r = row;
                z = depth;
            }

            private void mark(double column, double row, double depth) {
                boolean seen = painter.sees(column, row, depth, 1.5);
                if (seen && drawing) path.lineTo(paperX(column), paperY(row));
                else if (seen) path.moveTo(paperX(column), paperY(row));
                drawing = seen;
            }
        }
    }
}
