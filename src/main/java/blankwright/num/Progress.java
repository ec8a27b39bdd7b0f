package blankwright.num;

/** Tells long work's watcher how far it is, and the work whether it is still wanted. Called from any thread. */
public interface Progress {
    /** A watcher that looks away and never cancels. */
    Progress NONE = new Progress() {
        @Override public void at(String what, double fraction) { }

        @Override public boolean cancelled() {
            return false;
        }
    };

    /** @param what what is being done, in the user's words; @param fraction of it done, 0..1 */
    void at(String what, double fraction);

    /** True once the result is no longer wanted; long loops ask at least every 0.1 s. */
    boolean cancelled();
}
