package parchment.display.live;

/**
 * Names a question that was put to data, so that a session can count how many were.
 *
 * <p>Two that are equal are one question asked twice.
 *
 * @param of what was asked, in words, as in "the scores of Tidewater"
 * @param which what tells it from others that the same words name, as the folder of a logbook
 * @param question what it was asked, with every choice that makes it another question: attribute, feature, settings, which part of the data
 */
public record Asked(String of, String which, String question) {
    /** Names a question to what its words alone tell from everything else. */
    public Asked(String of, String question) {
        this(of, of, question);
    }
}
