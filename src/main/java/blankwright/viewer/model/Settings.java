package blankwright.viewer.model;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Properties;

/**
 * What the viewer remembers from one day to the next: a small text file in a folder of its own. A file that cannot be read or written costs
 * nothing but the memory.
 */
public final class Settings {
    private static final int MOST_RECENT = 8;

    private final Path file;
    private final Properties values = new Properties();

    /** @param folder made when something is first remembered */
    public Settings(Path folder) {
        file = folder.resolve("settings.properties");
        try (InputStream in = Files.newInputStream(file)) {
            values.load(in);
        } catch (IOException | IllegalArgumentException e) {
            values.clear();
        }
    }

    /** {@code .blankwright} in the user's home, or what the property {@code blankwright.home} says. */
    public static Path folder() {
        String said = System.getProperty("blankwright.home");
        return said != null ? Path.of(said) : Path.of(System.getProperty("user.home"), ".blankwright");
    }

    public String get(String key, String unsaid) {
        return values.getProperty(key, unsaid);
    }

    public double get(String key, double unsaid) {
        try {
            double value = Double.parseDouble(values.getProperty(key, ""));
            return Double.isFinite(value) ? value : unsaid;
        } catch (NumberFormatException e) {
            return unsaid;
        }
    }

    /** One of the constants of the enum {@code unsaid} belongs to. */
    public <E extends Enum<E>> E get(String key, E unsaid) {
        for (E e : unsaid.getDeclaringClass().getEnumConstants()) if (e.name().equals(values.getProperty(key))) return e;
        return unsaid;
    }

    public void put(String key, Object value) {
        values.setProperty(key, String.valueOf(value));
        store();
    }

    /** Latest first; files that are gone are left out. */
    public List<Path> recent() {
        List<Path> files = new ArrayList<>();
        for (int i = 0; i < MOST_RECENT; i++) {
            String name = values.getProperty("recent." + i);
            if (name != null && Files.isRegularFile(Path.of(name))) files.add(Path.of(name));
        }
        return files;
    }

    public void opened(Path latest) {
        List<Path> files = recent();
        Path whole = latest.toAbsolutePath().normalize();
        files.remove(whole);
        files.add(0, whole);
        for (int i = 0; i < MOST_RECENT; i++) {
            if (i < files.size()) values.setProperty("recent." + i, files.get(i).toString());
            else values.remove("recent." + i);
        }
        store();
    }

    private void store() {
        try {
            Files.createDirectories(file.getParent());
            Path beside = Files.createTempFile(file.getParent(), "settings", ".part");
            try (var out = Files.newBufferedWriter(beside, StandardCharsets.ISO_8859_1)) {
                values.store(out, null);
            }
            Files.move(beside, file, StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException e) {
            // remembered until the window closes
        }
    }
}
