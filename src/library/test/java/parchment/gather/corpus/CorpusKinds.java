package parchment.gather.corpus;

import java.util.List;
import java.util.stream.Stream;
import parchment.gather.corpus.CurveColumn.Clock;

/** Lists all kinds of strange folders, and the plain curves and lists that many of them share. */
final class CorpusKinds {
    /** Curves as a logger writes them: seconds since it was switched on, two probes, gas. */
    static final CurveParts LOGGED = CurveParts.of(
            CurveColumn.sinceStart("Time [s]", Clock.SECONDS),
            CurveColumn.bean("Bean temperature [C]"),
            CurveColumn.air("Air temperature [C]"),
            CurveColumn.gas("Gas [%]"));

    /** A list as an English speaker heads it. */
    static final ListParts LISTED = ListParts.of(
            ListColumn.number("Batch"),
            ListColumn.date("Date"),
            ListColumn.time("Time"),
            ListColumn.lot("Coffee"),
            ListColumn.green("Green weight (kg)", ListColumn.KILOGRAM),
            ListColumn.roasted("Roasted weight (kg)", ListColumn.KILOGRAM),
            ListColumn.yellowing("Yellow", Clock.MINUTES),
            ListColumn.crack("First crack", Clock.MINUTES),
            ListColumn.drop("Drop", Clock.MINUTES),
            ListColumn.note("Notes"));

    /** A list with the fewest columns that join. */
    static final ListParts SHORT = ListParts.of(
            ListColumn.number("Batch"),
            ListColumn.at("Roasted at"),
            ListColumn.lot("Lot"),
            ListColumn.green("Green (kg)", ListColumn.KILOGRAM));

    private CorpusKinds() {}

    static List<Kind> all() {
        return Stream.of(
                        KindsOfHeads.all(),
                        KindsOfText.all(),
                        KindsOfUnits.all(),
                        KindsOfNames.all(),
                        KindsOfLayouts.all(),
                        KindsOfSpreadsheets.all(),
                        KindsOfScores.all(),
                        KindsOfFaults.all(),
                        KindsOfHabits.all(),
                        KindsOfQuestions.all())
                .flatMap(List::stream)
                .toList();
    }

    /** Returns the kind of a name. */
    static Kind named(String name) {
        return all().stream()
                .filter(kind -> kind.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no kind " + name));
    }
}
