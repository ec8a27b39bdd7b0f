package blankwright.viewer.model;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Objects;
import java.util.function.UnaryOperator;

/**
 * What was, what is, and what was taken back: states one after another, none ever changed.
 *
 * <p>Changes made in one go under one grip, as by dragging a number, count as one step.
 */
public final class History<T> {
    private final Deque<T> before = new ArrayDeque<>();
    private final Deque<T> after = new ArrayDeque<>();
    private T now;
    private T kept;
    private Object grip;

    /** @param first the state that counts as kept */
    public History(T first) {
        now = first;
        kept = first;
    }

    public T now() {
        return now;
    }

    /** Puts another state in place; what was taken back before is gone. The same state again is no step. */
    public void change(T to) {
        change(to, null);
    }

    /** @param held what the hand is on; null ends every grip */
    public void change(T to, Object held) {
        if (to.equals(now)) return;
        if (held == null || !held.equals(grip)) before.push(now);
        grip = held;
        after.clear();
        now = to;
    }

    /** Says every state otherwise, as with files named from another folder; no step. */
    public void reword(UnaryOperator<T> how) {
        for (Deque<T> states : List.of(before, after)) {
            List<T> all = new ArrayList<>(states);
            states.clear();
            for (T state : all) states.addLast(how.apply(state));
        }
        now = how.apply(now);
        kept = kept == null ? null : how.apply(kept);
        grip = null;
    }

    /** The next change is a step of its own. */
    public void letGo() {
        grip = null;
    }

    public boolean canUndo() {
        return !before.isEmpty();
    }

    public boolean canRedo() {
        return !after.isEmpty();
    }

    /** Steps back; nothing happens at the beginning. */
    public void undo() {
        if (before.isEmpty()) return;
        after.push(now);
        now = before.pop();
        grip = null;
    }

    public void redo() {
        if (after.isEmpty()) return;
        before.push(now);
        now = after.pop();
        grip = null;
    }

    /** The present state is safe somewhere. */
    public void keep() {
        kept = now;
        grip = null;
    }

    /** The present state is safe nowhere: it came from a program that was killed. */
    public void neverKept() {
        kept = null;
    }

    /** True where leaving now would lose something. */
    public boolean unkept() {
        return !Objects.equals(now, kept);
    }
}
