package parchment.phase;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.display.answer.InShort;
import parchment.display.answer.Report;
import parchment.display.answer.ShownAs;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.logbook.contents.EmptyLogbook;
import parchment.phase.found.Mark;
import parchment.phase.found.Phase;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.sheet.Words;

/**
 * Shows the marks and phases of every batch of a logbook, one row per batch.
 *
 * <pre>{@code
 * PhaseTable.of(logbook)
 * }</pre>
 */
public final class PhaseTable implements ShownAs {
    private static final String NOTHING = "nothing";

    private final String name;
    private final TemperatureUnit reader;
    private final MarkHabit habit;
    private final List<Phases> rows;

    private PhaseTable(String name, TemperatureUnit reader, MarkHabit habit, List<Phases> rows) {
        this.name = name;
        this.reader = reader;
        this.habit = habit;
        this.rows = List.copyOf(rows);
    }

    /** Finds the marks and phases of all batches; the roaster's habit of rounding is read off the logbook first. */
    public static PhaseTable of(Logbook logbook) {
        return new PhaseTable(logbook.name(), logbook.readerUnit(), MarkHabit.of(logbook), Phases.of(logbook));
    }

    /** Returns the marks and phases of each batch, in the logbook's order. */
    public List<Phases> rows() {
        return rows;
    }

    /** Returns how exactly written marks were taken. */
    public MarkHabit habit() {
        return habit;
    }

    private Table table() {
        Table table = Table.titled("Marks and phases, one row for each batch")
                .withText("batch", rows, p -> p.batch().name())
                .withText("yellowing", rows, p -> at(p, MarkKind.YELLOWING))
                .withText("first crack start", rows, p -> at(p, MarkKind.FIRST_CRACK_START))
                .withText("drop", rows, p -> at(p, MarkKind.DROP))
                .withNumber(
                        "drop temperature",
                        Unit.TEMPERATURE,
                        reader,
                        rows,
                        p -> p.mark(MarkKind.DROP)
                                .flatMap(Mark::beanTemperature)
                                .map(t -> t.celsius())
                                .orElse(Double.NaN))
                .withNumber("drying", Unit.SHARE, reader, rows, p -> share(p, Phases::drying))
                .withNumber("browning", Unit.SHARE, reader, rows, p -> share(p, Phases::browning))
                .withNumber("development", Unit.SHARE, reader, rows, p -> share(p, Phases::development))
                .withNumber(
                        "development",
                        Unit.SECONDS,
                        reader,
                        rows,
                        p -> p.development().map(d -> d.duration().seconds()).orElse(Double.NaN))
                .withText("to check", rows, PhaseTable::toCheck);
        long whole = rows.stream().filter(p -> p.list().size() == 3).count();
        if (rows.isEmpty()) {
            return table.withNote(EmptyLogbook.WORDS);
        }
        return table.withNote(String.format(
                Locale.ROOT,
                "%d of %s %s all three phases; shares are of the time from charge to drop.",
                whole,
                Words.count(rows.size(), "batch", "batches"),
                rows.size() == 1 ? "has" : "have"));
    }

    /** Returns the answer in three sentences: how long the development took, of how many batches it is known, what to do next. */
    public InShort inShort() {
        return PhasesInShort.of(
                rows.size(),
                rows.stream()
                        .filter(p -> p.list().size() == 3)
                        .flatMap(p -> p.development().stream())
                        .map(d -> d.duration().seconds())
                        .toList(),
                (int) rows.stream().filter(p -> !toCheck(p).equals(NOTHING)).count());
    }

    private static String toCheck(Phases phases) {
        List<String> words = new ArrayList<>(
                phases.questioned().stream().map(MarkKind::words).toList());
        // Beside a drop temperature that is missing, "nothing" would be untrue.
        Optional<Mark> drop = phases.mark(MarkKind.DROP);
        if (drop.isEmpty()) {
            words.add("the drop is missing");
        } else if (drop.get().beanTemperature().isEmpty()
                && phases.batch().logged().contains(Quantity.BEAN_TEMPERATURE)) {
            words.add("no bean temperature at the drop");
        }
        return words.isEmpty() ? NOTHING : String.join(", ", words);
    }

    private static String at(Phases phases, MarkKind kind) {
        return phases.mark(kind).map(m -> m.at().toString()).orElse("");
    }

    private static double share(Phases phases, Function<Phases, Optional<Phase>> phase) {
        return phase.apply(phases).map(p -> p.share().value()).orElse(Double.NaN);
    }

    @Override
    public String toString() {
        long whole = rows.stream().filter(p -> p.list().size() == 3).count();
        return String.format(
                Locale.ROOT,
                "Phases of %s of %s, %d with all three phases",
                Words.count(rows.size(), "batch", "batches"),
                name,
                whole);
    }

    @Override
    public Showable shownAs() {
        Report page = Report.titled("Phases of " + name).add(inShort()).add(table());
        return rows.isEmpty()
                ? page
                : page.fold(Report.titled("How this was worked out").say(habit.toString()));
    }
}
