package blankwright.job;

import blankwright.mesh.Finding;
import blankwright.shop.TapeLine;
import blankwright.shop.Tapes;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The recipe's tapes on a panel laid flat, named T1, T2 ... in its order.
 *
 * @param lost what has no straight line on one piece any more, by number
 */
record LaidTapes(List<Tapes.Laid> laid, List<Integer> lost) {
    LaidTapes {
        laid = List.copyOf(laid);
        lost = List.copyOf(lost);
    }

    static LaidTapes of(Result result) {
        var drawn = result.recipe().tapes();
        if (drawn.isEmpty()) return new LaidTapes(List.of(), List.of());
        Tapes tapes = Tapes.on(result.pieces().stream().map(Piece::map).toList());
        List<Tapes.Laid> laid = new ArrayList<>();
        List<Integer> lost = new ArrayList<>();
        for (int i = 0; i < drawn.size(); i++) {
            Optional<Tapes.Laid> one = tapes.lay("T" + (i + 1), drawn.get(i));
            if (one.isPresent()) laid.add(one.get());
            else lost.add(i + 1);
        }
        return new LaidTapes(laid, lost);
    }

    /** Those on piece i. */
    List<TapeLine> on(int i) {
        return laid.stream().filter(t -> t.piece() == i).map(Tapes.Laid::line).toList();
    }

    Optional<Finding> finding() {
        if (lost.isEmpty()) return Optional.empty();
        String numbers = String.join(", ", lost.stream().map(i -> "T" + i).toList());
        return Optional.of(new Finding(Finding.Kind.TAPE_LEFT_OUT, lost.size(), (lost.size() == 1 ? "tape " + numbers + " was" : "tapes "
                + numbers + " were")
                + " left out: no straight line on one piece joins the two ends; lay such a tape anew."));
    }
}
