package parchment.card;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import parchment.display.answer.FirstFew;
import parchment.display.answer.Sentence;
import parchment.drift.Usual;
import parchment.drift.Week;
import parchment.drift.found.WeekCause;
import parchment.logbook.Logbook;
import parchment.logbook.written.CupScores;
import parchment.period.NearbyWork;
import parchment.period.ProbeChange;

/** Tells the last week on the overview; the week itself is worked out once for all of its parts. */
final class OverviewWeek {
    /** Of more paragraphs than this under one heading the rest is counted. */
    private static final int MOST = 4;

    private OverviewWeek() {}

    private static Week week(Logbook logbook) {
        return logbook.remembered(Week.class, Week::of);
    }

    /** Of the cause that the three sentences tell they lack only since when it is and how large; it is told nowhere else. */
    static Overview.Section inShort(Logbook logbook) {
        Week week = week(logbook);
        return new Overview.Section(
                Overview.Part.THE_WEEK,
                Optional.of(week.inShort()),
                week.told().map(OverviewWeek::sinceWhen).stream().toList());
    }

    static String sinceWhen(WeekCause cause) {
        return (cause.kind() == WeekCause.Kind.BATCH ? "On " : "Since ")
                + cause.since()
                + (cause.size().isEmpty() ? "." : ": " + cause.size() + ".");
    }

    static Overview.Section odd(Logbook logbook) {
        Week week = week(logbook);
        List<String> sentences = new ArrayList<>(odd(week.causes(), week.told()));
        week.earlierSteps()
                .forEach(change -> step(change, NearbyWork.of(change, logbook)).ifPresent(sentences::add));
        return Overview.Section.of(Overview.Part.WHAT_IS_ODD, firstOf(sentences, nothingOdd(week)));
    }

    /** Returns the causes in words, but that which the week's three sentences tell. */
    static List<String> odd(List<WeekCause> causes, Optional<WeekCause> told) {
        return causes.stream()
                .filter(cause -> told.filter(cause::equals).isEmpty())
                .map(WeekCause::toString)
                .toList();
    }

    private static String nothingOdd(Week week) {
        if (week.told().isPresent()) {
            return "Nothing more than what is said of the week.";
        }
        if (!week.aLittle().isEmpty()) {
            return "Nothing by much: " + week.aLittle().size()
                    + (week.aLittle().size() == 1 ? " batch" : " batches")
                    + " of the week a little unlike, nothing that is watched, and no step of a probe.";
        }
        return week.batches().stream().allMatch(OverviewWeek::cannotTell)
                ? "Nothing can be told yet: no batch of a last week can be held against eight others of its lot."
                : "Nothing: no batch of the week, nothing that is watched, and no step of a probe.";
    }

    private static boolean cannotTell(Usual usual) {
        return usual.verdict() == Usual.Verdict.CANNOT_TELL;
    }

    static Optional<String> step(ProbeChange change, Optional<NearbyWork> work) {
        String probe =
                "The bean probe" + (change.machine().isEmpty() ? "" : " of " + change.machine()) + " reads differently";
        return switch (change.kind()) {
            case FOUND_AND_WRITTEN ->
                Optional.of(probe + " since " + change.on()
                        + ", as the upkeep says. Older readings are put on today's scale.");
            case FOUND_WITHOUT_ENTRY ->
                Optional.of(
                        work.map(near -> probe.replace(" reads differently", " may read differently") + " since about "
                                        + change.on() + ". " + near.words()
                                        + " Older readings are put on today's scale.")
                                .orElse(
                                        probe + " since about " + change.on()
                                                + ", and nobody wrote why. Older readings are put on today's scale; write into upkeep.csv what was done."));
            case WRITTEN_WITHOUT_CHANGE, OTHER_WORK, LOT_OR_PROBE, ONE_PLACE_ONLY, NOT_IN_THE_BEANS, STEP_OR_SLOW ->
                Optional.empty(); // Not sure enough for a first page; ProbeShifts tells them.
        };
    }

    static Overview.Section worthCupping(Logbook logbook) {
        Week week = week(logbook);
        List<String> worth =
                new ArrayList<>(week.worthCupping().stream().map(Sentence::of).toList());
        worth.addAll(week.oddAndCupped());
        List<String> early = tooEarly(week, logbook);
        if (!early.isEmpty()) {
            worth.add((early.size() == 1 ? "Batch " : "Batches ") + FirstFew.of(early)
                    + ": not cupped, and too early to say what is usual for the lot. The cup says how it came out.");
        }
        return Overview.Section.of(Overview.Part.WORTH_CUPPING, firstOf(worth, week.nothingToCup()));
    }

    /** Names the week's batches that neither the cup nor others of their lot have judged. */
    private static List<String> tooEarly(Week week, Logbook logbook) {
        Set<String> cupped = logbook.cups().stream().map(CupScores::batch).collect(Collectors.toSet());
        return week.batches().stream()
                .filter(OverviewWeek::cannotTell)
                .map(usual -> usual.batch().name())
                .filter(name -> !cupped.contains(name))
                .toList();
    }

    static List<String> firstOf(List<String> sentences, String none) {
        if (sentences.isEmpty()) {
            return List.of(none);
        }
        if (sentences.size() <= MOST + 1) {
            return sentences;
        }
        List<String> shorter = new ArrayList<>(sentences.subList(0, MOST));
        shorter.add("And " + (sentences.size() - MOST) + " more, on the page of the week.");
        return shorter;
    }
}
