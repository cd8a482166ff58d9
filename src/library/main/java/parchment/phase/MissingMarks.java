package parchment.phase;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import parchment.display.answer.Sentence;
import parchment.logbook.MarkKind;

/** Tells what a batch lacks, and what can be said without it. */
final class MissingMarks {
    private MissingMarks() {}

    static List<String> sentences(Phases phases) {
        List<String> missing = new ArrayList<>();
        boolean yellowing = phases.mark(MarkKind.YELLOWING).isPresent();
        boolean crack = phases.mark(MarkKind.FIRST_CRACK_START).isPresent();
        boolean drop = phases.mark(MarkKind.DROP).isPresent();
        if (phases.clean().isEmpty()) {
            missing.add((phases.isSetAside() ? "The curve is set aside" : "No bean temperature was logged")
                    + ": times and shares can be told from written marks, temperatures and" + " rates of rise cannot.");
        } else if (phases.clean().filter(ProbeAtMark::isTooSlow).isPresent()) {
            missing.add(String.format(
                    Locale.ROOT,
                    "The bean temperature was read every %.0f s: too seldom to tell the turning point, or a temperature at a mark."
                            + " A reading every %.0f s or faster tells them.",
                    phases.clean().orElseThrow().interval(),
                    ProbeAtMark.SLOWEST_INTERVAL_SECONDS));
        } else if (phases.mark(MarkKind.TURNING_POINT).isEmpty()) {
            missing.add(
                    phases.clean().filter(LateStart::holdsTheCharge).isEmpty()
                            ? "The log starts too late to show the charge and the turning point. The mean rate of drying is missing"
                                    + " with them."
                            : "The turning point does not show: the curve does not fall and rise again after charge. The mean rate"
                                    + " of drying is missing with it.");
        }
        if (!yellowing && !crack) {
            missing.add(neither(phases) + ", so no phase can be told." + without(phases, drop));
        } else if (!yellowing) {
            missing.add(was(phases, MarkKind.YELLOWING)
                    + ", so drying and browning cannot be told apart; together they took until " + "first crack at "
                    + at(phases, MarkKind.FIRST_CRACK_START) + ".");
        } else if (!crack) {
            missing.add(was(phases, MarkKind.FIRST_CRACK_START) + ", so browning and development cannot be told apart; "
                    + (drop
                            ? "from yellowing to drop it took "
                                    + phases.mark(MarkKind.DROP)
                                            .orElseThrow()
                                            .at()
                                            .minus(phases.mark(MarkKind.YELLOWING)
                                                    .orElseThrow()
                                                    .at())
                                    + "."
                            : "drying can be told."));
        }
        if (!drop) {
            missing.add(
                    "The drop was neither written nor logged: drop time, drop temperature, development and all shares"
                            + " are missing.");
        }
        outOfOrder(phases, MarkKind.CHARGE, MarkKind.YELLOWING, "drying", missing);
        outOfOrder(phases, MarkKind.YELLOWING, MarkKind.FIRST_CRACK_START, "browning", missing);
        outOfOrder(phases, MarkKind.FIRST_CRACK_START, MarkKind.DROP, "development", missing);
        return List.copyOf(missing);
    }

    /** A mark that was written and set aside was written. */
    private static String was(Phases phases, MarkKind kind) {
        return Sentence.of(kind.words())
                + phases.setAside(kind)
                        .map(mark -> " was written at " + mark.at() + " and set aside")
                        .orElse(" was not written");
    }

    private static String neither(Phases phases) {
        return phases.setAside(MarkKind.YELLOWING).isEmpty()
                        && phases.setAside(MarkKind.FIRST_CRACK_START).isEmpty()
                ? "Yellowing and first crack start were not written"
                : was(phases, MarkKind.YELLOWING) + ", "
                        + was(phases, MarkKind.FIRST_CRACK_START).replaceFirst("^F", "f");
    }

    private static String without(Phases phases, boolean drop) {
        if (!drop) {
            return "";
        }
        String rest = " Without them the drop at " + at(phases, MarkKind.DROP) + " is known";
        return phases.bean().isPresent()
                ? rest + ", its temperature, and times and rates at any bean temperature."
                : rest + ".";
    }

    private static void outOfOrder(Phases phases, MarkKind from, MarkKind to, String name, List<String> missing) {
        if (phases.mark(from).isPresent()
                && phases.mark(to).isPresent()
                && !(phases.mark(to).get().seconds() > phases.mark(from).get().seconds())) {
            missing.add("The " + name + " phase is missing: its end (" + to.words() + " at " + at(phases, to)
                    + ") does not lie after its start (" + from.words() + " at " + at(phases, from) + ").");
        }
    }

    private static String at(Phases phases, MarkKind kind) {
        return phases.mark(kind).map(m -> m.at().toString()).orElse("an unknown time");
    }
}
