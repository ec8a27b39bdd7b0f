package blankwright.viewer;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Executor;
import javafx.application.Platform;

/** The screen's thread, also before there is one: what it is given until {@link #begin} waits, in order. */
final class ScreenThread implements Executor {
    private List<Runnable> waiting = new ArrayList<>();     // null once the toolkit runs

    @Override
    public synchronized void execute(Runnable what) {
        if (waiting == null) Platform.runLater(what);
        else waiting.add(what);
    }

    /** The toolkit runs. */
    synchronized void begin() {
        waiting.forEach(Platform::runLater);
        waiting = null;
    }
}
