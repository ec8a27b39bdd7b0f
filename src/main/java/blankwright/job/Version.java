package blankwright.job;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;

/** The program's own version, e.g. {@code 0.1.0}, as the build wrote it. */
public final class Version {
    public static final String TEXT = read();

    private Version() { }

    private static String read() {
        Properties words = new Properties();
        try (InputStream in = Version.class.getResourceAsStream("version.properties")) {
            words.load(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return words.getProperty("version");
    }
}
