package blankwright.viewer.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class HistoryTest {
    /** Against a plain list of all states with a finger on the present one: a thousand steps of a fixed seed. */
    @Test
    void agreesWithAListAndAFinger() {
        Random random = new Random(5);
        History<Integer> history = new History<>(0);
        List<Integer> states = new ArrayList<>(List.of(0));
        int at = 0;
        for (int i = 1; i <= 1000; i++) {
            switch (random.nextInt(4)) {
                case 0 -> {
                    history.undo();
                    at = Math.max(0, at - 1);
                }
                case 1 -> {
                    history.redo();
                    at = Math.min(states.size() - 1, at + 1);
                }
                default -> {
                    history.change(i);
                    states = new ArrayList<>(states.subList(0, ++at));
                    states.add(i);
                }
            }
            assertEquals(states.get(at), history.now());
            assertEquals(at > 0, history.canUndo());
            assertEquals(at < states.size() - 1, history.canRedo());
        }
    }

    @Test
    void oneDragIsOneStep() {
        History<Integer> history = new History<>(0);
        for (int i = 1; i <= 9; i++) history.change(i, "thickness");
        history.letGo();
        history.change(20, "thickness");
        history.undo();
        assertEquals(9, history.now());
        history.undo();
        assertEquals(0, history.now());
        assertFalse(history.canUndo());
    }

    @Test
    void theSameAgainIsNoStep() {
        History<Integer> history = new History<>(7);
        history.change(7);
        assertFalse(history.canUndo());
    }

    @Test
    void whatWasSavedIsKeptUntilItChanges() {
        History<Integer> history = new History<>(0);
        assertFalse(history.unkept());
        history.change(1);
        assertTrue(history.unkept());
        history.keep();
        assertFalse(history.unkept());
        history.undo();
        assertTrue(history.unkept(), "the file holds 1");
        history.redo();
        assertFalse(history.unkept());
        history.neverKept();
        assertTrue(history.unkept());
    }
}
