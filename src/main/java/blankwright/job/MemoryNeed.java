package blankwright.job;

import blankwright.mesh.io.Foreseen;
import java.util.Locale;

/**
 * What a panel takes of the memory, told before the long part begins: at least so much, as measured by docs/benchmarks/memory.md.
 *
 * <p>An estimate that is too low costs a wait and ends in the same words; one too high would refuse what could be done. So the figures are
 * the least heaps in which meshes of 50,000 to 1,000,000 triangles went through, less a tenth.
 */
final class MemoryNeed {
    /** Bytes for each triangle and each vertex of a file while it is mended; a triangle of STL brings three vertices. */
    private static final long MENDING = 113, MENDING_VERTEX = 28;
    /** Bytes for each vertex and triangle as they are read: three coordinates, three corners and where they end. */
    private static final long ROW_VERTEX = 24, ROW_TRIANGLE = 16;
    /** Bytes for each triangle of a mended mesh while it is thinned out. */
    private static final long THINNING = 180;
    /** Bytes for each triangle that is laid flat. */
    private static final long LAYING_FLAT = 880;
    /** More than the need, so that the collector has room: what is advised. */
    private static final double EASY = 1.5;

    private MemoryNeed() { }

    /** Until it is read and mended: the file with what is made of it, and then that while it is mended, whichever is more. */
    static long reading(Foreseen file) {
        long made = ROW_VERTEX * file.vertices() + ROW_TRIANGLE * file.triangles();
        return Math.max(file.bytes() + made, mending(file.triangles(), file.vertices()));
    }

    static long mending(long triangles, long vertices) {
        return MENDING * triangles + MENDING_VERTEX * vertices;
    }

    static long thinning(long triangles) {
        return THINNING * triangles;
    }

    static long layingFlat(long triangles) {
        return LAYING_FLAT * triangles;
    }

    /**
     * @param step what cannot be done to the triangles, e.g. {@code laid flat}
     * @param triangles 0 where they are not known
     * @param coarser what helps besides more memory
     */
    static Refusal refusal(String name, String step, long triangles, long need, String coarser) {
        return new Refusal(String.format(Locale.ROOT, "%s: %s about %,d MB of memory to be %s, and %,d MB are given; run it with java -Xmx%s"
                + " -jar blankwright.jar ..., %s.", name, triangles > 0 ? String.format(Locale.ROOT, "%,d triangles need", triangles) : "the panel needs",
                megabytes(need), step, Runtime.getRuntime().maxMemory() / 1_000_000, option(need), coarser));
    }

    /** What to give java for a need, e.g. {@code 900m} or {@code 3g}. */
    static String option(long need) {
        long mb = megabytes((long) (EASY * need));
        return mb < 1000 ? (mb + 99) / 100 * 100 + "m" : (mb + 999) / 1000 + "g";
    }

    private static long megabytes(long bytes) {
        return (bytes + 999_999) / 1_000_000;
    }
}
