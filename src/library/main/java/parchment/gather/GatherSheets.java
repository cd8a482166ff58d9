package parchment.gather;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import parchment.logbook.LogbookFiles;
import parchment.sheet.Header;
import parchment.sheet.Words;

/** Tells what the tables that are no recordings are taken for, and reads those that list batches. */
final class GatherSheets {
    private static final int FIRST_ROWS = 3;
    private static final Pattern KEY_AT_END = Pattern.compile(" \\([^()]*\\)$");
    private static final Set<ListMeaning> OWN = Set.of(
            ListMeaning.BATCH,
            ListMeaning.DATE,
            ListMeaning.TIME_OF_DAY,
            ListMeaning.ROASTED_AT,
            ListMeaning.LOT,
            ListMeaning.NOTE);

    private final GatherQuestions questions;
    private final GatherDates dates;
    private final Clues clues;
    private final Map<String, String> columnsSaid = new HashMap<>();
    private final Map<String, List<FoundTable>> nothing = new LinkedHashMap<>();

    GatherSheets(GatherQuestions questions, GatherDates dates, Clues clues) {
        this.questions = questions;
        this.dates = dates;
        this.clues = clues;
    }

    /** Returns what a table is taken for, or was answered to be. */
    TableKind.What kind(FoundTable sheet, String letter, List<TableKind> claims) {
        String key = "sheet." + letter + ".";
        TableKind found = owned(sheet, TableKind.of(sheet, clues, claims));
        TableKind.What proposal = found.what() == TableKind.What.RECORDING ? TableKind.What.NOTHING : found.what();
        // Whether it is a list was all that was asked once; such answers are still read.
        String list = questions.raw(key + "is.list").toLowerCase(Locale.ROOT);
        if (!list.isEmpty()) {
            questions.keep(key + "is.list", list);
            proposal = list.startsWith("y")
                    ? TableKind.What.BATCHES
                    : proposal == TableKind.What.BATCHES ? TableKind.What.NOTHING : proposal;
        }
        questions.say("");
        questions.say("Sheet " + letter + ": " + TablePlace.of(sheet).shown() + ", "
                + Words.count(sheet.rows().size(), "row", "rows") + ". It starts:");
        first(sheet).forEach(line -> questions.say("    " + line));
        List<TableKind.What> kinds = Arrays.stream(TableKind.What.values())
                .filter(what -> what != TableKind.What.RECORDING)
                .toList();
        String choices = kinds.stream().map(TableKind.What::words).collect(Collectors.joining(", "));
        String answer = questions.tell(
                key + "kind",
                "It is taken for this, because it " + found.reason(),
                proposal.words(),
                text -> kinds.stream().anyMatch(what -> what.words().equals(text)),
                choices);
        return kinds.stream()
                .filter(what -> what.words().equals(answer))
                .findFirst()
                .orElse(TableKind.What.NOTHING);
    }

    /** A table with the logbook's own headings is a list, however short it is. */
    private static TableKind owned(FoundTable sheet, TableKind found) {
        Set<String> own = sheet.headings().stream()
                .map(Header::parse)
                .filter(header -> header.name().equals("batch") || LogbookFiles.isBatchColumn(header))
                .map(Header::name)
                .collect(Collectors.toSet());
        return found.what() == TableKind.What.NOTHING && own.size() > 1 && own.contains("batch")
                ? new TableKind(TableKind.What.BATCHES, TableKind.LEAST, "has the headings of a logbook's list")
                : found;
    }

    private static List<String> first(FoundTable sheet) {
        List<String> lines = new ArrayList<>();
        sheet.above().stream().limit(FIRST_ROWS).forEach(cells -> lines.add(joined(cells)));
        lines.add(joined(sheet.headings()));
        sheet.rows().stream().limit(FIRST_ROWS).forEach(cells -> lines.add(joined(cells)));
        return lines;
    }

    private static String joined(List<String> cells) {
        String line = String.join(" | ", cells);
        return line.length() <= 160
                ? line
                : line.substring(0, line.offsetByCodePoints(0, line.codePointCount(0, 160))) + " …";
    }

    /**
     * Takes a table that is none of these: another of the same file, or with the same headings, is counted with the first and not shown again.
     *
     * @param from where what was said of it begins
     */
    void leaveOut(FoundTable sheet, String letter, int from) {
        String file = TablePlace.of(sheet).toString();
        String headings = sheet.headings().toString();
        String like = nothing.containsKey(file) ? file : nothing.containsKey(headings) ? headings : "";
        if (like.isEmpty()) {
            List<FoundTable> alike = new ArrayList<>(List.of(sheet));
            nothing.put(file, alike);
            nothing.put(headings, alike);
            return;
        }
        nothing.getOrDefault(like, List.of()).add(sheet);
        questions.takeBack(
                from,
                "Sheet " + letter + ": " + TablePlace.of(sheet).shown() + ", as the one before (sheet." + letter
                        + ".kind).");
    }

    /** Returns how many lines were said so far. */
    int said() {
        return questions.taken().size();
    }

    /** Says why tables are left out, those that are alike in one line. */
    void sayLeftOut() {
        nothing.values().stream().distinct().forEach(this::leaveOut);
    }

    private void leaveOut(List<FoundTable> alike) {
        FoundTable sheet = alike.get(0);
        int rows = sheet.rows().size();
        if (alike.size() > 1) {
            boolean one = alike.stream().map(TablePlace::of).distinct().count() == 1;
            questions.leaveOut(
                    one
                            ? TablePlace.of(sheet).shown() + ": its " + alike.size()
                                    + " tables are no lists of batches, no score sheets and no recordings; left out."
                            : alike.size() + " tables with the same headings, "
                                    + alike.stream()
                                            .map(table -> TablePlace.of(table).shown())
                                            .distinct()
                                            .collect(Collectors.joining(", "))
                                    + ": they are no lists of batches, and for recordings a column of rising times and"
                                    + " one of bean temperatures, and " + MeaningProposal.FEWEST_ROWS
                                    + " rows, are needed.");
            return;
        }
        questions.leaveOut(TablePlace.of(sheet).shown() + ": it is no list of batches, and for a recording "
                + (rows < MeaningProposal.FEWEST_ROWS
                        ? "it has " + Words.count(rows, "row", "rows") + " where " + MeaningProposal.FEWEST_ROWS
                                + " are needed."
                        : "a column of rising times and one of bean temperatures are needed."));
    }

    /** Returns what the rows of a list of batches say. */
    List<ListedBatch> rows(FoundTable sheet, String letter) {
        int from = questions.taken().size();
        ListColumns columns = columns(ListColumns.of(sheet, clues), "sheet." + letter + ".");
        sayOnce(sheet.headings(), letter, from);
        BatchList list = BatchList.of(columns, dates.of(sheet));
        say(sheet, list.told());
        return list.batches();
    }

    /** Sheets with the same headings whose columns are the same say so, and not each column again. */
    private void sayOnce(List<String> headings, String letter, int from) {
        List<String> said = questions.taken().subList(from, questions.taken().size()).stream()
                .map(line -> KEY_AT_END
                        .matcher(line.substring(Math.max(0, line.lastIndexOf(": "))))
                        .replaceFirst(""))
                .toList();
        boolean answered = questions.keys("sheet." + letter + ".column.").isEmpty();
        String before = columnsSaid.putIfAbsent(headings + "\n" + said, letter);
        if (before != null && answered && !said.isEmpty()) {
            questions.takeBack(
                    from,
                    "  Its columns are the same as those of sheet " + before + " (sheet." + letter
                            + ".column.1 and so on).");
        }
    }

    /** Tells what was left out of a table, a line each. */
    void say(FoundTable sheet, List<String> told) {
        told.forEach(line -> questions.leaveOut(TablePlace.of(sheet).shown() + ": " + line));
    }

    /** Returns the columns of a table as its values and names say, before anybody is asked. */
    ListColumns found(FoundTable sheet) {
        return ListColumns.of(sheet, clues);
    }

    /** Returns the columns as they are told, or were answered. */
    ListColumns columns(ListColumns found, String key) {
        ListColumns settled = owned(found);
        for (ListColumn column : settled.columns()) {
            String own = key + "column." + (column.place() + 1);
            // Nobody weighs the green coffee in one unit and the roasted in another.
            Optional<ListColumn> green = column.meaning() == ListMeaning.ROASTED_MASS
                    ? settled.of(ListMeaning.GREEN_MASS)
                            .filter(mass -> !mass.unit().isEmpty())
                    : Optional.empty();
            boolean follows = green.isPresent() && column.confidence() == ListColumn.Confidence.OPEN;
            String unit = follows ? green.get().unit() : column.unit();
            String proposal = answer(column.meaning(), unit);
            String named = "Column " + (column.place() + 1) + " " + Words.quote(column.heading());
            String because = (reason(column).startsWith("its ") ? ", " : " ") + reason(column);
            // An open question is asked far from the table that it is about; what is told stands below it.
            String which = named + " of " + TablePlace.of(found.table()).shown() + because;
            boolean doubted = green.filter(mass ->
                            mass.unit().equals(column.unit()) && questions.isOpen(key + "column." + (mass.place() + 1)))
                    .isPresent();
            String follower =
                    named + because + (doubted ? "; its unit follows the green mass, and is in doubt with it" : "");
            String choices =
                    Arrays.stream(ListMeaning.values()).map(ListMeaning::words).collect(Collectors.joining(", "))
                            + ", with a unit where one is needed, such as green mass [kg]; or the unit alone, such as lb";
            int filled = (int) found.table().column(column.place()).stream()
                    .filter(cell -> !cell.isBlank())
                    .count();
            Predicate<String> known = text -> isKnown(text) || isUnit(text, column.meaning());
            String said = column.confidence() == ListColumn.Confidence.OPEN && !follows
                    ? questions.ask(own, which + ". What is it?", proposal, known, choices, filled)
                    : questions.tell(own, follower, proposal, known, choices);
            String answer = isUnit(said, column.meaning()) ? answer(column.meaning(), said) : said;
            if (!answer.equals(answer(column.meaning(), column.unit()))) {
                settled = settledWith(settled, column, meaning(answer).orElse(ListMeaning.EXTRA), answer);
            }
        }
        return settled;
    }

    private static ListColumns settledWith(ListColumns columns, ListColumn column, ListMeaning meaning, String answer) {
        String unit = Header.parse(answer).unit();
        return columns.with(
                column.place(), meaning, unit.isEmpty() && meaning == column.meaning() ? column.unit() : unit);
    }

    private static String reason(ListColumn column) {
        return column.reason().equals("was answered so") ? "has the logbook's own heading" : column.reason();
    }

    /** A heading that is the logbook's own says what its column is, whatever a few odd values look like. */
    private static ListColumns owned(ListColumns found) {
        ListColumns settled = found;
        for (ListColumn column : found.columns()) {
            Header header = Header.parse(column.heading());
            Optional<ListMeaning> own = meaning(
                            header.name().equals("charge time") ? "time of charge" : column.heading())
                    .filter(meaning -> OWN.contains(meaning));
            if (column.meaning() == ListMeaning.EXTRA
                    && own.isPresent()
                    && settled.of(own.get()).isEmpty()) {
                settled = settled.with(column.place(), own.get(), "");
            }
        }
        return settled;
    }

    private static String answer(ListMeaning meaning, String unit) {
        return meaning == ListMeaning.EXTRA || unit.isEmpty() ? meaning.words() : meaning.words() + " [" + unit + "]";
    }

    /** Returns whether an answer is only the unit of what the column is taken for. */
    private static boolean isUnit(String answer, ListMeaning meaning) {
        return switch (meaning.kind()) {
            case MASS -> answer.matches("kg|g|lb|oz");
            case ROAST_TEMPERATURE, ROOM_TEMPERATURE -> answer.matches("°C|°F|K");
            default -> false;
        };
    }

    private static boolean isKnown(String answer) {
        return meaning(answer).isPresent() || LogbookFiles.isBatchColumn(Header.parse(answer));
    }

    private static Optional<ListMeaning> meaning(String answer) {
        String name = Header.parse(answer).name();
        return name.equals("time of charge") ? Optional.of(ListMeaning.TIME_OF_DAY) : ListMeaning.of(name);
    }
}
