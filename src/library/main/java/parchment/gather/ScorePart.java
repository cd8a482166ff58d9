package parchment.gather;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** The things that a heading of a score sheet, or a column's cells, can tell of a cup. */
enum ScorePart {
    BATCH("batch"),
    CODE("blind code"),
    LOT("lot"),
    CUPPER("cupper"),
    ATTRIBUTE("attribute"),
    CUP("cup"),
    DAY("tasted on"),
    ROASTED("roasted on"),
    CUPPING("cupping"),
    POSITION("serving position"),
    NOTE("note"),
    SCORE("score"),
    MEAN("mean"),
    OTHER("something else");

    private final String words;

    ScorePart(String words) {
        this.words = words;
    }

    /** Returns the words that a roaster answers with. */
    String words() {
        return words;
    }

    /** Returns the part that an answer names. */
    static Optional<ScorePart> of(String answer) {
        String plain = answer.strip().toLowerCase(Locale.ROOT);
        return Arrays.stream(values()).filter(part -> part.words.equals(plain)).findFirst();
    }
}
