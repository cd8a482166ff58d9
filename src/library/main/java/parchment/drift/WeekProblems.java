package parchment.drift;

import java.util.ArrayList;
import java.util.List;
import parchment.calendar.machine.StrayDates;
import parchment.display.answer.FirstFew;
import parchment.logbook.Batch;
import parchment.logbook.Problems;
import parchment.logbook.written.Problem;

/** Names the batches of a week that were not read as written. */
final class WeekProblems {
    private static final int BATCHES_SHOWN = 10;
    private static final int REASONS_SHOWN = 2;

    private WeekProblems() {}

    /** Returns a sentence for each such batch, then how many other problems the logbook has; empty if there are none. */
    static List<String> of(Week week) {
        List<String> sentences = new ArrayList<>();
        week.datesAfterToday().ifPresent(sentences::add);
        for (Batch stray : StrayDates.of(week.logbook())) {
            sentences.add("Please check the date of batch " + stray.name() + ": "
                    + stray.roastDay().orElseThrow() + " is more than a year after the others. It is in no week here.");
        }
        List<String> unshown = new ArrayList<>();
        int told = 0;
        for (Usual usual : week.batches()) {
            Batch batch = usual.batch();
            Problems own = ofTheBatch(batch, week);
            List<String> reasons = reasons(own);
            told += own.size();
            if (reasons.isEmpty()) {
                continue;
            }
            if (sentences.size() < BATCHES_SHOWN) {
                sentences.add("Please check batch " + batch.name() + ": " + String.join("; ", reasons) + ".");
            } else {
                unshown.add(batch.name());
            }
        }
        if (!unshown.isEmpty()) {
            sentences.add("Please check too: " + FirstFew.of(unshown) + ".");
        }
        int others = misread(week.logbook().problems()).size() - told;
        if (others > 0) {
            sentences.add(
                    "The logbook has " + others + (told > 0 ? " other" : "") + (others == 1 ? " problem" : " problems")
                            + (told > 0 || week.batches().isEmpty() ? "" : ", none of them with a batch of the week")
                            + "; the tour lists " + (others == 1 ? "it." : "them."));
        }
        long undated = week.logbook().batches().stream()
                .filter(batch -> batch.roastDay().isEmpty())
                .count();
        if (undated > 0 && !week.batches().isEmpty()) {
            sentences.add(undated
                    + (undated == 1
                            ? " batch has no date that could be read, so it is in no week."
                            : " batches have no date that could be read, so they are in no week."));
        }
        return sentences;
    }

    /** Returns the names of the week's batches that were not read as written. */
    static List<String> names(Week week) {
        return week.batches().stream()
                .map(Usual::batch)
                .filter(batch -> ofTheBatch(batch, week).size() > 0)
                .map(Batch::name)
                .toList();
    }

    private static Problems ofTheBatch(Batch batch, Week week) {
        return misread(week.logbook().problems().of(batch.name()));
    }

    /** A logger's own sign for no reading was read as what it means: there is nothing to check. */
    private static Problems misread(Problems problems) {
        return new Problems(problems.list().stream()
                .filter(problem -> !problem.isOfNoReadings())
                .toList());
    }

    private static List<String> reasons(Problems own) {
        List<String> reasons = new ArrayList<>();
        own.list().stream().limit(REASONS_SHOWN).map(WeekProblems::words).forEach(reasons::add);
        if (own.size() > REASONS_SHOWN) {
            reasons.add((own.size() - REASONS_SHOWN) + " more");
        }
        return reasons;
    }

    private static String words(Problem problem) {
        String words = problem.toString();
        return words.substring(0, words.length() - 1);
    }
}
