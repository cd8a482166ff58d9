package parchment.gather;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import parchment.gather.ColumnClaim.UnitDoubt;
import parchment.logbook.MarkKind;
import parchment.sheet.DateOrder;
import parchment.sheet.Delimiter;
import parchment.sheet.Numbers;
import parchment.sheet.Words;

/** Shows a style of recordings, and tells or asks what its columns, dates and typed words mean. */
final class StyleColumns {
    private static final int WORDS_ASKED = 20;
    private static final int FIRST_ROWS = 3;
    private static final String NOTE = "note";
    private static final Pattern MASS = Pattern.compile(
            "(?iu)(?<![\\p{L}\\d.,])\\d+(?:[.,]\\d+)?\\s?(?:kg|kilo|g|gr|grams?|gramm|lbs?|oz)(?![\\p{L}\\d/])");

    private final GatherQuestions questions;
    private final GatherStyle style;
    private final String key;

    StyleColumns(GatherQuestions questions, GatherStyle style) {
        this.questions = questions;
        this.style = style;
        this.key = "style." + style.letter() + ".";
    }

    void show() {
        FoundTable sample = style.sample();
        List<String> told = new ArrayList<>();
        sample.above().stream().limit(FIRST_ROWS).forEach(cells -> told.add(String.join(" | ", cells)));
        told.add(String.join(" | ", sample.headings()));
        sample.rows().stream().limit(FIRST_ROWS).forEach(cells -> told.add(String.join(" | ", cells)));
        questions.say("");
        questions.say("Style " + style.letter() + ": "
                + Words.count(style.tables().size(), "recording", "recordings") + ", such as "
                + TablePlace.of(sample).shown() + "; " + between(sample)
                + Words.count(sample.above().size(), "line", "lines") + " before the headings. It starts:");
        told.forEach(line -> questions.say("    " + line));
        sentence().ifPresent(line -> questions.leaveOut(line));
        style.odd()
                .forEach((value, count) ->
                        questions.say("  " + Numbers.written(value) + " stands " + Words.count(count, "time", "times")
                                + " where a temperature should; it counts as no reading."));
    }

    /** Masses in a line above the readings are not read, and so are named. */
    private Optional<String> sentence() {
        List<String> lines = style.tables().stream()
                .flatMap(table -> table.above().stream()
                        .map(cells -> String.join(
                                ", ",
                                cells.stream().filter(cell -> !cell.isBlank()).toList()))
                        .filter(line -> MASS.matcher(line).find())
                        .limit(1))
                .toList();
        return lines.isEmpty()
                ? Optional.empty()
                : Optional.of("Style " + style.letter() + ": the masses above the readings of "
                        + Words.count(lines.size(), "recording", "recordings") + " are not read, such as "
                        + Words.quote(lines.get(0)) + ". Write them into a list of batches.");
    }

    /** A workbook has no sign between its columns. */
    private static String between(FoundTable sample) {
        String file = String.valueOf(sample.sheet().file().getFileName()).toLowerCase(Locale.ROOT);
        return file.matches("(?s).*\\.(xlsx|xlsm|ods)")
                ? ""
                : Delimiter.nameOf(sample.sheet().delimiter()) + " between the columns, ";
    }

    List<Meaning> meanings() {
        List<Meaning> meanings = new ArrayList<>();
        for (int i = 0; i < style.proposals().size(); i++) {
            MeaningProposal proposal = style.proposals().get(i);
            String place = key + "column." + (i + 1);
            String statement = "Column " + (i + 1) + " "
                    + Words.quote(style.columns().get(i).heading()) + ", because " + proposal.reason();
            String answer = proposal.doubt() == UnitDoubt.OPEN
                    ? questions.ask(
                            place,
                            "Style " + style.letter() + ", "
                                    + statement.substring(0, 1).toLowerCase(Locale.ROOT) + statement.substring(1)
                                    + ". What is it?",
                            proposal.meaning().toString(),
                            text -> Meaning.parse(text).isPresent(),
                            Meaning.choices(),
                            style.tables().size())
                    : questions.tell(
                            place,
                            statement,
                            proposal.meaning().toString(),
                            text -> Meaning.parse(text).isPresent(),
                            Meaning.choices());
            meanings.add(Meaning.parse(answer).orElse(Meaning.LEFT_OUT));
        }
        tellLeftOut(meanings);
        return meanings;
    }

    /** Values that are in no batch are named among what is left out. */
    private void tellLeftOut(List<Meaning> meanings) {
        for (int i = 0; i < meanings.size(); i++) {
            int place = i;
            boolean filled = style.tables().stream()
                    .anyMatch(table -> table.rows().stream()
                            .anyMatch(row -> !row.get(place).isBlank()));
            if (meanings.get(i).kind() == Meaning.Kind.LEFT_OUT && filled) {
                questions.leaveOut("Style " + style.letter() + ": the values of column " + (i + 1) + " "
                        + Words.quote(style.columns().get(i).heading()) + " are in no batch of its "
                        + Words.count(style.tables().size(), "recording", "recordings") + ". To keep them, answer "
                        + key + "column." + (i + 1) + " with extra.");
            }
        }
    }

    DateOrder order(GatherDates dates) {
        // An order of its own was asked for each style once; such answers are still read.
        String own = questions.raw(key + "date.order");
        for (DateOrder order : DateOrder.values()) {
            if (order.words().equals(own)) {
                questions.keep(key + "date.order", own);
                return order;
            }
        }
        return dates.of(style);
    }

    /** Asks which of the typed words are marks. */
    Map<String, Optional<MarkKind>> words(List<Meaning> meanings) {
        Map<String, Optional<MarkKind>> marks = new LinkedHashMap<>();
        if (meanings.stream().noneMatch(m -> m.kind() == Meaning.Kind.EVENTS)) {
            return marks;
        }
        List<String> names = new ArrayList<>(List.of(NOTE));
        List.of(MarkKind.values()).forEach(mark -> names.add(mark.words()));
        int asked = 0;
        for (Map.Entry<String, Integer> entry : style.words().entrySet()) {
            Optional<MarkKind> proposed = MarkWords.of(entry.getKey());
            if (asked++ >= WORDS_ASKED) {
                marks.put(entry.getKey(), proposed);
                continue;
            }
            String answer = questions.tell(
                    key + "event." + GatherQuestions.key(entry.getKey()),
                    "The words " + Words.quote(entry.getKey()) + ", which stand "
                            + Words.count(entry.getValue(), "time", "times"),
                    proposed.map(MarkKind::words).orElse(NOTE),
                    text -> names.contains(text.toLowerCase(Locale.ROOT)),
                    String.join(", ", names));
            marks.put(
                    entry.getKey(),
                    List.of(MarkKind.values()).stream()
                            .filter(mark -> mark.words().equals(answer.toLowerCase(Locale.ROOT)))
                            .findFirst());
        }
        return marks;
    }
}
