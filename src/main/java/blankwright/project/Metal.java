package blankwright.project;

import blankwright.metal.Alloy;
import blankwright.metal.Alloys;
import blankwright.shop.Judge;
import blankwright.shop.VerdictBands;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
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

    /** All there are to choose from without a table of the maker's own. */
    public static List<Metal> all() {
        return all(AlloyReader.shipped().list(), AlloyReader.shipped(), VerdictBands.USUAL, Optional.empty());
    }

    /**
     * All there are to choose from with the maker's own table: its alloys first, then those that come with the program and have other names.
     *
     * @param folder that the table's name starts from
     */
    public static List<Metal> all(String table, Path folder) throws IOException, RecipeException {
        AlloyReader.Table own = AlloyReader.table(folder.resolve(table));
        Alloys known = AlloyReader.shipped().with(own.alloys());
        List<Alloy> order = new ArrayList<>(own.alloys().list());
        for (Alloy alloy : known.list()) if (!order.contains(alloy)) order.add(alloy);
        return all(order, known, own.bands(), Optional.of(table));
    }

    private static List<Metal> all(List<Alloy> order, Alloys known, VerdictBands bands, Optional<String> table) {
        return order.stream().map(alloy -> new Metal(alloy, known.softened(alloy), bands, table)).toList();
    }

    /** Whether the program does not bring it, or brings another of that name. */
    public boolean isOwn() {
        return !AlloyReader.shipped().find(alloy.name()).equals(Optional.of(alloy));
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
