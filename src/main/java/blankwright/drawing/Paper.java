package blankwright.drawing;

/** Sheets a home printer takes, upright, mm. Sizes: ISO 216 (A4); 8.5 by 11 inch (Letter). */
public enum Paper {
    A4(210, 297), LETTER(8.5 * 25.4, 11 * 25.4);

    private final double width;
    private final double height;

    Paper(double width, double height) {
        this.width = width;
        this.height = height;
    }

    public double width() {
        return width;
    }

    public double height() {
        return height;
    }
}
