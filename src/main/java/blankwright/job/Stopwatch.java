package blankwright.job;

import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;

/** Seconds of each phase and the most memory the program held. The only place that asks a clock; nothing else depends on it. */
final class Stopwatch {
    private final long start = System.nanoTime();
    private long last = start;

    /** Seconds since the last lap, or since the start. */
    double lap() {
        long now = System.nanoTime();
        double seconds = (now - last) * 1e-9;
        last = now;
        return seconds;
    }

    double total() {
        return (System.nanoTime() - start) * 1e-9;
    }

    /** The heap's pools at their fullest, added up, MB (1e6 bytes); the fullest moments may differ, so it is an upper bound. */
    static double peakMemoryMb() {
        double bytes = 0;
        for (MemoryPoolMXBean pool : ManagementFactory.getMemoryPoolMXBeans()) {
            if (pool.getType() == MemoryType.HEAP && pool.getPeakUsage() != null) bytes += pool.getPeakUsage().getUsed();
        }
        return bytes / 1e6;
    }
}
