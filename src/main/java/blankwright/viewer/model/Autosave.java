package blankwright.viewer.model;

import blankwright.job.Given;
import blankwright.project.Recipe;
import blankwright.project.RecipeException;
import blankwright.project.RecipeReader;
import blankwright.project.RecipeWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * A copy of what is not yet saved, written at each change, so that a killed program loses nothing: one recipe for each running viewer, in a
 * folder of its own, named after the process and when that started, since numbers come again. What a process that no longer runs has left
 * is found at the next start.
 */
public final class Autosave {
    private static final Pattern NAME = Pattern.compile("left-(\\d{1,18})(-\\d{1,18})?\\.yaml");
    private static final long UNSURE = 10_000;      // ms: how well a system that sets its clock knows when a process started

    private final Path folder;
    private final Path mine;

    /** @param folder made when first needed */
    public Autosave(Path folder) {
        this.folder = folder;
        this.mine = folder.resolve("left-" + ProcessHandle.current().pid() + "-" + started(ProcessHandle.current()).orElse(0) + ".yaml");
    }

    /**
     * Work found again.
     *
     * @param from the file it is kept in until it is taken over or thrown away
     * @param file the recipe it was saved as before, where there is one
     */
    public record Left(Path from, Recipe recipe, Given given, Optional<Path> file) { }

    /** Writes whole or not at all; throws where it cannot, so that somebody can be told. */
    public void write(Recipe recipe, Given given, Optional<Path> file) throws IOException {
        Files.createDirectories(folder);
        Path beside = folder.resolve(mine.getFileName() + ".part");
        Files.writeString(beside, "# name: " + oneLine(given.name()) + "\n# folder: " + oneLine(given.folder().toString()) + "\n"
                + file.map(f -> "# file: " + oneLine(f.toString()) + "\n").orElse("") + RecipeWriter.write(recipe));
        Files.move(beside, mine, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    }

    /** Where this process keeps its copy while there is something unsaved. */
    Path copy() {
        return mine;
    }

    /** Nothing of this process is unsaved any more. */
    public void clear() {
        delete(mine);
    }

    /** What dead processes left, newest first; files that cannot be understood are passed over. */
    public List<Left> left() {
        List<Path> files = new ArrayList<>();
        try (Stream<Path> all = Files.list(folder)) {
            all.filter(this::orphan).forEach(files::add);
        } catch (IOException e) {
            return List.of();
        }
        files.sort((a, b) -> b.toFile().lastModified() == a.toFile().lastModified() ? a.compareTo(b)
                : Long.compare(b.toFile().lastModified(), a.toFile().lastModified()));
        List<Left> found = new ArrayList<>();
        for (Path file : files) read(file).ifPresent(found::add);
        return found;
    }

    private static Optional<Left> read(Path file) {
        try {
            String text = Files.readString(file);
            Given given = new Given(said(text, "name").orElse("panel"), Path.of(said(text, "folder").orElse("")).toAbsolutePath(),
                    List.of());
            Path there = given.folder().resolve(file.getFileName());        // files it names are found from where it was
            return Optional.of(new Left(file, RecipeReader.read(there.toString(), text), given, said(text, "file").map(Path::of)));
        } catch (IOException | RecipeException | IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    /** Nobody wants it any more. */
    public static void forget(Left left) {
        delete(left.from());
    }

    private boolean orphan(Path file) {
        Matcher name = NAME.matcher(file.getFileName().toString());
        if (!name.matches() || file.equals(mine)) return false;
        Optional<ProcessHandle> process = ProcessHandle.of(Long.parseLong(name.group(1))).filter(ProcessHandle::isAlive);
        if (process.isEmpty() || process.get().equals(ProcessHandle.current())) return true;
        OptionalLong started = started(process.get());
        return name.group(2) != null && started.isPresent()
                && Math.abs(started.getAsLong() - Long.parseLong(name.group(2).substring(1))) > UNSURE;
    }

    /** ms since 1970; empty where the system does not tell. */
    private static OptionalLong started(ProcessHandle process) {
        return process.info().startInstant().map(t -> OptionalLong.of(t.toEpochMilli())).orElse(OptionalLong.empty());
    }

    private static Optional<String> said(String text, String key) {
        Matcher line = Pattern.compile("^# " + key + ": (.*)$", Pattern.MULTILINE).matcher(text);
        return line.find() ? Optional.of(line.group(1)) : Optional.empty();
    }

    private static String oneLine(String text) {
        return text.replaceAll("\\R", " ");
    }

    private static void delete(Path file) {
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            file.toFile().deleteOnExit();
        }
    }
}
