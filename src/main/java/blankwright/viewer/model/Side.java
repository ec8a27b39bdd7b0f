package blankwright.viewer.model;

/** The six straight views, named as one walks round a panel on the bench. */
public enum Side {
    ABOVE("from above", 1.5 * Math.PI, Math.PI / 2), BELOW("from below", 1.5 * Math.PI, -Math.PI / 2),
    NEAR("near side", 1.5 * Math.PI, 0), FAR("far side", Math.PI / 2, 0),
    HEAD("head end", 0, 0), FOOT("foot end", Math.PI, 0);

    private final String words;
    private final double yaw;
    private final double pitch;

    Side(String words, double yaw, double pitch) {
        this.words = words;
        this.yaw = yaw;
        this.pitch = pitch;
    }

    public String words() {
        return words;
    }

    double yaw() {
        return yaw;
    }

    double pitch() {
        return pitch;
    }
}
