package blankwright.viewer.model;

import blankwright.num.Sentence;

/** What the colours tell. */
public enum MapKind {
    WORK("shrink and stretch", "Purple must be shrunk, orange stretched: at each place the larger of the two ways, in parts of its"
            + " length."),
    THICKNESS("sheet left", "How thick the sheet is after forming, if nothing is lost: darkest is thinnest."),
    CURVATURE("bowl and saddle", Sentence.say("How much crown lies in the skin: green is bowl, brown is saddle. Degrees in a square of %s"
            + " are what the pleats or slits of a paper pattern would add up to there.", Sentence.length(100, 1))),
    LIMIT("forming limit", "How much of what the metal bears in one go is used: 100 % is where it necks, without annealing between."
            + " Estimates:"
            + " a test strip of your sheet beats them. It needs the metal and the thickness."),
    BUCKLING("buckling", "If the blank is bent on without being worked: how many times what it bears each place is pressed together."
            + " Above 1 it gives"
            + " way. Say in the order where the sheet is held; it needs the metal and the thickness.");

    private final String words;
    private final Sentence lesson;

    MapKind(String words, String lesson) {
        this(words, Sentence.of(lesson));
    }

    MapKind(String words, Sentence lesson) {
        this.words = words;
        this.lesson = lesson;
    }

    public String words() {
        return words;
    }

    /** One or two sentences for who has not met it. */
    public Sentence lesson() {
        return lesson;
    }
}
