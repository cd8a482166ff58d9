package parchment.card;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import parchment.calendar.machine.WrittenPeriods;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.written.BatchLooks;
import parchment.logbook.written.Problem;
import parchment.logbook.written.Upkeep;
import parchment.period.ProbePeriods;
import parchment.phase.Phases;
import parchment.phase.found.Mark;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/** Gathers what was written about a batch: its plan, notes and looks, what is to be checked, problems in reading it, and upkeep near its day. */
final class BatchWritten {
    /** Days before and after the roast within which work on the machine is named; common practice, no source. */
    static final int NEAR_DAYS = 14;

    private static final int PROBLEMS_TOLD = 3;

    private BatchWritten() {}

    static List<String> sentences(Batch batch, Logbook logbook) {
        List<String> sentences = new ArrayList<>();
        Phases phases = Phases.of(logbook).get(logbook.batches().indexOf(batch));
        plan(batch, phases, logbook).ifPresent(sentences::add);
        batch.label(Batch.Label.NOTE).ifPresent(note -> sentences.add("Note: " + stopped(note)));
        batch.label(Batch.Label.PURPOSE).ifPresent(purpose -> sentences.add("Purpose: " + stopped(purpose)));
        sentences.addAll(looks(batch.looks()));
        batch.extras().forEach((header, value) -> sentences.add(header + ": " + stopped(value)));
        phases.questions().forEach(sentences::add);
        List<Problem> problems = logbook.problems().of(batch.name()).list();
        problems.stream().limit(PROBLEMS_TOLD).map(Problem::toString).forEach(sentences::add);
        if (problems.size() > PROBLEMS_TOLD) {
            int more = problems.size() - PROBLEMS_TOLD;
            sentences.add((more == 1 ? "1 more problem in reading it is" : more + " more problems in reading it are")
                    + " in logbook.problems().");
        }
        List<String> upkeep = upkeep(batch, logbook);
        if (sentences.isEmpty() && upkeep.isEmpty()) {
            return List.of("Nothing beyond its row was written about it"
                    + (batch.roastDay().isEmpty() ? "." : ", and no upkeep within " + NEAR_DAYS + " days of it."));
        }
        sentences.addAll(upkeep);
        return sentences;
    }

    private static String stopped(String words) {
        return words.endsWith(".") || words.endsWith("!") || words.endsWith("?") ? words : words + ".";
    }

    /** Says what today's probe would show in place of what was read, if that is known. */
    private static String today(Batch batch, double celsius, Logbook logbook) {
        double today = TodaysReadings.of(logbook).today(batch, celsius);
        return Double.isNaN(today)
                ? ""
                : "; today's probe would show " + Unit.TEMPERATURE.format(today, logbook.readerUnit());
    }

    private static Optional<String> plan(Batch batch, Phases phases, Logbook logbook) {
        TemperatureUnit reader = logbook.readerUnit();
        boolean isTodays = ProbePeriods.of(logbook).isTodays(batch);
        return batch.plan().dropTemperature().map(aim -> {
            String planned = "The drop was planned at " + Unit.TEMPERATURE.format(aim.celsius(), reader);
            return phases.mark(MarkKind.DROP)
                    .flatMap(Mark::beanTemperature)
                    .map(came -> planned + " and came at " + Unit.TEMPERATURE.format(came.celsius(), reader)
                            + (isTodays ? "." : ", as read then" + today(batch, came.celsius(), logbook) + "."))
                    .orElse(planned + ".");
        });
    }

    private static List<String> looks(BatchLooks looks) {
        List<String> sentences = new ArrayList<>();
        looks.tipping().ifPresent(words -> sentences.add("Tipping: " + stopped(words)));
        looks.scorching().ifPresent(words -> sentences.add("Scorching: " + stopped(words)));
        looks.quakers()
                .ifPresent(count ->
                        sentences.add("Quakers in 100 g: " + Unit.COUNT.format(count, TemperatureUnit.CELSIUS) + "."));
        return sentences;
    }

    private static List<String> upkeep(Batch batch, Logbook logbook) {
        if (batch.roastDay().isEmpty()) {
            return List.of();
        }
        LocalDate day = batch.roastDay().get();
        return logbook.upkeep().stream()
                .filter(work -> WrittenPeriods.concerns(work, batch.machine().orElse("")))
                .filter(work -> Math.abs(ChronoUnit.DAYS.between(work.doneOn(), day)) <= NEAR_DAYS)
                .map(work -> sentence(work, ChronoUnit.DAYS.between(work.doneOn(), day)))
                .toList();
    }

    private static String sentence(Upkeep work, long before) {
        String days = Math.abs(before) == 1 ? "1 day" : Math.abs(before) + " days";
        return "Upkeep " + (before == 0 ? "on the day" : days + (before > 0 ? " before" : " after")) + ", "
                + work.doneOn() + ": "
                + stopped(work.words() + work.note().map(note -> ", " + note).orElse(""));
    }
}
