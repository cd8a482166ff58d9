package parchment.period;

import java.util.List;
import java.util.stream.Collectors;
import parchment.logbook.written.Upkeep;
import parchment.stats.Estimate;

/** Tells how far the upkeep and the readings speak for a changed probe, and what else could be the reason. */
final class ProbeWords {
    private static final double LEVEL = 0.9;

    private ProbeWords() {}

    /**
     * Tells what was written, and what the readings leave open all the same: the work that was written need not be the reason.
     *
     * @param otherwise what the change would be called if nobody had written anything
     */
    static String written(Upkeep work, ProbeChange.Kind otherwise) {
        return "The upkeep says: " + work.words() + "."
                + switch (otherwise) {
                    case LOT_OR_PROBE ->
                        " But fewer than two lots were roasted before and after it, so the lot could be the reason as"
                                + " well.";
                    case ONE_PLACE_ONLY ->
                        " But it shows at one place of the roast only: look at each lot by itself, since other beans"
                                + " in the sacks, or a new habit of charging or of marking, could be the reason as well.";
                    case NOT_IN_THE_BEANS ->
                        " But it shows in the empty drum only, against the air probe: the air probe, or another way of heating the"
                                + " drum before charge, could be the reason as well.";
                    default -> "";
                };
    }

    /**
     * Tells what a step may be of which nobody wrote anything.
     *
     * @param rival the slow change that explains the readings about as well
     * @param otherWork work on something else around then, blank if there was none
     */
    static String unwritten(ProbeChange.Kind kind, String rival, String otherWork) {
        return switch (kind) {
            case LOT_OR_PROBE ->
                "Fewer than two lots were roasted before and after it, so the lot could be the reason as well as the"
                        + " probe.";
            case ONE_PLACE_ONLY ->
                "Cannot tell whether the probe is the reason: it shows at one place of the roast only, and a"
                        + " new habit of charging or of marking first crack does that too.";
            case NOT_IN_THE_BEANS ->
                "It shows in the empty drum only, as the bean probe reads against the air probe: the air probe, or another way"
                        + " of heating the drum before charge, is the likelier reason" + otherWork
                        + ". Readings in the beans are taken as they stand.";
            case STEP_OR_SLOW ->
                "Cannot tell whether this was a step: " + rival + " explains the readings about as well.";
            default ->
                "The upkeep names no work on a probe around then" + otherWork
                        + ". If the probe was touched, write it down.";
        };
    }

    /** Tells of a step beside work that moves no probe: the work is named, the readings decide. */
    static String besideOtherWork(Upkeep work, ProbeChange.Kind kind, String rival) {
        String said = "The upkeep says: " + work.words() + ", which moves no probe. ";
        return kind == ProbeChange.Kind.FOUND_WITHOUT_ENTRY
                ? said + "If it was moved or replaced then, write so."
                : said + unwritten(kind, rival, "");
    }

    /** Says where readings differ since a day although no step of the probe was found: something else may have come that day. */
    static String differsAllTheSame(List<Estimate> offsets) {
        String where = offsets.stream()
                .filter(offset -> Double.isFinite(offset.estimate())
                        && !offset.interval(LEVEL).contains(0))
                .map(Estimate::name)
                .collect(Collectors.joining(" and the "));
        return where.isEmpty()
                ? ""
                : " But readings at the " + where
                        + " differ since: look at each lot by itself, since other beans in the sacks would do that too.";
    }
}
