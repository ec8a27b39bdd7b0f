package blankwright.drawing;

/**
 * What a line is for. Each layer has its own colour, and its own width and dashes so that grey print tells them apart too.
 *
 * <p>Purple is shrink and orange is stretch, as on the work map (the dark ends of ColorBrewer's PuOr).
 */
public enum Layer {
    /** Cut the sheet here; solid, heavy, black. */
    CUT("cut line", 0x000000, 7, 0.50),
    /** Final edge, trimmed after forming; long dashes, green. */
    TRIM("trim line, after forming", 0x1b6b3a, 94, 0.35, 6, 2),
    /** Centre line, stations, labels' ticks: pen on the sheet; thin, solid, blue. */
    MARK("mark on the sheet", 0x1f5fa8, 5, 0.18),
    /** Where metal is gathered; short dashes, purple. */
    SHRINK("shrink", 0x542788, 202, 0.35, 2, 1),
    /** Where metal is stretched; dash and dot, orange. */
    STRETCH("stretch", 0xb35806, 32, 0.35, 5, 1.2, 0.6, 1.2),
    /** Lettering; dark grey. */
    TEXT("lettering", 0x333333, 8, 0.18);

    private final String words;
    private final int rgb;
    private final int index;
    private final double width;
    private final double[] dashes;

    Layer(String words, int rgb, int index, double width, double... dashes) {
        this.words = words;
        this.rgb = rgb;
        this.index = index;
        this.width = width;
        this.dashes = dashes;
    }

    /** What the line is for, as said in a key. */
    public String words() {
        return words;
    }

    /** Colour as 0xRRGGBB. */
    public int rgb() {
        return rgb;
    }

    /** The nearest colour of the 255 numbered ones of DXF. */
    int index() {
        return index;
    }

    /** Line width, mm. */
    public double width() {
        return width;
    }

    /** A copy of dash, gap, dash, gap ... in mm; empty = solid. */
    public double[] dashes() {
        return dashes.clone();
    }
}
