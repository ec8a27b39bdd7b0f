package blankwright.mesh.io;

import static org.junit.jupiter.api.Assertions.assertEquals;

import blankwright.mesh.Forms;
import blankwright.mesh.TriMesh;
import blankwright.oracle.HostileFiles;
import blankwright.oracle.OutsideReader;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two readers we did not write, meshio and VTK, find in our files what we put in. */
class WritersReadOutsideTest {
    private static final String AREA = """
            import sys, numpy as np
            def tell(points, corners):
                p, c = np.asarray(points, dtype=float), np.asarray(corners).reshape(-1, 3)
                a, b, d = p[c[:, 0]], p[c[:, 1]], p[c[:, 2]]
                n = np.cross(b - a, d - a)
                print(len(c), '%.5f' % (np.linalg.norm(n, axis=1).sum() / 2), '%.4f' % (np.einsum('ij,ij->i', n, a).sum() / 6))
            """;

    /** Triangles, area, volume enclosed. */
    private static String facts(TriMesh mesh) {
        double volume = 0;
        for (int t = 0; t < mesh.triangleCount(); t++) {
            double[] n = mesh.normal(t);
            int a = mesh.corner(t, 0);
            volume += mesh.area(t) * (n[0] * mesh.x(a) + n[1] * mesh.y(a) + n[2] * mesh.z(a)) / 3;
        }
        return String.format(java.util.Locale.ROOT, "%d %.5f %.4f", mesh.triangleCount(), mesh.area(), volume);
    }

    /** Coordinates that are floats, so that STL gives the same facts. */
    private static TriMesh body() {
        TriMesh mesh = Forms.sphere(2, 2);
        double[] xyz = mesh.positions();
        for (int i = 0; i < xyz.length; i++) xyz[i] = Math.rint(xyz[i] * 1024 + (i % 3 == 0 ? 100 : 0)) / 1024;
        return mesh.withPositions(xyz);
    }

    private static Path file(Path dir, String name, TriMesh mesh, Format format) throws IOException {
        return Files.write(dir.resolve(name), HostileFiles.written(mesh, format));
    }

    @Test
    void meshioReadsEveryFormat(@TempDir Path dir) throws IOException {
        TriMesh mesh = body();
        String said = OutsideReader.python(List.of("meshio", "numpy"), AREA + """
                import meshio
                for name in sys.argv[1:]:
                    m = meshio.read(name)
                    tell(m.points, m.cells_dict['triangle'])
                """, file(dir, "b.stl", mesh, Format.STL_BINARY).toString(), file(dir, "t.stl", mesh, Format.STL_TEXT).toString(),
                file(dir, "a.obj", mesh, Format.OBJ).toString(), file(dir, "t.ply", mesh, Format.PLY_TEXT).toString(),
                file(dir, "l.ply", mesh, Format.PLY_LITTLE).toString(), file(dir, "b.ply", mesh, Format.PLY_BIG).toString(),
                file(dir, "a.off", mesh, Format.OFF).toString());
        assertEquals((facts(mesh) + "\n").repeat(7), said.replaceAll("(?m)^\\s*$\\n?", ""));
    }

    @Test
    void vtkReadsEveryFormatItKnows(@TempDir Path dir) throws IOException {
        TriMesh mesh = body();
        String said = OutsideReader.python(List.of("vtk", "numpy"), AREA + """
                import vtk
                from vtk.util.numpy_support import vtk_to_numpy
                reader = {'stl': vtk.vtkSTLReader, 'obj': vtk.vtkOBJReader, 'ply': vtk.vtkPLYReader}
                for name in sys.argv[1:]:
                    r = reader[name[-3:]](); r.SetFileName(name); r.Update()
                    g = r.GetOutput()
                    tell(vtk_to_numpy(g.GetPoints().GetData()), vtk_to_numpy(g.GetPolys().GetData()).reshape(-1, 4)[:, 1:])
                """, file(dir, "b.stl", mesh, Format.STL_BINARY).toString(), file(dir, "t.stl", mesh, Format.STL_TEXT).toString(),
                file(dir, "a.obj", mesh, Format.OBJ).toString(), file(dir, "t.ply", mesh, Format.PLY_TEXT).toString(),
                file(dir, "l.ply", mesh, Format.PLY_LITTLE).toString(), file(dir, "b.ply", mesh, Format.PLY_BIG).toString());
        assertEquals((facts(mesh) + "\n").repeat(6), said);
    }

    /** Points, corners, scalar and vector fields of two parts in one grid; sums weighted by number so that order counts. */
    @Test
    void bothReadTheFieldsOfAGrid(@TempDir Path dir) throws IOException {
        TriMesh one = body(), two = Forms.plate(30, 20, 3, 2);
        Path file = dir.resolve("panel.vtu");
        try (OutputStream out = Files.newOutputStream(file)) {
            VtuWriter.write(List.of(part(one), part(two)), out);
        }
        String wanted = String.format(java.util.Locale.ROOT, "%d %d %.6f %.6f %.6f %.6f %.6f%n", one.vertexCount() + two.vertexCount(),
                one.triangleCount() + two.triangleCount(), weighed(cells(one, 1), cells(two, 1)), weighed(cells(one, 3), cells(two, 3)),
                weighed(points(one), points(two)), one.triangleCount() + 2.0 * two.triangleCount(), weighed(one.positions(), two.positions()));
        String weigh = """
                import sys, numpy as np
                def w(*arrays):
                    a = np.concatenate([np.asarray(x, dtype=float).ravel() for x in arrays])
                    return (a * (np.arange(len(a)) % 97 + 1)).sum()
                def tell(n, m, s, d, h, piece, xyz):
                    print(n, m, *['%.6f' % x for x in (w(s), w(d), w(h), np.asarray(piece).sum(), w(xyz))])
                """;
        assertEquals(wanted, OutsideReader.python(List.of("meshio", "numpy"), weigh + """
                import meshio
                m = meshio.read(sys.argv[1])
                assert m.cell_data['direction1'][0].shape[1] == 3
                tell(len(m.points), len(m.cells[0].data), m.cell_data['strain <1>'][0], m.cell_data['direction1'][0],
                     m.point_data['height'], m.cell_data['piece'][0], m.points)
                """, file.toString()));
        assertEquals(wanted, OutsideReader.python(List.of("vtk", "numpy"), weigh + """
                import vtk
                from vtk.util.numpy_support import vtk_to_numpy as a
                r = vtk.vtkXMLUnstructuredGridReader(); r.SetFileName(sys.argv[1]); r.Update()
                g = r.GetOutput(); c = g.GetCellData()
                assert g.GetCellType(0) == 5
                tell(g.GetNumberOfPoints(), g.GetNumberOfCells(), a(c.GetArray('strain <1>')), a(c.GetArray('direction1')),
                     a(g.GetPointData().GetArray('height')), a(c.GetArray('piece')), a(g.GetPoints().GetData()))
                """, file.toString()));
    }

    private static VtuWriter.Part part(TriMesh mesh) {
        Map<String, double[]> cells = new TreeMap<>();
        cells.put("strain <1>", cells(mesh, 1));
        cells.put("direction1", cells(mesh, 3));
        return new VtuWriter.Part(mesh, cells, Map.of("height", points(mesh)));
    }

    private static double[] cells(TriMesh mesh, int wide) {
        double[] f = new double[wide * mesh.triangleCount()];
        for (int i = 0; i < f.length; i++) f[i] = i % 13 * 0.125 - wide;
        return f;
    }

    private static double[] points(TriMesh mesh) {
        double[] f = new double[mesh.vertexCount()];
        for (int v = 0; v < f.length; v++) f[v] = mesh.z(v);
        return f;
    }

    private static double weighed(double[] one, double[] two) {
        double sum = 0;
        for (int i = 0; i < one.length + two.length; i++) sum += (i < one.length ? one[i] : two[i - one.length]) * (i % 97 + 1);
        return sum;
    }
}
