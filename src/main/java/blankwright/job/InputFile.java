package blankwright.job;

import blankwright.num.LengthUnit;
import blankwright.project.Recipe;
import blankwright.project.RecipeException;
import blankwright.project.RecipeReader;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/** A file somebody hands in: a recipe, or a mesh that has none yet. */
public final class InputFile {
    private InputFile() { }

    /** By its name, or by its first key under another name. */
    public static boolean isRecipe(Path file) {
        String name = String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
        if (name.endsWith(".yaml") || name.endsWith(".yml")) return true;
        if (!Files.isRegularFile(file)) return false;
        try (InputStream in = Files.newInputStream(file)) {
            String head = new String(in.readNBytes(4096), StandardCharsets.ISO_8859_1);
            return Pattern.compile("^blankwright-recipe\\s*:", Pattern.MULTILINE).matcher(head).find();
        } catch (IOException e) {
            return false;                                   // whoever reads it will say why it cannot be read
        }
    }

    /**
     * The recipe of the file, or a new one for a mesh, with everything as usual.
     *
     * @param units of the numbers of a mesh without a recipe, where known; not asked for a recipe
     */
    public static Recipe recipe(Path file, Optional<LengthUnit> units) throws Refusal {
        if (Files.isDirectory(file)) throw new Refusal(file + ": is a folder; name the mesh or recipe in it.");
        if (!isRecipe(file)) return Recipe.ofMesh(stem(file), file.getFileName().toString(), units);
        if (!Files.exists(file)) throw new Refusal(file + ": no such file.");
        try {
            return RecipeReader.read(file);
        } catch (RecipeException e) {
            throw new Refusal(e.words());
        } catch (IOException e) {
            throw new Refusal(file + ": cannot be read: " + words(e) + ".");
        }
    }

    /** {@code nose} for {@code scans/nose.stl.gz}. */
    public static String stem(Path file) {
        String name = String.valueOf(file.getFileName());
        String bare = name.replaceFirst("(?i)\\.gz$", "").replaceFirst("\\.[A-Za-z0-9]{1,5}$", "").strip();
        return bare.matches("\\.*") ? "panel" : bare;            // "..": a file ...stl would be written over the folder above
    }

    /** The exceptions of the file system say only the file's name; their class says the rest. */
    public static String words(Throwable e) {
        String what = e.getClass().getSimpleName().replaceFirst("Exception$", "").replaceAll("(?<=[a-z])(?=[A-Z])", " ")
                .toLowerCase(Locale.ROOT);
        return e instanceof FileSystemException ? e.getMessage() + " (" + what + ")" : String.valueOf(e.getMessage());
    }
}
