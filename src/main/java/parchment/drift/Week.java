package parchment.drift;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import parchment.display.Showable;
import parchment.display.ShownAs;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.logbook.Batch;
import parchment.logbook.BatchPlan;
import parchment.logbook.Logbook;
import parchment.quantity.Mass;
import parchment.stats.process.Signal.Side;

/**
 * Puts the last week of roasting on one page: each batch against what is usual for its lot, what is worth cupping, first signs of drift,
 * and the green coffee that orders take.
 *
 * <pre>{@code
 * Week.of(logbook)
 * }</pre>
 *
 * <p>The last week is the seven days that end with the last roast day of the logbook.
 */
public final class Week implements ShownAs {
    private static final List<Feature> WATCHED = List.of(
            Features.dryingTime(),
            Features.browningTime(),
            Features.developmentTime(),
            Features.firstCrackTemperature(),
            Features.massLoss());

    private final Logbook logbook;
    private final Optional<LocalDate> first;
    private final Optional<LocalDate> last;
    private final List<Usual> batches;
    private final List<String> signs;
    private final List<GreenNeeded> orders;

    private Week(
            Logbook logbook,
            Optional<LocalDate> first,
            Optional<LocalDate> last,
            List<Usual> batches,
            List<String> signs,
            List<GreenNeeded> orders) {
        this.logbook = logbook;
        this.first = first;
        this.last = last;
        this.batches = List.copyOf(batches);
        this.signs = List.copyOf(signs);
        this.orders = List.copyOf(orders);
    }

    /** Looks at the last week of a logbook. */
    public static Week of(Logbook logbook) {
        Optional<LocalDate> last = logbook.batches().stream()
                .filter(b -> b.roastedAt().isPresent())
                .map(b -> b.roastDay().orElseThrow())
                .max(Comparator.naturalOrder());
        Optional<LocalDate> first = last.map(day -> day.minusDays(6));
        List<Batch> batches = first.isEmpty() || last.isEmpty()
                ? List.of()
                : logbook.between(first.get(), last.get()).batches().stream()
                        .sorted(Comparator.comparing(b -> b.roastedAt().orElseThrow()))
                        .toList();
        List<Usual> usual = batches.stream().map(b -> Usual.of(b, logbook)).toList();
        return new Week(logbook, first, last, usual, signs(logbook, batches), List.of());
    }

    /**
     * Returns the page with one more order.
     *
     * @param roasted what is to be delivered
     * @throws parchment.logbook.LogbookException if the logbook has no such lot, or the mass is not above 0
     */
    public Week withOrder(String lot, Mass roasted) {
        List<GreenNeeded> more = new ArrayList<>(orders);
        more.add(GreenNeeded.of(lot, roasted, logbook));
        return new Week(logbook, first, last, batches, signs, more);
    }

    private static List<String> signs(Logbook logbook, List<Batch> batches) {
        List<String> signs = new ArrayList<>();
        Set<String> names = new HashSet<>();
        batches.forEach(b -> names.add(b.name()));
        Set<String> lots = new TreeSet<>();
        batches.forEach(b -> b.lot().ifPresent(lots::add));
        for (String lot : lots) {
            Logbook own = logbook.ofLot(lot);
            List<String> without = new ArrayList<>();
            for (Feature feature : WATCHED) {
                Watch watch = Watch.of(own, feature);
                if (!watch.hasLimits()) {
                    without.add(feature.name());
                    continue;
                }
                List<Watch.Signal> now = watch.signals().stream()
                        .filter(a -> names.contains(a.batch().name()) && a.kind() != Watch.Kind.SINGLE_BATCH)
                        .filter(watch::stillThere)
                        .toList();
                if (!now.isEmpty()) {
                    Watch.Signal signal = now.get(now.size() - 1);
                    signs.add(feature.name() + " of lot " + lot + " stays "
                            + (signal.side() == Side.ABOVE ? "above" : "below")
                            + " what it was (" + signal.kind().words() + " at batch "
                            + signal.batch().name() + ").");
                }
            }
            if (!without.isEmpty()) {
                signs.add("Not watched for lot " + lot + ": " + String.join(", ", without)
                        + " (limits need 10 batches on this probe that differ).");
            }
        }
        return signs;
    }

    /** Returns the week's batches in order of time, each against its lot's others. */
    public List<Usual> batches() {
        return batches;
    }

    /** Returns first signs of drift, in sentences. */
    public List<String> signs() {
        return signs;
    }

    /** Returns the orders. */
    public List<GreenNeeded> orders() {
        return orders;
    }

    /** Returns what is worth cupping: batches that were not cupped yet, each with the reason. */
    public List<String> worthCupping() {
        List<String> worth = new ArrayList<>();
        Set<String> references = new HashSet<>();
        for (Usual usual : notCupped()) {
            Batch batch = usual.batch();
            String lot = batch.lot().orElse("");
            if (batch.plan().plannedBy() == BatchPlan.PlannedBy.CHANCE) {
                worth.add("batch " + batch.name() + ": its drop was drawn by chance, so its scores tell of causes.");
            } else if (usual.verdict() == Usual.Verdict.UNLIKE_THE_OTHERS) {
                worth.add("batch " + batch.name() + ": " + usual.reasons().get(0) + ". Did the cup notice?");
            } else if (usual.verdict() == Usual.Verdict.LIKE_THE_OTHERS && references.add(lot)) {
                worth.add("batch " + batch.name() + ": like its lot's others, to hold the odd ones against.");
            }
        }
        return worth;
    }

    /** Returns the week's batches that were not cupped yet. */
    List<Usual> notCupped() {
        Set<String> cupped = new HashSet<>();
        logbook.cups().forEach(cup -> cupped.add(cup.batch()));
        return batches.stream()
                .filter(usual -> !cupped.contains(usual.batch().name()))
                .toList();
    }

    Logbook logbook() {
        return logbook;
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
        long odd = batches.stream()
                .filter(u -> u.verdict() == Usual.Verdict.UNLIKE_THE_OTHERS)
                .count();
        return last.isEmpty()
                ? "Cannot show a week of " + logbook.name() + ": no batch has a date"
                : String.format(
                        Locale.ROOT,
                        "%s: %d %s, %d unlike the others of their lot",
                        days(),
                        batches.size(),
                        batches.size() == 1 ? "batch" : "batches",
                        odd);
    }
}
