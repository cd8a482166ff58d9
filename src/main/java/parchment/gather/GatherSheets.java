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

/** Joins sheets that list batches, one a row, to the batches that recordings gave, asking what each column means. */
final class GatherSheets {
    private static final int FIRST_ROWS = 3;
    private static final double SAME_MARK_SECONDS = 15;

    private final GatherQuestions questions;
    private final GatherNames names;
    private final Map<String, GatheredBatch> batches;
    private final Map<String, String> units = new LinkedHashMap<>();
    private GatherLosses losses = new GatherLosses();

    GatherSheets(GatherQuestions questions, List<GatheredBatch> recordings) {
        this.questions = questions;
        this.names = new GatherNames(questions);
        this.batches = new LinkedHashMap<>();
        names.ofRecordings(recordings).forEach(batch -> batches.put(batch.name(), batch));
    }

    List<GatheredBatch> batches() {
        return new ArrayList<>(batches.values());
    }

    /** Reads one sheet. */
    void join(StrangeFile sheet, String letter) {
        String key = "sheet." + letter + ".";
        questions.say("");
        questions.say("Sheet " + letter + ": " + Words.quote(sheet.fileName()) + ", "
                + Words.count(sheet.rows().size(), "row", "rows") + ". It starts:");
        sheet.firstLines(FIRST_ROWS).forEach(line -> questions.say("    " + line));
        if (!questions.yes(key + "is.list", "Is this a list of batches, one a row?", isList(sheet) ? "yes" : "no")) {
            int rows = sheet.rows().size();
            questions.say("  Left out: it is no list of batches, and for a recording "
                    + (rows < MeaningProposal.FEWEST_ROWS
                            ? "it has " + Words.count(rows, "row", "rows") + " where " + MeaningProposal.FEWEST_ROWS
                                    + " are needed."
                            : "a column of rising times and one of bean temperatures are needed."));
            return;
        }
        if (sheet.ragged() > 0) {
            questions.say("  " + Words.count(sheet.ragged(), "row", "rows") + " of another width left out.");
        }
        GatherSheetColumns columns = new GatherSheetColumns(sheet, questions);
        List<Header> meanings = columns.onlyOnce(meanings(sheet, key));
        Optional<Integer> batch = place(meanings, "batch");
        if (batch.isEmpty()) {
            questions.say("  No column names the batches: the sheet is left out.");
            return;
        }
        DateOrder order = order(sheet, meanings, key);
        boolean minutes = spreadsheetTimes(sheet, meanings, key);
        Map<String, String> same = sameNames(sheet, meanings, batch.get(), order, key);
        List<String> headings = columns.headings(meanings);
        losses = new GatherLosses();
        for (List<String> row : sheet.rows()) {
            String written = row.get(batch.get());
            if (written.isEmpty()) {
                losses.unnamed(row);
            } else {
                String recording = same.get(written);
                String name = recording == null ? names.ofRow(written) : recording;
                losses.row(name);
                row(sheet, row, meanings, headings, name, order, minutes);
            }
        }
        losses.say(questions);
    }

    private static boolean isList(StrangeFile sheet) {
        return IntStream.range(0, sheet.headings().size())
                .anyMatch(i -> SheetProposal.propose(StrangeColumn.of(sheet, i)).equals("batch"));
    }

    private List<Header> meanings(StrangeFile sheet, String key) {
        List<Header> meanings = new ArrayList<>();
        for (int i = 0; i < sheet.headings().size(); i++) {
            StrangeColumn column = StrangeColumn.of(sheet, i);
            String answer = questions.ask(
                    key + "column." + (i + 1),
                    "Column " + (i + 1) + " " + Words.quote(column.heading()) + " (such as "
                            + Words.quote(column.first()) + ")" + doubt(SheetProposal.propose(column), column)
                            + ". What is it?",
                    SheetProposal.propose(column),
                    SheetProposal::isKnown,
                    "a heading of batches.csv with its unit, " + String.join(", ", SheetProposal.OWN_WORDS));
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

    private DateOrder order(StrangeFile sheet, List<Header> meanings, String key) {
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
        return asked
                ? GatherRecordings.dateOrder(questions, key + "date.order", WrittenDate.certainOrder(first, second))
                : DateOrder.ISO_ONLY;
    }

    private boolean spreadsheetTimes(StrangeFile sheet, List<Header> meanings, String key) {
        for (int i = 0; i < meanings.size(); i++) {
            String unit = meanings.get(i).plainUnit();
            String first = StrangeColumn.of(sheet, i).first();
            if (unit.equals("min:s") && Value.looksLikeSpreadsheetMinutes(first)) {
                return questions.yes(
                        key + "minutes",
                        "The sheet has times such as " + first
                                + ". Spreadsheets write minutes and seconds so, and no roast lasts "
                                + first.substring(0, first.indexOf(':')) + " hours. Does it mean "
                                + first.substring(0, first.lastIndexOf(':')) + " in minutes and seconds?",
                        "yes");
            }
        }
        return false;
    }

    /** Matches rows with recordings whose names end in the same number, if a person agrees. */
    private Map<String, String> sameNames(
            StrangeFile sheet, List<Header> meanings, int batch, DateOrder order, String key) {
        SheetNames numbers = new SheetNames(batches.values());
        Optional<Integer> date = place(meanings, SheetProposal.DATE).or(() -> place(meanings, "roasted at"));
        Map<String, String> same = new LinkedHashMap<>();
        int rows = 0;
        for (List<String> row : sheet.rows()) {
            String name = row.get(batch);
            rows += name.isEmpty() ? 0 : 1;
            Optional<LocalDate> day =
                    date.flatMap(place -> Value.date(row.get(place).split("[T ]")[0], order));
            if (!batches.containsKey(name)) {
                numbers.recordingOf(name, day).ifPresent(recording -> same.put(name, recording));
            }
        }
        if (same.isEmpty()) {
            return same;
        }
        Map.Entry<String, String> first = same.entrySet().iterator().next();
        boolean agreed = questions.yes(
                key + "same.names",
                "Batch " + Words.quote(first.getKey()) + " of the sheet and the recording "
                        + Words.quote(first.getValue())
                        + " have the same number, once zeros in front are dropped, and the same day where both have one; so do "
                        + same.size() + " of "
                        + Words.count(rows, "row", "rows") + ". Are they the same batches?",
                "yes");
        return agreed ? same : Map.of();
    }

    private void row(
            StrangeFile sheet,
            List<String> row,
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
                mark(name, mark.get(), cell, meaning, sheet.decimal(), minutes)
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
                written.put(headings.get(i), number(cell, sheet.decimal()));
            } else {
                value(meaning, cell, sheet.decimal(), written);
            }
        }
        Optional<LocalTime> clock = time;
        Optional<LocalDateTime> instant = at;
        if (instant.isEmpty() && day.isPresent() && clock.isPresent()) {
            instant = Optional.of(day.get().atTime(clock.get()));
        }
        GatheredBatch known = batches.get(name);
        if (clock.isPresent() && day.isEmpty() && instant.isEmpty()) {
            losses.withoutDate(name, clock.get().toString());
        }
        if (known != null) {
            losses.otherValues(name, known.written(), written);
            losses.otherTime(known, instant, day);
        }
        GatheredBatch base = known != null
                ? known
                : new GatheredBatch(
                        name,
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        0,
                        0,
                        0,
                        Map.of(),
                        Map.of(),
                        List.of());
        batches.put(name, withMarks(base, marks).with(written, instant, day));
    }

    private GatheredBatch withMarks(GatheredBatch batch, Map<MarkKind, Double> fromSheet) {
        Map<MarkKind, Double> marks = new LinkedHashMap<>(batch.marks());
        fromSheet.forEach((mark, seconds) -> {
            Double typed = marks.putIfAbsent(mark, seconds);
            if (typed != null && Math.abs(typed - seconds) > SAME_MARK_SECONDS) {
                questions.say("  Batch " + Words.quote(batch.name()) + ": the " + mark
                        + " was typed beside the readings " + Math.round(Math.abs(typed - seconds))
                        + " s away from where the sheet has it; the typed one is kept.");
            }
        });
        return batch.withMarks(marks);
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
        questions.say("  Batch " + Words.quote(batch) + ": " + Words.quote(cell) + " is no time for the " + mark
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
