package parchment.gather;

import java.time.LocalDate;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import parchment.sheet.DateOrder;

/**
 * Helps to tell a name from a number and a cupper from an attribute, by what is known around a score sheet.
 *
 * @param dates the order of a date's parts, as far as the folder tells it
 * @param batches names of batches that recordings and lists have
 * @param cuppers names that other sheets have for cuppers
 * @param stated what the roaster says a heading is, in the words of {@link ScorePart#words()}; headings in any case
 */
record ScoreClues(DateOrder dates, Set<String> batches, Set<String> cuppers, Map<String, String> stated) {
    ScoreClues {
        batches = Set.copyOf(batches);
        cuppers = Set.copyOf(cuppers);
        Map<String, String> anyCase = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
        anyCase.putAll(stated);
        stated = anyCase;
    }

    /** Returns the clues where nothing is known but the batches: by their names, and by numbers behind a word that several names begin with. */
    static ScoreClues of(Collection<String> batches) {
        return new ScoreClues(DateOrder.ISO_ONLY, BatchNames.withNumbers(batches), Set.of(), Map.of());
    }

    /** Returns the first day that stands in a text, in figures or with the month's name; nothing if its parts can be read in two ways. */
    Optional<LocalDate> day(String text) {
        return WrittenDay.find(text).flatMap(day -> day.on(dates));
    }

    /** Returns whether a cell holds a day and nothing else, whether or not its parts can be told. */
    static boolean isDay(String cell) {
        return WrittenDay.ofCell(cell.replaceFirst("(?iu)^(on|am|den|the|le|el|il|em|dia|d[ií]a)\\s+", ""))
                .isPresent();
    }

    /** Returns the clues with the order of a date's parts. */
    ScoreClues withDates(DateOrder order) {
        return new ScoreClues(order, batches, cuppers, stated);
    }

    /** Returns the clues with names of cuppers. */
    ScoreClues withCuppers(Collection<String> names) {
        return new ScoreClues(dates, batches, new TreeSet<>(names), stated);
    }

    /** Returns the clues with the roaster's word on a heading. */
    ScoreClues withStated(String heading, ScorePart part) {
        Map<String, String> more = new LinkedHashMap<>(stated);
        more.put(heading, part.words());
        return new ScoreClues(dates, batches, cuppers, more);
    }
}
