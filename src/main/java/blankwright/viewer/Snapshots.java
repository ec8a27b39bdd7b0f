package blankwright.viewer;

import blankwright.picture.Picture;
import javafx.scene.Node;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;

/** What the screen shows, as a picture. */
final class Snapshots {
    /** As if shown at this many elements to the mm, where a picture has no true size. */
    private static final double PER_MM = 96 / 25.4;

    private Snapshots() { }

    static Picture of(Node node) {
        WritableImage image = node.snapshot(null, null);
        int w = (int) image.getWidth(), h = (int) image.getHeight();
        int[] rgb = new int[w * h];
        image.getPixelReader().getPixels(0, 0, w, h, PixelFormat.getIntArgbInstance(), rgb, 0, w);
        for (int i = 0; i < rgb.length; i++) rgb[i] &= 0xFFFFFF;
        return Picture.of(rgb, w, h, PER_MM);
    }
}
