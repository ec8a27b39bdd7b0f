package blankwright.job;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.DirectoryStream;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A folder whose files appear whole or not at all.
 *
 * <p>Each file is written beside its place under a temporary name, {@code .NAME.PROCESS.part}; {@link #keep} moves all of them into place,
 * each move in one step. {@link #close} before that, also when the program is stopped from the keyboard, takes away what was begun and
 * the folders made for it. What a killed program left behind is taken away the next time the folder is opened.
 */
public final class OutputFolder implements AutoCloseable {
    private static final Pattern TEMPORARY = Pattern.compile("\\..+\\.(\\d+)\\.part");

    private final Path dir;
    private final Deque<Path> made;                             // folders made for this one, the innermost first
    private final Map<String, Path> begun = new LinkedHashMap<>();
    private final Thread hook = new Thread(this::abandon);
    private boolean closed;

    private OutputFolder(Path dir, Deque<Path> made) {
        this.dir = dir;
        this.made = made;
    }

    /**
     * Makes the folder and those above it where missing.
     *
     * @throws FileAlreadyExistsException where a file has its name
     * @throws AccessDeniedException where nothing may be written
     */
    public static OutputFolder open(Path dir) throws IOException {
        Path whole = dir.toAbsolutePath().normalize();
        Deque<Path> made = new ArrayDeque<>();
        for (Path p = whole; p != null && !Files.exists(p); p = p.getParent()) made.addLast(p);
        if (made.isEmpty() && !Files.isDirectory(whole)) throw new FileAlreadyExistsException(dir.toString());
        Files.createDirectories(whole);
        if (!Files.isWritable(whole)) throw new AccessDeniedException(dir.toString());
        OutputFolder folder = new OutputFolder(whole, made);
        folder.sweep();
        Runtime.getRuntime().addShutdownHook(folder.hook);
        return folder;
    }

    /** What writes one file. */
    @FunctionalInterface
    public interface Content {
        void writeTo(OutputStream out) throws IOException;
    }

    /** Writes a file under its temporary name; a name given twice is an IllegalArgumentException. */
    public void write(String name, Content content) throws IOException {
        fill(begin(name), content);
    }

    private void fill(Path temporary, Content content) throws IOException {
        try (OutputStream out = new BufferedOutputStream(made(temporary), 1 << 16)) {
            content.writeTo(out);
        }
    }

    /** Never after {@link #abandon}, which would not see it: another thread may have failed, or the keyboard stopped the program. */
    private synchronized OutputStream made(Path temporary) throws IOException {
        if (closed) throw new IOException("the folder " + dir + " is closed");
        return Files.newOutputStream(temporary);
    }

    /** Writes files at once on as many threads as there are; they count as written in the order of the map. The first failure is thrown. */
    public void writeAll(Map<String, Content> files) throws IOException {
        Map<Path, Content> places = new LinkedHashMap<>();
        for (Map.Entry<String, Content> file : files.entrySet()) places.put(begin(file.getKey()), file.getValue());
        try {
            places.entrySet().parallelStream().forEach(file -> {
                try {
                    fill(file.getKey(), file.getValue());
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            });
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }

    /** Moves everything written into place and closes the folder. Returns the files in the order they were written. */
    public synchronized List<Path> keep() throws IOException {
        if (closed) throw new IOException("the folder " + dir + " was closed before its files were kept");
        for (String name : begun.keySet())                          // before the first is moved: all or none
            if (Files.isDirectory(dir.resolve(name))) throw new FileAlreadyExistsException(dir.resolve(name) + " is a folder");
        List<Path> kept = new ArrayList<>();
        for (Map.Entry<String, Path> file : begun.entrySet()) {
            Path place = dir.resolve(file.getKey());
            try {
                Files.move(file.getValue(), place, StandardCopyOption.ATOMIC_MOVE);
            } catch (AtomicMoveNotSupportedException e) {
                Files.move(file.getValue(), place, StandardCopyOption.REPLACE_EXISTING);
            }
            kept.add(place);
        }
        begun.clear();
        made.clear();
        close();
        return kept;
    }

    /** Takes away what was begun and not kept. */
    @Override
    public synchronized void close() {
        if (!closed) {
            abandon();
            try {
                Runtime.getRuntime().removeShutdownHook(hook);
            } catch (IllegalStateException e) {                     // the program is being stopped: the hook finds nothing left to do
                return;
            }
        }
    }

    public Path path() {
        return dir;
    }

    private synchronized Path begin(String name) throws IOException {
        if (closed) throw new IOException("the folder " + dir + " is closed");
        Path temporary = dir.resolve("." + name + "." + ProcessHandle.current().pid() + ".part");
        if (begun.put(name, temporary) != null) throw new IllegalArgumentException(name + " is written twice");
        return temporary;
    }

    private synchronized void abandon() {
        closed = true;
        for (Path temporary : begun.values()) delete(temporary);
        begun.clear();
        for (Path folder : made) delete(folder);                    // fails, rightly, where someone else has put a file there
        made.clear();
    }

    /** Takes away the temporaries of programs that no longer run. */
    private void sweep() throws IOException {
        try (DirectoryStream<Path> all = Files.newDirectoryStream(dir, ".*.part")) {
            for (Path file : all) {
                Matcher name = TEMPORARY.matcher(file.getFileName().toString());
                if (name.matches() && name.group(1).length() < 18
                        && ProcessHandle.of(Long.parseLong(name.group(1))).filter(ProcessHandle::isAlive).isEmpty())
                    delete(file);
            }
        }
    }

    private static void delete(Path path) {
        try {
            Files.deleteIfExists(path);
        } catch (IOException e) {
            path.toFile().deleteOnExit();
        }
    }
}
