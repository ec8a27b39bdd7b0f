package blankwright.project;

import blankwright.metal.Alloy;
import blankwright.metal.Alloys;
import blankwright.shop.Judge;
import blankwright.shop.VerdictBands;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;

/**
 * The metal of a recipe, with what its words were read from.
 *
 * @param soft the same metal annealed; the alloy itself where the tables have no soft temper of it
 * @param bands of the verdicts
 * @param table file of the maker's own alloys and bands, as written, relative to the recipe
 */
public record Metal(Alloy alloy, Alloy soft, VerdictBands bands, Optional<String> table) {
    /** @throws IllegalArgumentException saying what names there are */
    public static Metal shipped(String name) {
        return of(name, AlloyReader.shipped(), VerdictBands.USUAL, Optional.empty());
    }

    /**
     * From the maker's own table first, then from the one that comes with the program.
     *
     * @param folder that the table's name starts from
     * @throws IllegalArgumentException saying what names there are
     */
    public static Metal own(String name, String table, Path folder) throws IOException, RecipeException {
        AlloyReader.Table own = AlloyReader.table(folder.resolve(table));
        return of(name, AlloyReader.shipped().with(own.alloys()), own.bands(), Optional.of(table));
    }

    private static Metal of(String name, Alloys all, VerdictBands bands, Optional<String> table) {
        Alloy alloy = all.named(name);
        return new Metal(alloy, all.softened(alloy), bands, table);
    }

    /** Judges strains of a sheet of this thickness, mm. */
    public Judge judge(double thickness) {
        return new Judge(alloy, soft, thickness, bands);
    }
}
