package parchment.drift;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import parchment.drift.found.WeekCause;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;

/**
 * Finds what made the batches of a week differ and tells each cause once: recent changes of the bean probe first, then numbers that moved in
 * one lot or several, then single batches by what is left.
 */
final class WeekCauses {
    private static final int[] SIDES = {-1, 1};

    private final Logbook logbook;
    private final WeekWatches watches;
    private final WeekSigns signs;

    private WeekCauses(Logbook logbook, List<Usual> batches) {
        this.logbook = logbook;
        this.watches = WeekWatches.of(logbook, batches);
        this.signs = new WeekSigns(batches, watches.shifts());
    }

    /**
     * What was found.
     *
     * @param causes each cause once
     * @param charts how many numbers of lots were watched
     * @param notWatched which could not be, in sentences
     * @param ofBatches the causes that are one batch each, by its name
     */
    record Found(List<WeekCause> causes, int charts, List<String> notWatched, Map<String, WeekCause> ofBatches) {}

    static Found of(Logbook logbook, List<Usual> batches) {
        return new WeekCauses(logbook, batches).found();
    }

    private Found found() {
        List<WeekCause> causes = new ArrayList<>(changesOfProbes());
        causes.addAll(stillOpen());
        causes.addAll(perhapsTheProbe());
        causes.addAll(WeekDrifts.of(signs, watches.charts(), logbook.readerUnit()));
        Map<String, WeekCause> ofBatches = new LinkedHashMap<>();
        for (Usual usual : signs.batches()) {
            ofOne(usual).ifPresent(cause -> {
                causes.add(cause);
                ofBatches.put(usual.batch().name(), cause);
            });
        }
        List<WeekCause> weakLast = Stream.concat(
                        causes.stream().filter(cause -> cause.sure() != WeekCause.Sure.WEAK),
                        causes.stream().filter(cause -> cause.sure() == WeekCause.Sure.WEAK))
                .toList();
        return new Found(weakLast, watches.charts(), watches.notWatched(), Map.copyOf(ofBatches));
    }

    private List<Batch> week() {
        return signs.batches().stream().map(Usual::batch).toList();
    }

    private List<WeekCause> changesOfProbes() {
        List<WeekCause> causes = new ArrayList<>();
        for (WeekProbes.News news : WeekProbes.of(logbook, week())) {
            causes.add(
                    news.apart() == WeekProbes.Apart.NOT_SURELY
                            ? takingReadings(news.cause(), news.machine(), news.side())
                            : news.cause());
        }
        return causes;
    }

    /** A change of which it cannot be told whether the probe moved is told for as long as the week's readings show it, however old it is. */
    private List<WeekCause> stillOpen() {
        List<WeekCause> causes = new ArrayList<>();
        for (WeekProbes.News old : WeekProbes.unresolved(logbook, week())) {
            long there = signs.open().stream()
                    .filter(sign -> sign.isReading() && sign.side() == old.side())
                    .filter(sign -> sign.machine().equals(old.machine()))
                    .map(sign -> sign.usual().batch().name())
                    .distinct()
                    .count();
            if (there >= WeekDrifts.SEVERAL) {
                causes.add(takingReadings(old.cause(), old.machine(), old.side()));
            }
        }
        return causes;
    }

    /** A move of the probe that is too young to be found as one: what it reads lies to one side at once. */
    private List<WeekCause> perhapsTheProbe() {
        List<WeekCause> causes = new ArrayList<>();
        Set<String> machines = new LinkedHashSet<>();
        week().forEach(batch -> machines.add(batch.machine().orElse("")));
        for (String machine : machines) {
            for (int side : SIDES) {
                WeekReadings.of(machine, side, signs, logbook)
                        .ifPresent(cause -> causes.add(takingReadings(cause, machine, side)));
            }
        }
        return causes;
    }

    /** Returns the cause with what it accounts for: the readings of its machine that lie to its side since. */
    private WeekCause takingReadings(WeekCause cause, String machine, int side) {
        LocalDate since = cause.since();
        List<String> explains = new ArrayList<>(cause.explains());
        explains.addAll(signs.takenByProbe(machine, side, since));
        signs.isPerhapsOnAnotherProbe(machine, since);
        return cause.explaining(explains);
    }

    private Optional<WeekCause> ofOne(Usual usual) {
        return usual.verdict() != Usual.Verdict.UNLIKE_THE_OTHERS
                ? Optional.empty()
                : WeekOddBatch.of(
                        usual,
                        signs.explainedOf(usual),
                        signs.mayBeOfAnotherProbe(usual) ? WeekOddBatch.Path.OF_THE_PROBE : WeekOddBatch.Path.ITS_OWN,
                        logbook);
    }
}
