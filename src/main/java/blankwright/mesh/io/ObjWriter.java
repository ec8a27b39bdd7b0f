package blankwright.mesh.io;

import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;

/**
 * Writes form and blank together: the form as {@code v}, the flat place of each vertex as {@code vt}, both in mm, triangles as
 * {@code f v/vt} in their order, one {@code g pieceN} per piece counting from 1. Every double is kept to the last bit.
 */
public final class ObjWriter {
    private ObjWriter() { }

    /** The stream is flushed and left open. */
    public static void write(List<FlatMap> pieces, OutputStream out) throws IOException {
        OutputStream to = new BufferedOutputStream(out, 1 << 16);
        MeshWriter.print(to, "# v: the form, mm; vt: the same vertex on the blank, mm\n");
        int first = 1;
        for (int p = 0; p < pieces.size(); p++) {
            FlatMap flat = pieces.get(p);
            TriMesh form = flat.form();
            MeshWriter.print(to, "g piece" + (p + 1) + "\n");
            for (int v = 0; v < form.vertexCount(); v++) {
                MeshWriter.print(to, "v " + form.x(v) + " " + form.y(v) + " " + form.z(v) + "\n");
            }
            for (int v = 0; v < form.vertexCount(); v++) MeshWriter.print(to, "vt " + flat.u(v) + " " + flat.v(v) + "\n");
            for (int t = 0; t < form.triangleCount(); t++) {
                StringBuilder face = new StringBuilder("f");
                for (int k = 0; k < 3; k++) face.append(' ').append(first + form.corner(t, k)).append('/').append(first + form.corner(t, k));
                MeshWriter.print(to, face.append('\n').toString());
            }
            first += form.vertexCount();
        }
        to.flush();
    }
}
