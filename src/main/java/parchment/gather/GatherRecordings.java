package parchment.gather;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import parchment.logbook.LogbookFiles;
import parchment.logbook.MarkKind;
import parchment.quantity.Elapsed;
import parchment.sheet.DateOrder;
import parchment.sheet.Delimiter;
import parchment.sheet.Numbers;
import parchment.sheet.Words;

/** Turns recordings of one style into batches, asking what their columns, words and falls mean. */
final class GatherRecordings {
    private static final double BEFORE_CHARGE = 60;
    private static final double SAME_CHARGE = 60;
    private static final int WORDS_ASKED = 20;
    private static final int FIRST_ROWS = 3;
    private static final String NOTE = "note";

    private final GatherQuestions questions;
    private final GatherStyle style;
    private final String key;

    GatherRecordings(GatherQuestions questions, GatherStyle style) {
        this.questions = questions;
        this.style = style;
        this.key = "style." + style.letter() + ".";
    }

    /** Asks about the style, then makes batches of each of its files. */
    List<GatheredBatch> gather() throws IOException {
        show();
        List<Meaning> meanings = meanings();
        GatherColumns.ofCurve(meanings, style.sample().headings()).told().forEach(line -> questions.say("  " + line));
        DateOrder order = order();
        Map<String, Optional<MarkKind>> marks = words(meanings);
        List<GatheredBatch> batches = new ArrayList<>();
        for (Path path : style.paths()) {
            Optional<StrangeFile> file = StrangeFile.read(path);
            if (file.isPresent()) {
                batches.addAll(batches(Recording.of(file.get(), meanings, order), order, marks));
            } else {
                questions.say("  " + Words.quote(String.valueOf(path.getFileName()))
                        + " can no longer be read as before: left out.");
            }
        }
        return batches;
    }

    private void show() {
        StrangeFile sample = style.sample();
        questions.say("");
        questions.say("Style " + style.letter() + ": "
                + Words.count(style.paths().size(), "recording", "recordings") + ", such as "
                + Words.quote(sample.fileName()) + "; " + Delimiter.nameOf(sample.delimiter())
                + " between the columns, "
                + Words.count(sample.preamble().size(), "line", "lines") + " before the headings. It starts:");
        sample.firstLines(FIRST_ROWS).forEach(line -> questions.say("    " + line));
        style.odd()
                .forEach((value, count) ->
                        questions.say("  " + Numbers.written(value) + " stands " + Words.count(count, "time", "times")
                                + " where a temperature should; it counts as no reading."));
    }

    private List<Meaning> meanings() {
        List<Meaning> meanings = new ArrayList<>();
        for (int i = 0; i < style.proposals().size(); i++) {
            MeaningProposal proposal = style.proposals().get(i);
            String answer = questions.ask(
                    key + "column." + (i + 1),
                    "Column " + (i + 1) + " "
                            + Words.quote(style.columns().get(i).heading()) + " looks like "
                            + proposal.meaning() + ": " + proposal.reason() + ". What is it?",
                    proposal.meaning().toString(),
                    text -> Meaning.parse(text).isPresent(),
                    Meaning.choices());
            meanings.add(Meaning.parse(answer).orElse(Meaning.LEFT_OUT));
        }
        return meanings;
    }

    private DateOrder order() {
        if (!style.datesInQuestion()) {
            return DateOrder.ISO_ONLY;
        }
        DateOrder certain = style.certainOrder();
        return dateOrder(questions, key + "date.order", certain);
    }

    static DateOrder dateOrder(GatherQuestions questions, String key, DateOrder certain) {
        boolean known = certain != DateOrder.ISO_ONLY;
        String answer = questions.ask(
                key,
                "How are the dates written: day/month/year or month/day/year?"
                        + (known
                                ? " One of them can only be read as " + certain.words() + "."
                                : " None of them shows it."),
                known ? certain.words() : "",
                text -> text.equals("day/month/year") || text.equals("month/day/year"),
                "day/month/year, month/day/year");
        for (DateOrder order : DateOrder.values()) {
            if (order.words().equals(answer)) {
                return order;
            }
        }
        questions.say("  Nobody said how the dates are written: they are left out.");
        return DateOrder.ISO_ONLY;
    }

    /** Asks which of the typed words are marks. */
    private Map<String, Optional<MarkKind>> words(List<Meaning> meanings) {
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
            String answer = questions.ask(
                    key + "event." + GatherQuestions.key(entry.getKey()),
                    "What do the words " + Words.quote(entry.getKey()) + " mean? They stand "
                            + Words.count(entry.getValue(), "time", "times") + ".",
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

    private List<GatheredBatch> batches(Recording recording, DateOrder order, Map<String, Optional<MarkKind>> marks) {
        String name = recording.file().stem();
        if (recording.leftOut() > 0 || recording.file().ragged() > 0) {
            questions.say("  " + Words.quote(recording.file().fileName()) + ": "
                    + Words.count(recording.leftOut(), "row", "rows") + " without a time that rises and "
                    + Words.count(recording.file().ragged(), "row", "rows") + " of another width left out.");
        }
        if (recording.rows().isEmpty()) {
            questions.say("  " + Words.quote(recording.file().fileName()) + " has no row with a time: left out.");
            return List.of();
        }
        List<Double> charges = split(recording, charges(recording, marks));
        if (charges.isEmpty()) {
            return List.of(withoutCharge(recording, order, marks));
        }
        if (charges.size() > 1) {
            beforeTheFirst(recording, charges.get(0) - BEFORE_CHARGE);
        }
        List<GatheredBatch> batches = new ArrayList<>();
        for (int i = 0; i < charges.size(); i++) {
            double charge = charges.get(i);
            double from = i == 0 ? Double.NEGATIVE_INFINITY : charge - BEFORE_CHARGE;
            if (charges.size() > 1 && i == 0) {
                from = charge - BEFORE_CHARGE;
            }
            double to = i + 1 < charges.size() ? charges.get(i + 1) - BEFORE_CHARGE : Double.POSITIVE_INFINITY;
            batches.add(batch(
                    charges.size() == 1 ? name : name + "-" + (i + 1), recording, order, charge, from, to, marks));
        }
        return batches;
    }

    private void beforeTheFirst(Recording recording, double from) {
        long readings = recording.seconds().stream().filter(at -> at < from).count();
        long words = recording.events().stream()
                .filter(event -> event.seconds() < from)
                .count();
        if (readings > 0) {
            questions.say("  " + Words.quote(recording.file().fileName()) + ": "
                    + Words.count(readings, "row", "rows") + " before " + recording.clock(from)
                    + (words > 0 ? ", with " + Words.count(words, "note", "notes") + "," : "")
                    + " came more than a minute before the first charge and belong to no batch: left out.");
        }
    }

    /** The charges that were typed, and those that the curve shows and nobody typed. */
    private static List<Double> charges(Recording recording, Map<String, Optional<MarkKind>> marks) {
        TreeMap<Double, String> charges = new TreeMap<>();
        for (Recording.Event event : recording.events()) {
            if (marks.getOrDefault(event.words(), Optional.empty()).equals(Optional.of(MarkKind.CHARGE))) {
                charges.put(event.seconds(), "typed");
            }
        }
        for (double seen : recording.charges()) {
            if (charges.subMap(seen - SAME_CHARGE, true, seen + SAME_CHARGE, true)
                    .isEmpty()) {
                charges.put(seen, "seen");
            }
        }
        return new ArrayList<>(charges.keySet());
    }

    private List<Double> split(Recording recording, List<Double> charges) {
        if (charges.size() < 2) {
            return charges;
        }
        String times = charges.stream().map(recording::clock).collect(Collectors.joining(", "));
        String answer = questions.ask(
                "file." + GatherQuestions.key(recording.file().stem()) + ".split",
                Words.quote(recording.file().fileName()) + " shows " + charges.size() + " charges, at " + times
                        + ". Make a batch of each? (yes, no, or the right times with commas between them)",
                "yes",
                text -> text.equals("yes")
                        || text.equals("no")
                        || !parse(recording, text).isEmpty(),
                "yes, no, times such as " + recording.clock(charges.get(0)));
        return answer.equals("yes") ? charges : answer.equals("no") ? charges.subList(0, 1) : parse(recording, answer);
    }

    private static List<Double> parse(Recording recording, String text) {
        List<Double> times = new ArrayList<>();
        for (String part : text.split(",")) {
            double at = recording.parseClock(part.strip());
            if (Double.isNaN(at) || !times.isEmpty() && at <= times.get(times.size() - 1)) {
                return List.of();
            }
            times.add(at);
        }
        return times;
    }

    private GatheredBatch withoutCharge(Recording recording, DateOrder order, Map<String, Optional<MarkKind>> marks) {
        String name = recording.file().stem();
        boolean starts = questions.yes(
                "file." + GatherQuestions.key(name) + ".starts-at-charge",
                "No charge can be seen in " + Words.quote(recording.file().fileName())
                        + ". Does it start at the charge?",
                "no");
        double zero = recording.seconds().get(0);
        if (starts) {
            return batch(name, recording, order, zero, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, marks);
        }
        questions.say("  Its marks are left out, for they count from the charge.");
        return new GatheredBatch(
                name,
                Optional.empty(),
                dayOf(recording, order, zero),
                Optional.of(recording),
                zero,
                Double.NEGATIVE_INFINITY,
                Double.POSITIVE_INFINITY,
                Map.of(),
                Map.of(),
                recording.events().stream()
                        .map(event -> recording.clock(event.seconds()) + " " + event.words())
                        .toList());
    }

    private static Optional<LocalDate> dayOf(Recording recording, DateOrder order, double at) {
        return recording.zero().map(zero -> at(zero, at).toLocalDate()).or(() -> recording.day(order));
    }

    private static LocalDateTime at(LocalDateTime zero, double seconds) {
        return zero.plusSeconds(Math.round(seconds));
    }

    private static GatheredBatch batch(
            String name,
            Recording recording,
            DateOrder order,
            double charge,
            double from,
            double to,
            Map<String, Optional<MarkKind>> words) {
        Map<MarkKind, Double> marks = new LinkedHashMap<>();
        List<String> notes = new ArrayList<>();
        for (Recording.Event event : recording.events()) {
            double since = event.seconds() - charge;
            if (event.seconds() < from || event.seconds() >= to) {
                continue;
            }
            Optional<MarkKind> mark = words.getOrDefault(event.words(), Optional.empty());
            boolean written = mark.isPresent() && LogbookFiles.MARKS.contains(mark.get()) && since >= 0;
            if (written && !marks.containsKey(mark.get())) {
                marks.put(mark.get(), since);
            } else if (!mark.equals(Optional.of(MarkKind.CHARGE))) {
                notes.add(Elapsed.seconds(since) + " " + event.words());
            }
        }
        return new GatheredBatch(
                name,
                recording.zero().map(zero -> at(zero, charge)),
                dayOf(recording, order, charge),
                Optional.of(recording),
                charge,
                from,
                to,
                marks,
                Map.of(),
                notes);
    }
}
