package parchment.gather;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import parchment.gather.ChargeEvidence.Taken;
import parchment.logbook.MarkKind;
import parchment.sheet.Words;

/** Decides the charges of the recordings of one style, and tells or asks where what was written and what is seen differ. */
final class StyleCharges {
    private static final String FALL = "fall";
    private static final String TYPED = "typed";
    private static final String ZERO = "zero";

    private final GatherQuestions questions;
    private final GatherStyle style;
    private final FileKeys keys;
    private final String key;

    StyleCharges(GatherQuestions questions, GatherStyle style, FileKeys keys) {
        this.questions = questions;
        this.style = style;
        this.keys = keys;
        this.key = "style." + style.letter() + ".";
    }

    /** Returns the charges of each recording, in their order. */
    List<List<Double>> of(List<Recording> recordings, Map<String, Optional<MarkKind>> marks, ListedTimes listed) {
        List<ChargeEvidence> all = recordings.stream()
                .map(recording ->
                        ChargeEvidence.of(recording, listed.falls(recording, recording.charges(), questions), marks))
                .toList();
        boolean zeroCounts = zeroCounts(all);
        List<ChargeEvidence> used = zeroCounts
                ? all
                : all.stream()
                        .map(one -> new ChargeEvidence(one.recording(), one.seen(), one.typed(), Optional.empty()))
                        .toList();
        Taken ofZero = ofZero(used);
        Taken ofTyped = ofTyped(used);
        used.forEach(this::tellRepeated);
        return used.stream()
                .map(one -> split(one.recording(), one.charges(ofTyped, ofZero)))
                .toList();
    }

    private boolean zeroCounts(List<ChargeEvidence> all) {
        List<ChargeEvidence> written =
                all.stream().filter(one -> one.zero().isPresent()).toList();
        return !written.isEmpty()
                && questions.tellYes(
                        key + "zero-is-charge",
                        "The times of " + Words.count(written.size(), "recording", "recordings") + " of style "
                                + style.letter() + " count from the charge, because "
                                + written.get(0).zero().orElse("") + ", so second 0 is the charge",
                        "yes");
    }

    private Taken ofZero(List<ChargeEvidence> all) {
        List<ChargeEvidence> against =
                all.stream().filter(one -> one.againstZero().isPresent()).toList();
        if (against.isEmpty()) {
            return Taken.WRITTEN;
        }
        Recording first = against.get(0).recording();
        return ask(
                "zero-or-fall",
                Words.count(against.size(), "recording", "recordings") + " of style " + style.letter() + ", such as "
                        + TablePlace.of(first.file()).shown() + ", "
                        + (against.size() == 1 ? "counts" : "count")
                        + " from a second 0 where the bean temperature does not fall; it falls at "
                        + first.clock(against.get(0).againstZero().orElse(0.0))
                        + ". Is the charge at the fall or at second 0?",
                ZERO,
                against.size());
    }

    private Taken ofTyped(List<ChargeEvidence> all) {
        List<ChargeEvidence> far =
                all.stream().filter(one -> !one.typedFarFromFall().isEmpty()).toList();
        if (far.isEmpty()) {
            return Taken.WRITTEN;
        }
        ChargeEvidence first = far.get(0);
        double typed = first.typedFarFromFall().get(0);
        double fall = first.fallOf(typed);
        int count = far.stream().mapToInt(one -> one.typedFarFromFall().size()).sum();
        return ask(
                "typed-or-fall",
                Words.count(count, "charge", "charges") + " of style " + style.letter()
                        + (count == 1 ? " was" : " were") + " typed more than "
                        + Math.round(ChargeEvidence.CLOSE)
                        + " s away from where the bean temperature falls, such as in "
                        + TablePlace.of(first.recording().file()).shown() + " at "
                        + first.recording().clock(typed) + ", "
                        + Math.round(Math.abs(typed - fall)) + " s " + (typed > fall ? "after" : "before")
                        + " the fall. Is the charge at the fall or where it was typed?",
                TYPED,
                count);
    }

    private Taken ask(String question, String words, String written, int batches) {
        String answer = questions.ask(
                key + question,
                words + " (" + FALL + " or " + written + ")",
                FALL,
                text -> text.toLowerCase(Locale.ROOT).equals(FALL)
                        || text.toLowerCase(Locale.ROOT).equals(written),
                FALL + ", " + written,
                batches);
        return answer.toLowerCase(Locale.ROOT).equals(FALL) ? Taken.FALL : Taken.WRITTEN;
    }

    private void tellRepeated(ChargeEvidence one) {
        int repeated = one.typed().size() - one.typedOnce().size();
        if (repeated > 0) {
            questions.leaveOut(TablePlace.of(one.recording().file()).shown() + ": of the charges that were typed at "
                    + clocks(one.recording(), one.typed()) + " " + repeated
                    + (repeated == 1 ? " is" : " are") + " within four minutes of another; taken: "
                    + clocks(one.recording(), one.typedOnce()) + ".");
        }
    }

    private static String clocks(Recording recording, List<Double> times) {
        return times.stream().map(recording::clock).collect(Collectors.joining(", "));
    }

    private List<Double> split(Recording recording, List<Double> charges) {
        if (charges.size() < 2) {
            return charges;
        }
        String answer = questions.tell(
                keys.of(recording.file(), "split", questions),
                TablePlace.of(recording.file()).shown() + " shows " + charges.size() + " charges, at "
                        + clocks(recording, charges)
                        + ", and a batch is made of each (yes, no, or the right times with commas between them)",
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

    /** Returns the recordings that have no charge. */
    static List<Recording> withoutCharge(List<Recording> recordings, List<List<Double>> charges) {
        return IntStream.range(0, recordings.size())
                .filter(i ->
                        !recordings.get(i).rows().isEmpty() && charges.get(i).isEmpty())
                .mapToObj(recordings::get)
                .toList();
    }
}
