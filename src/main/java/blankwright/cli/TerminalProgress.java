package blankwright.cli;

import blankwright.num.Progress;
import java.io.Console;
import java.io.PrintStream;
import me.tongfei.progressbar.ConsoleProgressBarConsumer;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;

/** A bar for someone at a terminal, drawn once the work has lasted a second; silence in a pipe. */
final class TerminalProgress implements Progress, AutoCloseable {
    private static final long PATIENCE = 1_000_000_000L;    // ns
    private static final int WIDTH = 78;                    // columns; asking the terminal would load native code

    private final long start = System.nanoTime();
    private final PrintStream terminal;
    private ProgressBar bar;
    private boolean silent = !someoneLooks();

    TerminalProgress(PrintStream terminal) {
        this.terminal = terminal;
    }

    private static boolean someoneLooks() {
        Console console = System.console();
        if (console == null) return false;
        try {
            return (boolean) Console.class.getMethod("isTerminal").invoke(console);     // from Java 22 on a console is there in a pipe too
        } catch (ReflectiveOperationException e) {
            return true;
        }
    }

    @Override
    public synchronized void at(String what, double fraction) {
        if (silent || bar == null && System.nanoTime() - start < PATIENCE) return;
        if (bar == null) {
            bar = new ProgressBarBuilder().setInitialMax(100).setTaskName("panel").setStyle(ProgressBarStyle.ASCII)
                    .setConsumer(new ConsoleProgressBarConsumer(terminal, WIDTH)).setUpdateIntervalMillis(200).hideEta().clearDisplayOnFinish()
                    .build();
        }
        bar.setExtraMessage(" " + what);
        bar.stepTo(Math.round(100 * Math.max(0, Math.min(1, fraction))));
    }

    @Override
    public boolean cancelled() {
        return false;                                       // at a terminal, the keyboard stops the whole program
    }

    @Override
    public synchronized void close() {
        silent = true;
        if (bar != null) bar.close();
    }
}
