package parchment.otherroastery;

/**
 * Describes who tastes and how.
 *
 * <p>A cupper's score is the cupper's own middle, plus the cup's points about 6 stretched by the cupper's use of the scale, plus one
 * impression of the whole cup, plus a drift along the session, plus noise; rounded to the step, kept within 0 and 10.
 *
 * @param cuppers how many
 * @param levelSpread standard deviation of cuppers' middles, points
 * @param scaleSpread standard deviation of cuppers' use of the scale; its mean over the panel is 1
 * @param impression standard deviation of what lifts all attributes of one cup for one cupper alone: the halo, points
 * @param sessionDrift standard deviation over sessions and cuppers of the change from first to last cup, points
 * @param noise standard deviation of a score, points
 * @param daySpread how far roast days differ, points
 * @param batchSpread how far batches differ beyond what their roast did, points
 * @param step of a score
 * @param daysEach roast days on one table
 * @param cups of each batch
 * @param cuppings how many are held at most; the last ones are left out
 */
public record TastingPanel(
        int cuppers,
        double levelSpread,
        double scaleSpread,
        double impression,
        double sessionDrift,
        double noise,
        double daySpread,
        double batchSpread,
        double step,
        int daysEach,
        int cups,
        int cuppings) {
    public static TastingPanel ordinary() {
        return new TastingPanel(3, 0.5, 0.15, 0.35, 0.3, 0.55, 0.2, 0.2, 0.5, 2, 1, Integer.MAX_VALUE);
    }

    /** Returns a panel whose scores of one cup do not move together beyond what is in the cup. */
    public TastingPanel withoutHalo() {
        return new TastingPanel(
                cuppers, levelSpread, 0, 0, 0, noise, daySpread, batchSpread, step, daysEach, cups, cuppings);
    }

    public TastingPanel withCuppings(int atMost) {
        return new TastingPanel(
                cuppers,
                levelSpread,
                scaleSpread,
                impression,
                sessionDrift,
                noise,
                daySpread,
                batchSpread,
                step,
                daysEach,
                cups,
                atMost);
    }

    public TastingPanel withCuppers(int number) {
        return new TastingPanel(
                number,
                levelSpread,
                scaleSpread,
                impression,
                sessionDrift,
                noise,
                daySpread,
                batchSpread,
                step,
                daysEach,
                cups,
                cuppings);
    }

    /**
     * Returns the true correlation of two attributes in one cupper's scores alone, where cuppers use the scale alike and sessions do not
     * drift; rounding counts as noise of a twelfth of the step squared.
     */
    public double trueHalo() {
        double shared = impression * impression;
        return shared / (shared + noise * noise + step * step / 12);
    }
}
