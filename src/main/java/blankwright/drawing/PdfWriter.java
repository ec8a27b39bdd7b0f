package blankwright.drawing;

import java.io.IOException;
import java.io.OutputStream;

/** A drawing as PDF at true size, tiled on paper. */
public final class PdfWriter {
    private PdfWriter() { }

    /** Writes all of it and flushes, without closing {@code to}. */
    public static void write(Drawing drawing, Cover cover, Paper paper, OutputStream to) throws IOException {
        throw new UnsupportedOperationException("tiles on " + paper);
    }
}
