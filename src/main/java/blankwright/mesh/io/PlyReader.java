package blankwright.mesh.io;

import blankwright.mesh.Finding;
import blankwright.mesh.Finding.Kind;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;

/**
 * PLY, text or binary in either byte order: vertex x y z of any scalar type, faces as a list vertex_indices (or vertex_index), triangle
 * strips; every other element and property is passed over.
 */
final class PlyReader {
    private enum Type {
        INT8(1, "char", "int8"), UINT8(1, "uchar", "uint8"), INT16(2, "short", "int16"), UINT16(2, "ushort", "uint16"),
        INT32(4, "int", "int32"), UINT32(4, "uint", "uint32"), FLOAT32(4, "float", "float32"), FLOAT64(8, "double", "float64");

        private final int bytes;
        private final String word;
        private final String sized;

        Type(int bytes, String word, String sized) {
            this.bytes = bytes;
            this.word = word;
            this.sized = sized;
        }

        static Type of(TextScan scan) throws FormatException {
            for (Type type : values()) if (scan.is(type.word) || scan.is(type.sized)) return type;
            throw scan.bad("\"" + scan.shown() + "\" is no PLY number type");
        }
    }

    private record Property(String name, Type count, Type type) {           // count is null unless a list
        int leastBytes() {
            return count == null ? type.bytes : count.bytes;
        }
    }

    private record Element(String name, long count, List<Property> properties) { }

    private final byte[] b;
    private final String file;
    private final Gathered into;
    private final TextScan scan;
    private final List<Element> elements = new ArrayList<>();
    private Format format;
    private ByteBuffer binary;      // null in text
    private int at;
    private Element element;        // being read
    private long row;
    private long vertices;

    private PlyReader(byte[] b, int from, String file, Gathered into) {
        this.b = b;
        this.file = file;
        this.into = into;
        this.scan = new TextScan(b, from, b.length, file, false, false);
    }

    static RawMesh read(byte[] b, int from, String file, Gathered into) throws FormatException {
        PlyReader reader = new PlyReader(b, from, file, into);
        reader.header();
        reader.body();
        return into.mesh(reader.format);
    }

    private void header() throws FormatException {
        scan.word();                                                            // ply
        scan.nextLine();
        while (true) {
            if (!scan.word()) throw scan.ended("\"end_header\"");
            if (scan.is("end_header")) break;
            if (scan.is("format")) format();
            else if (scan.is("element")) element();
            else if (scan.is("property")) property();
            else if (!scan.is("comment") && !scan.is("obj_info")) throw scan.bad("\"" + scan.shown() + "\" begins no line of a PLY header");
            scan.nextLine();
        }
        if (format == null) throw scan.bad("the header names no format (ascii, binary_little_endian or binary_big_endian); export the panel again");
        Element vertex = elements.stream().filter(e -> e.name().equals("vertex")).findFirst()
                .orElseThrow(() -> scan.bad("the header names no element vertex; export the panel again"));
        vertices = vertex.count();
        scan.nextLine();
        at = scan.position();
        if (at >= 2 && b[at - 1] == '\n' && b[at - 2] == '\r' && linesEndInCarriageReturn()) at--;
        if (format != Format.PLY_TEXT) {
            binary = ByteBuffer.wrap(b).order(format == Format.PLY_BIG ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN);
        }
    }

    /** In a header of bare CRs the byte behind the last one is data, even if it is a line feed. */
    private boolean linesEndInCarriageReturn() {
        for (int i = 0; i + 1 < b.length; i++) if (b[i] == '\n' || b[i] == '\r') return b[i] == '\r' && b[i + 1] != '\n';
        return false;
    }

    private void format() throws FormatException {
        need("a format");
        if (scan.is("ascii")) format = Format.PLY_TEXT;
        else if (scan.is("binary_little_endian")) format = Format.PLY_LITTLE;
        else if (scan.is("binary_big_endian")) format = Format.PLY_BIG;
        else throw scan.bad("format \"" + scan.shown() + "\" is none of ascii, binary_little_endian, binary_big_endian");
    }

    private void element() throws FormatException {
        need("the element's name");
        String name = scan.lowerWord();
        need("the number of them");
        long count = scan.whole();
        if (count < 0) throw scan.bad(count + " of element " + shown(name) + ": must be 0 or more");
        if (name.equals("vertex") && elements.stream().anyMatch(e -> e.name().equals("vertex"))) {
            throw scan.bad("a second element vertex: there must be one");
        }
        elements.add(new Element(name, count, new ArrayList<>()));
    }

    private void property() throws FormatException {
        if (elements.isEmpty()) throw scan.bad("a property before any element");
        need("a type");
        Type count = null;
        if (scan.is("list")) {
            need("the type of the list's length");
            count = Type.of(scan);
            if (count == Type.FLOAT32 || count == Type.FLOAT64) throw scan.bad("a list's length must be a whole-number type");
            need("the type of the list's items");
        }
        Type type = Type.of(scan);
        need("the property's name");
        List<Property> properties = elements.get(elements.size() - 1).properties();
        if (properties.size() >= 1000) throw scan.bad("more than 1000 properties");
        properties.add(new Property(scan.lowerWord(), count, type));
    }

    private void need(String what) throws FormatException {
        if (!scan.wordInLine()) throw scan.bad("the line ends where " + what + " should be");
    }

    private void body() throws FormatException {
        scan.moveTo(at);
        boolean faces = false;
        for (Element e : elements) {
            element = e;
            row = 0;
            if (e.properties().isEmpty() && !e.name().equals("vertex")) continue;       // takes no room, however many
            checkRoom(e);
            int list = indexList(e);
            if (e.name().equals("vertex")) vertices(e);
            else if (list >= 0 && e.name().equals("face")) faces(e, list);
            else if (list >= 0 && e.name().equals("tristrips")) strips(e, list);
            else others(e);
            faces |= list >= 0;
        }
        if (!faces) {
            throw new FormatException(file, "the header names no faces with a list vertex_indices: these are only points; "
                    + "export the panel as triangles");
        }
        checkRest();
    }

    /** A promise larger than the file is refused before anything is read. */
    private void checkRoom(Element e) throws FormatException {
        long least = e.properties().stream().mapToLong(Property::leastBytes).sum();
        long left = binary == null ? b.length - scan.position() : b.length - at;
        if (e.properties().isEmpty()) throw new FormatException(file, "element vertex has no properties x, y and z; export the panel with its coordinates");
        if (binary == null) least = e.properties().size();                      // one digit each; blanks are not counted
        if (e.count() > left / least) {
            throw new FormatException(file, "the header promises " + e.count() + " of element " + shown(e.name()) + ", at least "
                    + (e.count() > Long.MAX_VALUE / least ? "far too many bytes" : StlReader.size(e.count() * least)) + ", but only "
                    + StlReader.size(left) + " follow; the file is cut off, fetch or export it again");
        }
    }

    private static int indexList(Element e) {
        for (int i = 0; i < e.properties().size(); i++) {
            Property p = e.properties().get(i);
            if (p.count() != null && (p.name().equals("vertex_indices") || p.name().equals("vertex_index"))) return i;
        }
        return -1;
    }

    private void vertices(Element e) throws FormatException {
        int[] axis = {-1, -1, -1};
        List<Property> properties = e.properties();
        for (int i = 0; i < properties.size(); i++) {
            int k = List.of("x", "y", "z").indexOf(properties.get(i).name());
            if (k >= 0 && properties.get(i).count() == null) axis[k] = i;
        }
        if (axis[0] < 0 || axis[1] < 0 || axis[2] < 0) throw new FormatException(file, "element vertex has no properties x, y and z; export the panel with its coordinates");
        double[] value = new double[properties.size()];
        for (row = 0; row < e.count(); row++) {
            into.tick(row, e.count());
            for (int i = 0; i < value.length; i++) {
                Property p = properties.get(i);
                if (p.count() == null) value[i] = next(p.type());
                else skipList(p);
            }
            into.vertex(value[axis[0]], value[axis[1]], value[axis[2]]);
        }
    }

    private void faces(Element e, int list) throws FormatException {
        for (row = 0; row < e.count(); row++) {
            into.tick(row, e.count());
            for (int i = 0; i < e.properties().size(); i++) {
                Property p = e.properties().get(i);
                if (p.count() == null) {
                    next(p.type());
                } else if (i != list) {
                    skipList(p);
                } else {
                    long corners = listLength(p);
                    for (long k = 0; k < corners; k++) into.corner.add(index(next(p.type())));
                }
            }
            long face = row;
            into.closeFace(() -> "face " + face);
        }
    }

    /** A strip turns over at every triangle; -1 ends it. */
    private void strips(Element e, int list) throws FormatException {
        for (row = 0; row < e.count(); row++) {
            for (int i = 0; i < e.properties().size(); i++) {
                Property p = e.properties().get(i);
                if (i == list) strip(p);
                else if (p.count() != null) skipList(p);
                else next(p.type());
            }
        }
    }

    private void strip(Property p) throws FormatException {
        long length = listLength(p);
        int before = 0, last = 0, run = 0;
        for (long k = 0; k < length; k++) {
            into.tick(k, length);
            double given = next(p.type());
            if (given == -1) {
                run = 0;
                continue;
            }
            int v = index(given);
            if (run >= 2) {
                into.corner.add(run % 2 == 0 ? before : last);
                into.corner.add(run % 2 == 0 ? last : before);
                into.corner.add(v);
                into.closeFace(() -> "");
            }
            before = last;
            last = v;
            run++;
        }
    }

    private void others(Element e) throws FormatException {
        for (row = 0; row < e.count(); row++) {
            into.tick(row, e.count());
            for (Property p : e.properties()) {
                if (p.count() == null) next(p.type());
                else skipList(p);
            }
        }
        if (e.count() > 0) {
            into.findings.add(new Finding(Kind.IGNORED_ELEMENTS, e.count(), e.count() + " of element \"" + shown(e.name())
                    + "\" are neither vertices nor faces; ignored"));
        }
    }

    private static String shown(String word) {
        byte[] letters = word.getBytes(java.nio.charset.StandardCharsets.ISO_8859_1);
        return TextScan.shown(letters, 0, letters.length);
    }

    private long listLength(Property p) throws FormatException {
        double length = next(p.count());
        long left = binary == null ? b.length - scan.position() : (b.length - at) / p.type().bytes;
        if (!(length >= 0) || length > left || length != Math.rint(length)) {
            throw bad("list of " + plain(length) + " items, but " + left + " at most can follow; the file is damaged or cut off, fetch or export it again");
        }
        return (long) length;
    }

    private void skipList(Property p) throws FormatException {
        long length = listLength(p);
        if (binary != null) at += (int) (length * p.type().bytes);
        else for (long k = 0; k < length; k++) next(p.type());
    }

    private int index(double v) throws FormatException {
        if (v >= 0 && v < vertices && v == Math.rint(v)) return (int) v;
        throw bad("vertex " + plain(v) + ", but the file has " + vertices + " and PLY counts from 0");
    }

    private static String plain(double v) {
        return v == Math.rint(v) && Math.abs(v) < 1e15 ? Long.toString((long) v) : Double.toString(v);
    }

    private double next(Type type) throws FormatException {
        if (binary == null) {
            if (!scan.word()) throw scan.ended(shown(element.name()) + " " + row + " of " + element.count());
            return scan.number();
        }
        if (at > b.length - type.bytes) {
            throw bad("the file ends here, in row " + row + " of " + element.count() + "; it is cut off, fetch or export it again");
        }
        int here = at;
        at += type.bytes;
        return switch (type) {
            case INT8 -> binary.get(here);
            case UINT8 -> Byte.toUnsignedInt(binary.get(here));
            case INT16 -> binary.getShort(here);
            case UINT16 -> Short.toUnsignedInt(binary.getShort(here));
            case INT32 -> binary.getInt(here);
            case UINT32 -> Integer.toUnsignedLong(binary.getInt(here));
            case FLOAT32 -> binary.getFloat(here);
            case FLOAT64 -> binary.getDouble(here);
        };
    }

    private FormatException bad(String message) {
        if (binary == null) return scan.bad(message);
        return new FormatException(file, "byte " + at + ", element " + shown(element.name()) + " " + row + ": " + message);
    }

    private void checkRest() {
        if (binary == null ? !scan.word() : at >= b.length) return;
        int extra = b.length - (binary == null ? scan.wordStart() : at);
        into.findings.add(new Finding(Kind.WRONG_COUNT, extra, extra + " bytes follow the last element the header names; ignored"));
    }
}
