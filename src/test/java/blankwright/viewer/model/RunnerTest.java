package blankwright.viewer.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(60)
class RunnerTest {
    private final Screen screen = new Screen();
    private final Runner runner = new Runner(screen);
    private final List<String> heard = new ArrayList<>();

    @AfterEach
    void close() {
        runner.close();
    }

    @Test
    void answersComeBackOnTheScreensThread() {
        Thread here = Thread.currentThread();
        runner.ask(p -> Thread.currentThread().getName(), false, name -> {
            assertEquals(here, Thread.currentThread());
            heard.add(name);
        }, e -> heard.add("failed"));
        assertTrue(runner.busyProperty().get());
        screen.until(() -> !runner.busyProperty().get());
        assertEquals(List.of("work"), heard);
    }

    @Test
    void ofSeveralWaitingOnlyTheLastIsDone() {
        CountDownLatch go = new CountDownLatch(1);
        ask("first", go);
        for (int i = 0; i < 5; i++) ask("waiting " + i, null);
        go.countDown();
        screen.until(() -> !runner.busyProperty().get());
        assertEquals(List.of("first", "waiting 4"), heard);
    }

    @Test
    void whatIsStoppedIsNeverHeardOf() {
        CountDownLatch begun = new CountDownLatch(1);
        runner.ask(p -> {
            begun.countDown();
            while (!p.cancelled()) Thread.onSpinWait();
            throw new CancellationException();
        }, false, r -> heard.add("answer"), e -> heard.add("failed"));
        await(begun);
        runner.stop();
        screen.until(() -> !runner.busyProperty().get());
        assertEquals(List.of(), heard);
        runner.ask(p -> 1, false, r -> heard.add("next"), e -> heard.add("failed"));
        screen.until(() -> !runner.busyProperty().get());
        assertEquals(List.of("next"), heard);
    }

    @Test
    void aHurryStopsWhatRuns() {
        CountDownLatch begun = new CountDownLatch(1);
        runner.ask(p -> {
            begun.countDown();
            while (!p.cancelled()) Thread.onSpinWait();
            return 0;                                           // finished all the same: too late
        }, false, r -> heard.add("old"), e -> heard.add("failed"));
        await(begun);
        runner.ask(p -> 1, true, r -> heard.add("new"), e -> heard.add("failed"));
        screen.until(() -> !runner.busyProperty().get());
        assertEquals(List.of("new"), heard);
    }

    @Test
    void failuresAreTold() {
        runner.ask(p -> {
            throw new IllegalStateException("planted");
        }, false, r -> heard.add("answer"), e -> heard.add(e.getMessage()));
        screen.until(() -> !runner.busyProperty().get());
        assertEquals(List.of("planted"), heard);
    }

    @Test
    void progressIsShownWhileItRunsAndGoneAfterwards() {
        CountDownLatch seen = new CountDownLatch(1);
        runner.ask(p -> {
            p.at("hammering", 0.25);
            await(seen);
            return 1;
        }, false, r -> { }, e -> heard.add("failed"));
        screen.until(() -> runner.doingProperty().get().equals("hammering"));
        assertEquals(0.25, runner.doneProperty().get());
        seen.countDown();
        screen.until(() -> !runner.busyProperty().get());
        assertEquals("", runner.doingProperty().get());
        assertFalse(heard.contains("failed"));
    }

    private void ask(String name, CountDownLatch wait) {
        runner.ask(p -> {
            if (wait != null) await(wait);
            return name;
        }, false, heard::add, e -> heard.add("failed"));
    }

    private static void await(CountDownLatch latch) {
        try {
            assertTrue(latch.await(30, TimeUnit.SECONDS));
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }
}
