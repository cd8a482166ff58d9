package parchment.gather;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import parchment.logbook.LogbookFiles;
import parchment.sheet.Header;
import parchment.sheet.Words;

/** Tells what the tables that are no recordings are taken for, and reads those that list batches. */
final class GatherSheets {
    private static final int FIRST_ROWS = 3;
    private static final int MOST_LINES = 50;
    private static final Pattern LINE = Pattern.compile("^Line (\\d+)");
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

    GatherSheets(GatherQuestions questions, GatherDates dates, Clues clues) {
        this.questions = questions;
        this.dates = dates;
        this.clues = clues;
    }

    /** Returns what a table is taken for, or was answered to be. */
    TableKind.What kind(Table sheet, String letter, List<TableKind> claims) {
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
        questions.say("Sheet " + letter + ": " + Source.of(sheet).shown() + ", "
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
    private static TableKind owned(Table sheet, TableKind found) {
        Set<String> own = sheet.headings().stream()
                .map(Header::parse)
                .filter(header -> header.name().equals("batch") || LogbookFiles.isBatchColumn(header))
                .map(Header::name)
                .collect(Collectors.toSet());
        return found.what() == TableKind.What.NOTHING && own.size() > 1 && own.contains("batch")
                ? new TableKind(TableKind.What.BATCHES, TableKind.LEAST, "has the headings of a logbook's list")
                : found;
    }

    private static List<String> first(Table sheet) {
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

    /** Says why a table is left out. */
    void leaveOut(Table sheet) {
        int rows = sheet.rows().size();
        questions.leaveOut(Source.of(sheet).shown() + ": it is no list of batches, and for a recording "
                + (rows < MeaningProposal.FEWEST_ROWS
                        ? "it has " + Words.count(rows, "row", "rows") + " where " + MeaningProposal.FEWEST_ROWS
                                + " are needed."
                        : "a column of rising times and one of bean temperatures are needed."));
    }

    /** Returns what the rows of a list of batches say. */
    List<ListedBatch> rows(Table sheet, String letter) {
        ListColumns columns = columns(ListColumns.of(sheet, clues), "sheet." + letter + ".");
        BatchList list = BatchList.of(columns, dates.of(sheet));
        say(sheet, list.told());
        return list.batches();
    }

    /** Tells what was left out of a table: one line of each kind, with how many more there are. */
    void say(Table sheet, List<String> told) {
        Map<String, List<String>> alike = new LinkedHashMap<>();
        told.forEach(line -> alike.computeIfAbsent(
                        line.replaceFirst("^Line \\d+:? ", "").replaceAll("'[^']*'|\\d+", "#"), k -> new ArrayList<>())
                .add(line));
        alike.values()
                .forEach(lines -> questions.leaveOut(Source.of(sheet).shown() + ": " + lines.get(0)
                        + (lines.size() == 1
                                ? ""
                                : " So " + Words.count(lines.size() - 1, "more row", "more rows")
                                        + places(lines.subList(1, lines.size())) + ".")));
    }

    /** Returns on which lines sentences say that they are, as the rest of a sentence; "" where they do not. */
    private static String places(List<String> sentences) {
        List<String> places = sentences.stream()
                .map(LINE::matcher)
                .filter(Matcher::find)
                .map(line -> line.group(1))
                .toList();
        String first = String.join(", ", places.subList(0, Math.min(MOST_LINES, places.size())));
        return places.isEmpty()
                ? ""
                : (places.size() == 1 ? ", line " : ", lines ")
                        + first
                        + (places.size() > MOST_LINES ? " and " + (places.size() - MOST_LINES) + " more" : "");
    }

    /** Returns the columns of a table as its values and names say, before anybody is asked. */
    ListColumns found(Table sheet) {
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
            String which = "Column " + (column.place() + 1) + " " + Words.quote(column.heading()) + " of "
                    + Source.of(found.table()).shown() + (reason(column).startsWith("its ") ? ", " : " ")
                    + reason(column);
            String choices =
                    Arrays.stream(ListMeaning.values()).map(ListMeaning::words).collect(Collectors.joining(", "))
                            + ", with a unit where one is needed, such as green mass [kg]";
            int filled = (int) found.table().column(column.place()).stream()
                    .filter(cell -> !cell.isBlank())
                    .count();
            String answer = column.confidence() == ListColumn.Confidence.OPEN && !follows
                    ? questions.ask(own, which + ". What is it?", proposal, text -> isKnown(text), choices, filled)
                    : questions.tell(own, which, proposal, text -> isKnown(text), choices);
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

    private static boolean isKnown(String answer) {
        return meaning(answer).isPresent() || LogbookFiles.isBatchColumn(Header.parse(answer));
    }

    private static Optional<ListMeaning> meaning(String answer) {
        String name = Header.parse(answer).name();
        return name.equals("time of charge") ? Optional.of(ListMeaning.TIME_OF_DAY) : ListMeaning.of(name);
    }
}
