package parchment.gather;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import parchment.file.WholeFile;
import parchment.gather.ScoreSheet.Served;
import parchment.logbook.LogbookFiles;
import parchment.sheet.CsvText;
import parchment.sheet.Numbers;
import parchment.sheet.Words;

/** Writes the tables of cuppings of a new logbook. */
final class CuppingsWriter {
    /** Stands for the cuppers where only means, or scores of nobody named, are known. */
    static final String PANEL = "panel";

    private final List<CupJoin.Joined> cups;
    private final Map<CupJoin.Joined, String> cuppings = new IdentityHashMap<>();
    private final Map<FoundTable, ScoreSheet> sheets = new IdentityHashMap<>();
    private final List<String> told = new ArrayList<>();

    private CuppingsWriter(List<CupJoin.Joined> cups, List<ScoreSheet> sheets) {
        sheets.forEach(sheet -> this.sheets.put(sheet.table(), sheet));
        List<CupJoin.Joined> dated = new ArrayList<>();
        Map<String, List<Integer>> dayless = new LinkedHashMap<>();
        for (CupJoin.Joined cup : cups) {
            if (cup.cup().tastedOn().isPresent()) {
                dated.add(cup);
            } else {
                dayless.computeIfAbsent(cup.cup().table().sheet().name(), sheet -> new ArrayList<>())
                        .add(cup.cup().line());
            }
        }
        dayless.forEach((sheet, lines) -> told.add(sheet + " line " + lines.get(0)
                + (lines.size() == 1
                        ? " has no day of tasting and is not written."
                        : ", and " + Words.count(lines.size() - 1, "more cup", "more cups")
                                + " of it, have no day of tasting and are not written.")));
        dated.sort(Comparator.comparing(cup -> cup.cup().tastedOn().orElse(LocalDate.MIN)));
        this.cups = List.copyOf(dated);
        name();
        Set<String> unnamed = new LinkedHashSet<>();
        this.cups.stream()
                .filter(cup -> cup.cup().cupper().isEmpty())
                .forEach(cup -> unnamed.add(cup.cup().table().sheet().name()));
        scales().forEach((attribute, ranges) -> {
            if (ranges.size() > 1) {
                told.add(Words.quote(attribute) + " is scored on several scales (" + String.join(", ", ranges)
                        + "), so none is stated; scores on two scales are not to be compared.");
            }
        });
        unnamed.forEach(
                sheet -> told.add("Nobody is named as the cupper in " + sheet + ". Its scores are written as those of '"
                        + PANEL + "', as one cupper: how far cuppers agree cannot be told from them."));
    }

    /**
     * Prepares the tables.
     *
     * @param cups cups with their batches
     * @param sheets the sheets that the cups are from, for scales and for what was served blind
     */
    static CuppingsWriter of(List<CupJoin.Joined> cups, List<ScoreSheet> sheets) {
        return new CuppingsWriter(cups, sheets);
    }

    // A cupping is called by its day, with a letter where the sheets name two of one day.
    private void name() {
        Map<LocalDate, Map<String, List<CupJoin.Joined>>> byDay = new TreeMap<>();
        for (CupJoin.Joined cup : cups) {
            byDay.computeIfAbsent(cup.cup().tastedOn().orElseThrow(), day -> new LinkedHashMap<>())
                    .computeIfAbsent(cup.cup().cupping(), name -> new ArrayList<>())
                    .add(cup);
        }
        byDay.forEach((day, byName) -> {
            int letter = 0;
            for (Map.Entry<String, List<CupJoin.Joined>> cupping : byName.entrySet()) {
                String name = byName.size() == 1 ? day.toString() : day + letters(letter++);
                cupping.getValue().forEach(cup -> cuppings.put(cup, name));
                if (byName.size() > 1) {
                    told.add(
                            "The cupping " + Words.quote(cupping.getKey()) + " of " + day + " is called " + name + ".");
                }
            }
        });
    }

    private static String letters(int index) {
        return index < 26 ? String.valueOf((char) ('a' + index)) : "-" + (index + 1);
    }

    /** Returns the rows of cuppings.csv with its headings. */
    List<List<String>> cuppings() {
        Set<String> attributes = new LinkedHashSet<>();
        cups.forEach(cup -> attributes.addAll(cup.cup().scores().keySet()));
        List<String> head = new ArrayList<>(List.of("cupping", "tasted on", "cupper", "batch", "blind code", "cup"));
        head.addAll(attributes);
        head.addAll(List.of("serving position", "note"));
        List<List<String>> rows = new ArrayList<>(List.of(head));
        for (CupJoin.Joined joined : cups) {
            TastedCup cup = joined.cup();
            List<String> row = new ArrayList<>(List.of(
                    cuppings.getOrDefault(joined, ""),
                    cup.tastedOn().orElseThrow().toString(),
                    cup.cupper().isEmpty() ? PANEL : cup.cupper(),
                    joined.batch(),
                    cup.code(),
                    cup.cup() == 0 ? "" : String.valueOf(cup.cup())));
            for (String attribute : attributes) {
                Double score = cup.scores().get(attribute);
                row.add(score == null ? "" : Numbers.written(score));
            }
            row.add(cup.position() == 0 ? "" : String.valueOf(cup.position()));
            row.add(cup.note());
            rows.add(row);
        }
        return rows;
    }

    /** Returns the rows of sessions.csv with its headings; nothing but the headings where nothing is known. */
    List<List<String>> sessions() {
        Map<String, Boolean> blind = new LinkedHashMap<>();
        for (CupJoin.Joined cup : cups) {
            ScoreSheet sheet = sheets.get(cup.cup().table());
            boolean codes = sheet != null && sheet.served() == Served.CODES_ALONE;
            blind.merge(cuppings.getOrDefault(cup, ""), codes, Boolean::logicalAnd);
        }
        List<List<String>> rows = new ArrayList<>(List.of(List.of("cupping", "blind")));
        blind.forEach((name, codes) -> {
            if (codes) {
                rows.add(List.of(name, "yes"));
            }
        });
        return rows;
    }

    /**
     * Writes cuppings.csv and, where something is known of a cupping, sessions.csv.
     *
     * @throws IOException if a file is there already or cannot be written
     */
    void write(Path folder) throws IOException {
        if (cups.isEmpty()) {
            return;
        }
        write(folder.resolve(LogbookFiles.CUPPINGS), cuppings());
        if (sessions().size() > 1) {
            write(folder.resolve(LogbookFiles.SESSIONS), sessions());
        }
    }

    private static void write(Path file, List<List<String>> rows) throws IOException {
        WholeFile.at(file).ifNew().write(CsvText.of(rows));
    }

    /** Returns the lines of logbook.properties that state scales; an attribute that two sheets score on two scales gets none. */
    List<String> settings() {
        List<String> lines = new ArrayList<>();
        scales().forEach((attribute, ranges) -> {
            if (ranges.size() == 1) {
                lines.add("scale." + attribute.replaceAll("[\\s=:]+", ".") + "="
                        + ranges.iterator().next());
            }
        });
        return lines;
    }

    private Map<String, Set<String>> scales() {
        Map<String, Set<String>> scales = new TreeMap<>();
        Set<String> written = new LinkedHashSet<>();
        cups.forEach(cup -> written.addAll(cup.cup().scores().keySet()));
        sheets.values()
                .forEach(sheet -> sheet.scales().stream()
                        .filter(scale -> written.contains(scale.attribute()))
                        .forEach(scale -> scales.computeIfAbsent(scale.attribute(), a -> new LinkedHashSet<>())
                                .add(Numbers.written(scale.low()) + ".." + Numbers.written(scale.high()))));
        return scales;
    }

    /** Returns what was read another way than it stands, a sentence each. */
    List<String> told() {
        return told;
    }
}
