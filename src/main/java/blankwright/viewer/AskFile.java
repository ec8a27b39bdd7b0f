package blankwright.viewer;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import javafx.stage.DirectoryChooser;
import javafx.stage.FileChooser;
import javafx.stage.Window;

/** Asks which file or folder; empty where the answer is none. */
interface AskFile {
    /** @param endings such as {@code .stl}; others can be chosen too */
    Optional<Path> toOpen(Window owner, String title, String what, List<String> endings);

    /** @param name proposed */
    Optional<Path> toWrite(Window owner, String title, String name);

    Optional<Path> folder(Window owner, String title);

    /** By the system's own windows, which begin at a folder where there is one. */
    static AskFile system(Supplier<Optional<Path>> begin) {
        return new AskFile() {
            @Override
            public Optional<Path> toOpen(Window owner, String title, String what, List<String> endings) {
                FileChooser chooser = chooser(title);
                List<String> patterns = endings.stream().flatMap(e -> Stream.of("*" + e, "*" + e.toUpperCase(Locale.ROOT))).toList();
                chooser.getExtensionFilters().addAll(new FileChooser.ExtensionFilter(what, patterns),
                        new FileChooser.ExtensionFilter("All files", "*"));
                return Optional.ofNullable(chooser.showOpenDialog(owner)).map(File::toPath);
            }

            @Override
            public Optional<Path> toWrite(Window owner, String title, String name) {
                FileChooser chooser = chooser(title);
                chooser.setInitialFileName(name);
                return Optional.ofNullable(chooser.showSaveDialog(owner)).map(File::toPath);
            }

            @Override
            public Optional<Path> folder(Window owner, String title) {
                DirectoryChooser chooser = new DirectoryChooser();
                chooser.setTitle(title);
                there().ifPresent(chooser::setInitialDirectory);
                return Optional.ofNullable(chooser.showDialog(owner)).map(File::toPath);
            }

            private FileChooser chooser(String title) {
                FileChooser chooser = new FileChooser();
                chooser.setTitle(title);
                there().ifPresent(chooser::setInitialDirectory);
                return chooser;
            }

            private Optional<File> there() {
                return begin.get().filter(Files::isDirectory).map(Path::toFile);
            }
        };
    }
}
