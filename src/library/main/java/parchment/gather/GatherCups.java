package parchment.gather;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import parchment.sheet.Words;

/** Reads score sheets and keys of blind codes, and finds the batch of each cup. */
final class GatherCups {
    private static final String UNKNOWN = "unknown";

    /** What a score sheet's column may be. */
    private static final String COLUMNS =
            "batch, blind code, lot, cupper, attribute, cup, tasted on, cupping, serving position, note, score, mean, something else";

    private final GatherQuestions questions;
    private final GatherDates dates;
    private final Map<String, FoundTable> sheets = new LinkedHashMap<>();
    private final Map<String, FoundTable> keys = new LinkedHashMap<>();

    /**
     * Holds the cups that have a batch.
     *
     * @param cups the cups
     * @param sheets the sheets that they are from
     */
    record Scored(List<CupJoin.Joined> cups, List<ScoreSheet> sheets) {
        /** Returns how many cups have the day of tasting without which none is written. */
        int written() {
            return (int) cups.stream()
                    .filter(cup -> cup.cup().tastedOn().isPresent())
                    .count();
        }

        CuppingsWriter writer() {
            return CuppingsWriter.of(cups, sheets);
        }
    }

    GatherCups(GatherQuestions questions, GatherDates dates) {
        this.questions = questions;
        this.dates = dates;
    }

    /** Returns what of a table's claims are of scores. */
    static List<TableKind> claims(FoundTable table, GatherDates dates, Set<String> batches) {
        ScoreClues clues = ScoreClues.of(batches).withDates(dates.of(table));
        List<TableKind> claims = new ArrayList<>();
        ScoreSheets.of(table, clues)
                .ifPresent(sheet -> claims.add(new TableKind(
                        TableKind.What.SCORES,
                        switch (sheet.confidence()) {
                            case CLEAR -> 0.9;
                            case LIKELY -> 0.65;
                            case DOUBTFUL -> 0.45;
                        },
                        "holds scores: " + sentence(sheet.reason()))));
        BlindKey.of(table, clues)
                .ifPresent(key -> claims.add(new TableKind(
                        TableKind.What.KEY,
                        table.headings().stream()
                                        .allMatch(head -> ScoreWords.key(head).isPresent())
                                ? 0.9
                                : 0.7,
                        "holds codes: " + key.reason())));
        return claims;
    }

    private static String sentence(String reason) {
        String text = reason.endsWith(".") ? reason.substring(0, reason.length() - 1) : reason;
        return text.startsWith("It ") ? "it " + text.substring(3) : text;
    }

    void addScores(String letter, FoundTable table) {
        sheets.put(letter, table);
    }

    void addKey(String letter, FoundTable table) {
        keys.put(letter, table);
    }

    /** Returns the cups with the batches they are of. */
    Scored of(List<GatheredBatch> batches, Map<GatheredBatch, List<String>> otherNames) {
        List<NamedBatch> named = batches.stream()
                .map(batch -> new NamedBatch(
                        batch.name(),
                        otherNames.getOrDefault(batch, List.of()),
                        batch.roastedAt().map(LocalDateTime::toLocalDate).or(batch::day),
                        batch.roastedAt().map(LocalDateTime::toLocalTime),
                        batch.written().getOrDefault("lot", "")))
                .toList();
        Set<String> names = new TreeSet<>();
        named.forEach(batch -> {
            names.add(batch.name());
            names.addAll(batch.otherNames());
        });
        Set<String> cuppers = new LinkedHashSet<>(ScoreForms.cuppers(sheets.values(), ScoreClues.of(names)));
        List<ScoreSheet> read = new ArrayList<>();
        sheets.forEach((letter, table) -> {
            ScoreClues clues =
                    stated(ScoreClues.of(names).withDates(dates.of(table)).withCuppers(cuppers), letter, table);
            Optional<ScoreSheet> sheet = ScoreSheets.of(table, clues)
                    .map(found -> dated(found, clues, letter, dayAbove(table, read)))
                    .map(found -> WhoScored.of(found, letter, questions));
            sheet.ifPresent(scores -> {
                scores.cups().stream()
                        .map(TastedCup::cupper)
                        .filter(name -> !name.isEmpty())
                        .forEach(cuppers::add);
                read.add(scores);
                questions.say("  " + TablePlace.of(table).shown() + ": "
                        + Words.count(scores.cups().size(), "cup", "cups") + " read.");
                scores.told()
                        .forEach(line -> questions.leaveOut(TablePlace.of(table).shown() + ": " + line));
                scores.open().stream()
                        .filter(line -> !line.equals(ScoreSheets.WHICH_DAY))
                        .forEach(line -> left(line, letter, table));
            });
            if (sheet.isEmpty()) {
                questions.leaveOut(TablePlace.of(table).shown() + ": no scores can be read in it.");
            }
        });
        List<BlindKey> codes = new ArrayList<>();
        keys.forEach((letter, table) -> BlindKey.of(table, ScoreClues.of(names).withDates(dates.of(table)))
                .ifPresent(key -> {
                    codes.add(key);
                    key.told()
                            .forEach(line ->
                                    questions.leaveOut(TablePlace.of(table).shown() + ": " + line));
                }));
        CupsTwice once = CupsTwice.of(
                read.stream().flatMap(sheet -> sheet.cups().stream()).toList());
        once.told().forEach(questions::leaveOut);
        return new Scored(new CupQuestions(questions).joined(CupJoin.of(once.cups(), codes, named)), read);
    }

    /** Says what a sheet leaves open; a scale that is not known leaves nothing out. */
    private void left(String line, String letter, FoundTable table) {
        String source = TablePlace.of(table).shown();
        if (line.startsWith(ScoreScales.OPEN)) {
            questions.say(
                    "  " + source + ": " + line
                            + " Until it is said, no score is taken to be off its scale (scale.acidity=0..10 says it of an attribute).");
            return;
        }
        questions.leaveOut(source + " leaves open: " + line
                + (line.contains(GatherDates.KEY)
                        ? ""
                        : " (sheet." + letter + ".column.1 and so on say what a column is)"));
    }

    /** Asks for the day of tasting, or the column that holds it, where cups cannot be written without. */
    private ScoreSheet dated(ScoreSheet sheet, ScoreClues clues, String letter, Optional<LocalDate> above) {
        if (!sheet.open().contains(ScoreSheets.WHICH_DAY)) {
            return sheet;
        }
        FoundTable table = sheet.table();
        long waiting = ScoreSheets.waiting(sheet.cups());
        Predicate<String> known = text -> text.equals(UNKNOWN)
                || heading(table, text).isPresent()
                || clues.day(text).isPresent();
        String choices = UNKNOWN + ", a day such as 2031-03-18, " + String.join(", ", table.headings());
        String key = "sheet." + letter + ".tasted";
        String answer = above.map(day -> questions.tell(
                        key,
                        "The cups of a table of " + TablePlace.of(table).shown()
                                + " have no day of their own, and are taken to be tasted on that of the table above them on the same sheet",
                        day.toString(),
                        known,
                        choices))
                .orElseGet(() -> questions.askOf(
                        key,
                        "On which day " + (waiting == 1 ? "was the cup" : "were the " + waiting + " cups") + " of "
                                + TablePlace.of(table).shown()
                                + " tasted? Without a day none of them is written. Answer with the day, or with the heading of the column that"
                                + " holds it.",
                        UNKNOWN,
                        known,
                        choices,
                        new GatherQuestions.Decides((int) waiting, "cup", "cups")));
        Optional<String> column = heading(table, answer);
        return column.isPresent()
                ? ScoreSheets.of(table, clues.withStated(column.get(), ScorePart.DAY))
                        .orElse(sheet)
                : clues.day(answer).map(sheet::on).orElse(sheet);
    }

    /** Tables one below the other on a sheet are of the day that stands above the first, where the ones above have one day and no other. */
    private static Optional<LocalDate> dayAbove(FoundTable table, List<ScoreSheet> before) {
        List<Optional<LocalDate>> days = before.stream()
                .filter(sheet -> TablePlace.of(sheet.table()).equals(TablePlace.of(table)))
                .flatMap(sheet -> sheet.cups().stream().map(TastedCup::tastedOn))
                .distinct()
                .toList();
        return days.size() == 1 ? days.get(0) : Optional.empty();
    }

    private static Optional<String> heading(FoundTable table, String text) {
        return table.headings().stream()
                .filter(heading -> !heading.isBlank() && heading.equalsIgnoreCase(text))
                .findFirst();
    }

    private ScoreClues stated(ScoreClues clues, String letter, FoundTable table) {
        ScoreClues stated = clues;
        for (int i = 0; i < table.headings().size(); i++) {
            String key = "sheet." + letter + ".column." + (i + 1);
            if (questions.has(key) && !questions.isAsked(key, COLUMNS)) {
                String answer = questions.tell(
                        key,
                        "Column " + (i + 1) + " " + Words.quote(table.headings().get(i)) + " of "
                                + TablePlace.of(table).shown(),
                        "",
                        text -> ScorePart.of(text).isPresent(),
                        COLUMNS);
                ScorePart part = ScorePart.of(answer).orElse(ScorePart.OTHER);
                stated = stated.withStated(table.headings().get(i), part);
            }
        }
        return stated;
    }
}
