package blankwright.job;

import blankwright.project.Recipe;
import blankwright.project.Source;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.TimeUnit;

/** Says no before a long step of a run that the memory given cannot hold, or in the same words once it is full after all. */
final class MemoryGuard {
    private final Recipe recipe;
    private final String name;
    private String step = "read";
    private long need;                      // bytes of the step in hand, as estimated
    private long counted;                   // its triangles
    private boolean thinned;
    private byte[] reserve = new byte[1 << 20];

    /** @param name of the input */
    MemoryGuard(Recipe recipe, String name) {
        this.recipe = recipe;
        this.name = name;
    }

    /** @param what is to be done to so many triangles, e.g. {@code laid flat} */
    void needs(String what, long count, long bytes) throws Refusal {
        step = what;
        need = bytes;
        counted = count;
        if (bytes > Runtime.getRuntime().maxMemory()) throw tooLarge();
    }

    /** The mesh has been thinned out: doing so is no remedy any more. */
    void thinned() {
        thinned = true;
    }

    private Refusal tooLarge() {
        String coarser = recipe.source() instanceof Source.OfPanel ? "or say a larger chord in the recipe"
                : step.equals("laid flat") && !thinned ? "or thin it out with --detail 0.1mm" : "or give a coarser mesh";
        return MemoryNeed.refusal(name, step, counted, need, coarser);
    }

    /** Other threads may still hold what filled the memory, and words need some too: waits for them, and gives up a reserve. */
    Refusal tooLargeAfterAll() {
        reserve = null;
        ForkJoinPool.commonPool().awaitQuiescence(10, TimeUnit.SECONDS);
        need = Math.max(need, Runtime.getRuntime().maxMemory() / 2 * 3);
        return tooLarge();
    }
}
