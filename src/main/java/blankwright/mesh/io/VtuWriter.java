package blankwright.mesh.io;

import blankwright.mesh.TriMesh;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Base64;
import java.util.List;
import java.util.Map;

/**
 * Writes meshes with their fields as one VTK XML UnstructuredGrid, base64 inside, low byte first, 64-bit numbers.
 *
 * <p>Several parts become one grid with a cell field {@code piece} counting from 1.
 * <p>Source of the layout: the VTK file formats page of the VTK user's guide; docs/sources.md [VTK].
 */
public final class VtuWriter {
    /**
     * A mesh and its fields, each 1 or 3 numbers per triangle or vertex; every part of one file has the same names.
     *
     * @param cells per triangle
     * @param points per vertex
     */
    public record Part(TriMesh mesh, Map<String, double[]> cells, Map<String, double[]> points) { }

    private VtuWriter() { }

    /**
     * The stream is flushed and left open.
     *
     * @throws IllegalArgumentException naming a field whose length does not fit or that a part lacks
     */
    public static void write(List<Part> parts, OutputStream out) throws IOException {
        if (parts.isEmpty()) throw new IllegalArgumentException("no part to write");
        OutputStream to = new BufferedOutputStream(out, 1 << 16);
        int vertices = 0, triangles = 0;
        for (Part part : parts) {
            vertices += part.mesh().vertexCount();
            triangles += part.mesh().triangleCount();
        }
        MeshWriter.print(to, "<?xml version=\"1.0\"?>\n<VTKFile type=\"UnstructuredGrid\" version=\"1.0\" byte_order=\"LittleEndian\""
                + " header_type=\"UInt64\">\n<UnstructuredGrid>\n<Piece NumberOfPoints=\"" + vertices + "\" NumberOfCells=\"" + triangles + "\">\n");
        MeshWriter.print(to, "<Points>\n");
        ByteBuffer places = buffer(24L * vertices);
        for (Part part : parts) for (double c : part.mesh().positions()) places.putDouble(c);
        array(to, "Float64", "Points", 3, places);
        MeshWriter.print(to, "</Points>\n<Cells>\n");
        ByteBuffer corners = buffer(24L * triangles), ends = buffer(8L * triangles), types = buffer(triangles);
        long first = 0, end = 0;
        for (Part part : parts) {
            for (int v : part.mesh().corners()) corners.putLong(first + v);
            for (int t = 0; t < part.mesh().triangleCount(); t++) {
                ends.putLong(end += 3);
                types.put((byte) 5);                        // a triangle
            }
            first += part.mesh().vertexCount();
        }
        array(to, "Int64", "connectivity", 1, corners);
        array(to, "Int64", "offsets", 1, ends);
        array(to, "UInt8", "types", 1, types);
        MeshWriter.print(to, "</Cells>\n<CellData>\n");
        if (parts.size() > 1) pieces(parts, triangles, to);
        for (String name : parts.get(0).cells().keySet()) field(parts, name, true, triangles, to);
        MeshWriter.print(to, "</CellData>\n<PointData>\n");
        for (String name : parts.get(0).points().keySet()) field(parts, name, false, vertices, to);
        MeshWriter.print(to, "</PointData>\n</Piece>\n</UnstructuredGrid>\n</VTKFile>\n");
        to.flush();
    }

    private static void pieces(List<Part> parts, int triangles, OutputStream out) throws IOException {
        ByteBuffer piece = buffer(8L * triangles);
        for (int p = 0; p < parts.size(); p++) {
            for (int t = 0; t < parts.get(p).mesh().triangleCount(); t++) piece.putLong(p + 1);
        }
        array(out, "Int64", "piece", 1, piece);
    }

    private static void field(List<Part> parts, String name, boolean cell, int count, OutputStream out) throws IOException {
        int wide = 0;
        for (Part part : parts) {
            double[] values = (cell ? part.cells() : part.points()).get(name);
            int places = cell ? part.mesh().triangleCount() : part.mesh().vertexCount();
            if (values == null) throw new IllegalArgumentException("field " + name + " is missing in a part");
            int here = places > 0 && values.length == 3L * places ? 3 : 1;
            if (values.length != (long) here * places || wide > 0 && wide != here) {
                throw new IllegalArgumentException("field " + name + " has " + values.length + " numbers for " + places + " places");
            }
            wide = here;
        }
        ByteBuffer data = buffer(8L * wide * count);
        for (Part part : parts) for (double value : (cell ? part.cells() : part.points()).get(name)) data.putDouble(value);
        array(out, "Float64", name, wide, data);
    }

    private static ByteBuffer buffer(long bytes) {
        if (bytes > Integer.MAX_VALUE - 16) throw new IllegalArgumentException("a field of " + bytes + " bytes is too long for one array");
        return ByteBuffer.allocate((int) bytes + 8).order(ByteOrder.LITTLE_ENDIAN).putLong(bytes);      // the length comes first
    }

    private static void array(OutputStream out, String type, String name, int wide, ByteBuffer data) throws IOException {
        MeshWriter.print(out, "<DataArray type=\"" + type + "\" Name=\"" + escaped(name) + "\" NumberOfComponents=\"" + wide
                + "\" format=\"binary\">\n");
        byte[] all = data.array();
        int step = 3 << 14;                                 // whole groups of three: the base64 of the parts is that of the whole
        for (int from = 0; from < all.length; from += step) {
            int to = Math.min(all.length, from + step);
            out.write(Base64.getEncoder().encode(ByteBuffer.wrap(all, from, to - from)).array());
        }
        MeshWriter.print(out, "\n</DataArray>\n");
    }

    private static String escaped(String name) {
        return name.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;").replace("\"", "&quot;");
    }
}
