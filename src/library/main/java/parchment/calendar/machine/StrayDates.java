package parchment.calendar.machine;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;

/**
 * Finds roast days that look like a slip in the year: one batch or two, more than a year after every other; or days that are not yet.
 *
 * <pre>{@code
 * StrayDates.of(logbook)
 * }</pre>
 *
 * <p>A roastery that stood still for so long and began again has more of them before long. The year, the two, and the three others that it takes to
 * tell are common practice, no source.
 */
public final class StrayDates {
    private static final int DAYS = 366;
    private static final int MOST = 2;
    private static final int FEWEST_OTHERS = 3;

    private StrayDates() {}

    /** Returns the batches of such days, the earliest first; empty if there are none. */
    public static List<Batch> of(Logbook logbook) {
        List<Batch> dated = logbook.batches().stream()
                .filter(batch -> batch.roastDay().isPresent())
                .sorted(Comparator.comparing(batch -> batch.roastDay().orElseThrow()))
                .toList();
        for (int stray = MOST; stray > 0; stray--) {
            int from = dated.size() - stray;
            if (from >= FEWEST_OTHERS && daysBetween(dated.get(from - 1), dated.get(from)) > DAYS) {
                return dated.subList(from, dated.size());
            }
        }
        return List.of();
    }

    /**
     * Doubts dates that lie after today, in a sentence or two with what to do; empty if none does. Tomorrow is not doubted: it may have begun where
     * the batch was roasted. Nothing is left out for it.
     *
     * @param today the day on which the logbook is read, where the reader is
     */
    public static Optional<String> afterToday(Logbook logbook, LocalDate today) {
        List<LocalDate> later = daysAfter(logbook, today);
        return later.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        later.size() + " of " + logbook.batches().size()
                                + (logbook.batches().size() == 1 ? " batch is" : " batches are")
                                + " dated after today, " + today
                                + ", the last on " + later.get(later.size() - 1)
                                + ". Check the year under 'roasted at' in batches.csv, and the date of this computer; nothing is left out for it.");
    }

    /** Returns how many batches are dated after today, tomorrow not counted. */
    public static int countAfter(Logbook logbook, LocalDate today) {
        return daysAfter(logbook, today).size();
    }

    private static List<LocalDate> daysAfter(Logbook logbook, LocalDate today) {
        return logbook.batches().stream()
                .flatMap(batch -> batch.roastDay().stream())
                .filter(day -> day.isAfter(today.plusDays(1)))
                .sorted()
                .toList();
    }

    private static long daysBetween(Batch before, Batch after) {
        return ChronoUnit.DAYS.between(
                before.roastDay().orElseThrow(), after.roastDay().orElseThrow());
    }
}
