package blankwright.job;

import blankwright.num.Progress;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/**
 * Waits for work no longer than it is wanted. The work runs beside; once its watcher has turned away it is left to itself, and ends where
 * it next asks. So whoever cancels is answered at once, however long the step in hand.
 */
final class Patience {
    private static final long GLANCE = 20;      // ms between two looks at the watcher

    private Patience() { }

    /** What is waited for. */
    @FunctionalInterface
    interface Work<T, E extends Exception> {
        T result() throws E;
    }

    /**
     * The work's result, or what it threw.
     *
     * @throws CancellationException once the progress says that the work is no longer wanted
     */
    @SuppressWarnings("unchecked")                  // work throws E or what need not be declared
    static <T, E extends Exception> T with(Progress progress, Work<T, E> work) throws E {
        FutureTask<T> task = new FutureTask<>(work::result);
        Thread beside = new Thread(task, "blankwright");
        beside.setDaemon(true);
        beside.start();
        boolean interrupted = false;
        try {
            while (true) {
                try {
                    return task.get(GLANCE, TimeUnit.MILLISECONDS);
                } catch (TimeoutException e) {
                    if (progress.cancelled()) throw new CancellationException("no longer wanted");
                } catch (InterruptedException e) {
                    interrupted = true;                     // whoever interrupts has a progress to say so
                } catch (ExecutionException e) {
                    if (e.getCause() instanceof Error error) throw error;
                    throw (E) e.getCause();
                }
            }
        } finally {
            if (interrupted) Thread.currentThread().interrupt();
        }
    }
}
