package parchment.logbook;

import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import parchment.display.Table;
import parchment.display.answer.Report;
import parchment.logbook.contents.EmptyLogbook;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.written.CupScores;
import parchment.logbook.written.Cupping;
import parchment.sheet.Words;

/** Tells on one page what a logbook holds and what it lacks. */
final class LogbookSummary {
    private static final String NO_LOT = "no lot written";

    private final Logbook logbook;
    private final Set<String> cupped = new HashSet<>();

    private LogbookSummary(Logbook logbook) {
        this.logbook = logbook;
        logbook.cups().forEach(cup -> cupped.add(cup.batch()));
    }

    static Report of(Logbook logbook) {
        return new LogbookSummary(logbook).report();
    }

    /** Java writes the zone without an offset as Z, which no roaster reads. */
    private String zoneInWords() {
        ZoneId zone = logbook.contents().zone();
        return zone.equals(ZoneOffset.UTC) ? "UTC" : zone.getId();
    }

    private Report report() {
        List<LocalDate> days = logbook.batches().stream()
                .flatMap(batch -> batch.roastDay().stream())
                .distinct()
                .sorted()
                .toList();
        String when = days.isEmpty()
                ? "No batch has a date."
                : String.format(
                        Locale.ROOT,
                        "Roasted on %s%s (time zone %s).",
                        Words.count(days.size(), "day", "days"),
                        days.size() == 1
                                ? ", " + days.get(0)
                                : " from " + days.get(0) + " to " + days.get(days.size() - 1),
                        zoneInWords());
        Report report = Report.titled(logbook.name())
                .say(counts() + ". " + when + " Temperatures are shown in "
                        + logbook.readerUnit().symbol() + ".");
        report = logbook.batches().isEmpty()
                ? report.say(EmptyLogbook.WORDS)
                : report.add(CalendarStrip.of(logbook).plot());
        report = report.fold(lotsAndScores());
        List<String> missing = missing();
        if (!missing.isEmpty()) {
            Report folded = Report.titled("What is missing: " + Words.count(missing.size(), "thing", "things"));
            for (String sentence : missing) {
                folded = folded.say(sentence);
            }
            report = report.fold(folded);
        }
        return report.fold(problems());
    }

    /** The name stands above already. */
    private String counts() {
        return logbook.toString().substring((logbook.name() + ": ").length());
    }

    private Report lotsAndScores() {
        Report folded = Report.titled("Its lots, and what was scored").add(lots());
        return folded.say(
                logbook.attributes().isEmpty()
                        ? "Nothing was scored."
                        : "Scored: " + String.join(", ", logbook.attributes()) + ".");
    }

    /** Counts the problems where everybody sees it, and lists them where they are asked for: one by one as long as that can be read. */
    private Report problems() {
        Problems problems = logbook.problems();
        String count = problems.toString().replaceFirst("\\.$", "");
        if (problems.size() == 0) {
            return Report.titled("What could not be read as written: nothing").say(problems.toString());
        }
        Report folded = Report.titled("What could not be read as written: " + count);
        return problems.size() <= Problems.SENTENCES_SHOWN
                ? folded.say("Each says where it is, what was found, what was expected and what was done about it.")
                        .add(problems)
                : folded.say("Here they are by kind; logbook.problems() lists them one by one.")
                        .add(problems.kinds());
    }

    private record LotRow(String lot, List<Batch> batches) {}

    private Table lots() {
        Map<String, List<Batch>> byLot = new LinkedHashMap<>();
        logbook.batches()
                .forEach(batch -> byLot.computeIfAbsent(batch.lot().orElse(NO_LOT), lot -> new ArrayList<>())
                        .add(batch));
        List<LotRow> rows = byLot.entrySet().stream()
                .map(entry -> new LotRow(entry.getKey(), entry.getValue()))
                .toList();
        return Table.titled("Batches by lot")
                .withText("lot", rows, LotRow::lot)
                .withNumber("batches", "", 0, rows, row -> row.batches().size())
                .withNumber("with a curve", "", 0, rows, row -> count(row, this::hasCurve))
                .withNumber("cupped", "", 0, rows, row -> count(row, batch -> cupped.contains(batch.name())))
                .withText("first", rows, row -> day(row, Comparator.naturalOrder()))
                .withText("last", rows, row -> day(row, Comparator.reverseOrder()));
    }

    private boolean hasCurve(Batch batch) {
        return batch.logged().contains(Quantity.BEAN_TEMPERATURE);
    }

    private static long count(LotRow row, Predicate<Batch> condition) {
        return row.batches().stream().filter(condition).count();
    }

    private String day(LotRow row, Comparator<LocalDate> order) {
        return row.batches().stream()
                .flatMap(batch -> batch.roastDay().stream())
                .min(order)
                .map(LocalDate::toString)
                .orElse("");
    }

    private List<String> missing() {
        List<String> missing = new ArrayList<>();
        lacking(
                missing,
                "date",
                "nothing that needs the calendar can use them",
                b -> b.roastedAt().isEmpty());
        lacking(missing, "bean temperature curve", "only written marks are known", b -> !hasCurve(b));
        lacking(missing, "lot", "they are compared with no others", b -> b.lot().isEmpty());
        lacking(
                missing,
                "machine",
                "all of these count as one machine",
                b -> b.machine().isEmpty());
        lacking(
                missing,
                "green mass",
                "the batch size cannot be adjusted for",
                b -> b.conditions().greenMass().isEmpty());
        lacking(
                missing,
                "mass loss",
                "a mass is missing",
                b -> b.conditions().massLoss().isEmpty());
        lacking(
                missing,
                "written first crack",
                "their browning and development cannot be told",
                b -> b.writtenMark(MarkKind.FIRST_CRACK_START).isEmpty());
        // Yellowing is written less often than not; where nobody writes it at all, a whole phase is missing of every
        // batch.
        if (logbook.batches().stream()
                .noneMatch(b -> b.writtenMark(MarkKind.YELLOWING).isPresent())) {
            lacking(missing, "written yellowing", "their drying and browning cannot be told apart", b -> true);
        }
        lacking(missing, "cupping", "their taste is not known", b -> !cupped.contains(b.name()));
        LogbookContents contents = logbook.contents();
        if (contents.machines().isEmpty()) {
            missing.add("No machines.csv: the maker's limits, such as smallest and largest batch, are not known here.");
        }
        if (!logbook.cups().isEmpty()) {
            Set<String> blind = new HashSet<>();
            contents.cuppings().stream()
                    .filter(cupping -> cupping.blind() != Cupping.Said.NOT_WRITTEN)
                    .forEach(cupping -> blind.add(cupping.name()));
            long unsaid = logbook.cups().stream()
                    .map(CupScores::cupping)
                    .distinct()
                    .filter(c -> !blind.contains(c))
                    .count();
            if (unsaid > 0) {
                missing.add(
                        Words.count(unsaid, "cupping does", "cuppings do")
                                + " not say whether it was blind (sessions.csv): no verdict on them goes beyond \"suggestive\".");
            }
        }
        if (contents.crackHabit() == Logbook.CrackHabit.NOT_WRITTEN
                && logbook.batches().stream()
                        .anyMatch(b -> b.writtenMark(MarkKind.FIRST_CRACK_START).isPresent())) {
            missing.add("Whether first crack is written at the first pop or at steady popping is not said"
                    + " (crack.habit in logbook.properties).");
        }
        if (contents.upkeep().isEmpty()) {
            missing.add("No upkeep.csv: a moved probe can only be suspected from the readings.");
        }
        return missing;
    }

    private void lacking(List<String> missing, String what, String consequence, Predicate<Batch> lacks) {
        List<Batch> without = logbook.batches().stream().filter(lacks).toList();
        if (!without.isEmpty()) {
            missing.add(String.format(
                    Locale.ROOT,
                    "%d of %s without a %s (%s): %s.",
                    without.size(),
                    Words.count(logbook.batches().size(), "batch", "batches"),
                    what,
                    Words.some(without.stream().map(Batch::name).toList()),
                    consequence));
        }
    }
}
