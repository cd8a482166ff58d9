package parchment.drift;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import parchment.calendar.machine.StrayDates;
import parchment.display.Showable;
import parchment.display.answer.InShort;
import parchment.display.answer.ShownAs;
import parchment.drift.found.WeekCause;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.written.BatchPlan;
import parchment.period.ProbeChange;
import parchment.quantity.Mass;
import parchment.quantity.MassUnit;

/**
 * Puts the last week of roasting on one page: each batch against what is usual for its lot, each cause of what was not usual told once, what is
 * worth cupping, and the green coffee that orders take.
 *
 * <pre>{@code
 * String lot = logbook.lastWithCurve().lot().orElseThrow();
 * Week.of(logbook).withOrder(lot, Mass.kilograms(12))
 * }</pre>
 *
 * <p>The last week is the seven days that end with the last roast day of the logbook. Batches without a date are in no week, nor is one whose
 * date looks like a slip in the year.
 */
public final class Week implements ShownAs {
    private final Logbook logbook;
    private final Optional<LocalDate> first;
    private final Optional<LocalDate> last;
    private final List<Usual> batches;
    private final Orders orders;
    private final Optional<LocalDate> today;

    private Week(
            Logbook logbook,
            Optional<LocalDate> first,
            Optional<LocalDate> last,
            List<Usual> batches,
            Orders orders,
            Optional<LocalDate> today) {
        this.today = today;
        this.logbook = logbook;
        this.first = first;
        this.last = last;
        this.batches = List.copyOf(batches);
        this.orders = orders;
    }

    /** Looks at the last week of a logbook. */
    public static Week of(Logbook logbook) {
        List<Batch> stray = StrayDates.of(logbook);
        Optional<LocalDate> last = logbook.batches().stream()
                .filter(batch -> !stray.contains(batch))
                .flatMap(b -> b.roastDay().stream())
                .max(Comparator.naturalOrder());
        Optional<LocalDate> first = last.map(day -> day.minusDays(6));
        List<Batch> batches = first.isEmpty() || last.isEmpty()
                ? List.of()
                : logbook.between(first.get(), last.get()).batches().stream()
                        .sorted(Comparator.comparing(b -> b.roastedAt().orElseThrow()))
                        .toList();
        List<Usual> usual = batches.stream().map(b -> Usual.of(b, logbook)).toList();
        return new Week(logbook, first, last, usual, Orders.none(logbook), Optional.empty());
    }

    /**
     * Returns the page with one more order; orders of one lot add up, and a blend is taken apart as {@code blends.csv} has it.
     *
     * @param lotOrBlend the lot, or the blend
     * @param roasted what is to be delivered
     * @throws parchment.logbook.contents.LogbookException if the logbook has no such lot or blend, the blend's shares are not written, or the mass is
     *     not above 0
     */
    public Week withOrder(String lotOrBlend, Mass roasted) {
        return new Week(logbook, first, last, batches, orders.with(lotOrBlend, roasted), today);
    }

    /**
     * Returns the page with one more order, answered in the unit in which it is given; orders of one lot are answered in that of the first.
     *
     * @param lotOrBlend the lot, or the blend
     * @param amount what is to be delivered, in the unit
     * @param unit the unit
     * @throws parchment.logbook.contents.LogbookException as {@link #withOrder(String, Mass)} does
     */
    public Week withOrder(String lotOrBlend, double amount, MassUnit unit) {
        return new Week(logbook, first, last, batches, orders.with(lotOrBlend, Mass.of(amount, unit), unit), today);
    }

    /** Returns the page as it is read on a day: dates that lie after it are doubted under "To check"; without it none are. */
    public Week readOn(LocalDate day) {
        return new Week(logbook, first, last, batches, orders, Optional.of(day));
    }

    /** Returns the doubt about dates that lie after the day on which the page is read, in words. */
    Optional<String> datesAfterToday() {
        return today.flatMap(day -> StrayDates.afterToday(logbook, day));
    }

    /** Returns how many batches are dated after the day on which the page is read; 0 without such a day. */
    int batchesAfterToday() {
        return today.map(day -> StrayDates.countAfter(logbook, day)).orElse(0);
    }

    /** Tells whether the last day of the week is still to come for who reads the page. */
    boolean isStillToCome() {
        return batchesAfterToday() > 0
                && last.filter(day -> day.isAfter(today.orElseThrow().plusDays(1)))
                        .isPresent();
    }

    /** Tells whether a day lies before the week. */
    boolean isBefore(LocalDate day) {
        return first.filter(day::isBefore).isPresent();
    }

    /** Returns the week in three sentences: what it was, how sure that is, what to do next. */
    public InShort inShort() {
        return WeekInShort.of(this);
    }

    /** Returns the week's batches in order of time, each against its lot's others. */
    public List<Usual> batches() {
        return batches;
    }

    /** Returns the batches that are unlike the others of their lot. */
    public List<Usual> odd() {
        return that(Usual.Verdict.UNLIKE_THE_OTHERS);
    }

    /** Returns the batches that cannot be held against others of their lot. */
    List<Usual> cannotTell() {
        return that(Usual.Verdict.CANNOT_TELL);
    }

    /** Returns the batches that are a little unlike the others of their lot, and no more. */
    public List<Usual> aLittle() {
        return that(Usual.Verdict.A_LITTLE_UNLIKE_THE_OTHERS);
    }

    private List<Usual> that(Usual.Verdict verdict) {
        return batches.stream().filter(usual -> usual.verdict() == verdict).toList();
    }

    /** Returns how many batches have a number that was held against others of their lot. */
    int held() {
        return (int) batches.stream().filter(usual -> usual.held() > 0).count();
    }

    /** Returns the steps and written changes of bean probes that are no causes of this week, for they are older or of a machine that it did not use. */
    public List<ProbeChange> earlierSteps() {
        return WeekProbes.notNews(logbook, batches.stream().map(Usual::batch).toList());
    }

    /** Returns what made batches of the week differ, each cause once: the bean probe, numbers that moved, then single batches. */
    public List<WeekCause> causes() {
        return found().causes();
    }

    /** Returns the cause that the three sentences tell; empty if they tell of none by itself. */
    public Optional<WeekCause> told() {
        return WeekInShort.told(this);
    }

    /** It takes long and follows from the logbook alone, so it is kept with it. */
    WeekCauses.Found found() {
        return logbook.remembered(WeekCauses.Found.class, own -> WeekCauses.of(own, batches));
    }

    /** Returns the green coffee that each lot's orders take. */
    public List<GreenNeeded> orders() {
        return orders.needed();
    }

    Orders ordered() {
        return orders;
    }

    /** Returns what is worth cupping: batches that were not cupped yet, each with the reason. */
    public List<String> worthCupping() {
        Set<String> lotsWithOdd = new HashSet<>();
        odd().stream()
                .filter(usual -> reason(usual).isPresent())
                .forEach(usual -> usual.batch().lot().ifPresent(lotsWithOdd::add));
        List<String> worth = new ArrayList<>();
        Set<String> beside = new HashSet<>();
        for (Usual usual : notCupped()) {
            Batch batch = usual.batch();
            String lot = batch.lot().orElse("");
            if (batch.plan().plannedBy() == BatchPlan.PlannedBy.CHANCE) {
                worth.add("batch " + batch.name() + ": its drop was drawn by chance, so its scores tell of causes.");
            } else if (usual.verdict() == Usual.Verdict.UNLIKE_THE_OTHERS) {
                reason(usual)
                        .ifPresent(
                                words -> worth.add("batch " + batch.name() + ": " + words + ". Did the cup notice?"));
            } else if (usual.verdict() == Usual.Verdict.LIKE_THE_OTHERS
                    && lotsWithOdd.contains(lot)
                    && beside.add(lot)) {
                worth.add("batch " + batch.name() + ": as usual for lot " + lot + ", to taste beside the unlike "
                        + (odd().stream()
                                                .filter(other -> other.batch()
                                                        .lot()
                                                        .orElse("")
                                                        .equals(lot))
                                                .count()
                                        == 1
                                ? "one."
                                : "ones."));
            }
        }
        return worth;
    }

    /** Returns why a batch is unlike by what no change of the probe explains, its note first; empty if the probe explains it all. */
    private Optional<String> reason(Usual usual) {
        String name = usual.batch().name();
        Optional<String> own = Optional.ofNullable(found().ofBatches().get(name))
                .flatMap(cause -> cause.explains().stream().findFirst());
        boolean taken = causes().stream()
                .filter(cause -> cause.kind() == WeekCause.Kind.PROBE)
                .flatMap(cause -> cause.explains().stream())
                .anyMatch(words -> words.startsWith("batch " + name + ": "));
        return own.isPresent() || taken ? own : usual.reasons().stream().findFirst();
    }

    /** Says why nothing is worth cupping: all was cupped, nothing was odd, or what was not cupped can be held against nothing. */
    public String nothingToCup() {
        return WeekCups.nothing(this);
    }

    /** Says of the unlike batches that were cupped already what the cup said. */
    public List<String> oddAndCupped() {
        return WeekCups.ofOdd(odd(), logbook);
    }

    /** Returns the week's batches that were not cupped yet. */
    List<Usual> notCupped() {
        Set<String> cupped = new HashSet<>();
        logbook.cups().forEach(cup -> cupped.add(cup.batch()));
        return batches.stream()
                .filter(usual -> !cupped.contains(usual.batch().name()))
                .toList();
    }

    /** Returns the lots of which no batch was roasted before this week, in order. */
    List<String> newLots() {
        return first.isEmpty()
                ? List.of()
                : batches.stream()
                        .flatMap(usual -> usual.batch().lot().stream())
                        .distinct()
                        .filter(lot -> logbook.ofLot(lot).batches().stream()
                                .flatMap(batch -> batch.roastDay().stream())
                                .noneMatch(day -> day.isBefore(first.get())))
                        .toList();
    }

    Logbook logbook() {
        return logbook;
    }

    /** Returns the last roast day; empty if no batch has a date. */
    public Optional<LocalDate> lastDay() {
        return last;
    }

    /** Returns the days the page is about, as in "2025-02-19 to 2025-02-25"; empty if no batch has a date. */
    public String days() {
        return first.isEmpty() || last.isEmpty() ? "" : first.get() + " to " + last.get();
    }

    @Override
    public Showable shownAs() {
        return WeekPage.of(this);
    }

    @Override
    public String toString() {
        return last.isEmpty()
                ? "Cannot show a week of " + logbook.name() + ": "
                        + (logbook.batches().isEmpty() ? "it has no batches" : "no batch has a date")
                : String.format(
                        Locale.ROOT,
                        "%s: %d %s, %d unlike the others of their lot%s%s",
                        days(),
                        batches.size(),
                        batches.size() == 1 ? "batch" : "batches",
                        odd().size(),
                        aLittle().isEmpty() ? "" : ", " + aLittle().size() + " a little",
                        cannotTell().isEmpty() ? "" : ", " + cannotTell().size() + " that cannot be told");
    }
}
