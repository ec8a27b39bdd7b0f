package blankwright.viewer.model;

import blankwright.project.Recipe;
import blankwright.project.RecipeException;
import blankwright.project.RecipeReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** The panels of the Tern that need no file beside the program. */
public final class Demos {
    /** Names of the recipes in models/, the one to begin with first. */
    public static final List<String> NAMES = List.of("mudguard", "nose-cap", "nose-cap-halves", "side-skin", "scuttle", "seat-hoop",
            "lamp-bowl", "wheel-arch-lip",
            "vent-cowl");

    private Demos() { }

    /** @param name one of {@link #NAMES} */
    public static Recipe recipe(String name) {
        try (InputStream in = Demos.class.getResourceAsStream("/META-INF/blankwright/models/" + name + ".yaml")) {
            if (in == null) throw new IllegalArgumentException(name + " is no panel of the Tern");
            return RecipeReader.read(name + ".yaml", new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (RecipeException e) {
            throw new AssertionError(e);
        }
    }
}
