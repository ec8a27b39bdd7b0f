package blankwright.viewer.model;

import blankwright.num.Progress;
import java.util.concurrent.Callable;
import java.util.concurrent.CancellationException;
import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyDoubleWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;

/**
 * Long work off the screen's thread, one at a time; its answers come back on the screen's thread, once.
 *
 * <p>What is asked while something runs waits; of several waiting only the last is done. All methods are called on the screen's thread.
 */
public final class Runner {
    private final Executor screen;
    private final ExecutorService thread = Executors.newSingleThreadExecutor(r -> {
        Thread t = new Thread(r, "work");
        t.setDaemon(true);
        return t;
    });
    private final ReadOnlyBooleanWrapper busy = new ReadOnlyBooleanWrapper();
    private final ReadOnlyStringWrapper doing = new ReadOnlyStringWrapper("");
    private final ReadOnlyDoubleWrapper done = new ReadOnlyDoubleWrapper();
    private Task<?> running;
    private Task<?> waiting;

    /** @param screen runs what it is given on the screen's thread, in order */
    public Runner(Executor screen) {
        this.screen = screen;
    }

    /** Work that tells how far it is and stops when asked. */
    @FunctionalInterface
    public interface Work<T> {
        T run(Progress progress) throws Exception;
    }

    public ReadOnlyBooleanProperty busyProperty() {
        return busy.getReadOnlyProperty();
    }

    /** What is being done, in the user's words; empty when idle. */
    public ReadOnlyStringProperty doingProperty() {
        return doing.getReadOnlyProperty();
    }

    /** How much of it is done, 0..1. */
    public ReadOnlyDoubleProperty doneProperty() {
        return done.getReadOnlyProperty();
    }

    /**
     * Does the work now, or after what runs.
     *
     * @param hurry stops what runs, whose answer is then never heard of
     * @param failed hears of everything but a stop
     */
    public <T> void ask(Work<T> work, boolean hurry, Consumer<T> answer, Consumer<Throwable> failed) {
        ask(new Task<>(work, false, answer, failed), hurry);
    }

    /** Does what the latest wish asks for: as {@link #ask}, but stops what runs where that followed an earlier wish. */
    public <T> void follow(Work<T> work, Consumer<T> answer, Consumer<Throwable> failed) {
        ask(new Task<>(work, true, answer, failed), running != null && running.follows);
    }

    private void ask(Task<?> task, boolean hurry) {
        if (running == null) {
            start(task);
            return;
        }
        waiting = task;
        if (hurry) running.stopped = true;
    }

    /** Stops what runs and forgets what waits. */
    public void stop() {
        waiting = null;
        if (running != null) running.stopped = true;
    }

    /** For good; the runner does nothing afterwards. */
    public void close() {
        stop();
        thread.shutdownNow();
    }

    private void start(Task<?> task) {
        running = task;
        done.set(0);
        busy.set(true);
        thread.execute(task);
    }

    private void ended() {
        running = null;
        if (waiting != null) {
            Task<?> next = waiting;
            waiting = null;
            start(next);
            return;
        }
        doing.set("");
        busy.set(false);
    }

    private final class Task<T> implements Runnable, Progress {
        private final Work<T> work;
        private final boolean follows;
        private final Consumer<T> answer;
        private final Consumer<Throwable> failed;
        private final AtomicReference<Object[]> news = new AtomicReference<>();
        private volatile boolean stopped;

        Task(Work<T> work, boolean follows, Consumer<T> answer, Consumer<Throwable> failed) {
            this.work = work;
            this.follows = follows;
            this.answer = answer;
            this.failed = failed;
        }

        @Override
        public void run() {
            Callable<T> call = () -> work.run(this);
            try {
                T result = call.call();
                screen.execute(() -> finish(() -> answer.accept(result)));
            } catch (CancellationException e) {
                screen.execute(() -> finish(() -> { }));
            } catch (Exception | StackOverflowError | OutOfMemoryError | AssertionError e) {
                screen.execute(() -> finish(() -> failed.accept(e)));
            }
        }

        private void finish(Runnable tell) {
            boolean wanted = !stopped;
            ended();
            if (wanted) tell.run();
        }

        /** Only the latest news is kept until the screen takes it. */
        @Override
        public void at(String what, double fraction) {
            if (news.getAndSet(new Object[] {what, fraction}) == null) screen.execute(this::show);
        }

        private void show() {
            Object[] latest = news.getAndSet(null);
            if (running != this || latest == null) return;
            doing.set((String) latest[0]);
            done.set((Double) latest[1]);
        }

        @Override
        public boolean cancelled() {
            return stopped;
        }
    }
}
