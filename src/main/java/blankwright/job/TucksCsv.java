package blankwright.job;

import blankwright.mesh.FlatMap;
import blankwright.metal.buckling.Tuck;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The tucks as a table, numbered piece by piece as on the picture. */
final class TucksCsv {
    private static final List<String> COLUMNS = List.of("piece", "tuck", "rim", "place_mm", "base_mm", "depth_mm", "take_in_mm", "rounds",
            "u_mm", "v_mm", "x_mm", "y_mm", "z_mm");

    private TucksCsv() { }

    static void write(List<Piece> pieces, OutputStream out) throws IOException {
        List<List<Object>> rows = new ArrayList<>();
        for (int p = 0; p < pieces.size(); p++) {
            List<Tuck> tucks = pieces.get(p).buckled().map(Buckled::tucks).orElse(List.of());
            FlatMap map = pieces.get(p).map();
            for (int i = 0; i < tucks.size(); i++) {
                Tuck tuck = tucks.get(i);
                int v = tuck.vertex();
                rows.add(Arrays.asList(p + 1, i + 1, tuck.rim() + 1, tuck.place(), tuck.base(), tuck.depth(), tuck.takeIn(), tuck.rounds(),
                        map.u(v), map.v(v), map.form().x(v), map.form().y(v), map.form().z(v)));
            }
        }
        WorkCsv.write(COLUMNS, rows, out);
    }
}
