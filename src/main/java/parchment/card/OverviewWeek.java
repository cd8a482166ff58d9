package parchment.card;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import parchment.display.InShort;
import parchment.display.Sentence;
import parchment.drift.ProbeShifts;
import parchment.drift.Usual;
import parchment.drift.Week;
import parchment.logbook.Logbook;
import parchment.period.ProbeChange;

/** Says what the overview tells of the last week; the week itself is worked out once for all of its parts. */
final class OverviewWeek {
    /** More than this many paragraphs under one heading are counted, not shown. */
    private static final int MOST = 4;

    private OverviewWeek() {}

    private static Week week(Logbook logbook) {
        return logbook.remembered(Week.class, Week::of);
    }

    static Overview.Section inShort(Logbook logbook) {
        Week week = week(logbook);
        return new Overview.Section(Overview.Part.THE_WEEK, Optional.of(inShort(week, logbook)), List.of());
    }

    private static InShort inShort(Week week, Logbook logbook) {
        return new InShort(Sentence.of(week.toString()) + ".", "", "");
    }

    static Overview.Section odd(Logbook logbook) {
        List<String> sentences = new ArrayList<>();
        for (Usual usual : week(logbook).batches()) {
            if (usual.verdict() == Usual.Verdict.UNLIKE_THE_OTHERS) {
                sentences.add(usual.inShort().found());
            }
        }
        for (ProbeChange change : ProbeShifts.of(logbook).changes()) {
            if (change.kind().separatesPeriods()) {
                sentences.add(Sentence.of(change.toString()));
            }
        }
        return Overview.Section.of(
                Overview.Part.WHAT_IS_ODD,
                sentences.isEmpty() ? List.of("Nothing that was looked at.") : firstOf(sentences, "more"));
    }

    static Overview.Section worthCupping(Logbook logbook) {
        List<String> worth =
                week(logbook).worthCupping().stream().map(Sentence::of).toList();
        return Overview.Section.of(
                Overview.Part.WORTH_CUPPING,
                worth.isEmpty() ? List.of("Nothing in particular.") : firstOf(worth, "more"));
    }

    private static List<String> firstOf(List<String> sentences, String more) {
        if (sentences.size() <= MOST + 1) {
            return sentences;
        }
        List<String> shorter = new ArrayList<>(sentences.subList(0, MOST));
        shorter.add("And " + (sentences.size() - MOST) + " " + more + ".");
        return shorter;
    }
}
