package blankwright.viewer;

import blankwright.picture.Tints;
import javafx.scene.image.Image;
import javafx.scene.image.WritableImage;
import javafx.scene.paint.Color;

/** The colours of a scale as a strip to be laid on triangles, and where on it a number lies. */
final class Palette {
    private static final int WIDE = 2048, HIGH = 8;
    /** Share of the strip beyond either end, in the end's colour, so that the other end does not show through. */
    private static final double EDGE = 1.0 / 16;

    private Palette() { }

    /** @param opacity 0..1 */
    static Image image(Tints tints, double opacity) {
        WritableImage strip = new WritableImage(WIDE, HIGH);
        int alpha = (int) Math.round(255 * opacity);
        for (int i = 0; i < WIDE; i++) {
            double share = ((i + 0.5) / WIDE - EDGE) / (1 - 2 * EDGE);
            int rgb = tints.colourOf(tints.at(Math.max(0, Math.min(1, share))));
            for (int j = 0; j < HIGH; j++) strip.getPixelWriter().setArgb(i, j, alpha << 24 | rgb);
        }
        return strip;
    }

    /** 0..1 along the strip. */
    static float at(Tints tints, double value) {
        return (float) (EDGE + (1 - 2 * EDGE) * tints.share(value));
    }

    static Color colour(int rgb) {
        return Color.rgb(rgb >> 16 & 255, rgb >> 8 & 255, rgb & 255);
    }
}
