package parchment.align;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import parchment.curve.ControlSteps;
import parchment.curve.Curve;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.phase.Phases;
import parchment.phase.found.Mark;
import parchment.quantity.Elapsed;
import parchment.stats.linear.Robust;

/**
 * Learns when the controls are usually moved, and says in which batches a move came early, late, or not at all.
 *
 * <p>Moves in one direction are counted from charge. There is a habit if four fifths of the batches move the control that way equally often;
 * then the first move of one batch is held against the first of the others, the second against the second. A batch that moved it another
 * number of times had a plan of its own, and only a batch that never did is told.
 */
final class ControlHabit {
    /** Seconds that a move must be off, besides lying far out, to be worth a word; common practice, no source. */
    private static final double LEAST_SECONDS = 30;
    /** Share of the batches that must move a control equally often for it to be a habit; common practice, no source. */
    private static final double HABIT = 0.8;
    /** Seconds after charge in which a control is still being set for the batch; common practice, no source. */
    private static final double SETTING = 30;

    private enum Direction {
        UP,
        DOWN
    }

    private ControlHabit() {}

    /** Returns what is unusual in the moves of each batch's controls, in words. */
    static Map<String, List<String>> oddities(List<Phases> members) {
        Map<String, List<String>> found = new LinkedHashMap<>();
        for (Quantity control : Quantity.values()) {
            if (control.isControl()) {
                Map<String, ControlSteps> steps = steps(members, control);
                for (Direction direction : Direction.values()) {
                    judge(verb(control, direction), moves(steps, direction), found);
                }
            }
        }
        return found;
    }

    /** Returns the moves of those batches whose control is written on the scale that most of them use. */
    private static Map<String, ControlSteps> steps(List<Phases> members, Quantity control) {
        Map<String, Map<String, ControlSteps>> byScale = new LinkedHashMap<>();
        for (Phases phases : members) {
            Optional<Curve> curve = phases.curve(control);
            double drop = phases.mark(MarkKind.DROP).map(Mark::seconds).orElse(Double.POSITIVE_INFINITY);
            if (curve.isPresent() && !curve.get().isEmpty()) {
                byScale.computeIfAbsent(curve.get().unit().toString(), k -> new LinkedHashMap<>())
                        .put(phases.batch().name(), ControlSteps.of(curve.get()).between(SETTING, drop));
            }
        }
        return byScale.values().stream()
                .reduce((a, b) -> b.size() > a.size() ? b : a)
                .orElse(Map.of());
    }

    /** Returns the times of each batch's moves in one direction. */
    private static Map<String, double[]> moves(Map<String, ControlSteps> steps, Direction direction) {
        Map<String, double[]> moves = new LinkedHashMap<>();
        steps.forEach((batch, own) -> moves.put(
                batch,
                own.list().stream()
                        .filter(step -> step.change() > 0 == (direction == Direction.UP))
                        .mapToDouble(ControlSteps.Step::atSeconds)
                        .toArray()));
        return moves;
    }

    static void judge(String verb, Map<String, double[]> moves, Map<String, List<String>> found) {
        int[] counts =
                moves.values().stream().mapToInt(times -> times.length).sorted().toArray();
        int usual = counts.length == 0 ? 0 : counts[counts.length / 2];
        long alike = Arrays.stream(counts).filter(count -> count == usual).count();
        if (usual == 0 || alike < HABIT * counts.length) {
            return;
        }
        for (int number = 0; number < usual; number++) {
            int which = number;
            Robust.Fences fences = Robust.Fences.of(moves.values().stream()
                    .filter(times -> times.length == usual)
                    .mapToDouble(times -> times[which])
                    .toArray());
            moves.forEach((batch, times) -> {
                boolean first = found.getOrDefault(batch, List.of()).stream().noneMatch(r -> r.startsWith(verb));
                if (times.length == usual && first && fences.farOut(times[which], LEAST_SECONDS)) {
                    add(found, batch, off(verb, times[which], fences.median()));
                } else if (times.length == 0 && which == 0) {
                    add(found, batch, verb + " at no time (usually at " + new Elapsed(fences.median()) + ")");
                }
            });
        }
    }

    private static String off(String verb, double at, double usual) {
        return String.format(
                Locale.ROOT,
                "%s %s %s (at %s, usually at %s)",
                verb,
                Stretches.length(at - usual),
                at > usual ? "late" : "early",
                new Elapsed(at),
                new Elapsed(usual));
    }

    private static void add(Map<String, List<String>> found, String batch, String reason) {
        found.computeIfAbsent(batch, k -> new ArrayList<>()).add(reason);
    }

    private static String verb(Quantity control, Direction direction) {
        boolean up = direction == Direction.UP;
        return switch (control) {
            case AIRFLOW -> up ? "the air was opened" : "the air was closed";
            case DRUM_SPEED -> up ? "the drum was made faster" : "the drum was made slower";
            case HEATER_POWER -> up ? "the heater was turned up" : "the heater was turned down";
            default -> up ? "the gas was turned up" : "the gas was turned down";
        };
    }
}
