package blankwright.viewer.model;

/** Words of the command line said as one says them at a window. */
final class Plain {
    private Plain() { }

    /** Leaves out advice to type options. */
    static String words(String sentence) {
        return sentence.replaceAll("; say --stations with a larger spacing, or check --units\\.", "; set the stations farther apart.")
                .replaceAll("run it with java (-Xmx\\w+) -jar blankwright.jar \\.\\.\\.", "start it with java $1 -jar blankwright.jar");
    }
}
