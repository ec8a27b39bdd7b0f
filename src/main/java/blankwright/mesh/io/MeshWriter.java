package blankwright.mesh.io;

import blankwright.mesh.TriMesh;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/**
 * Writes triangles in any format {@link MeshReader} reads; lengths as they are, mm.
 *
 * <p>OBJ, OFF and PLY keep every double to the last bit; STL keeps floats (a billionth of a metre on a panel of a metre).
 * The stream is flushed and left open.
 */
public final class MeshWriter {
    private MeshWriter() { }

    public static void write(TriMesh mesh, Format format, OutputStream out) throws IOException {
        OutputStream to = new BufferedOutputStream(out, 1 << 16);
        switch (format) {
            case STL_BINARY -> stlBinary(mesh, to);
            case STL_TEXT -> stlText(mesh, to);
            case OBJ -> obj(mesh, to);
            case OFF -> off(mesh, to);
            case PLY_TEXT -> plyText(mesh, to);
            case PLY_LITTLE -> plyBinary(mesh, to, ByteOrder.LITTLE_ENDIAN);
            case PLY_BIG -> plyBinary(mesh, to, ByteOrder.BIG_ENDIAN);
        }
        to.flush();
    }

    private static void stlBinary(TriMesh mesh, OutputStream out) throws IOException {
        ByteBuffer head = ByteBuffer.allocate(StlReader.HEADER).order(ByteOrder.LITTLE_ENDIAN);
        head.put("binary STL, mm".getBytes(StandardCharsets.US_ASCII)).putInt(80, mesh.triangleCount());
        out.write(head.array());
        ByteBuffer record = ByteBuffer.allocate(StlReader.RECORD).order(ByteOrder.LITTLE_ENDIAN);
        for (int t = 0; t < mesh.triangleCount(); t++) {
            record.clear();
            for (double n : mesh.normal(t)) record.putFloat((float) n);
            for (int k = 0; k < 3; k++) {
                int v = mesh.corner(t, k);
                record.putFloat((float) mesh.x(v)).putFloat((float) mesh.y(v)).putFloat((float) mesh.z(v));
            }
            out.write(record.array());
        }
    }

    private static void stlText(TriMesh mesh, OutputStream out) throws IOException {
        print(out, "solid panel\n");
        for (int t = 0; t < mesh.triangleCount(); t++) {
            double[] n = mesh.normal(t);
            print(out, "facet normal " + (float) n[0] + " " + (float) n[1] + " " + (float) n[2] + "\nouter loop\n");
            for (int k = 0; k < 3; k++) {
                int v = mesh.corner(t, k);
                print(out, "vertex " + (float) mesh.x(v) + " " + (float) mesh.y(v) + " " + (float) mesh.z(v) + "\n");
            }
            print(out, "endloop\nendfacet\n");
        }
        print(out, "endsolid panel\n");
    }

    private static void obj(TriMesh mesh, OutputStream out) throws IOException {
        print(out, "# mm\n");
        for (int v = 0; v < mesh.vertexCount(); v++) print(out, "v " + place(mesh, v));
        for (int t = 0; t < mesh.triangleCount(); t++) {
            print(out, "f " + (mesh.corner(t, 0) + 1) + " " + (mesh.corner(t, 1) + 1) + " " + (mesh.corner(t, 2) + 1) + "\n");
        }
    }

    private static void off(TriMesh mesh, OutputStream out) throws IOException {
        print(out, "OFF\n" + mesh.vertexCount() + " " + mesh.triangleCount() + " 0\n");
        for (int v = 0; v < mesh.vertexCount(); v++) print(out, place(mesh, v));
        for (int t = 0; t < mesh.triangleCount(); t++) print(out, face(mesh, t));
    }

    private static void plyText(TriMesh mesh, OutputStream out) throws IOException {
        plyHeader(mesh, "ascii", out);
        for (int v = 0; v < mesh.vertexCount(); v++) print(out, place(mesh, v));
        for (int t = 0; t < mesh.triangleCount(); t++) print(out, face(mesh, t));
    }

    private static void plyBinary(TriMesh mesh, OutputStream out, ByteOrder order) throws IOException {
        plyHeader(mesh, order == ByteOrder.BIG_ENDIAN ? "binary_big_endian" : "binary_little_endian", out);
        ByteBuffer vertex = ByteBuffer.allocate(24).order(order);
        for (int v = 0; v < mesh.vertexCount(); v++) {
            vertex.clear();
            out.write(vertex.putDouble(mesh.x(v)).putDouble(mesh.y(v)).putDouble(mesh.z(v)).array());
        }
        ByteBuffer face = ByteBuffer.allocate(13).order(order);
        for (int t = 0; t < mesh.triangleCount(); t++) {
            face.clear();
            out.write(face.put((byte) 3).putInt(mesh.corner(t, 0)).putInt(mesh.corner(t, 1)).putInt(mesh.corner(t, 2)).array());
        }
    }

    private static void plyHeader(TriMesh mesh, String format, OutputStream out) throws IOException {
        print(out, "ply\nformat " + format + " 1.0\ncomment mm\nelement vertex " + mesh.vertexCount()
                + "\nproperty double x\nproperty double y\nproperty double z\nelement face " + mesh.triangleCount()
                + "\nproperty list uchar int vertex_indices\nend_header\n");
    }

    private static String place(TriMesh mesh, int v) {
        return mesh.x(v) + " " + mesh.y(v) + " " + mesh.z(v) + "\n";
    }

    private static String face(TriMesh mesh, int t) {
        return "3 " + mesh.corner(t, 0) + " " + mesh.corner(t, 1) + " " + mesh.corner(t, 2) + "\n";
    }

    static void print(OutputStream out, String text) throws IOException {
        out.write(text.getBytes(StandardCharsets.US_ASCII));
    }
}
