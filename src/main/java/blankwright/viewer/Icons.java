package blankwright.viewer;

import org.kordamp.ikonli.feather.Feather;
import org.kordamp.ikonli.javafx.FontIcon;

/** Icons beside words, never instead of them where there is room for the word. */
final class Icons {
    private Icons() { }

    static FontIcon of(Feather shape) {
        return new FontIcon(shape);
    }
}
