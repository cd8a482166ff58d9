package parchment.gather;

import java.util.List;
import java.util.function.Predicate;

/**
 * Makes the clocks of recordings and rows one before they are joined: where they differ by a constant, a person is asked which is right,
 * and the other is put right.
 *
 * @param curves the recordings, in their order
 * @param roasts the rows, in their order
 */
record JoinClocks(List<GatheredBatch> curves, List<ListedRoast> roasts) {
    static final String LIST = "list";
    static final String LOGGER = "logger";
    static final String NEITHER = "neither";

    static JoinClocks of(List<GatheredBatch> curves, List<ListedRoast> roasts, GatherQuestions questions) {
        JoinClocks clocks = new JoinClocks(curves, roasts);
        for (ClockShift shift : ClockShift.in(curves, roasts)) {
            clocks = clocks.moved(shift, ask(shift, questions));
        }
        return clocks;
    }

    private static String ask(ClockShift shift, GatherQuestions questions) {
        Predicate<String> valid = List.of(LIST, LOGGER, NEITHER)::contains;
        return questions.ask(
                shift.key(),
                shift.words() + " Which is right: the " + LIST + ", the " + LOGGER + ", or " + NEITHER
                        + " (the clocks do not differ, and the times stay as they are)?",
                LIST,
                valid,
                LIST + ", " + LOGGER + ", " + NEITHER,
                shift.fit());
    }

    private JoinClocks moved(ClockShift shift, String right) {
        return switch (right) {
            case LIST ->
                new JoinClocks(
                        curves.stream()
                                .map(curve ->
                                        curve.roastedAt().filter(shift::holds).isPresent()
                                                ? curve.moved(shift.behind())
                                                : curve)
                                .toList(),
                        roasts);
            case LOGGER ->
                new JoinClocks(
                        curves,
                        roasts.stream()
                                .map(roast ->
                                        roast.roastedAt().filter(shift::holds).isPresent()
                                                ? roast.moved(shift.behind().negated())
                                                : roast)
                                .toList());
            default -> this;
        };
    }
}
