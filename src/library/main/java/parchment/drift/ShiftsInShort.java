package parchment.drift;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parchment.display.answer.InShort;
import parchment.period.ProbeChange;
import parchment.period.UnseenChange;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.Estimate;
import parchment.stats.Interval;

/** Puts the search for changes of the probe into three sentences: the latest change that counts, or why there is none. */
final class ShiftsInShort {
    private static final double LEVEL = 0.90;
    /** What a roaster knows best of all places at which a probe is compared. */
    private static final String KNOWN_PLACE = "first crack";

    /** What the readings could be searched for. */
    enum Searched {
        NO_DATES,
        TOO_FEW,
        SEARCHED
    }

    /** How many machines there are: with several the change's own is named. */
    enum Machines {
        ONE,
        SEVERAL
    }

    private ShiftsInShort() {}

    static InShort of(List<ProbeChange> changes, Searched searched, Machines machines, TemperatureUnit reader) {
        Optional<ProbeChange> latest = changes.stream()
                .max(Comparator.comparingInt((ProbeChange change) -> weight(change.kind()))
                        .thenComparing(ProbeChange::on));
        if (searched != Searched.SEARCHED) {
            return notSearched(latest, searched);
        }
        if (latest.isEmpty()) {
            return new InShort(
                    "No change of the bean probe was seen in the readings.",
                    "A small or a slow change could still hide in them.",
                    "Go on writing every work on the probe into upkeep.csv.");
        }
        ProbeChange change = latest.get();
        String probe = "the bean probe"
                + (machines == Machines.SEVERAL && !change.machine().isEmpty() ? " of " + change.machine() : "");
        return new InShort(found(change, probe, reader), sure(change, reader), next(change));
    }

    /** Changes that part batches come before those of which it is open, and those before work that moved nothing. */
    private static int weight(ProbeChange.Kind kind) {
        return kind.separatesPeriods()
                ? 2
                : switch (kind) {
                    case LOT_OR_PROBE, ONE_PLACE_ONLY, STEP_OR_SLOW -> 1;
                    default -> 0;
                };
    }

    private static InShort notSearched(Optional<ProbeChange> written, Searched searched) {
        return new InShort(
                written.map(change -> "The upkeep names work on the probe on " + change.on()
                                + "; whether its readings changed cannot be told.")
                        .orElse("Whether the bean probe changed cannot be told from the readings."),
                searched == Searched.NO_DATES
                        ? "No batch has a date."
                        : "Too few batches can be read at two places that the beans do not move.",
                searched == Searched.NO_DATES
                        ? "Write the roast days into batches.csv, then ask again."
                        : "Write first crack and charge temperature of every batch, and work on the probe into upkeep.csv.");
    }

    private static String found(ProbeChange change, String probe, TemperatureUnit reader) {
        return switch (change.kind()) {
            case FOUND_AND_WRITTEN, FOUND_WITHOUT_ENTRY ->
                "From " + change.on() + " on " + probe + step(change, reader);
            case WRITTEN_WITHOUT_CHANGE ->
                "The upkeep names work on " + probe + " on " + change.on() + ": it "
                        + UnseenChange.of(change.offsets()).does(reader) + ".";
            case OTHER_WORK -> "After the work of " + change.on() + " " + probe + " went on reading as before.";
            case LOT_OR_PROBE ->
                "From " + change.on() + " on " + probe + " read differently, but the lot may be the reason.";
            case ONE_PLACE_ONLY ->
                "From " + change.on() + " on " + probe + " read differently, but at one place of the curve only.";
            case NOT_IN_THE_BEANS ->
                "From " + change.on() + " on " + probe + " read differently in the empty drum, but not in the beans.";
            case STEP_OR_SLOW ->
                "About " + change.on() + " the readings of " + probe + " changed, in a step or slowly.";
        };
    }

    private static String step(ProbeChange change, TemperatureUnit reader) {
        Optional<Estimate> clear = change.offsets().stream()
                .filter(offset ->
                        Double.isFinite(offset.estimate()) && clear(offset) && !ProbeChange.isExactlyAlike(offset))
                .min(Comparator.comparingInt(offset -> offset.name().equals(KNOWN_PLACE) ? 0 : 1));
        if (clear.isEmpty()) {
            return " read differently.";
        }
        Estimate offset = clear.get();
        Interval interval = offset.interval(LEVEL);
        boolean lower = offset.estimate() < 0;
        String place = offset.name();
        return String.format(
                Locale.ROOT,
                " read %.1f %s %s %s (%.1f to %.1f).",
                shown(Math.abs(offset.estimate()), reader),
                Unit.TEMPERATURE_STEP.symbol(reader),
                lower ? "lower" : "higher",
                place.equals("empty drum") ? "in the empty drum" : "at " + place,
                shown(lower ? -interval.upper() : interval.lower(), reader),
                shown(lower ? -interval.lower() : interval.upper(), reader));
    }

    private static boolean clear(Estimate offset) {
        Interval interval = offset.interval(LEVEL);
        return interval.lower() > 0 || interval.upper() < 0;
    }

    private static double shown(double celsius, TemperatureUnit reader) {
        return Unit.TEMPERATURE_STEP.shownStep(celsius, reader);
    }

    private static String sure(ProbeChange change, TemperatureUnit reader) {
        return switch (change.kind()) {
            case FOUND_AND_WRITTEN -> "The readings stepped for all lots, and the upkeep names work on the probe then.";
            case FOUND_WITHOUT_ENTRY -> "The readings stepped for all lots, but the upkeep names no work on the probe.";
            case WRITTEN_WITHOUT_CHANGE -> UnseenChange.of(change.offsets()).sentence(reader);
            case OTHER_WORK -> "It was work that moves no probe, and no step was seen.";
            case LOT_OR_PROBE -> "Fewer than two lots were roasted both before and after it.";
            case ONE_PLACE_ONLY -> "Another habit of charging or of writing marks does the same.";
            case NOT_IN_THE_BEANS -> "The air probe may have moved, or the drum was heated otherwise before charge.";
            case STEP_OR_SLOW -> "A slow change, such as dirty ducts, explains them about as well as a moved probe.";
        };
    }

    private static String next(ProbeChange change) {
        return switch (change.kind()) {
            case FOUND_AND_WRITTEN -> "Nothing to do: answers about scores take it into account by themselves.";
            case FOUND_WITHOUT_ENTRY -> "Ask who touched the probe then, and write it into upkeep.csv.";
            case WRITTEN_WITHOUT_CHANGE -> "If the probe was only cleaned, say so in upkeep.csv.";
            case OTHER_WORK -> "Nothing to do.";
            case LOT_OR_PROBE -> "Roast a lot from before it once more: if it reads differently too, the probe moved.";
            case ONE_PLACE_ONLY -> "Ask who charged and who wrote the marks then.";
            case NOT_IN_THE_BEANS -> "Look at the air probe, and at how the drum was warmed up.";
            case STEP_OR_SLOW -> "Look at ducts, burner and probe, and write what you find into upkeep.csv.";
        };
    }
}
