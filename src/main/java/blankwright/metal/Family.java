package blankwright.metal;

import java.util.Optional;

/** What kind of metal it is, where rules differ by kind: gauge numbers, forming limits. */
public enum Family {
    ALUMINIUM(Gauge.ALUMINIUM), STEEL(Gauge.STEEL), STAINLESS(Gauge.STAINLESS), COPPER(null), OTHER(null);

    private final Gauge gauge;

    Family(Gauge gauge) {
        this.gauge = gauge;
    }

    /** The gauge table its sheet is sold by; empty where it is sold by thickness or by weight. */
    public Optional<Gauge> gauge() {
        return Optional.ofNullable(gauge);
    }

    /** {@code aluminium}, {@code steel}, {@code stainless}, {@code copper} or {@code other}. */
    public String word() {
        return name().toLowerCase(java.util.Locale.ROOT);
    }
}
