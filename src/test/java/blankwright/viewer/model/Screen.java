package blankwright.viewer.model;

import java.util.concurrent.BlockingQueue;
import java.util.concurrent.Executor;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;

/** The thread of a test standing in for that of the screen: does what it is given while it waits. */
final class Screen implements Executor {
    private final BlockingQueue<Runnable> given = new LinkedBlockingQueue<>();

    @Override
    public void execute(Runnable what) {
        given.add(what);
    }

    /** Works until it is so; AssertionError after a minute. */
    void until(BooleanSupplier so) {
        long end = System.nanoTime() + 60_000_000_000L;
        while (!so.getAsBoolean()) {
            if (System.nanoTime() > end) throw new AssertionError("never came true");
            try {
                Runnable next = given.poll(100, TimeUnit.MILLISECONDS);
                if (next != null) next.run();
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
        }
    }
}
