package blankwright.viewer;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** Starts of the finished program with the demo, as somebody at the screen sees them: until form and blank stand there in their colours. */
final class ColdStart {
    private static final int LONGEST = 60;      // s
    private static final int COLOURED = 800;    // of a third of the screen, each fourth point both ways; without a panel some dozens are

    private final Path home;
    private final List<String> command;

    /** @param command the program and its options; the file to open is added */
    ColdStart(Path home, List<String> command) {
        this.home = home;
        this.command = new ArrayList<>(command);
        this.command.add(Path.of("models/mudguard.yaml").toAbsolutePath().toString());
    }

    /** A row of the page: what was started, the first time, and the middle and the longest of so many more. */
    String row(String what, VirtualDisplay display, int times) throws Exception {
        double first = once(display);
        List<Double> seconds = new ArrayList<>();
        for (int i = 0; i < times; i++) seconds.add(once(display));
        Collections.sort(seconds);
        return String.format(Locale.ROOT, "| %s | %.1f s | %.1f s | %.1f s |%n", what, first,
                seconds.get(times / 2), seconds.get(times - 1));
    }

    /** Seconds from the start of the process; it is then asked to end, and has ended. */
    private double once(VirtualDisplay display) throws Exception {
        ProcessBuilder java = new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(home.resolve("said").toFile());
        java.environment().put("DISPLAY", display.number());
        java.environment().put("JAVA_TOOL_OPTIONS", "-Dblankwright.home=" + home);      // for the folder without Java too
        long from = System.nanoTime(), end = from + Duration.ofSeconds(LONGEST).toNanos();
        Process process = java.start();
        try {
            while (!there(display.frame())) {
                if (System.nanoTime() > end || !process.isAlive())
                    throw new IOException(command + " showed nothing: " + Files.readString(home.resolve("said")));
                Thread.sleep(10);
            }
            return (System.nanoTime() - from) / 1e9;
        } finally {
            List<ProcessHandle> second = process.descendants().toList();
            if (second.isEmpty()) process.destroy();
            else second.forEach(ProcessHandle::destroy);            // as its window closes, the first ends by itself
            process.waitFor();
        }
    }

    /** Whether both outer thirds of the screen are coloured. */
    private static boolean there(Path frame) throws IOException {
        try (FileChannel file = FileChannel.open(frame, StandardOpenOption.READ)) {
            ByteBuffer screen = file.map(FileChannel.MapMode.READ_ONLY, 0, file.size());
            int width = screen.getInt(16), height = screen.getInt(20), line = screen.getInt(48);
            int pixels = screen.getInt(0) + 12 * screen.getInt(76);     // behind the header and the table of colours
            int left = 0, right = 0;
            for (int y = height / 4; y < height * 7 / 8; y += 4) {
                for (int x = 0; x < width / 3; x += 4) {
                    if (coloured(screen, pixels + y * line + 4 * x)) left++;
                    if (coloured(screen, pixels + y * line + 4 * (width - 1 - x))) right++;
                }
            }
            return left > COLOURED && right > COLOURED;
        }
    }

    private static boolean coloured(ByteBuffer screen, int at) {
        int a = screen.get(at) & 255, b = screen.get(at + 1) & 255, c = screen.get(at + 2) & 255;
        return Math.max(a, Math.max(b, c)) - Math.min(a, Math.min(b, c)) > 40;
    }
}
