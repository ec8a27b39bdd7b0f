package blankwright.job;

import blankwright.mesh.Finding;
import blankwright.num.Sentence;
import blankwright.shop.TapeLine;
import blankwright.shop.Tapes;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * The recipe's tapes on a panel laid flat, named T1, T2 ... in its order.
 *
 * @param lost what has no straight line on one piece any more, by number
 * @param astray of the others, those with an end off the form, by number
 */
record LaidTapes(List<Tapes.Laid> laid, List<Integer> lost, Map<Integer, Tapes.Astray> astray) {
    LaidTapes {
        laid = List.copyOf(laid);
        lost = List.copyOf(lost);
        astray = Collections.unmodifiableMap(new TreeMap<>(astray));
    }

    static LaidTapes of(Result result) {
        var drawn = result.recipe().tapes();
        if (drawn.isEmpty()) return new LaidTapes(List.of(), List.of(), Map.of());
        Tapes tapes = Tapes.on(result.pieces().stream().map(Piece::map).toList());
        List<Tapes.Laid> laid = new ArrayList<>();
        List<Integer> lost = new ArrayList<>();
        Map<Integer, Tapes.Astray> astray = new TreeMap<>();
        for (int i = 0; i < drawn.size(); i++) {
            Optional<Tapes.Laid> one = tapes.lay("T" + (i + 1), drawn.get(i));
            if (one.isEmpty()) {
                lost.add(i + 1);
                continue;
            }
            laid.add(one.get());
            Optional<Tapes.Astray> off = tapes.astray(drawn.get(i));
            if (off.isPresent()) astray.put(i + 1, off.get());
        }
        return new LaidTapes(laid, lost, astray);
    }

    /** Those on piece i. */
    List<TapeLine> on(int i) {
        return laid.stream().filter(t -> t.piece() == i).map(Tapes.Laid::line).toList();
    }

    List<Finding> findings() {
        List<Finding> found = new ArrayList<>();
        astray.forEach((number, off) -> found.add(new Finding(Finding.Kind.TAPE_ASTRAY, 1, Sentence.say("tape T%d has an end at %s, which lies %s off"
                + " the form; it was laid from the nearest place, %s. Give its ends on the form, in its own coordinates.", number,
                Sentence.place(1, off.x(), off.y(), off.z()), Sentence.length(off.off(), 1), Sentence.place(1, off.nearX(), off.nearY(), off.nearZ())))));
        if (lost.isEmpty()) return found;
        String numbers = String.join(", ", lost.stream().map(i -> "T" + i).toList());
        found.add(new Finding(Finding.Kind.TAPE_LEFT_OUT, lost.size(), (lost.size() == 1 ? "tape " + numbers + " was" : "tapes "
                + numbers + " were")
                + " left out: no straight line on one piece joins the two ends; lay such a tape anew."));
        return found;
    }
}
