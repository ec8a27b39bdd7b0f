package blankwright.drawing;

import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;

/** Looks for ink in a picture. */
final class Pixels {
    private Pixels() { }

    static boolean isInk(BufferedImage picture, int x, int y) {
        int rgb = picture.getRGB(x, y);
        return (rgb & 255) + (rgb >> 8 & 255) + (rgb >> 16 & 255) < 384;
    }

    /** Middles of the runs of ink along one row or column, pixels from the left or from the top. */
    static List<Double> lines(BufferedImage picture, int at, boolean row) {
        List<Double> middles = new ArrayList<>();
        int length = row ? picture.getWidth() : picture.getHeight(), from = -1;
        for (int i = 0; i <= length; i++) {
            boolean ink = i < length && isInk(picture, row ? i : at, row ? at : i);
            if (ink && from < 0) from = i;
            if (!ink && from >= 0) {
                middles.add((from + i) / 2.0);
                from = -1;
            }
        }
        return middles;
    }
}
