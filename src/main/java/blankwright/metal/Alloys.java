package blankwright.metal;

import blankwright.num.Spelling;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Alloys by name, in the order of their table. */
public final class Alloys {
    private final List<Alloy> list;

    private Alloys(List<Alloy> list) {
        this.list = list;
    }

    /** @throws IllegalArgumentException where two have the same name */
    public static Alloys of(List<Alloy> list) {
        List<String> names = new ArrayList<>();
        for (Alloy alloy : list) {
            String name = alloy.name().toLowerCase(Locale.ROOT);
            if (names.contains(name)) throw new IllegalArgumentException("the alloy " + alloy.name() + " stands there twice");
            names.add(name);
        }
        return new Alloys(List.copyOf(list));
    }

    public List<Alloy> list() {
        return list;
    }

    /** These and more; one of the same name takes the place of the one here. */
    public Alloys with(Alloys more) {
        List<Alloy> all = new ArrayList<>(list);
        for (Alloy alloy : more.list) {
            int at = 0;
            while (at < all.size() && !all.get(at).name().equalsIgnoreCase(alloy.name())) at++;
            if (at < all.size()) all.set(at, alloy);
            else all.add(alloy);
        }
        return new Alloys(List.copyOf(all));
    }

    /** By its whole name, upper or lower case. */
    public Optional<Alloy> find(String name) {
        return list.stream().filter(a -> a.name().equalsIgnoreCase(name.strip())).findFirst();
    }

    /**
     * By its whole name, also without its stroke or with a space for it, or by the metal where it comes in one temper only.
     *
     * @throws IllegalArgumentException saying which tempers there are, or the nearest name
     */
    public Alloy named(String name) {
        Optional<Alloy> found = find(name);
        if (found.isPresent()) return found.get();
        List<Alloy> tempers = list.stream().filter(a -> a.metal().equalsIgnoreCase(name.strip())).toList();
        if (tempers.size() == 1) return tempers.get(0);
        List<Alloy> spelled = list.stream().filter(a -> bare(a.name()).equals(bare(name))).toList();
        if (spelled.size() == 1) return spelled.get(0);
        if (tempers.size() > 1) throw new IllegalArgumentException("\"" + name.strip() + "\": say the temper, one of "
                + String.join(", ", tempers.stream().map(Alloy::name).toList()) + ": soft and hard sheet of one alloy work quite differently");
        throw new IllegalArgumentException("the alloy " + Spelling.quoted(name.strip()) + " is not known"
                + Spelling.nearest(name.strip(), list.stream().map(Alloy::name).toList()));
    }

    /** Letters and digits alone. */
    private static String bare(String name) {
        return name.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]", "");
    }

    /** The same metal annealed, temper O, soft or none; the alloy itself where the table has no such temper. */
    public Alloy softened(Alloy alloy) {
        return list.stream().filter(a -> a.metal().equalsIgnoreCase(alloy.metal()))
                .filter(a -> a.temper().equalsIgnoreCase("O") || a.temper().equalsIgnoreCase("soft") || a.temper().isEmpty()).findFirst().orElse(alloy);
    }
}
