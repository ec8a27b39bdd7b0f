package blankwright.shop;

import blankwright.strain.Developability;

/**
 * How a piece is divided into zones.
 *
 * @param neutral strain below which metal is left alone, engineering, 0 or above; default 0.1 %, which the trade says springs in (from
 *     memory)
 * @param smallestShare share of the piece's area below which a zone joins its neighbour, 0..1; default 0.5 %
 */
public record ZoneOptions(double neutral, double smallestShare) {
    public static final ZoneOptions DEFAULT = new ZoneOptions(Developability.SPRINGS_IN, 0.005);

    public ZoneOptions {
        if (!(neutral >= 0 && neutral < 1)) throw new IllegalArgumentException("neutral strain " + neutral + ": must be 0 to 1");
        if (!(smallestShare >= 0 && smallestShare < 1))
            throw new IllegalArgumentException("smallest share " + smallestShare + ": must be 0 to 1");
    }

    public ZoneOptions withNeutral(double strain) {
        return new ZoneOptions(strain, smallestShare);
    }

    public ZoneOptions withSmallestShare(double share) {
        return new ZoneOptions(neutral, share);
    }
}
