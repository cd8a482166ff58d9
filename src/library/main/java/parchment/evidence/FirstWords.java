package parchment.evidence;

import java.util.List;
import java.util.Set;
import parchment.display.answer.InShort;
import parchment.display.answer.Sentence;
import parchment.evidence.finding.PointsWords;
import parchment.evidence.finding.Verdict;
import parchment.evidence.finding.Wording;
import parchment.feature.Features;
import parchment.feature.kind.Role;
import parchment.stats.Interval;

/**
 * Puts an answer into three sentences: what was found between two readings, how sure that is, what to do next.
 *
 * <p>The two readings are where the drawn course is highest and lowest in the middle 80 % of what was tried, rounded to what a roaster
 * would say. Nothing is decided here: the sentences follow the verdict and what decided it.
 */
final class FirstWords {
    /** What no batch leaves as it was, besides the features that the day gives. */
    private static final Set<String> CALENDAR = Set.of("the calendar", "date and season", "lot and probe period");

    /** What changes from batch to batch of one roast day by itself. */
    private static final Set<String> PLACE_IN_THE_DAY = Set.of(ScoreDesign.PLACE_IN_DAY, "minutes since last drop");

    /** So many of what moved along are named. */
    private static final int MOST_NAMED = 2;

    /** A first sentence has no more words. */
    private static final int MOST_WORDS = 25;

    private static final long MOST_BY_LUCK = Math.round(100 * VerdictRules.CHANCE_OF_SLOPE);

    private static final String WITHOUT_DIFFERENCE = "In 100 logbooks without any true difference, luck shows as much ";

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

    /**
     * Says a question to which nothing could be fitted.
     *
     * @param scoredWithoutIt how many batches were scored but do not have the feature
     */
    static InShort nothingFitted(String attribute, Measure measure, String why, long scoredWithoutIt) {
        return new InShort(
                "These batches cannot tell how " + attribute + " goes with the " + measure.name() + ".",
                Wording.sentence(why) + ".",
                scoredWithoutIt >= Analysis.FEWEST_BATCHES
                        ? ofMoreBatches(measure)
                        : "Cup at least " + Analysis.FEWEST_BATCHES + " batches from " + Analysis.FEWEST_DAYS
                                + " roast days, then ask again.");
    }

    private static String ofMoreBatches(Measure measure) {
        return measure.howToHave().isEmpty()
                ? "Look why batches that were scored have no " + measure.name() + ", then ask again."
                : Sentence.of(measure.howToHave()) + " of more of the batches that were scored, then ask again.";
    }

    /**
     * Says an answer.
     *
     * @param told between which two readings, and by how much they differ
     * @param margin the smallest difference that matters, in points
     * @param chance in which share of logbooks chance alone would do as much
     * @param next what further batches would tell
     * @param help what would help at less cost than further batches
     */
    static InShort of(
            String attribute,
            Measure measure,
            VerdictRules.Judgement judgement,
            TwoReadings told,
            double margin,
            double chance,
            NextBatches next,
            CheapestHelp help) {
        FirstWords words = new FirstWords(attribute, measure, judgement.verdict(), judgement.decisive());
        return new InShort(words.found(told), words.howSure(told, margin, chance), words.next(told, next, help));
    }

    private String found(TwoReadings told) {
        String by = PointsWords.points(Math.abs(told.difference().estimate()), told.interval());
        String range = "likely " + PointsWords.range(told.interval());
        return switch (verdict) {
            case CANNOT_TELL ->
                // Readings that hardly differ are no two places to choose between.
                told.placesAreReadings() && decisive.why() != VerdictRules.Why.HARDLY_VARIED
                        ? clearButNotWhy(told)
                                ? Wording.sentence(measure.at(told.higher())) + " went with more " + attribute
                                        + " than " + measure.afterName(told.lower())
                                        + ", but what brought it about cannot be told."
                                : "Whether " + attribute + " is higher at " + measure.at(told.both(" or "))
                                        + " cannot be told from these batches."
                        : "How " + attribute + " goes with the " + measure.name()
                                + " cannot be told from these batches.";
            case NOTHING_SEEN ->
                told.placesAreReadings()
                        ? "Between " + measure.at(told.both(" and ")) + " no difference in " + attribute + " was seen."
                        : "No difference in " + attribute + " was seen over the " + measure.name() + " that was tried.";
            case TOO_SMALL -> scored(told, by, range) + ", too little to matter.";
            case SUGGESTIVE, STRONG ->
                told.top().isPresent()
                        ? Wording.sentence(attribute) + " was highest " + near(told.higher()) + ", about " + by
                                + " points (" + range + ") above " + measure.afterName(told.lower()) + "."
                        : scored(told, "about " + by, range) + ".";
        };
    }

    private String near(String reading) {
        return measure.countsDays()
                ? "near " + measure.at(reading)
                : "at " + measure.at(reading).replaceFirst(" of (?=\\Q" + reading + "\\E$)", " near ");
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
                ? Wording.sentence(measure.at(told.higher())) + " scored " + by + " points of " + attribute + " ("
                        + range + ") above " + measure.afterName(told.lower())
                : "Of two batches of a lot " + measure.difference(told.apart()) + " apart in " + measure.name()
                        + ", the " + (told.rises() ? "higher" : "lower") + " scored " + by + " points (" + range
                        + ") more " + attribute;
    }

    private String howSure(TwoReadings told, double margin, double chance) {
        String feature = measure.name();
        String beside = named(decisive.beside());
        return switch (decisive.why()) {
            case NOTHING_FITTED, TOO_FEW_DAYS_LEFT ->
                "Too few roast days are left to compare once lots and dates are taken into account.";
            case HARDLY_VARIED -> "The " + feature + " hardly varied: what there is of it may be error of reading.";
            case MOSTLY_ERROR -> "Most of the spread of the " + feature + " is error of reading, not the roasts.";
            case MOVED_WITH_ANOTHER ->
                "The " + feature + " moved together with " + beside + ", so the scores may have gone with "
                        + eitherOrAny(decisive.beside()) + ".";
            case FOLLOWS_A_FACT ->
                "The " + feature + " followed " + beside + " so closely that the two cannot be told apart.";
            case NEXT_DAY_GOES_WITH_IT_TOO ->
                "Today's scores also go with the " + feature
                        + " of the next roast day, so something that changes with the date may be behind both.";
            case OPEN -> open(told);
            case NOT_RARE_ENOUGH ->
                WITHOUT_DIFFERENCE
                        + (Math.round(100 * chance) > MOST_BY_LUCK
                                ? Long.toString(Math.round(100 * chance))
                                : "just over " + MOST_BY_LUCK)
                        + " times; over " + MOST_BY_LUCK + " is too often to build on.";
            case NO_DIFFERENCE_THAT_MATTERS ->
                "From the lowest to the highest that was tried the score changes by less than " + Wording.points(margin)
                        + " points: Parchment's limit unless you set another.";
            case NOT_DRAWN_BY_CHANCE ->
                "This is more than luck, but something that moved along with the " + feature + " may be the cause.";
            case NOT_BLIND -> luck(chance) + ", but not all cups were blind.";
            case TOO_FEW_DAYS ->
                luck(chance) + ", but fewer than " + VerdictRules.DAYS_FOR_STRONG + " roast days are behind it.";
            case ONLY_A_BEND -> "The bend is more than luck, but nothing here could check it a second time.";
            case OTHER_LOOKS_DIFFER -> luck(chance) + ", but other ways of looking differ.";
            case NO_GAIN -> luck(chance) + ", but days kept aside were not foretold.";
            case STEPS_SHOW_NOTHING ->
                "The scores come in few steps, and counted only as lower or higher they do not show a difference.";
            case STEPS_LEAVE_ROOM ->
                "The scores come in few steps, and counted only as lower or higher they leave room for "
                        + Wording.points(margin) + " points.";
            case STEPS_SAY_ANOTHER_SIZE -> luck(chance) + ", but the few steps of the scores leave its size open.";
            case STEPS_NOT_FITTED -> luck(chance) + ", but the few steps of the scores allow no second look.";
            case ALL_HOLDS -> luck(chance) + ", and the cups were blind.";
        };
    }

    /** Says how often luck alone would show as much where chance set the targets and the feature did nothing. */
    private static String luck(double chance) {
        long of = Math.round(100 * chance);
        return WITHOUT_DIFFERENCE + (chance < 0.01 ? "less than once" : of <= 1 ? "once" : of + " times");
    }

    private String open(TwoReadings told) {
        Interval interval = told.interval();
        return "Anything from " + PointsWords.end(interval.lower(), interval) + " to "
                + PointsWords.end(interval.upper(), interval) + (told.placesAreReadings() ? " at " + told.higher() : "")
                + " agrees with the scores.";
    }

    private String next(TwoReadings told, NextBatches next, CheapestHelp help) {
        return switch (verdict) {
            case CANNOT_TELL ->
                switch (decisive.why()) {
                    case MOVED_WITH_ANOTHER, FOLLOWS_A_FACT ->
                        apart(measure, told.placesAreReadings() ? told.both(" to ") : "", decisive.beside());
                    case STEPS_SHOW_NOTHING, STEPS_LEAVE_ROOM ->
                        "Score further batches in finer steps, with room left at both ends of the scale, then ask again.";
                    default -> more(measure, next, help).words(next.inShort(measure));
                };
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

    /** Where more of the same would tell, something cheaper may help first; where it would not, nothing else does. */
    static CheapestHelp more(Measure measure, NextBatches next, CheapestHelp help) {
        boolean moreWouldTell = next.kind() != NextBatches.Kind.MOVE_IT
                && next.kind() != NextBatches.Kind.MOVE_APART
                && measure.role() != Role.CALENDAR;
        return moreWouldTell ? help : CheapestHelp.NOTHING;
    }

    /**
     * Says how to part a feature from what moved along with it, as far as anybody can.
     *
     * @param fromTo the readings between which to vary it, as in "388 °F to 402 °F"; empty if none can be named
     * @param beside what moved along, the closest first
     */
    static String apart(Measure measure, String fromTo, List<String> beside) {
        if (measure.role() == Role.CALENDAR) {
            return notMoved(measure);
        }
        String closest = beside.get(0);
        if (PLACE_IN_THE_DAY.contains(closest)) {
            return "Put the " + measure.name() + " in another order each roast day, so that " + closest
                    + " cannot follow it.";
        }
        if (closest.equals("rest days")) {
            return "Let all cups rest equally long, whatever their " + measure.name() + ".";
        }
        if (ofTheCalendar(closest)) {
            return "Let the " + measure.name()
                    + " differ within each roast day, so that the calendar cannot follow it.";
        }
        List<String> byHand =
                beside.stream().filter(name -> !ofTheCalendar(name)).toList();
        String vary = "Vary only the " + measure.name();
        String keep = " and keep " + named(byHand) + " the same.";
        String whole = vary + " from " + fromTo + "," + keep;
        return fromTo.isEmpty() || whole.split(" ").length > MOST_WORDS ? vary + keep : whole;
    }

    private static boolean ofTheCalendar(String name) {
        return CALENDAR.contains(name)
                || Features.all().list().stream()
                        .anyMatch(feature -> feature.name().equals(name) && feature.role() == Role.CALENDAR);
    }

    private static String named(List<String> beside) {
        return Wording.list(
                beside.stream().limit(MOST_NAMED).map(Wording::spoken).toList());
    }

    /** Says which of the feature and what moved along with it the scores may have gone with. */
    static String eitherOrAny(List<String> beside) {
        return beside.size() == 1 ? "either" : "any";
    }

    /** Says what is left to do where no hand moves the feature. */
    static String notMoved(Measure measure) {
        return "The calendar moves the " + measure.name()
                + ", so ask again when batches of other seasons and lots have been cupped.";
    }

    private String suggestive(TwoReadings told) {
        return switch (decisive.why()) {
            case NOT_BLIND -> "Put codes on the cups and write scores down before anybody speaks.";
            case NOT_DRAWN_BY_CHANCE, ONLY_A_BEND ->
                told.placesAreReadings()
                        ? "To know, toss a coin between " + told.both(" and ") + " before each charge, and cup blind."
                        : "To know, toss a coin for the " + measure.name() + " before each charge, and cup blind.";
            default -> "Roast more such batches on other days, their targets drawn by chance, and cup them blind.";
        };
    }
}
