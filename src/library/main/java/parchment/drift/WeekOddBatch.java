package parchment.drift;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import parchment.drift.found.WeekCause;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.Interval;

/** Tells of one batch of a week what made it unlike its lot's others. */
final class WeekOddBatch {
    /** What differs in a path whatever the probe reads: the charge that was weighed, and the controls. */
    private static final String FREE_OF_THE_PROBE =
            "(?s)charged with .* kg.*|.*(gas|airflow|drum speed|heater power).*";

    /** Whose doing it may be that a curve went otherwise. */
    enum Path {
        ITS_OWN,
        OF_THE_PROBE
    }

    private static final int SIGNS_TOLD = 2;

    private WeekOddBatch() {}

    /**
     * Returns the batch as a cause of its own; empty if all that was unlike is explained.
     *
     * @param explained names of the features that another cause accounts for
     * @param path whether the probe may be why its curve went otherwise
     */
    static Optional<WeekCause> of(Usual usual, Set<String> explained, Path path, Logbook logbook) {
        Batch batch = usual.batch();
        TemperatureUnit reader = logbook.readerUnit();
        List<Usual.Compared> unlike =
                usual.compared().stream().filter(Usual.Compared::unlike).toList();
        List<String> all = usual.reasons();
        int ofThePath = all.size() - unlike.size();
        List<String> signs = new ArrayList<>();
        List<String> remarks = new ArrayList<>();
        for (int i = 0; i < unlike.size(); i++) {
            if (!explained.contains(unlike.get(i).feature().name())) {
                signs.add(words(unlike.get(i), reader));
                remarks.add(all.get(ofThePath + i));
            }
        }
        all.subList(0, ofThePath).stream()
                .filter(words -> path == Path.ITS_OWN || words.matches(FREE_OF_THE_PROBE))
                .forEach(words -> {
                    signs.add(words);
                    remarks.add(words);
                });
        if (signs.isEmpty()) {
            return Optional.empty();
        }
        batch.label(Batch.Label.NOTE).ifPresent(note -> {
            String words = "its note says \"" + note.replaceFirst("\\.$", "") + "\"";
            signs.add(0, words);
            remarks.add(0, words);
        });
        Optional<String> mark = remarks.stream()
                .filter(reason -> reason.contains("first crack was marked"))
                .findFirst();
        boolean cupped = logbook.cups().stream().anyMatch(cup -> cup.batch().equals(batch.name()));
        return Optional.of(new WeekCause(
                WeekCause.Kind.BATCH,
                WeekCause.Sure.CLEAR,
                "batch " + batch.name()
                        + batch.lot().map(lot -> " of lot " + lot).orElse("") + " was unlike the others",
                batch.roastDay().orElseThrow(),
                String.join("; ", signs.subList(0, Math.min(SIGNS_TOLD, signs.size()))),
                "Of 100 ordinary batches about five look so.",
                mark.isPresent()
                        ? "Check its mark of first crack on the curve."
                        : cupped
                                ? "Look at its scores beside those of a usual batch: unlike is not bad."
                                : "Cup it beside a usual batch before you decide: unlike is not bad.",
                remarks));
    }

    /** Returns a number with what is usual, as in "development time 1:10, where 1:24 to 2:30 is usual". */
    static String words(Usual.Compared one, TemperatureUnit reader) {
        Unit unit = one.feature().unit();
        return one.feature().name() + " " + unit.formatOnClock(one.value(), reader) + ", where "
                + range(unit, one.range(), reader) + " is usual";
    }

    /** Returns from where to where a number lies with the unit once, as in "84 to 150 °C", and times as "1:24 to 2:30". */
    static String range(Unit unit, Interval range, TemperatureUnit reader) {
        String low = unit.formatOnClock(range.lower(), reader);
        String symbol = unit.symbol(reader);
        if (!symbol.isEmpty() && low.endsWith(" " + symbol)) {
            low = low.substring(0, low.length() - symbol.length() - 1);
        }
        return low + " to " + unit.formatOnClock(range.upper(), reader);
    }
}
