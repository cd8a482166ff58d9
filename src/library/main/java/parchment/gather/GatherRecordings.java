package parchment.gather;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import parchment.logbook.LogbookFiles;
import parchment.logbook.MarkKind;
import parchment.quantity.Elapsed;
import parchment.sheet.Words;

/** Turns recordings of one style into batches, asking what their columns, words and falls mean. */
final class GatherRecordings {
    private static final double BEFORE_CHARGE = ChargeFinder.BEFORE_CHARGE;
    private static final String STARTS_AT_CHARGE = "starts-at-charge";
    /** A logger that was started with the roast begins at 0, give or take its first step. */
    private static final double FIRST_STEP = 10;
    /** A bean temperature goes on where it differs by as much at most, in °C (common practice, no source). */
    private static final double GOES_ON = 10;

    /** Beans turn within as much (common practice, no source). */
    private static final double TURNING = 180;

    private final GatherQuestions questions;
    private final GatherStyle style;
    private final FileKeys keys;
    private final ListedTimes listed;
    private final String key;
    private boolean startsAtCharge;

    /**
     * Gathers the recordings of one style.
     *
     * @param keys the keys of what is asked about a recording alone
     * @param listed what the lists say of charges and drops
     */
    GatherRecordings(GatherQuestions questions, GatherStyle style, FileKeys keys, ListedTimes listed) {
        this.questions = questions;
        this.style = style;
        this.keys = keys;
        this.listed = listed;
        this.key = "style." + style.letter() + ".";
    }

    /** Asks about the style, then makes batches of each of its files. */
    List<GatheredBatch> gather(GatherDates dates) {
        StyleColumns columns = new StyleColumns(questions, style);
        columns.show();
        List<Meaning> meanings = columns.meanings();
        GatherColumns.ofCurve(meanings, style.sample().headings()).told().forEach(line -> questions.say("  " + line));
        FileDates dated = dates.ofRecording(columns.order(dates));
        Map<String, Optional<MarkKind>> marks = columns.words(meanings);
        List<Recording> recordings = style.tables().stream()
                .map(table -> recording(table, meanings, dated))
                .toList();
        List<List<Double>> charges = new StyleCharges(questions, style, keys).of(recordings, marks, listed);
        startsAtCharge = startsAtCharge(StyleCharges.withoutCharge(recordings, charges));
        List<GatheredBatch> batches = new ArrayList<>();
        for (int i = 0; i < recordings.size(); i++) {
            batches.addAll(batches(recordings.get(i), charges.get(i), dated, marks));
        }
        return batches;
    }

    /** A clock that began again within one roast is joined on where the temperature goes on; else it is asked. */
    private Recording recording(FoundTable table, List<Meaning> meanings, FileDates dated) {
        Recording recording = Recording.of(table, meanings, dated, Recording.AfterRestart.FOLLOW);
        if (recording.begunAgain().isEmpty()) {
            return recording;
        }
        Recording.Restart first = recording.begunAgain().get(0);
        boolean goesOn = recording.begunAgain().stream().allMatch(restart -> Math.abs(restart.fall()) <= GOES_ON);
        String key = keys.of(table, "clock-begins-again", questions);
        String statement = TablePlace.of(table).shown() + ": its clock begins again after "
                + recording.clock(first.after()) + ", with " + Words.count(first.rows(), "row", "rows") + " to come";
        boolean follows = goesOn
                ? questions.tellYes(
                        key, statement + "; the bean temperature goes on there, so they follow one step later", "yes")
                : questions.askYes(
                        key,
                        statement + "; the bean temperature does not go on there. Do they belong to the file, one step"
                                + " later? With no they are left out",
                        "yes",
                        1);
        return follows ? recording : Recording.of(table, meanings, dated, Recording.AfterRestart.LEFT_OUT);
    }

    private List<GatheredBatch> batches(
            Recording recording, List<Double> charges, FileDates dated, Map<String, Optional<MarkKind>> marks) {
        String name = TablePlace.of(recording.file()).stem();
        List<String> lost = new ArrayList<>(recording.file().leftOut());
        if (recording.leftOut() > 0) {
            lost.add(0, Words.count(recording.leftOut(), "row", "rows") + " without a time that rises left out");
        }
        if (!lost.isEmpty()) {
            questions.leaveOut(TablePlace.of(recording.file()).shown() + ": " + String.join(", ", lost) + ".");
        }
        if (recording.rows().isEmpty()) {
            questions.leaveOut(TablePlace.of(recording.file()).shown() + " has no row with a time: left out.");
            return List.of();
        }
        if (charges.isEmpty()) {
            return List.of(withoutCharge(recording, dated, marks));
        }
        if (charges.size() > 1) {
            beforeTheFirst(recording, charges.get(0) - BEFORE_CHARGE);
        }
        List<GatheredBatch> batches = new ArrayList<>();
        for (int i = 0; i < charges.size(); i++) {
            double charge = charges.get(i);
            double from = charges.size() == 1
                    ? Double.NEGATIVE_INFINITY
                    : i == 0 ? charge - BEFORE_CHARGE : border(recording, marks, charges.get(i - 1), charge);
            double to = i + 1 < charges.size()
                    ? border(recording, marks, charge, charges.get(i + 1))
                    : Double.POSITIVE_INFINITY;
            int part = charges.size() == 1 ? 0 : i + 1;
            batches.add(batch(part == 0 ? name : name + "-" + part, part, recording, dated, charge, from, to, marks));
        }
        return batches;
    }

    /** Returns where a batch ends and the next begins; where no drop is typed or listed, the hottest reading may be it. */
    private double border(Recording recording, Map<String, Optional<MarkKind>> marks, double charge, double next) {
        double dropped = recording.events().stream()
                .filter(event ->
                        marks.getOrDefault(event.words(), Optional.empty()).equals(Optional.of(MarkKind.DROP)))
                .mapToDouble(Recording.Event::seconds)
                .filter(at -> at >= charge && at < next)
                .max()
                .orElseGet(() -> {
                    double written = listed.drop(recording, charge);
                    return written < next ? written : recording.hottestSecond(charge, next);
                });
        return ChargeFinder.border(charge, next, dropped);
    }

    /** Asks once for the recordings of the style in which no charge can be seen. */
    private boolean startsAtCharge(List<Recording> open) {
        if (open.isEmpty()) {
            return false;
        }
        String such = Words.count(open.size(), "recording", "recordings") + " of style " + style.letter()
                + ", such as " + TablePlace.of(open.get(0).file()).shown() + ", "
                + (open.size() == 1 ? "shows" : "show") + " no fall of the bean temperature at a charge";
        boolean fromZero = open.stream().allMatch(GatherRecordings::beginsAsAtCharge);
        return fromZero
                ? questions.tellYes(
                        key + STARTS_AT_CHARGE,
                        such
                                + "; the clock begins at 0 and the temperature is lowest soon after, so they start at the charge",
                        "yes")
                : questions.askYes(key + STARTS_AT_CHARGE, such + ". Do they start at the charge?", "no", open.size());
    }

    /** A recording that was started with the roast begins at 0, and the beans turn soon. */
    static boolean beginsAsAtCharge(Recording recording) {
        double first = recording.seconds().get(0);
        return Math.abs(first) <= FIRST_STEP && recording.lowestSecond() - first <= TURNING;
    }

    private void beforeTheFirst(Recording recording, double from) {
        long readings = recording.seconds().stream().filter(at -> at < from).count();
        long words = recording.events().stream()
                .filter(event -> event.seconds() < from)
                .count();
        if (readings > 0) {
            questions.leaveOut(TablePlace.of(recording.file()).shown() + ": "
                    + Words.count(readings, "row", "rows") + " before " + recording.clock(from)
                    + (words > 0 ? ", with " + Words.count(words, "note", "notes") + "," : "")
                    + " came more than a minute before the first charge and belong to no batch: left out.");
        }
    }

    private GatheredBatch withoutCharge(Recording recording, FileDates dated, Map<String, Optional<MarkKind>> marks) {
        String name = TablePlace.of(recording.file()).stem();
        String own = keys.of(recording.file(), STARTS_AT_CHARGE, questions);
        boolean starts = questions.has(own)
                ? questions.tellYes(own, TablePlace.of(recording.file()).shown() + " starts at the charge", "no")
                : startsAtCharge;
        double zero = recording.seconds().get(0);
        if (starts) {
            return batch(name, 0, recording, dated, zero, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, marks);
        }
        if (!recording.events().isEmpty()) {
            questions.leaveOut(TablePlace.of(recording.file()).shown()
                    + ": its marks are kept as notes, for they count from a charge that is not seen ("
                    + key + STARTS_AT_CHARGE + ").");
        }
        return new GatheredBatch(
                name,
                0,
                Optional.empty(),
                dayOf(recording, dated, zero),
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

    private static Optional<LocalDate> dayOf(Recording recording, FileDates dated, double at) {
        return recording.zero().map(zero -> at(zero, at).toLocalDate()).or(() -> recording.day(dated));
    }

    private static LocalDateTime at(LocalDateTime zero, double seconds) {
        return zero.plusSeconds(Math.round(seconds));
    }

    private static GatheredBatch batch(
            String name,
            int part,
            Recording recording,
            FileDates dated,
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
                part,
                recording.zero().map(zero -> at(zero, charge)),
                dayOf(recording, dated, charge),
                Optional.of(recording),
                charge,
                from,
                to,
                marks,
                Map.of(),
                notes);
    }
}
