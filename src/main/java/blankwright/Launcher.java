package blankwright;

/** Where the jar starts. */
public final class Launcher {
    private Launcher() { }

    public static void main(String[] args) {
        System.exit(2);
    }
}
