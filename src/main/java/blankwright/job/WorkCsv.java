package blankwright.job;

import blankwright.shop.WorkList;
import blankwright.shop.WorkRow;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** The list of work as a table: one row per zone, numbers to three decimals with a point, nothing where a number does not apply. */
final class WorkCsv {
    private WorkCsv() { }

    static void write(List<Piece> pieces, OutputStream out) throws IOException {
        List<WorkRow> rows = WorkList.of(pieces.stream().map(Piece::zones).toList(), pieces.stream().map(Piece::demand).toList());
        write(WorkRow.COLUMNS, rows.stream().map(WorkRow::values).toList(), out);
    }

    static void write(List<String> columns, List<List<Object>> rows, OutputStream out) throws IOException {
        Writer text = new OutputStreamWriter(out, StandardCharsets.UTF_8);
        CSVPrinter table = new CSVPrinter(text, CSVFormat.RFC4180.builder().setRecordSeparator("\n").get());
        table.printRecord(columns);
        for (List<Object> row : rows) table.printRecord(row.stream().map(WorkCsv::plain).toList());
        text.flush();
    }

    private static Object plain(Object value) {
        if (!(value instanceof Double d)) return value;
        if (!Double.isFinite(d)) return null;
        BigDecimal rounded = BigDecimal.valueOf(d).setScale(3, RoundingMode.HALF_EVEN).stripTrailingZeros();
        return rounded.signum() == 0 ? "0" : rounded.toPlainString();
    }
}
