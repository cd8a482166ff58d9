package parchment.phase;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import parchment.display.Showable;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.quantity.Elapsed;

/**
 * States how exactly written marks are to be taken: how late or early a mark may be written, and what each roaster rounds it to.
 *
 * <pre>{@code
 * MarkHabit.of(logbook)
 * }</pre>
 *
 * <p>The standard error of a written mark is made of two parts. The first is the reaction: common practice, no source, standard errors
 * of 2 s for charge and drop (the roaster does it), 5 s for the start of first crack (it is heard, but one pop is not the crack),
 * 10 s for its end and for second crack (they fade in and out) and 10 s for yellowing (a colour that turns slowly). The second is the
 * rounding: a time rounded to u seconds is off by u / √12. What each operator rounds to is read off the logbook.
 */
public final class MarkHabit implements Showable {
    /** Fewest written marks of a kind from which a habit of rounding is told; that many land on fives by chance once in 390,000. */
    private static final int FEWEST = 8;

    private static final int[] ROUNDINGS = {60, 30, 15, 10, 5};

    /** The usual reaction and no rounding beyond the second that is written. */
    public static final MarkHabit STANDARD = new MarkHabit(reactions(), Map.of());

    /** What one operator's marks of one kind are rounded to, and how many there are. */
    private record Rounding(int seconds, int marks) {}

    private final Map<MarkKind, Double> reaction;
    private final Map<String, Map<MarkKind, Rounding>> byOperator;

    private MarkHabit(Map<MarkKind, Double> reaction, Map<String, Map<MarkKind, Rounding>> byOperator) {
        this.reaction = Map.copyOf(reaction);
        this.byOperator = new LinkedHashMap<>(byOperator);
    }

    private static Map<MarkKind, Double> reactions() {
        Map<MarkKind, Double> seconds = new EnumMap<>(MarkKind.class);
        seconds.put(MarkKind.CHARGE, 2.0);
        seconds.put(MarkKind.TURNING_POINT, 5.0);
        seconds.put(MarkKind.YELLOWING, 10.0);
        seconds.put(MarkKind.FIRST_CRACK_START, 5.0);
        seconds.put(MarkKind.FIRST_CRACK_END, 10.0);
        seconds.put(MarkKind.SECOND_CRACK_START, 10.0);
        seconds.put(MarkKind.DROP, 2.0);
        return seconds;
    }

    /** Reads the habit of rounding off a logbook's written marks, for each operator alone; the reaction is the usual one. */
    public static MarkHabit of(Logbook logbook) {
        Map<String, Map<MarkKind, List<Double>>> written = new LinkedHashMap<>();
        for (Batch batch : logbook.batches()) {
            Map<MarkKind, List<Double>> times =
                    written.computeIfAbsent(batch.operator().orElse(""), key -> new EnumMap<>(MarkKind.class));
            for (MarkKind kind : MarkKind.values()) {
                batch.writtenMark(kind)
                        .map(Elapsed::seconds)
                        .ifPresent(at -> times.computeIfAbsent(kind, key -> new ArrayList<>())
                                .add(at));
            }
        }
        Map<String, Map<MarkKind, Rounding>> habits = new LinkedHashMap<>();
        written.forEach((operator, times) -> {
            Map<MarkKind, Rounding> rounding = new EnumMap<>(MarkKind.class);
            times.forEach((kind, at) -> rounding.put(kind, new Rounding(rounding(at), at.size())));
            habits.put(operator, rounding);
        });
        return new MarkHabit(reactions(), habits);
    }

    private static int rounding(List<Double> written) {
        if (written.size() >= FEWEST) {
            for (int seconds : ROUNDINGS) {
                if (written.stream().allMatch(at -> Math.abs(at / seconds - Math.rint(at / seconds)) < 1e-6)) {
                    return seconds;
                }
            }
        }
        return 1;
    }

    /**
     * Returns the same habit with another reaction for one kind of mark.
     *
     * @param standardError in seconds, 0 or more
     * @throws IllegalArgumentException if the standard error is negative or missing
     */
    public MarkHabit withReaction(MarkKind kind, double standardError) {
        if (!(standardError >= 0)) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT,
                    "The reaction for '%s' needs a standard error of 0 s or more; it was given %s.",
                    kind.words(),
                    standardError));
        }
        Map<MarkKind, Double> changed = new EnumMap<>(reaction);
        changed.put(kind, standardError);
        return new MarkHabit(changed, byOperator);
    }

    /** Returns what a batch's operator rounds written times of a kind to, in seconds; 1 if no coarser habit shows. */
    public int roundingSeconds(MarkKind kind, Batch batch) {
        Rounding rounding =
                byOperator.getOrDefault(batch.operator().orElse(""), Map.of()).get(kind);
        return rounding == null ? 1 : rounding.seconds();
    }

    /** Returns the standard error of a batch's written mark of the given kind, in seconds. */
    public double standardError(MarkKind kind, Batch batch) {
        return Math.hypot(reaction.getOrDefault(kind, 5.0), roundingSeconds(kind, batch) / Math.sqrt(12));
    }

    /** Says what written times are taken to be rounded to. */
    @Override
    public String toString() {
        StringBuilder text = new StringBuilder();
        byOperator.forEach((operator, kinds) -> {
            Map<Integer, List<String>> bySeconds = new TreeMap<>();
            new TreeMap<>(kinds).forEach((kind, rounding) -> {
                if (rounding.seconds() > 1) {
                    bySeconds
                            .computeIfAbsent(rounding.seconds(), key -> new ArrayList<>())
                            .add(String.format(Locale.ROOT, "%d times of %s", rounding.marks(), kind.words()));
                }
            });
            bySeconds.forEach((seconds, list) -> text.append(String.format(
                    Locale.ROOT,
                    "All %s written%s are multiples of %d s, so they are taken as rounded to that. ",
                    String.join(", ", list),
                    operator.isEmpty() ? "" : " by " + operator,
                    seconds)));
        });
        return text.isEmpty()
                ? "Written marks are taken as exact to the second they are written to, but for the roaster's reaction."
                : text.toString().strip();
    }
}
