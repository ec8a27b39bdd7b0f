package blankwright.viewer.model;

/** What the colours tell. */
public enum MapKind {
    WORK("shrink and stretch", "Purple must be shrunk, orange stretched: at each place the larger of the two ways, in parts of its"
            + " length."),
    THICKNESS("sheet left", "How thick the sheet is after forming, if nothing is lost: darkest is thinnest."),
    CURVATURE("bowl and saddle", "How much crown lies in the skin: green is bowl, brown is saddle. Degrees in a square of 100 mm are"
            + " what the pleats or"
            + " slits of a paper pattern would add up to there."),
    LIMIT("forming limit", "How much of what the metal bears in one go is used: 100 % is where it necks, without annealing between."
            + " Estimates:"
            + " a test strip of your sheet beats them. It needs the metal and the thickness."),
    BUCKLING("buckling", "If the blank is bent on without being worked: how many times what it bears each place is pressed together."
            + " Above 1 it gives"
            + " way. Say in the order where the sheet is held; it needs the metal and the thickness.");

    private final String words;
    private final String lesson;

    MapKind(String words, String lesson) {
        this.words = words;
        this.lesson = lesson;
    }

    public String words() {
        return words;
    }

    /** One or two sentences for who has not met it. */
    public String lesson() {
        return lesson;
    }
}
