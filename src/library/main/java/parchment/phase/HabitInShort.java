package parchment.phase;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import parchment.display.answer.InShort;
import parchment.logbook.MarkKind;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/** Puts where a roaster writes marks into three sentences. */
final class HabitInShort {
    /**
     * Holds one kind of mark.
     *
     * @param usual where half of them are written hotter, in °C
     * @param spread standard deviation in °C that lot, day and pace do not explain; empty if there are too few marks to learn from
     */
    record Written(MarkKind kind, double usual, OptionalDouble spread) {}

    private HabitInShort() {}

    static InShort of(List<Written> kinds, TemperatureUnit reader) {
        List<Written> learnt =
                kinds.stream().filter(kind -> kind.spread().isPresent()).toList();
        String lacking = kinds.stream()
                .filter(kind -> kind.spread().isEmpty())
                .map(kind -> kind.kind().words())
                .collect(Collectors.joining(" and "));
        String needed = HabitModel.FEWEST_MARKS + " written marks on " + HabitModel.FEWEST_DAYS + " roast days";
        if (learnt.isEmpty()) {
            return new InShort(
                    "Where you write your marks cannot be told yet.",
                    "Each kind needs " + needed + ".",
                    "Write " + lacking + " of every batch, then ask again.");
        }
        return new InShort(
                "You write "
                        + learnt.stream()
                                .map(kind -> kind.kind().words() + " around "
                                        + Unit.TEMPERATURE.format(kind.usual(), reader))
                                .collect(Collectors.joining(" and "))
                        + ".",
                "Once lot, day and pace are known, two of three marks lie within "
                        + learnt.stream()
                                .map(kind -> Unit.TEMPERATURE_STEP.formatStep(
                                        kind.spread().orElseThrow(), reader))
                                .collect(Collectors.joining(" and "))
                        + " of where they are expected.",
                lacking.isEmpty()
                        ? "Write both the same way each time; what is foretold can be no steadier than the pen."
                        : "Write " + lacking + " of more batches too; it takes " + needed + ".");
    }
}
