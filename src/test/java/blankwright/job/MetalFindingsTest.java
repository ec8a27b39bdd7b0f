package blankwright.job;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class MetalFindingsTest {
    /** "zone 1 3 times" could be read as zone 13. */
    @Test
    void roundsAreWordsBehindTheNumberOfAZone() {
        assertEquals("once", MetalFindings.times(1));
        assertEquals("twice", MetalFindings.times(2));
        assertEquals("three times", MetalFindings.times(3));
        assertEquals("six times", MetalFindings.times(6));
        assertEquals("7 times", MetalFindings.times(7));
    }
}
