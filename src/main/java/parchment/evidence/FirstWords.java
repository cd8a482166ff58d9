package parchment.evidence;

import parchment.display.InShort;
import parchment.stats.Interval;

/**
 * Puts an answer into three sentences: what was found between two readings, how sure that is, what to do next.
 *
 * <p>The two readings are where the drawn course is highest and lowest in the middle 80 % of what was tried, rounded to what a roaster
 * would say. Nothing is decided here: the sentences follow the verdict and what decided it.
 */
final class FirstWords {
    private final String attribute;
    private final Measure measure;
    private final Verdict verdict;
    private final VerdictRules.Decisive decisive;

    private FirstWords(String attribute, Measure measure, Verdict verdict, VerdictRules.Decisive decisive) {
        this.attribute = attribute;
        this.measure = measure;
        this.verdict = verdict;
        this.decisive = decisive;
    }

    /** Says a question to which nothing could be fitted. */
    static InShort nothingFitted(String attribute, Measure measure, String why) {
        return new InShort(
                "These batches cannot tell how " + attribute + " goes with the " + measure.name() + ".",
                Wording.sentence(why) + ".",
                "Cup at least " + Analysis.FEWEST_BATCHES + " batches from " + Analysis.FEWEST_DAYS
                        + " roast days, then ask again.");
    }

    /**
     * Says an answer.
     *
     * @param told between which two readings, and by how much they differ
     * @param margin the smallest difference that matters, in points
     * @param chance in which share of logbooks chance alone would do as much
     * @param next what further batches would tell
     */
    static InShort of(
            String attribute,
            Measure measure,
            VerdictRules.Judgement judgement,
            TwoReadings told,
            double margin,
            double chance,
            NextBatches next) {
        FirstWords words = new FirstWords(attribute, measure, judgement.verdict(), judgement.decisive());
        return new InShort(words.found(told), words.howSure(told, margin, chance), words.next(told, next));
    }

    private String found(TwoReadings told) {
        String by = points(Math.abs(told.difference().estimate()), told.interval());
        String range = range(told.interval());
        return switch (verdict) {
            case CANNOT_TELL ->
                told.placesAreReadings() && clearButNotWhy(told)
                        ? told.higher() + " of " + measure.name() + " went with more " + attribute + " than "
                                + told.lower() + ", but what brought it about cannot be told."
                        : told.placesAreReadings()
                                ? "Whether " + told.both(" or ") + " of " + measure.name() + " gives more " + attribute
                                        + " cannot be told from these batches."
                                : "How " + attribute + " goes with the " + measure.name()
                                        + " cannot be told from these batches.";
            case NOTHING_SEEN ->
                told.placesAreReadings()
                        ? "Between " + told.both(" and ") + " of " + measure.name() + " no difference in " + attribute
                                + " was seen."
                        : "No difference in " + attribute + " was seen over the " + measure.name() + " that was tried.";
            case TOO_SMALL -> scored(told, by, range) + ", too little to matter.";
            case SUGGESTIVE, STRONG ->
                told.top().isPresent()
                        ? Wording.sentence(attribute) + " was highest at a " + measure.name() + " near "
                                + told.higher() + ", about " + by + " points above " + told.lower() + " (" + range
                                + ")."
                        : scored(told, "about " + by, range) + ".";
        };
    }

    /** A clear difference, of which only the cause is in doubt, is not called unseen. */
    private boolean clearButNotWhy(TwoReadings told) {
        return switch (decisive.why()) {
            case MOVED_WITH_ANOTHER, FOLLOWS_A_FACT, NEXT_DAY_GOES_WITH_IT_TOO ->
                told.interval().lower() > 0;
            default -> false;
        };
    }

    private String scored(TwoReadings told, String by, String range) {
        return told.placesAreReadings()
                ? "A " + measure.name() + " of " + told.higher() + " scored " + by + " points of " + attribute
                        + " above " + told.lower() + " (" + range + ")"
                : "Of two batches of a lot " + measure.difference(told.apart()) + " apart in " + measure.name()
                        + ", the " + (told.rises() ? "higher" : "lower") + " scored " + by + " points more "
                        + attribute + " (" + range + ")";
    }

    private String howSure(TwoReadings told, double margin, double chance) {
        String feature = measure.name();
        String beside = Wording.list(decisive.beside().stream().limit(2).toList());
        return switch (decisive.why()) {
            case NOTHING_FITTED, TOO_FEW_DAYS_LEFT ->
                "Too few roast days are left to compare once lots and dates are taken into account.";
            case HARDLY_VARIED -> "The " + feature + " hardly varied: what there is of it may be error of reading.";
            case MOSTLY_ERROR -> "Most of the spread of the " + feature + " is error of reading, not the roasts.";
            case MOVED_WITH_ANOTHER ->
                "The " + feature + " moved together with " + beside + ", so the scores may have gone with either.";
            case FOLLOWS_A_FACT ->
                "The " + feature + " followed " + beside + " so closely that the two cannot be told apart.";
            case NEXT_DAY_GOES_WITH_IT_TOO ->
                "The next roast day's " + feature
                        + " goes with today's scores too, so the calendar may be behind both.";
            case OPEN -> open(told);
            case NOT_RARE_ENOUGH ->
                "Luck alone would do as much in " + Math.max(5, Math.round(100 * chance))
                        + " of 100 logbooks, which is too often to count.";
            case NO_DIFFERENCE_THAT_MATTERS ->
                "No two readings that were tried differ by as much as " + Wording.points(margin)
                        + " points, the least that matters.";
            case NOT_DRAWN_BY_CHANCE ->
                "This is more than luck, but something that moved along with the " + feature + " may be the cause.";
            case NOT_BLIND -> "Chance set the targets, but not all cups were scored blind and before anybody spoke.";
            case TOO_FEW_DAYS ->
                "Chance set the targets, but fewer than " + VerdictRules.DAYS_FOR_STRONG + " roast days are behind it.";
            case ONLY_A_BEND -> "The bend is more than luck, but nothing here could check it a second time.";
            case OTHER_LOOKS_DIFFER -> "Chance set the targets, but looked at in other ways it does not always hold.";
            case NO_GAIN -> "Chance set the targets, but it did not foretell the scores of roast days kept aside.";
            case ALL_HOLDS -> "That is as sure as a logbook can be: chance set the targets and the cups were blind.";
        };
    }

    private String open(TwoReadings told) {
        Interval interval = told.interval();
        return "Anything from " + end(interval.lower(), interval) + " to " + end(interval.upper(), interval)
                + (told.placesAreReadings() ? " at " + told.higher() : "") + " agrees with the scores.";
    }

    private static String end(double points, Interval interval) {
        String size = points(Math.abs(points), interval);
        return Double.parseDouble(size) == 0 ? "no difference" : size + " points " + (points < 0 ? "less" : "more");
    }

    private String next(TwoReadings told, NextBatches next) {
        return switch (verdict) {
            case CANNOT_TELL ->
                decisive.why() == VerdictRules.Why.MOVED_WITH_ANOTHER
                                || decisive.why() == VerdictRules.Why.FOLLOWS_A_FACT
                        ? "Roast some batches with another " + measure.name() + " and leave "
                                + decisive.beside().get(0) + " as it was."
                        : next.inShort(measure);
            case NOTHING_SEEN, TOO_SMALL ->
                "Choose the " + measure.name() + " for other reasons; more batches like these would change little.";
            case STRONG ->
                told.placesAreReadings()
                        ? "Roast the next batches nearer to " + told.higher()
                                + ", inside what your machine's maker allows, and keep cupping."
                        : "Roast the next batches that way, inside what your machine's maker allows, and keep cupping.";
            case SUGGESTIVE -> suggestive(told);
        };
    }

    private String suggestive(TwoReadings told) {
        return switch (decisive.why()) {
            case NOT_BLIND -> "Put codes on the cups and write scores down before anybody speaks.";
            case NOT_DRAWN_BY_CHANCE, ONLY_A_BEND ->
                told.placesAreReadings()
                        ? "To know, let chance choose between " + told.both(" and ")
                                + " before each charge, and cup blind."
                        : "To know, let chance choose the " + measure.name() + " before each charge, and cup blind.";
            default -> "Roast more such batches on other days, their targets drawn by chance, and cup them blind.";
        };
    }

    /** Prints points with as many decimals as their interval deserves: one, or two where it is narrower than a fifth of a point. */
    static String points(double value, Interval interval) {
        return Wording.plain(value, decimals(interval));
    }

    private static int decimals(Interval interval) {
        return interval.upper() - interval.lower() < 0.2 ? 2 : 1;
    }

    /** Prints an interval of points from its end nearer to nothing, without signs where both have the same. */
    static String range(Interval interval) {
        boolean downward = interval.upper() <= 0;
        double from = downward ? -interval.upper() : interval.lower();
        double to = downward ? -interval.lower() : interval.upper();
        String start = points(from, interval);
        // An end that is not zero must not look like it.
        return (from > 0 && Double.parseDouble(start) == 0 ? "just above 0" : start) + " to " + points(to, interval);
    }
}
