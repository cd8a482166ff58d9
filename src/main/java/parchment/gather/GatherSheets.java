package parchment.gather;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import parchment.logbook.LogbookFiles;
import parchment.logbook.MarkKind;
import parchment.quantity.MassUnit;
import parchment.quantity.TemperatureUnit;
import parchment.sheet.DateOrder;
import parchment.sheet.Header;
import parchment.sheet.Numbers;
import parchment.sheet.Value;
import parchment.sheet.Words;

/** Reads sheets that list batches, one a row, saying what each column is taken for. */
final class GatherSheets {
    private static final int FIRST_ROWS = 3;

    private final GatherQuestions questions;
    private final DateOrder dates;
    private final Map<String, String> units = new LinkedHashMap<>();
    private GatherLosses losses = new GatherLosses();

    GatherSheets(GatherQuestions questions, DateOrder dates) {
        this.questions = questions;
        this.dates = dates;
    }

    /** Returns what the rows of one sheet say, each of one batch. */
    List<ListedBatch> rows(Table sheet, String letter) {
        String key = "sheet." + letter + ".";
        questions.say("");
        questions.say("Sheet " + letter + ": " + Source.of(sheet).shown() + ", "
                + Words.count(sheet.rows().size(), "row", "rows") + ". It starts:");
        sheet.above().stream().limit(FIRST_ROWS).forEach(cells -> questions.say("    " + String.join(" | ", cells)));
        questions.say("    " + String.join(" | ", sheet.headings()));
        sheet.rows().stream().limit(FIRST_ROWS).forEach(cells -> questions.say("    " + String.join(" | ", cells)));
        if (!questions.tellYes(key + "is.list", "It is a list of batches, one a row", isList(sheet) ? "yes" : "no")) {
            int rows = sheet.rows().size();
            questions.leaveOut(Source.of(sheet).shown() + ": it is no list of batches, and for a recording "
                    + (rows < MeaningProposal.FEWEST_ROWS
                            ? "it has " + Words.count(rows, "row", "rows") + " where " + MeaningProposal.FEWEST_ROWS
                                    + " are needed."
                            : "a column of rising times and one of bean temperatures are needed."));
            return List.of();
        }
        sheet.leftOut().forEach(line -> questions.leaveOut(Source.of(sheet).shown() + ": " + line + "."));
        GatherSheetColumns columns = new GatherSheetColumns(sheet, questions);
        List<Header> meanings = columns.onlyOnce(meanings(sheet, key));
        Optional<Integer> batch = place(meanings, "batch");
        if (batch.isEmpty()) {
            questions.leaveOut(Source.of(sheet).shown() + ": no column names the batches, so the sheet is left out.");
            return List.of();
        }
        DateOrder order = order(sheet, meanings, key);
        boolean minutes = spreadsheetTimes(sheet, meanings, key);
        List<String> headings = columns.headings(meanings);
        losses = new GatherLosses();
        List<ListedBatch> listed = new ArrayList<>();
        for (int i = 0; i < sheet.rows().size(); i++) {
            List<String> row = sheet.rows().get(i);
            String written = row.get(batch.get());
            if (written.isEmpty()) {
                losses.unnamed(row);
            } else {
                listed.add(row(sheet, i, meanings, headings, written, order, minutes));
            }
        }
        losses.say(questions);
        return listed;
    }

    private static boolean isList(Table sheet) {
        return IntStream.range(0, sheet.headings().size())
                .anyMatch(i -> SheetProposal.propose(StrangeColumn.of(sheet, i)).equals("batch"));
    }

    private List<Header> meanings(Table sheet, String key) {
        List<Header> meanings = new ArrayList<>();
        for (int i = 0; i < sheet.headings().size(); i++) {
            StrangeColumn column = StrangeColumn.of(sheet, i);
            String proposal = SheetProposal.propose(column);
            String doubt = doubt(proposal, column);
            String which = "Column " + (i + 1) + " " + Words.quote(column.heading()) + " of " + Source.of(sheet).shown()
                    + " (such as " + Words.quote(column.first()) + ")";
            String choices = "a heading of batches.csv with its unit, " + String.join(", ", SheetProposal.OWN_WORDS);
            String answer = doubt.isEmpty()
                    ? questions.tell(key + "column." + (i + 1), which, proposal, SheetProposal::isKnown, choices)
                    : questions.ask(
                            key + "column." + (i + 1),
                            which + doubt + ". What is it?",
                            proposal,
                            SheetProposal::isKnown,
                            choices,
                            column.filled());
            meanings.add(Header.parse(answer));
        }
        return meanings;
    }

    private static String doubt(String proposal, StrangeColumn column) {
        boolean unitKnown = Header.parse(column.heading()).brackets() != Header.Brackets.NONE;
        return proposal.contains(" mass [kg]") && !unitKnown
                ? " has no unit, and the numbers fit kg as well as lb"
                : "";
    }

    private static Optional<Integer> place(List<Header> meanings, String name) {
        for (int i = 0; i < meanings.size(); i++) {
            if (meanings.get(i).name().equals(name)) {
                return Optional.of(i);
            }
        }
        return Optional.empty();
    }

    private DateOrder order(Table sheet, List<Header> meanings, String key) {
        int first = 0;
        int second = 0;
        boolean asked = false;
        for (String name : List.of(SheetProposal.DATE, "roasted at")) {
            Optional<Integer> place = place(meanings, name);
            if (place.isPresent()) {
                StrangeColumn column = StrangeColumn.of(sheet, place.get());
                int[] parts = column.highestDateParts();
                asked |= !column.first().matches("\\d{4}-.*") && column.filled() > 0;
                first = Math.max(first, parts[0]);
                second = Math.max(second, parts[1]);
            }
        }
        if (!asked) {
            return DateOrder.ISO_ONLY;
        }
        String own = questions.raw(key + "date.order");
        for (DateOrder order : DateOrder.values()) {
            if (order.words().equals(own)) {
                questions.keep(key + "date.order", own);
                return order;
            }
        }
        DateOrder certain = WrittenDate.certainOrder(first, second);
        return certain != DateOrder.ISO_ONLY ? certain : dates;
    }

    private boolean spreadsheetTimes(Table sheet, List<Header> meanings, String key) {
        for (int i = 0; i < meanings.size(); i++) {
            String unit = meanings.get(i).plainUnit();
            String first = StrangeColumn.of(sheet, i).first();
            if (unit.equals("min:s") && Value.looksLikeSpreadsheetMinutes(first)) {
                return questions.tellYes(
                        key + "minutes",
                        "Times such as " + first + " mean " + first.substring(0, first.lastIndexOf(':'))
                                + " in minutes and seconds: spreadsheets write them so, and no roast lasts "
                                + first.substring(0, first.indexOf(':')) + " hours",
                        "yes");
            }
        }
        return false;
    }

    private ListedBatch row(
            Table sheet,
            int place,
            List<Header> meanings,
            List<String> headings,
            String name,
            DateOrder order,
            boolean minutes) {
        Map<String, String> written = new LinkedHashMap<>();
        Map<MarkKind, Double> marks = new LinkedHashMap<>();
        Optional<LocalDate> day = Optional.empty();
        Optional<LocalTime> time = Optional.empty();
        Optional<LocalDateTime> at = Optional.empty();
        List<String> row = sheet.rows().get(place);
        for (int i = 0; i < row.size(); i++) {
            String cell = row.get(i);
            Header meaning = meanings.get(i);
            Optional<MarkKind> mark = LogbookFiles.MARKS.stream()
                    .filter(m -> m.words().equals(meaning.name()))
                    .findFirst();
            if (cell.isEmpty()
                    || meaning.name().equals("leave out")
                    || meaning.name().equals("batch")) {
                continue;
            }
            if (mark.isPresent()) {
                mark(name, mark.get(), cell, meaning, sheet.sheet().decimal(), minutes)
                        .ifPresent(s -> marks.put(mark.get(), s));
            } else if (meaning.name().equals(SheetProposal.DATE)) {
                day = Value.date(cell, order);
                losses.unreadable(name, cell, day);
            } else if (meaning.name().equals(SheetProposal.CHARGE_TIME)) {
                time = Value.timeOfDay(cell);
                losses.unreadable(name, cell, time);
            } else if (meaning.name().equals("roasted at")) {
                at = Value.local(cell, order);
                day = at.map(LocalDateTime::toLocalDate).or(() -> Value.date(cell, order));
                losses.unreadable(name, cell, day);
            } else if (meaning.name().equals("extra")) {
                written.put(headings.get(i), number(cell, sheet.sheet().decimal()));
            } else {
                value(meaning, cell, sheet.sheet().decimal(), written);
            }
        }
        Optional<LocalTime> clock = time;
        Optional<LocalDateTime> instant = at;
        if (instant.isEmpty() && day.isPresent() && clock.isPresent()) {
            instant = Optional.of(day.get().atTime(clock.get()));
        }
        if (clock.isPresent() && day.isEmpty() && instant.isEmpty()) {
            losses.withoutDate(name, clock.get().toString());
        }
        return new ListedBatch(
                name, instant, day, written, marks, List.of(), sheet, sheet.lines().get(place));
    }

    private Optional<Double> mark(
            String batch, MarkKind mark, String cell, Header meaning, Numbers.Decimal decimal, boolean minutes) {
        double seconds = Value.TimeUnit.of(meaning.plainUnit())
                .map(unit -> Value.seconds(cell, unit, decimal))
                .orElse(Double.NaN);
        if (Double.isNaN(seconds) && minutes && Value.looksLikeSpreadsheetMinutes(cell)) {
            seconds = Value.spreadsheetMinutes(cell);
        }
        if (seconds >= 0) {
            return Optional.of(seconds);
        }
        questions.leaveOut("Batch " + Words.quote(batch) + ": " + Words.quote(cell) + " is no time for the " + mark
                + "; left out.");
        return Optional.empty();
    }

    /** Keeps a value under its heading; where two sheets use two units, the second is converted to the first's. */
    private void value(Header meaning, String cell, Numbers.Decimal decimal, Map<String, String> written) {
        String unit = units.computeIfAbsent(meaning.name(), n -> meaning.unit());
        String heading = unit.isEmpty() ? meaning.name() : meaning.name() + " [" + unit + "]";
        double number = Numbers.parse(cell, decimal);
        if (unit.equals(meaning.unit()) || Double.isNaN(number)) {
            written.put(heading, number(cell, decimal));
            return;
        }
        String wanted = Header.parse("x [" + unit + "]").plainUnit();
        Optional<MassUnit> massFrom = meaning.massUnit();
        Optional<MassUnit> massTo = Header.massUnit(wanted);
        Optional<TemperatureUnit> from = meaning.temperatureUnit();
        Optional<TemperatureUnit> to = Header.temperatureUnit(wanted);
        double converted = massFrom.isPresent() && massTo.isPresent()
                ? massTo.get().fromKilograms(massFrom.get().toKilograms(number))
                : from.isPresent() && to.isPresent()
                        ? to.get().fromCelsius(from.get().toCelsius(number))
                        : Double.NaN;
        if (Double.isNaN(converted)) {
            written.put(meaning.written(), number(cell, decimal));
        } else {
            written.put(heading, String.format(Locale.ROOT, "%.4f", converted));
        }
    }

    private static String number(String cell, Numbers.Decimal decimal) {
        return decimal != Numbers.Decimal.POINT && !Double.isNaN(Numbers.parse(cell, decimal))
                ? cell.replace(',', '.')
                : cell;
    }
}
