package blankwright.drawing;

import blankwright.outline.Curve.Box;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** Entities under a title, in mm at true size, in the order they are drawn; nothing is in it twice. */
public final class Drawing {
    private final String title;
    private final List<Entity> entities;
    private final Box box;

    private Drawing(String title, List<Entity> entities) {
        this.title = title;
        this.entities = entities;
        Box all = null;
        for (Entity entity : entities) all = all == null ? entity.box() : all.with(entity.box());
        this.box = all == null ? new Box(0, 0, 0, 0) : all;
    }

    /** Keeps the first of equal entities, so that nothing is cut twice. */
    public static Drawing of(String title, List<? extends Entity> entities) {
        return new Drawing(title, List.copyOf(new LinkedHashSet<>(entities)));
    }

    public String title() {
        return title;
    }

    public List<Entity> entities() {
        return entities;
    }

    /** The smallest upright box round everything, mm; zeros when empty. */
    public Box box() {
        return box;
    }

    /** The entities of some layers only. */
    public Drawing only(Set<Layer> layers) {
        return new Drawing(title, entities.stream().filter(e -> layers.contains(e.layer())).toList());
    }
}
