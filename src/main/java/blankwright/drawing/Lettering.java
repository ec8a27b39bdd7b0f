package blankwright.drawing;

import java.awt.geom.AffineTransform;
import java.awt.geom.GeneralPath;
import java.awt.geom.Path2D;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/**
 * Text as the outlines of its letters, mm, y up: the same on every machine, with or without fonts and display.
 *
 * <p>The font is Liberation Sans (SIL Open Font License 1.1), which comes inside the PDFBox jar and is read straight from there.
 * A letter the font does not have is drawn as the font's empty box. Letters are filled by the non-zero rule. Safe for use by many threads.
 */
public final class Lettering {
    private static final String FONT = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";

    /** Height of a flat capital (H) in font units of 1/2048 em: the outline of H of this font spans 0 to 1409. */
    private static final double CAPITAL = 1409;

    private static final Map<Integer, Letter> LETTERS = new ConcurrentHashMap<>();

    private Lettering() { }

    private record Letter(Path2D.Double outline, double advance) { }     // in capital heights

    private static final class Font {
        static final TrueTypeFont TTF = read();
        static final CmapLookup CODES = codes();

        private static TrueTypeFont read() {
            try (InputStream in = org.apache.pdfbox.pdmodel.PDDocument.class.getResourceAsStream(FONT)) {
                if (in == null) throw new AssertionError("no font at " + FONT);
                return new TTFParser(true).parse(new RandomAccessReadBuffer(in));
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }

        private static CmapLookup codes() {
            try {
                return TTF.getUnicodeCmapLookup();
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    /** Width from the pen's start to its end, mm; {@code height} of a capital, mm. */
    public static double width(String text, double height) {
        double sum = 0;
        for (int code : text.codePoints().toArray()) sum += letter(code).advance();
        return sum * height;
    }

    /** Outlines of the letters with the anchor at (x, y); {@code height} of a capital, mm; {@code angle} of the base line, rad. */
    public static Path2D.Double outline(String text, double x, double y, double height, double angle, Anchor anchor) {
        AffineTransform place = AffineTransform.getTranslateInstance(x, y);
        place.rotate(angle);
        place.scale(height, height);
        place.translate(anchor.along() == 0 ? 0 : -anchor.along() * width(text, 1), -anchor.up());
        Path2D.Double all = new Path2D.Double(Path2D.WIND_NON_ZERO);
        for (int code : text.codePoints().toArray()) {
            Letter letter = letter(code);
            all.append(letter.outline().getPathIterator(place), false);
            place.translate(letter.advance(), 0);
        }
        return all;
    }

    static Path2D.Double outline(Entity.Text text) {
        return outline(text.text(), text.x(), text.y(), text.height(), text.angle(), text.anchor());
    }

    private static Letter letter(int code) {
        Letter known = LETTERS.get(code);
        if (known != null) return known;
        Letter read = read(code);
        LETTERS.put(code, read);
        return read;
    }

    private static Letter read(int code) {
        synchronized (Font.TTF) {                       // the font reads its tables on demand
            try {
                int glyph = Font.CODES.getGlyphId(code);
                var data = Font.TTF.getGlyph().getGlyph(glyph);
                Path2D.Double outline = new Path2D.Double(Path2D.WIND_NON_ZERO);
                if (data != null) {
                    GeneralPath path = data.getPath();
                    outline.append(path.getPathIterator(AffineTransform.getScaleInstance(1 / CAPITAL, 1 / CAPITAL)), false);
                }
                return new Letter(outline, Font.TTF.getAdvanceWidth(glyph) / CAPITAL);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }
}
