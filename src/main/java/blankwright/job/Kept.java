package blankwright.job;

import blankwright.mesh.cut.DrawnSeam;
import blankwright.metal.Alloy;
import blankwright.project.Aim;
import blankwright.project.Handwork;
import blankwright.project.Metal;
import blankwright.project.Recipe;
import blankwright.project.Source;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What one run leaves for the next: the mesh mended, parted, laid flat, the latest of each. Each is found again by all it depends on, so that
 * a run that takes it over gives what it would have given by itself.
 *
 * <p>For use by any number of threads: what is kept is never changed, and a run that is no longer wanted can at most leave what is not asked for.
 */
final class Kept {
    /**
     * What a mended mesh depends on.
     *
     * @param source of a mesh file with its whole path, so that a recipe saved elsewhere finds it again
     * @param size with changed those of the file, so that one written anew is read anew; 0 and null for a formula
     */
    record MeshKey(Source source, double chord, OptionalDouble detail, long size, FileTime changed) {
        static MeshKey of(Recipe recipe, Given given) {
            if (!(recipe.source() instanceof Source.OfMesh mesh)) return new MeshKey(recipe.source(), recipe.chord(), recipe.detail(), 0, null);
            Path file = given.folder().resolve(mesh.file()).toAbsolutePath().normalize();
            long size;
            FileTime changed = null;
            try {
                size = Files.size(file);
                changed = Files.getLastModifiedTime(file);
            } catch (IOException e) {
                size = -1;                                              // reading it will say why
            }
            return new MeshKey(new Source.OfMesh(file.toString(), mesh.units()), recipe.chord(), recipe.detail(), size, changed);
        }
    }

    /** What its parts depend on besides. */
    record PartsKey(MeshKey mesh, List<DrawnSeam> seams, double toMiddle) {
        static PartsKey of(Recipe recipe, Given given) {
            return new PartsKey(MeshKey.of(recipe, given), recipe.seams(), Parted.toMiddle(recipe.face(), recipe.thickness()));
        }

        /** Whether both are cut in the same way, wherever the middle of the sheet lies. */
        boolean cutLike(PartsKey other) {
            return mesh.equals(other.mesh) && seams.equals(other.seams);
        }
    }

    /** What their layouts depend on besides. */
    record LayoutKey(PartsKey parts, Aim aim, Optional<Alloy> alloy, Handwork handwork) {
        static LayoutKey of(Recipe recipe, Given given) {
            boolean work = recipe.aim() == Aim.WORK;
            return new LayoutKey(PartsKey.of(recipe, given), recipe.aim(), work ? recipe.metal().map(Metal::alloy) : Optional.empty(),
                    work ? recipe.handwork() : Handwork.ANY);
        }
    }

    /** Parts laid flat together. */
    record Layout(LayoutKey key, Parted parted, List<LaidFlat> parts) {
        int triangles() {
            return parted.parts().stream().mapToInt(part -> part.opened().mesh().triangleCount()).sum();
        }
    }

    /** How something is made that is not there. */
    @FunctionalInterface
    interface Making<T> {
        T made() throws Refusal;
    }

    private record Entry<T>(Object key, T value) { }

    private volatile Entry<Mended> mended;
    private volatile Entry<Parted> parted;
    private volatile Layout layout;
    private final Coarse coarse = new Coarse(this);

    /** Another that begins with the mended mesh, so that what it comes to keep puts nothing out of place here. */
    Kept meshOnly() {
        Kept other = new Kept();
        other.mended = mended;
        return other;
    }

    Mended mended(Recipe recipe, Given given, Making<Mended> making) throws Refusal {
        MeshKey key = MeshKey.of(recipe, given);
        Entry<Mended> there = mended;
        if (there != null && there.key.equals(key)) return there.value;
        Mended made = making.made();
        mended = new Entry<>(key, made);
        return made;
    }

    Parted parted(Recipe recipe, Given given, Making<Parted> making) throws Refusal {
        PartsKey key = PartsKey.of(recipe, given);
        Entry<Parted> there = parted;
        if (there != null && there.key.equals(key)) return there.value;
        Parted made = making.made();
        parted = new Entry<>(key, made);
        return made;
    }

    /** The mended mesh, where it is there already. */
    Optional<Mended> mended(Recipe recipe, Given given) {
        Entry<Mended> there = mended;
        return there == null || !there.key.equals(MeshKey.of(recipe, given)) ? Optional.empty() : Optional.of(there.value);
    }

    /** What a first answer in few triangles needs. */
    Coarse coarse() {
        return coarse;
    }

    List<LaidFlat> laidFlat(Recipe recipe, Given given, Parted parts, Making<List<LaidFlat>> making) throws Refusal {
        LayoutKey key = LayoutKey.of(recipe, given);
        Layout there = layout;
        if (there != null && there.key.equals(key)) return there.parts;
        List<LaidFlat> made = making.made();
        layout = new Layout(key, parts, made);
        return made;
    }

    /** The latest; empty before the first. */
    Optional<Layout> layout() {
        return Optional.ofNullable(layout);
    }
}
