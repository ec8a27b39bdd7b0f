package blankwright.drawing;

import blankwright.outline.Curve;
import blankwright.outline.Curve.Box;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.Charset;
import java.nio.charset.CharsetEncoder;

/**
 * A drawing as ASCII DXF of the version AC1015 (2000) at true size: mm, told in the header.
 *
 * <p>All that stands in model space are the entities, each on its layer, colour and line pattern by layer: LINE, ARC, CIRCLE, LWPOLYLINE (arcs as
 * bulges, the closed flag set) and TEXT. Letters beyond its code page are written as \U+hhhh. Positions are rounded to 1e-6 mm, bulges to 1e-8.
 * <p>Source: the published reference of the format, version AC1015; docs/sources.md [DXF].
 */
public final class DxfWriter {
    private static final Charset PAGE = Charset.forName("windows-1252");      // what $DWGCODEPAGE tells
    private static final int PLACES = 6;
    private static final int BULGE_PLACES = 8;
    private static final int CHUNK = 1 << 16;

    // Fixed handles of what every file holds; entities count on from FIRST.
    private static final int VPORTS = 0x8, LINETYPES = 0x5, LAYERS = 0x2, STYLES = 0x3, VIEWS = 0x6, UCS = 0x7, APPIDS = 0x9, DIMSTYLES = 0xA,
            RECORDS = 0x1, ROOT = 0xC, GROUPS = 0xD, LAYOUTS = 0x1A, MLINES = 0x17, MLINE = 0x18, PLOTS = 0xE, PLOT = 0xF, MODEL = 0x1F,
            MODEL_LAYOUT = 0x22, PAPER = 0x1B, PAPER_LAYOUT = 0x1E, FIRST = 0x100;

    private final OutputStream to;
    private final StringBuilder out = new StringBuilder();
    private int handle = 0x30;

    private DxfWriter(OutputStream to) {
        this.to = to;
    }

    /** Writes all of it and flushes, without closing {@code to}. */
    public static void write(Drawing drawing, OutputStream to) throws IOException {
        DxfWriter writer = new DxfWriter(to);
        writer.header(drawing);
        writer.tables(drawing);
        writer.blocks();
        writer.entities(drawing);
        writer.objects();
        writer.put(0, "EOF");
        writer.send();
        to.flush();
    }

    private void header(Drawing drawing) {
        Box box = drawing.box();
        section("HEADER");
        variable("$ACADVER", 1, "AC1015");
        variable("$DWGCODEPAGE", 3, "ANSI_1252");
        variable("$HANDSEED", 5, hex(FIRST + drawing.entities().size()));
        put(9, "$INSBASE");
        point(10, 0, 0, 0);
        put(9, "$EXTMIN");
        point(10, box.x0(), box.y0(), 0);
        put(9, "$EXTMAX");
        point(10, box.x1(), box.y1(), 0);
        put(9, "$LIMMIN");
        point(10, box.x0(), box.y0());
        put(9, "$LIMMAX");
        point(10, box.x1(), box.y1());
        variable("$LTSCALE", 40, "1.0");
        variable("$CLAYER", 8, "0");
        variable("$INSUNITS", 70, "4");          // 4 = millimetres
        variable("$MEASUREMENT", 70, "1");       // 1 = metric
        variable("$LUNITS", 70, "2");            // 2 = decimal
        variable("$LUPREC", 70, "4");
        put(0, "ENDSEC");
        section("CLASSES");
        put(0, "ENDSEC");
    }

    private void tables(Drawing drawing) {
        section("TABLES");
        table("VPORT", VPORTS, 1);
        Box box = drawing.box();
        row("VPORT", VPORTS, "AcDbViewportTableRecord", "*Active");
        put(70, 0);
        point(10, 0, 0);
        point(11, 1, 1);
        point(12, (box.x0() + box.x1()) / 2, (box.y0() + box.y1()) / 2);
        point(13, 0, 0);
        point(14, 10, 10);
        point(15, 10, 10);
        point(16, 0, 0, 1);
        point(17, 0, 0, 0);
        put(40, Math.max(10, 1.1 * Math.max(box.height(), box.width() / 1.5)));
        put(41, 1.5);
        put(42, 50.0);
        put(43, 0.0);
        put(44, 0.0);
        put(50, 0.0);
        put(51, 0.0);
        put(71, 0);
        put(72, 1000);
        put(73, 1);
        put(74, 3);
        put(75, 0);
        put(76, 0);
        put(77, 0);
        put(78, 0);
        put(0, "ENDTAB");

        table("LTYPE", LINETYPES, 3 + Layer.values().length);
        linetype("ByBlock", "");
        linetype("ByLayer", "");
        linetype("Continuous", "Solid line");
        for (Layer layer : Layer.values()) if (layer.dashes().length > 0) linetype(layer.name() + "_DASHES", "Dashes of " + layer.name(), layer.dashes());
        put(0, "ENDTAB");

        table("LAYER", LAYERS, 1 + Layer.values().length);
        layer("0", 7, "Continuous", -3);
        for (Layer layer : Layer.values())
            layer(layer.name(), layer.index(), layer.dashes().length > 0 ? layer.name() + "_DASHES" : "Continuous", (int) Math.round(layer.width() * 100));
        put(0, "ENDTAB");

        table("STYLE", STYLES, 1);
        row("STYLE", STYLES, "AcDbTextStyleTableRecord", "Standard");
        put(70, 0);
        put(40, 0.0);
        put(41, 1.0);
        put(50, 0.0);
        put(71, 0);
        put(42, 2.5);
        put(3, "txt");
        put(4, "");
        put(0, "ENDTAB");

        table("VIEW", VIEWS, 0);
        put(0, "ENDTAB");
        table("UCS", UCS, 0);
        put(0, "ENDTAB");
        table("APPID", APPIDS, 1);
        row("APPID", APPIDS, "AcDbRegAppTableRecord", "ACAD");
        put(70, 0);
        put(0, "ENDTAB");

        table("DIMSTYLE", DIMSTYLES, 1);
        put(100, "AcDbDimStyleTable");
        put(0, "DIMSTYLE");
        put(105, hex(handle++));
        put(330, hex(DIMSTYLES));
        put(100, "AcDbSymbolTableRecord");
        put(100, "AcDbDimStyleTableRecord");
        put(2, "Standard");
        put(70, 0);
        put(0, "ENDTAB");

        table("BLOCK_RECORD", RECORDS, 2);
        record("*Model_Space", MODEL, MODEL_LAYOUT);
        record("*Paper_Space", PAPER, PAPER_LAYOUT);
        put(0, "ENDTAB");
        put(0, "ENDSEC");
    }

    private void linetype(String name, String words, double... dashes) {
        row("LTYPE", LINETYPES, "AcDbLinetypeTableRecord", name);
        put(70, 0);
        put(3, words);
        put(72, 65);
        put(73, dashes.length);
        double sum = 0;
        for (double dash : dashes) sum += dash;
        put(40, sum);
        for (int i = 0; i < dashes.length; i++) {
            put(49, i % 2 == 0 ? dashes[i] : -dashes[i]);
            put(74, 0);
        }
    }

    private void layer(String name, int colour, String linetype, int width) {
        row("LAYER", LAYERS, "AcDbLayerTableRecord", name);
        put(70, 0);
        put(62, colour);
        put(6, linetype);
        put(370, width);
        put(390, hex(PLOT));
    }

    private void record(String name, int handle, int layout) {
        put(0, "BLOCK_RECORD");
        put(5, hex(handle));
        put(330, hex(RECORDS));
        put(100, "AcDbSymbolTableRecord");
        put(100, "AcDbBlockTableRecord");
        put(2, name);
        put(340, hex(layout));
    }

    private void blocks() {
        section("BLOCKS");
        block("*Model_Space", MODEL, false);
        block("*Paper_Space", PAPER, true);
        put(0, "ENDSEC");
    }

    private void block(String name, int record, boolean paper) {
        put(0, "BLOCK");
        put(5, hex(record + 1));
        put(330, hex(record));
        put(100, "AcDbEntity");
        if (paper) put(67, 1);
        put(8, "0");
        put(100, "AcDbBlockBegin");
        put(2, name);
        put(70, 0);
        point(10, 0, 0, 0);
        put(3, name);
        put(1, "");
        put(0, "ENDBLK");
        put(5, hex(record + 2));
        put(330, hex(record));
        put(100, "AcDbEntity");
        if (paper) put(67, 1);
        put(8, "0");
        put(100, "AcDbBlockEnd");
    }

    private void entities(Drawing drawing) throws IOException {
        section("ENTITIES");
        handle = FIRST;
        for (Entity entity : drawing.entities()) {
            entity(entity);
            if (out.length() > CHUNK) send();
        }
        put(0, "ENDSEC");
    }

    private void entity(Entity entity) throws IOException {
        if (entity instanceof Entity.Line line) {
            begin("LINE", entity, "AcDbLine");
            point(10, line.x0(), line.y0(), 0);
            point(11, line.x1(), line.y1(), 0);
        } else if (entity instanceof Entity.Arc arc) {
            begin("ARC", entity, "AcDbCircle");
            point(10, arc.cx(), arc.cy(), 0);
            put(40, arc.radius());
            put(100, "AcDbArc");
            put(50, degrees(Math.min(arc.start(), arc.start() + arc.sweep())));
            put(51, degrees(Math.max(arc.start(), arc.start() + arc.sweep())));
        } else if (entity instanceof Entity.Circle circle) {
            begin("CIRCLE", entity, "AcDbCircle");
            point(10, circle.cx(), circle.cy(), 0);
            put(40, circle.radius());
        } else if (entity instanceof Entity.Polyline polyline) {
            polyline(polyline);
        } else if (entity instanceof Entity.Text text) {
            text(text);
        }
    }

    private void polyline(Entity.Polyline entity) throws IOException {
        Curve curve = entity.curve();
        begin("LWPOLYLINE", entity, "AcDbPolyline");
        put(90, curve.vertexCount());
        put(70, curve.isClosed() ? 1 : 0);
        for (int i = 0; i < curve.vertexCount(); i++) {
            point(10, curve.x(i), curve.y(i));
            if (i < curve.segmentCount() && curve.isArc(i)) {
                code(42);
                Decimals.append(out, curve.bulge(i), BULGE_PLACES).append('\n');
            }
            if (out.length() > CHUNK) send();
        }
    }

    private void text(Entity.Text text) {
        begin("TEXT", text, "AcDbText");
        double back = -text.anchor().along() * Lettering.width(text.text(), text.height()), down = -text.anchor().up() * text.height();
        double c = Math.cos(text.angle()), s = Math.sin(text.angle());
        point(10, text.x() + c * back - s * down, text.y() + s * back + c * down, 0);
        put(40, text.height());
        put(1, escaped(text.text()));
        if (text.angle() != 0) put(50, degrees(text.angle()));
        put(7, "Standard");
        int along = (int) (2 * text.anchor().along());                                      // 0 left, 1 centre, 2 right
        int up = text.anchor().up() == 0 ? 0 : text.anchor().up() == 1 ? 3 : 2;             // 0 base line, 2 middle, 3 top
        if (along != 0) put(72, along);
        if (along != 0 || up != 0) point(11, text.x(), text.y(), 0);
        put(100, "AcDbText");
        if (up != 0) put(73, up);
    }

    private void objects() {
        section("OBJECTS");
        dictionary(ROOT, 0, "ACAD_GROUP", GROUPS, "ACAD_LAYOUT", LAYOUTS, "ACAD_MLINESTYLE", MLINES, "ACAD_PLOTSTYLENAME", PLOTS);
        dictionary(GROUPS, ROOT);
        dictionary(LAYOUTS, ROOT, "Model", MODEL_LAYOUT, "Layout1", PAPER_LAYOUT);
        layout("Model", MODEL_LAYOUT, 0, MODEL);
        layout("Layout1", PAPER_LAYOUT, 1, PAPER);
        dictionary(MLINES, ROOT, "Standard", MLINE);
        object("MLINESTYLE", MLINE, MLINES);
        put(100, "AcDbMlineStyle");
        put(2, "STANDARD");
        put(70, 0);
        put(3, "");
        put(62, 256);
        put(51, 90.0);
        put(52, 90.0);
        put(71, 2);
        for (double offset : new double[] {0.5, -0.5}) {
            put(49, offset);
            put(62, 256);
            put(6, "BYLAYER");
        }
        object("ACDBDICTIONARYWDFLT", PLOTS, ROOT);
        put(100, "AcDbDictionary");
        put(281, 1);
        put(3, "Normal");
        put(350, hex(PLOT));
        put(100, "AcDbDictionaryWithDefault");
        put(340, hex(PLOT));
        object("ACDBPLACEHOLDER", PLOT, PLOTS);
        put(0, "ENDSEC");
    }

    private void dictionary(int handle, int owner, Object... namesAndHandles) {
        object("DICTIONARY", handle, owner);
        put(100, "AcDbDictionary");
        put(281, 1);
        for (int i = 0; i < namesAndHandles.length; i += 2) {
            put(3, (String) namesAndHandles[i]);
            put(350, hex((Integer) namesAndHandles[i + 1]));
        }
    }

    private void layout(String name, int handle, int place, int record) {
        object("LAYOUT", handle, LAYOUTS);
        put(100, "AcDbPlotSettings");
        put(1, "");
        put(2, "");
        put(4, "A4");
        put(6, "");
        for (int margin = 40; margin <= 43; margin++) put(margin, 10.0);
        put(44, 210.0);
        put(45, 297.0);
        put(46, 0.0);
        put(47, 0.0);
        put(48, 0.0);
        put(49, 0.0);
        put(140, 0.0);
        put(141, 0.0);
        put(142, 1.0);
        put(143, 1.0);
        put(70, place == 0 ? 1024 + 688 : 688);
        put(72, 1);                                // plot in mm
        put(73, 0);
        put(74, 5);
        put(7, "");
        put(75, 16);                               // 1:1
        put(147, 1.0);
        put(148, 0.0);
        put(149, 0.0);
        put(100, "AcDbLayout");
        put(1, name);
        put(70, 1);
        put(71, place);
        point(10, 0, 0);
        point(11, 210, 297);
        point(12, 0, 0, 0);
        point(14, 0, 0, 0);
        point(15, 210, 297, 0);
        put(146, 0.0);
        point(13, 0, 0, 0);
        point(16, 1, 0, 0);
        point(17, 0, 1, 0);
        put(76, 0);
        put(330, hex(record));
    }

    private void object(String kind, int handle, int owner) {
        put(0, kind);
        put(5, hex(handle));
        put(330, hex(owner));
    }

    private void begin(String kind, Entity entity, String subclass) {
        put(0, kind);
        put(5, hex(handle++));
        put(330, hex(MODEL));
        put(100, "AcDbEntity");
        put(8, entity.layer().name());
        put(100, subclass);
    }

    private void section(String name) {
        put(0, "SECTION");
        put(2, name);
    }

    private void table(String name, int handle, int rows) {
        put(0, "TABLE");
        put(2, name);
        put(5, hex(handle));
        put(330, "0");
        put(100, "AcDbSymbolTable");
        put(70, rows);
    }

    private void row(String table, int owner, String subclass, String name) {
        put(0, table);
        put(5, hex(handle++));
        put(330, hex(owner));
        put(100, "AcDbSymbolTableRecord");
        put(100, subclass);
        put(2, name);
    }

    private void variable(String name, int code, String value) {
        put(9, name);
        put(code, value);
    }

    private void point(int code, double... xyz) {
        for (int i = 0; i < xyz.length; i++) put(code + 10 * i, xyz[i]);
    }

    private void put(int code, String value) {
        code(code);
        out.append(value).append('\n');
    }

    private void put(int code, int value) {
        code(code);
        out.append(value).append('\n');
    }

    private void put(int code, double value) {
        code(code);
        int from = out.length();
        Decimals.append(out, value, PLACES);
        if (out.indexOf(".", from) < 0) out.append(".0");
        out.append('\n');
    }

    private void code(int code) {
        if (code < 10) out.append("  ");
        else if (code < 100) out.append(' ');
        out.append(code).append('\n');
    }

    private static double degrees(double angle) {
        double degrees = Math.toDegrees(angle) % 360;
        return degrees < 0 ? degrees + 360 : degrees;
    }

    /** Text as the format wants it: \U+hhhh beyond the code page, "^ " for ^, and a space between per cent signs, of which two begin a code. */
    static String escaped(String text) {
        String plain = text.replace("%%", "% %").replace("%%", "% %");
        StringBuilder out = new StringBuilder();
        CharsetEncoder page = PAGE.newEncoder();
        for (char c : plain.replace("\\U+", "\\U+005CU+").replace("^", "^ ").toCharArray()) {
            if (page.canEncode(c)) out.append(c);
            else out.append(String.format("\\U+%04X", (int) c));
        }
        return out.toString();
    }

    private static String hex(int handle) {
        return Integer.toHexString(handle).toUpperCase(java.util.Locale.ROOT);
    }

    private void send() throws IOException {
        to.write(out.toString().getBytes(PAGE));
        out.setLength(0);
    }
}
