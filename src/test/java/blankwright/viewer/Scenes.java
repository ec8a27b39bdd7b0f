package blankwright.viewer;

import blankwright.picture.Picture;
import blankwright.viewer.model.Autosave;
import blankwright.viewer.model.Bench;
import blankwright.viewer.model.Settings;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.FutureTask;
import java.util.function.BooleanSupplier;
import java.util.logging.Level;
import java.util.logging.Logger;
import javafx.animation.AnimationTimer;
import javafx.application.Platform;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.scene.robot.Robot;
import javafx.stage.Stage;
import javafx.stage.Window;

/**
 * A program of its own that holds the viewer's window on a virtual display and plays scenes in it by name, one for each line it is given.
 *
 * <p>It answers {@code done}, or the reason why not in one line. The toolkit takes its display from the environment when it starts, which a
 * test's own virtual machine cannot change any more.
 */
public final class Scenes {
    static final Path PICTURES = Path.of("target/screens");

    final Stage stage;
    final Bench bench;
    final BenchPane pane;
    final Autosave autosave;
    /** Answers every question for a file. */
    final Answers answers = new Answers();
    private final Robot robot;
    private final List<Throwable> thrown = new ArrayList<>();

    private Scenes(Stage stage) {
        Path home = Settings.folder();
        this.stage = stage;
        autosave = new Autosave(home.resolve("unsaved"));
        bench = new Bench(Platform::runLater, new Settings(home), autosave);
        pane = new BenchPane(bench, stage, answers);
        stage.setScene(new Scene(pane, 1360, 860));
        pane.dress();
        stage.setX(0);
        stage.setY(0);
        stage.show();
        robot = new Robot();
        Thread.currentThread().setUncaughtExceptionHandler((t, e) -> thrown.add(e));
    }

    /** What a person would choose in the windows of the system; empty where nothing is chosen. */
    static final class Answers implements AskFile {
        Path next;
        String asked = "";

        private Optional<Path> answer(String title) {
            asked = title;
            Optional<Path> said = Optional.ofNullable(next);
            next = null;
            return said;
        }

        @Override
        public Optional<Path> toOpen(Window owner, String title, String what, List<String> endings) {
            return answer(title);
        }

        @Override
        public Optional<Path> toWrite(Window owner, String title, String name) {
            return answer(title + " " + name);
        }

        @Override
        public Optional<Path> folder(Window owner, String title) {
            return answer(title);
        }
    }

    public static void main(String[] args) throws Exception {
        PrintWriter answers = new PrintWriter(System.out, true);
        System.setProperty("prism.forceGPU", "true");
        Logger.getLogger("javafx").setLevel(Level.SEVERE);
        Files.createDirectories(PICTURES);
        CountDownLatch started = new CountDownLatch(1);
        Platform.startup(started::countDown);
        started.await();
        Platform.setImplicitExit(false);
        Scenes scenes = fx(() -> new Scenes(new Stage()));
        BufferedReader names = new BufferedReader(new InputStreamReader(System.in));
        answers.println("ready");
        for (String name = names.readLine(); name != null; name = names.readLine()) {
            try {
                Object said = Plays.class.getDeclaredMethod(name, Scenes.class).invoke(null, scenes);
                pulses();
                if (scenes.thrown.isEmpty()) {
                    answers.println("done" + (said == null ? "" : " " + said));
                } else {
                    StringWriter what = new StringWriter();
                    scenes.thrown.get(0).printStackTrace(new PrintWriter(what));
                    scenes.thrown.clear();
                    answers.println("thrown on the screen's thread: " + what.toString().replaceAll("\\s*\\R\\s*", " | "));
                }
            } catch (ReflectiveOperationException e) {
                StringWriter why = new StringWriter();
                (e.getCause() == null ? e : e.getCause()).printStackTrace(new PrintWriter(why));
                scenes.picture("failed-" + name);
                answers.println(why.toString().replaceAll("\\s*\\R\\s*", " | "));
            }
        }
        Runtime.getRuntime().halt(0);
    }

    /** Does it on the screen's thread and waits for the answer. */
    static <T> T fx(Callable<T> what) {
        FutureTask<T> task = new FutureTask<>(what);
        Platform.runLater(task);
        try {
            return task.get();
        } catch (Exception e) {
            throw new IllegalStateException(e.getCause() == null ? e : e.getCause());
        }
    }

    static void fx(Runnable what) {
        fx(() -> {
            what.run();
            return null;
        });
    }

    /** Waits until it is so on the screen's thread; fails after half a minute. */
    static void until(String what, BooleanSupplier so) {
        long end = System.nanoTime() + 30_000_000_000L;
        while (!fx(so::getAsBoolean)) {
            if (System.nanoTime() > end) throw new AssertionError("never came true: " + what);
            pause(20);
        }
    }

    static void pause(int milliseconds) {
        try {
            Thread.sleep(milliseconds);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Nothing runs and two pictures have gone by. */
    void settle() {
        until("at rest", () -> !bench.runner().busyProperty().get());
        pulses();
    }

    static void pulses() {
        for (int i = 0; i < 2; i++) pulse();
    }

    /** One picture. */
    static void pulse() {
        CountDownLatch drawn = new CountDownLatch(1);
        Platform.runLater(() -> new AnimationTimer() {
            @Override public void handle(long now) {
                stop();
                drawn.countDown();
            }
        }.start());
        try {
            drawn.await();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    void demo(String name) {
        fx(() -> {
            pane.pointing().letGo();
            bench.openDemo(name);
        });
        settle();
        check(bench.troubleProperty().get().isEmpty(), bench.troubleProperty().get());
    }

    static void check(boolean so, String otherwise) {
        if (!so) throw new AssertionError(otherwise);
    }

    static void same(double meant, double is, double within, String what) {
        check(Math.abs(meant - is) <= within, what + ": " + is + " instead of " + meant);
    }

    /** The whole window as it is shown, kept under a name. */
    Picture picture(String name) {
        pulses();
        return keep(fx(() -> stage.getScene().snapshot(null)), name);
    }

    static Picture keep(WritableImage image, String name) {
        int w = (int) image.getWidth(), h = (int) image.getHeight();
        int[] rgb = new int[w * h];
        image.getPixelReader().getPixels(0, 0, w, h, PixelFormat.getIntArgbInstance(), rgb, 0, w);
        Picture picture = Picture.of(rgb, w, h, 4);
        try (OutputStream out = Files.newOutputStream(PICTURES.resolve(name + ".png"))) {
            picture.writePng(out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return picture;
    }

    /** Place of a node's point in the window, in pixels of its picture. */
    static Point2D inWindow(Node node, double x, double y) {
        return fx(() -> node.localToScene(x, y));
    }

    private Point2D onScreen(Node node, double x, double y) {
        return fx(() -> node.localToScreen(x, y));
    }

    void move(Node node, double x, double y) {
        Point2D p = onScreen(node, x, y);
        fx(() -> robot.mouseMove(p));
        pulses();
    }

    void click(Node node, double x, double y) {
        move(node, x, y);
        fx(() -> robot.mouseClick(MouseButton.PRIMARY));
        pulses();
    }

    void click(Node node) {
        click(node, fx(() -> node.getBoundsInLocal().getWidth() / 2), fx(() -> node.getBoundsInLocal().getHeight() / 2));
    }

    void drag(Node node, double x0, double y0, double x1, double y1) {
        hold(node, x0, y0, x1, y1);
        release();
    }

    /** Drags and does not let go. */
    void hold(Node node, double x0, double y0, double x1, double y1) {
        hold(node, x0, y0);
        for (int i = 1; i <= 8; i++) onward(node, x0 + (x1 - x0) * i / 8, y0 + (y1 - y0) * i / 8);
    }

    void hold(Node node, double x, double y) {
        move(node, x, y);
        fx(() -> robot.mousePress(MouseButton.PRIMARY));
        pulses();
    }

    void onward(Node node, double x, double y) {
        move(node, x, y);
    }

    void release() {
        fx(() -> robot.mouseRelease(MouseButton.PRIMARY));
        pulses();
    }

    /** Drags what lies in the middle of a window's root to a place of the screen; the system's own drag needs the screen's thread free. */
    void carry(Node from, Point2D to) {
        hold(from, fx(() -> from.getLayoutBounds().getWidth() / 2), fx(() -> from.getLayoutBounds().getHeight() / 2));
        Point2D begin = onScreen(from, 80, 45);
        for (int i = 1; i <= 12; i++) {
            Point2D p = begin.add(to.subtract(begin).multiply(i / 12.0));
            Platform.runLater(() -> robot.mouseMove(p));
            pause(60);
        }
        Platform.runLater(() -> robot.mouseRelease(MouseButton.PRIMARY));
        pause(200);
    }

    void wheel(int clicks) {
        fx(() -> robot.mouseWheel(clicks));
        pulses();
    }

    void keys(KeyCode... together) {
        fx(() -> {
            for (KeyCode code : together) robot.keyPress(code);
            for (int i = together.length - 1; i >= 0; i--) robot.keyRelease(together[i]);
        });
        pulses();
    }

    /** One key, and the next picture. */
    void key(KeyCode code) {
        fx(() -> robot.keyType(code));
        pulse();
    }

    /** Letters, digits and points, one after the other. */
    void type(String text) {
        for (char c : text.toCharArray()) keys(c == '.' ? KeyCode.PERIOD : c == ' ' ? KeyCode.SPACE
                : KeyCode.getKeyCode(String.valueOf(c).toUpperCase()));
    }
}
