package blankwright.picture;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * Colours in classes for the numbers of one map.
 *
 * <p>Class i lies between boundaries i - 1 and i; the first and the last class take everything beyond. A number on a boundary belongs to
 * the class farther from zero.
 */
public final class Tints {
    /**
     * BrBG of eleven classes, for bowl and saddle: ColorBrewer, (c) 2002 Cynthia Brewer, Mark Harrower and The Pennsylvania State
     * University, Apache-2.0; docs/sources.md [CB]. From memory.
     */
    private static final int[] BROWN_TO_GREEN = {
        0x543005, 0x8C510A, 0xBF812D, 0xDFC27D, 0xF6E8C3, 0xF5F5F5, 0xC7EAE5, 0x80CDC1, 0x35978F, 0x01665E, 0x003C30};
    /** YlGnBu of nine classes, light = thick, from the same source. From memory. */
    private static final int[] YELLOW_TO_BLUE = {
        0x081D58, 0x253494, 0x225EA8, 0x1D91C0, 0x41B6C4, 0x7FCDBB, 0xC7E9B4, 0xEDF8B1, 0xFFFFD9};

    private final double low;
    private final double high;
    private final double[] boundary;
    private final int[] colour;

    private Tints(double low, double high, double[] boundary, int[] colour) {
        this.low = low;
        this.high = high;
        this.boundary = boundary;
        this.colour = colour;
    }

    /** Those of the work map, on screen as on paper. */
    public static Tints of(StrainScale scale) {
        int[] colours = new int[StrainScale.CLASSES];
        for (int c = 0; c < colours.length; c++) colours[c] = StrainScale.colour(c);
        return new Tints(-scale.limit(), scale.limit(), scale.boundaries(), colours);
    }

    /** Bowl and saddle, centred on zero. */
    public static Tints bothWays(double limit) {
        int n = BROWN_TO_GREEN.length;
        double[] boundary = new double[n - 1];
        for (int i = 0; i < boundary.length; i++) boundary[i] = limit * (2.0 * (i + 1) / n - 1);
        return new Tints(-limit, limit, boundary, BROWN_TO_GREEN.clone());
    }

    /** From the thinnest, dark, to the thickest, light. */
    public static Tints oneWay(double low, double high) {
        if (!(high > low)) throw new IllegalArgumentException("a scale from " + low + " to " + high);
        int n = YELLOW_TO_BLUE.length;
        double[] boundary = new double[n - 1];
        for (int i = 0; i < boundary.length; i++) boundary[i] = low + (high - low) * (i + 1) / n;
        return new Tints(low, high, boundary, YELLOW_TO_BLUE.clone());
    }

    /** Thickness after forming over that of the sheet, in steps that hold both ends and 1, at least from 0.99 to 1.01. */
    public static Tints thickness(double thinnest, double thickest) {
        return oneWay(Math.floor(Math.min(thinnest, 0.99) * 100) / 100, Math.ceil(Math.max(thickest, 1.01) * 100) / 100);
    }

    /** A one-way scale with another low end, which stays below the high one; the same where none is given. */
    public Tints from(OptionalDouble end) {
        return end.isEmpty() ? this : oneWay(Math.min(end.getAsDouble(), high - 0.005), high);
    }

    /** From nothing, light, to an end, dark. */
    public static Tints upTo(double end) {
        Tints light = oneWay(0, end);
        int[] turned = new int[light.colour.length];
        for (int c = 0; c < turned.length; c++) turned[c] = light.colour[turned.length - 1 - c];
        return new Tints(0, end, light.boundary, turned);
    }

    public double low() {
        return low;
    }

    public double high() {
        return high;
    }

    public int classes() {
        return colour.length;
    }

    /** Boundary i between class i and class i + 1, rising. */
    public double boundary(int i) {
        return boundary[i];
    }

    /** A copy, rising. */
    public double[] boundaries() {
        return boundary.clone();
    }

    public int classOf(double value) {
        int c = 0;
        while (c < boundary.length && (value >= 0 ? value >= boundary[c] : value > boundary[c])) c++;
        return c;
    }

    /** Colour of class c, 0xRRGGBB. */
    public int colour(int c) {
        return colour[c];
    }

    public int colourOf(double value) {
        return colour[classOf(value)];
    }

    /** Where a number stands between the ends, 0..1. */
    public double share(double value) {
        return Math.max(0, Math.min(1, (value - low) / (high - low)));
    }

    /** The number at a share of the way from end to end. */
    public double at(double share) {
        return low + share * (high - low);
    }

    /** As a grey printer would give it (weights of ITU-R BT.601, luma of red, green, blue: 0.299, 0.587, 0.114). */
    public Tints grey() {
        return new Tints(low, high, boundary, Arrays.stream(colour).map(Tints::grey).toArray());
    }

    static int grey(int rgb) {
        int luma = (int) Math.round(0.299 * (rgb >> 16 & 255) + 0.587 * (rgb >> 8 & 255) + 0.114 * (rgb & 255));
        return luma << 16 | luma << 8 | luma;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Tints t && low == t.low && high == t.high && Arrays.equals(boundary, t.boundary)
                && Arrays.equals(colour, t.colour);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(boundary) + 31 * Arrays.hashCode(colour);
    }
}
