package parchment.drift;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parchment.calendar.machine.MachineDays;
import parchment.calendar.machine.WrittenPeriods;
import parchment.drift.found.WeekCause;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.written.Upkeep;
import parchment.period.IndicatorByDay;
import parchment.period.NearbyWork;
import parchment.period.ProbeChange;
import parchment.period.UnseenChange;
import parchment.quantity.Unit;
import parchment.stats.Estimate;

/** Tells one change of a bean probe as a cause: what reads otherwise since when, by how much, how sure that is and what to do. */
final class WeekProbeCause {
    /** With one lot a machine, its probe and the beans are one. */
    static final String WITH_ONE_LOT =
            "Look at the probe and its cable, and roast a second lot beside it to tell the two apart.";

    /** Roast days from the last one that is searched for a step to the end. */
    private static final int LAST_SEARCHED = 4;

    private static final String AT_CRACK = "first crack";
    private static final Unit STEP = Unit.TEMPERATURE_STEP;

    private WeekProbeCause() {}

    /** The steps in the beans, the clearest first; where there is none, that of the empty drum. */
    static List<Estimate> told(ProbeChange change) {
        List<Estimate> known = change.offsets().stream()
                .filter(offset -> Double.isFinite(offset.estimate()) && !ProbeChange.isExactlyAlike(offset))
                .sorted(Comparator.comparingDouble((Estimate offset) -> -Math.abs(offset.t())))
                .toList();
        List<Estimate> inBeans = known.stream()
                .filter(offset -> !offset.name().equals(IndicatorByDay.EMPTY_DRUM)
                        && !offset.name().equals(IndicatorByDay.COLD_MACHINE))
                .toList();
        return inBeans.isEmpty() || change.kind() == ProbeChange.Kind.NOT_IN_THE_BEANS ? known : inBeans;
    }

    private static String size(Estimate offset, Logbook logbook) {
        return SizeWords.of(offset, STEP, logbook.readerUnit())
                + (offset.estimate() < 0 ? " lower" : " higher")
                + at(offset);
    }

    private static String at(Estimate offset) {
        return (offset.name().equals(AT_CRACK) ? " at " : " at the ") + offset.name();
    }

    static WeekCause of(ProbeChange change, MachineDays days, Logbook logbook) {
        List<Estimate> told = told(change);
        String direction = told.isEmpty() || told.get(0).estimate() < 0 ? "lower" : "higher";
        String probe = "the bean probe of " + days.words();
        List<String> sizes = new ArrayList<>();
        for (Estimate offset : told) {
            sizes.add(size(offset, logbook));
        }
        if (sizes.isEmpty()) {
            change.offsets().stream()
                    .filter(ProbeChange::isExactlyAlike)
                    .map(offset -> "exactly alike before and after" + at(offset))
                    .forEach(sizes::add);
        }
        Optional<NearbyWork> work = NearbyWork.of(change, logbook);
        return new WeekCause(
                WeekCause.Kind.PROBE,
                work.isPresent() ? WeekCause.Sure.PERHAPS : sure(change.kind()),
                work.map(near -> probe
                                + (change.kind() == ProbeChange.Kind.NOT_IN_THE_BEANS
                                        ? " may read otherwise in the empty drum"
                                        : " may read " + direction)
                                + " (or it is the work of " + near.work().doneOn() + ")")
                        .orElseGet(() -> what(change, probe, direction, logbook)),
                change.on(),
                String.join(", ", sizes) + (mayBeLater(change, days) ? "; it may have come later" : ""),
                howSure(change, logbook),
                work.map(NearbyWork::words).orElseGet(() -> next(change.kind(), days)),
                explains(change, days, logbook));
    }

    /** A step is looked for up to the fourth roast day from the end; one that came later is told as of that day. */
    static boolean mayBeLater(ProbeChange change, MachineDays days) {
        return !Double.isNaN(change.chance())
                && change.kind() != ProbeChange.Kind.FOUND_AND_WRITTEN
                && days.dates().size() - days.firstDayFrom(change.latest()) <= LAST_SEARCHED;
    }

    private static WeekCause.Sure sure(ProbeChange.Kind kind) {
        return switch (kind) {
            case FOUND_AND_WRITTEN, FOUND_WITHOUT_ENTRY -> WeekCause.Sure.CLEAR;
            default -> WeekCause.Sure.PERHAPS;
        };
    }

    private static String what(ProbeChange change, String probe, String direction, Logbook logbook) {
        return switch (change.kind()) {
            case FOUND_AND_WRITTEN -> probe + " was changed and reads " + direction;
            case FOUND_WITHOUT_ENTRY -> probe + " reads " + direction + " (nobody wrote why)";
            case WRITTEN_WITHOUT_CHANGE ->
                probe + " was changed and " + UnseenChange.of(change.offsets()).does(logbook.readerUnit());
            case LOT_OR_PROBE -> probe + " may read " + direction + " (or it is the lot)";
            case ONE_PLACE_ONLY -> probe + " may read " + direction + " (or a habit changed)";
            case NOT_IN_THE_BEANS -> probe + " reads otherwise in the empty drum only";
            case STEP_OR_SLOW -> probe + " may read " + direction + " (or something changes slowly)";
            case OTHER_WORK -> probe + " was worked on";
        };
    }

    private static String howSure(ProbeChange change, Logbook logbook) {
        if (change.kind() == ProbeChange.Kind.WRITTEN_WITHOUT_CHANGE) {
            return UnseenChange.of(change.offsets()).sentence(logbook.readerUnit());
        }
        if (Double.isNaN(change.chance())) {
            return "The upkeep says so; the readings alone would not.";
        }
        return String.format(
                Locale.ROOT,
                "Luck alone shows such a step in about one of %d logbooks%s.",
                Math.round(1 / change.chance()),
                change.kind() == ProbeChange.Kind.FOUND_AND_WRITTEN ? "; the upkeep says it too" : "");
    }

    private static String next(ProbeChange.Kind kind, MachineDays days) {
        boolean oneLot = days.batches().stream().map(Batch::lot).distinct().count() == 1;
        return switch (kind) {
            case FOUND_AND_WRITTEN ->
                "Read older notes with that in mind; this page puts older readings on today's scale.";
            case FOUND_WITHOUT_ENTRY -> "Look at the probe and its cable, and write into upkeep.csv what was done.";
            case WRITTEN_WITHOUT_CHANGE ->
                "Take drop temperatures from before with care until more batches are roasted on it.";
            case OTHER_WORK -> "Nothing to do; readings before and after are kept apart.";
            case LOT_OR_PROBE ->
                oneLot ? WITH_ONE_LOT : "Roast an older lot again: if it reads so too, it is the probe.";
            case ONE_PLACE_ONLY -> "Look at the probe, and at how charge and first crack are marked.";
            case NOT_IN_THE_BEANS -> "Look at the air probe, and at how the drum is heated before charge.";
            case STEP_OR_SLOW -> "Look at the probe, and ask again after four more roast days.";
        };
    }

    private static List<String> explains(ProbeChange change, MachineDays days, Logbook logbook) {
        List<String> explains = new ArrayList<>();
        if (!Double.isNaN(change.chance())) {
            int first = days.firstDayFrom(change.earliest());
            explains.add("Readings stepped after "
                    + days.dates().get(Math.max(0, first - 1)) + " and by " + change.latest()
                    + " (nine of ten such ranges hold the day)"
                    + (mayBeLater(change, days)
                            ? ", or on one of the last three roast days, which are too few to be searched"
                            : ""));
        }
        change.offsets().stream()
                .filter(offset -> Double.isFinite(offset.estimate()))
                .map(offset -> offset.name() + ": "
                        + (ProbeChange.isExactlyAlike(offset)
                                ? "exactly alike before and after, which tells nothing of the probe"
                                : SizeWords.of(offset, STEP, logbook.readerUnit())
                                        + (offset.estimate() > 0 ? " higher" : " lower")))
                .forEach(explains::add);
        logbook.upkeep().stream()
                .filter(work -> WrittenPeriods.concerns(work, days.machine()))
                .filter(work -> work.doneOn().equals(change.on()))
                .map(work -> "The upkeep of " + work.doneOn() + " says: " + work.words())
                .forEach(explains::add);
        if (change.kind().separatesPeriods()) {
            explains.add(
                    "What the probe read before that day is put on its scale of today before batches are compared");
        }
        return explains;
    }

    static WeekCause afterTheLast(Upkeep work, MachineDays days) {
        return new WeekCause(
                WeekCause.Kind.PROBE,
                WeekCause.Sure.CLEAR,
                "no batch was roasted on the changed bean probe of " + days.words(),
                work.doneOn(),
                "",
                "The upkeep says so; what it reads is not known yet.",
                "Write first crack of the next batches down: only they show what it reads.",
                List.of("The upkeep of " + work.doneOn() + " says: " + work.words()));
    }
}
