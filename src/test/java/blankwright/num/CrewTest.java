package blankwright.num;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicIntegerArray;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class CrewTest {
    private static void eachOnce(int pieces) {
        AtomicIntegerArray times = new AtomicIntegerArray(pieces);
        Crew.each(pieces, times::incrementAndGet);
        for (int i = 0; i < pieces; i++) assertEquals(1, times.get(i), "piece " + i + " of " + pieces);
    }

    @Test
    void everyPieceIsDoneOnceOnAnyNumberOfThreads() throws Exception {
        for (int threads : new int[] {1, 2, 8}) {
            ForkJoinPool pool = new ForkJoinPool(threads);
            try {
                pool.submit(() -> IntStream.range(0, 3000).forEach(i -> eachOnce(i % 37))).get();
            } finally {
                pool.shutdown();
            }
        }
        for (int i = 0; i < 3000; i++) eachOnce(i % 37);
    }

    @Test
    void threadsOfTheCallersPoolHelp() throws Exception {
        ForkJoinPool pool = new ForkJoinPool(4);
        Set<Thread> seen = ConcurrentHashMap.newKeySet();
        CountDownLatch all = new CountDownLatch(4);
        try {
            pool.submit(() -> Crew.each(4, i -> {
                seen.add(Thread.currentThread());
                assertSame(pool, ForkJoinTask.getPool());
                all.countDown();
                try {
                    assertTrue(all.await(20, TimeUnit.SECONDS), "each of four pieces waits for the others: four threads, or none gets on");
                } catch (InterruptedException e) {
                    throw new IllegalStateException(e);
                }
            })).get();
        } finally {
            pool.shutdown();
        }
        assertEquals(4, seen.size());
    }

    @Test
    void aPieceMayShareOutPiecesOfItsOwn() {
        AtomicInteger done = new AtomicInteger();
        for (int i = 0; i < 200; i++) Crew.each(20, outer -> Crew.each(20, inner -> done.incrementAndGet()));
        assertEquals(200 * 400, done.get());
    }

    @Test
    void callersSideBySideDoNotMixTheirPieces() throws Exception {
        int[][] sums = new int[4][2000];
        List<Thread> callers = new ArrayList<>();
        for (int[] sum : sums) callers.add(new Thread(() -> {
            for (int i = 0; i < sum.length; i++) {
                AtomicInteger own = new AtomicInteger();
                Crew.each(17, own::addAndGet);
                sum[i] = own.get();
            }
        }));
        callers.forEach(Thread::start);
        for (Thread caller : callers) caller.join();
        int[] expected = new int[2000];
        Arrays.fill(expected, 17 * 16 / 2);
        for (int[] sum : sums) assertArrayEquals(expected, sum);
    }

    @Test
    void anErrorComesBackAndTheNextLoopGoesOnAsBefore() {
        for (int i = 0; i < 100; i++) {
            int bad = i % 20;
            RuntimeException trouble = assertThrows(IllegalStateException.class, () -> Crew.each(20, p -> {
                if (p == bad) throw new IllegalStateException("piece " + p);
            }));
            assertEquals("piece " + bad, trouble.getMessage());
            assertThrows(OutOfMemoryError.class, () -> Crew.each(20, p -> {
                if (p == bad) throw new OutOfMemoryError("piece " + p);
            }));
            eachOnce(20);
        }
    }
}
