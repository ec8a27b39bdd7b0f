package blankwright.num;

import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinTask;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntConsumer;

/**
 * Shares numbered pieces of work out to the cores, over and over, for loops so short that waking a thread costs as much as they do: whoever
 * helped looks out for the next piece of work for a moment before going back to the pool. The caller needs no helper and waits for none but
 * those that have a piece in hand. Which thread does what is left open: results must not depend on it.
 */
public final class Crew {
    private static final long LOOKING_OUT = 300_000;      // ns
    private static final int SPINS = 10_000;              // of a wait before the core is offered to others
    private static volatile Crew last = new Crew(ForkJoinPool.commonPool());

    private final ForkJoinPool pool;
    private final AtomicBoolean busy = new AtomicBoolean();
    private final AtomicInteger helpers = new AtomicInteger();       // at work, looking out or on their way
    private final AtomicInteger coming = new AtomicInteger();        // on their way
    private volatile Job job;                                        // the latest, null between jobs

    private Crew(ForkJoinPool pool) {
        this.pool = pool;
    }

    /**
     * Does {@code piece} for 0 .. pieces - 1, each once, in any order and side by side, on the pool whose thread calls, or else the common one;
     * ends when all are done, with the error of one of them if there was any.
     */
    public static void each(int pieces, IntConsumer piece) {
        ForkJoinPool own = ForkJoinTask.getPool(), pool = own == null ? ForkJoinPool.commonPool() : own;
        int most = Math.min(pieces, pool.getParallelism() + (own == null ? 1 : 0)) - 1;
        Crew crew = last;
        if (crew.pool != pool) last = crew = new Crew(pool);
        if (most < 1 || !crew.busy.compareAndSet(false, true)) {     // a crew at work: this is a part of that, or beside it
            for (int i = 0; i < pieces; i++) piece.accept(i);
            return;
        }
        try {
            crew.share(new Job(pieces, piece), most);
        } finally {
            crew.busy.set(false);
        }
    }

    private void share(Job next, int most) {
        job = next;
        while (helpers.get() < most) {
            helpers.incrementAndGet();
            coming.incrementAndGet();
            pool.execute(this::lookOut);
        }
        next.help();
        for (int spins = 0; next.done.get() < next.pieces; spins++) {
            if (spins < SPINS) Thread.onSpinWait();
            else Thread.yield();
        }
        job = null;
        if (next.trouble instanceof Error error) throw error;
        if (next.trouble instanceof RuntimeException e) throw e;
    }

    private void lookOut() {
        coming.decrementAndGet();
        Job seen = null;
        for (long until = System.nanoTime() + LOOKING_OUT; ; ) {
            Job now = job;
            if (now != null && now != seen) {
                now.help();
                seen = now;
                until = System.nanoTime() + LOOKING_OUT;
            } else if (System.nanoTime() - until > 0 || coming.get() == 0 && pool.hasQueuedSubmissions()) break;
            else Thread.onSpinWait();
        }
        helpers.decrementAndGet();
    }

    private static final class Job {
        final int pieces;
        final IntConsumer piece;
        final AtomicInteger next = new AtomicInteger(), done = new AtomicInteger();
        volatile Throwable trouble;

        Job(int pieces, IntConsumer piece) {
            this.pieces = pieces;
            this.piece = piece;
        }

        void help() {
            for (int i; (i = next.getAndIncrement()) < pieces; done.incrementAndGet()) {
                try {
                    piece.accept(i);
                } catch (RuntimeException | Error e) {
                    trouble = e;
                }
            }
        }
    }
}
