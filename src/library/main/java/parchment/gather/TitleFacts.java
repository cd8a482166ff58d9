package parchment.gather;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import parchment.sheet.DateOrder;
import parchment.sheet.Sheet;
import parchment.sheet.Words;

/**
 * Reads what stands in single cells above each of several recordings on the tabs of one file, such as "charged 8:56" or "5.4 kg green", as a list
 * with a row a recording: a word of the trade says what its value is; words alone are left to what the column they make looks like.
 */
final class TitleFacts {
    private static final Pattern CLOCK = Pattern.compile("(?<![\\d:])\\d{1,3}:\\d{2}(?::\\d{2})?(?![\\d:])");
    private static final Pattern MASS =
            Pattern.compile("(?iu)(?<![\\p{L}\\d.,])(\\d+(?:[.,]\\d+)?)\\s?(kg|g|gr|lbs?|oz)(?![\\p{L}\\d/])");
    private static final int LONGEST = 60;
    private static final int LONGEST_NAME = 40;
    private static final String BATCH = "Batch";
    private static final String DATE = "Date";
    private static final String WORDS = "#";

    private TitleFacts() {}

    /** Returns the list; empty unless each recording names one batch and says something more of it that can be read. */
    static Optional<FoundTable> of(List<FoundTable> recordings) {
        if (recordings.size() < 2) {
            return Optional.empty();
        }
        List<Map<String, String>> facts = new ArrayList<>();
        Set<String> headings = new LinkedHashSet<>(List.of(BATCH, DATE));
        Set<String> batches = new LinkedHashSet<>();
        boolean dated = true;
        for (FoundTable recording : recordings) {
            Set<String> titles = BatchNumbers.titles(recording.above());
            if (titles.size() != 1) {
                return Optional.empty();
            }
            Map<String, String> row = new LinkedHashMap<>();
            row.put(BATCH, titles.iterator().next());
            day(recording).ifPresent(day -> row.put(DATE, day));
            dated &= row.containsKey(DATE);
            batches.add(BatchNumbers.plain(row.get(BATCH)) + (dated ? row.get(DATE) : ""));
            for (List<String> cells : recording.above()) {
                only(cells).ifPresent(cell -> read(cell, row));
            }
            headings.addAll(row.keySet());
            facts.add(row);
        }
        if (headings.size() < 3 || batches.size() < recordings.size()) {
            return Optional.empty();
        }
        if (!dated) {
            headings.remove(DATE);
        }
        return Optional.of(table(recordings, facts, List.copyOf(headings)));
    }

    private static FoundTable table(
            List<FoundTable> recordings, List<Map<String, String>> facts, List<String> headings) {
        Sheet first = recordings.get(0).sheet();
        int words = headings.indexOf(WORDS);
        return new FoundTable(
                new Sheet(first.file(), "", first.delimiter(), first.decimal(), List.of()),
                List.of(),
                headings.stream()
                        .map(heading -> heading.equals(WORDS) ? WORDS + (words + 1) : heading)
                        .toList(),
                facts.stream()
                        .map(row -> headings.stream()
                                .map(heading -> row.getOrDefault(heading, ""))
                                .toList())
                        .toList(),
                recordings.stream().map(table -> table.lines().get(0)).toList(),
                List.of("What stands above the readings of " + Words.count(facts.size(), "recording", "recordings")
                        + " is read as a list with a row a recording; its lines are those of the first readings."));
    }

    /** Returns a recording without the titles that the list takes from it. */
    static FoundTable withoutTaken(FoundTable recording) {
        List<List<String>> above = recording.above().stream()
                .filter(cells ->
                        only(cells).filter(cell -> labelled(cell).isPresent()).isEmpty())
                .toList();
        return new FoundTable(
                recording.sheet(),
                above,
                recording.headings(),
                recording.rows(),
                recording.lines(),
                recording.leftOut());
    }

    /** A day that does not say which of its numbers is the month is left to the recording. */
    private static Optional<String> day(FoundTable recording) {
        return RecordingZero.written(recording)
                .or(() -> WrittenDay.inName(recording.sheet().tab()))
                .filter(day -> !day.needsOrder())
                .flatMap(day -> day.on(DateOrder.ISO_ONLY))
                .map(String::valueOf);
    }

    private static Optional<String> only(List<String> cells) {
        List<String> filled = cells.stream().filter(cell -> !cell.isBlank()).toList();
        return filled.size() == 1 && filled.get(0).length() <= LONGEST
                ? Optional.of(filled.get(0).strip())
                : Optional.empty();
    }

    /** The first value of a name stands; words alone are taken where they are the only ones. */
    private static void read(String cell, Map<String, String> row) {
        Optional<String[]> labelled = labelled(cell);
        if (labelled.isPresent()) {
            row.putIfAbsent(labelled.get()[0], labelled.get()[1]);
        } else if (CellForm.of(cell) == CellForm.WORDS
                && cell.length() <= LONGEST_NAME
                && WrittenDay.find(cell).isEmpty()
                && BatchNumbers.titles(List.of(List.of(cell))).isEmpty()) {
            row.merge(WORDS, cell, (one, two) -> one + ", " + two);
        }
    }

    /** Returns a heading, with its unit, and the value, of a title that holds one value and a word for what it is. */
    private static Optional<String[]> labelled(String cell) {
        Matcher mass = MASS.matcher(cell);
        Matcher clock = CLOCK.matcher(cell);
        boolean isMass = mass.find();
        boolean isClock = clock.find();
        if (isMass == isClock) {
            return Optional.empty();
        }
        Matcher value = isMass ? mass : clock;
        String label = (cell.substring(0, value.start()) + " " + cell.substring(value.end()))
                .replaceAll("[\\s:=,;]+", " ")
                .strip();
        boolean known = TradeWords.of(label).whole().stream()
                .map(ListMeaning::kind)
                .anyMatch(kind -> isMass
                        ? kind == ListMeaning.Kind.MASS
                        : kind == ListMeaning.Kind.TIME_OF_DAY || kind == ListMeaning.Kind.SINCE_CHARGE);
        return known && label.chars().noneMatch(Character::isDigit)
                ? Optional.of(new String[] {
                    isMass ? label + " [" + value.group(2) + "]" : label, isMass ? value.group(1) : value.group()
                })
                : Optional.empty();
    }
}
