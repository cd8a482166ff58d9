package parchment.phase;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.display.answer.InShort;
import parchment.display.answer.Report;
import parchment.display.answer.ShownAs;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.Quantity;
import parchment.logbook.contents.EmptyLogbook;
import parchment.phase.found.Moment;
import parchment.quantity.TemperatureUnit;
import parchment.stats.linear.Robust;

/**
 * Lists the notable moments of a logbook's batches: a stall, a sudden loss or surge of rate near first crack, a control changed late, a
 * charge hotter or colder than usual, a bean probe that jumped.
 *
 * <p>Each is compared with the other batches of its lot (with all batches, where the lot has fewer than {@value #FEWEST}). It is listed if it
 * lies from the usual by at least what its detector calls noticeable, and by at least {@value #ROBUST_APART} robust standard deviations of
 * the others: the median absolute deviation, as Iglewicz and Hoaglin (1993) advise with 3.5. A small spread counts as a third of what is
 * noticeable, so that a very even lot does not make moments of trifles. A charge plan cannot be checked: a logbook has no planned charge
 * temperature, so "usual" stands in for it.
 *
 * <pre>{@code
 * Moments.of(logbook)                       // all of them, the most unusual first
 * Moments.of(logbook).of(logbook.lastWithCurve())   // those of one batch
 * }</pre>
 */
public final class Moments implements ShownAs {
    /** Fewest batches to compare with. */
    static final int FEWEST = 6;

    static final double ROBUST_APART = 3.5;

    private final String name;
    private final List<Moment> list;
    private final List<MomentDetector> detectors;
    private final List<Batch> batches;
    /** How many batches there are in all, of which each was held against the others. */
    private final int held;

    private Moments(String name, List<Moment> list, List<MomentDetector> detectors, List<Batch> batches, int held) {
        this.name = name;
        this.list = List.copyOf(list);
        this.detectors = List.copyOf(detectors);
        this.batches = List.copyOf(batches);
        this.held = held;
    }

    /** Looks for the {@linkplain KnownMoments#all() usual moments}; unwritten first cracks stand where the habit predicts them. */
    public static Moments of(Logbook logbook) {
        return of(logbook, KnownMoments.all());
    }

    /** Looks for the moments of the given detectors. */
    public static Moments of(Logbook logbook, List<? extends MomentDetector> detectors) {
        return of(LearntHabit.of(logbook), detectors);
    }

    /** Looks for the usual moments in the batches that a habit was learnt from, which saves reading the curves again. */
    public static Moments of(LearntHabit habit) {
        return of(habit, KnownMoments.all());
    }

    /** Looks for the moments of the given detectors, in the batches that a habit was learnt from. */
    public static Moments of(LearntHabit habit, List<? extends MomentDetector> detectors) {
        List<Phases> all = habit.withPredictions();
        List<Moment> found = new ArrayList<>();
        for (MomentDetector detector : detectors) {
            found.addAll(look(all, detector, habit.reader()));
        }
        found.sort((a, b) -> Double.compare(weight(b), weight(a)));
        return new Moments(
                habit.name(),
                found,
                List.copyOf(detectors),
                all.stream().map(Phases::batch).toList(),
                all.size());
    }

    private static double weight(Moment moment) {
        return Math.abs(moment.size() - moment.usual()) / moment.detector().noticeable();
    }

    private static List<Moment> look(List<Phases> all, MomentDetector detector, TemperatureUnit reader) {
        List<Optional<MomentDetector.Sighting>> seen =
                all.parallelStream().map(detector::look).toList();
        List<Moment> found = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            if (seen.get(i).isEmpty()) {
                continue;
            }
            Batch batch = all.get(i).batch();
            List<Double> others = new ArrayList<>();
            List<Double> everyone = new ArrayList<>();
            for (int k = 0; k < all.size(); k++) {
                if (k != i && seen.get(k).isPresent()) {
                    if (detector.roughlyComparable(batch, all.get(k).batch())) {
                        everyone.add(seen.get(k).get().size());
                    }
                    if (detector.comparable(batch, all.get(k).batch())) {
                        others.add(seen.get(k).get().size());
                    }
                }
            }
            boolean lot = others.size() >= FEWEST - 1;
            moment(
                            batch,
                            detector,
                            seen.get(i).get(),
                            lot ? others : everyone,
                            lot ? "batches of this lot" : "batches",
                            reader)
                    .ifPresent(found::add);
        }
        return found;
    }

    private static Optional<Moment> moment(
            Batch batch,
            MomentDetector detector,
            MomentDetector.Sighting seen,
            List<Double> others,
            String crowd,
            TemperatureUnit reader) {
        double[] sizes = others.stream().mapToDouble(Double::doubleValue).toArray();
        boolean enough = sizes.length >= FEWEST - 1;
        if (!enough && detector.usual().isEmpty()) {
            return Optional.empty();
        }
        double usual = detector.usual().orElseGet(() -> Robust.median(sizes));
        double off = seen.size() - usual;
        double spread = enough
                ? Math.max(Robust.medianAbsoluteDeviation(sizes), detector.noticeable() / ROBUST_APART)
                : Double.NaN;
        boolean rightSide = switch (detector.side()) {
            case HIGH -> off > 0;
            case LOW -> off < 0;
            case EITHER -> true;
        };
        double apart = off / spread;
        if (!rightSide || Math.abs(off) < detector.noticeable() || Math.abs(apart) < ROBUST_APART) {
            return Optional.empty();
        }
        int rank = 1;
        for (double other : sizes) {
            rank += (off > 0 ? other > seen.size() : other < seen.size()) ? 1 : 0;
        }
        return Optional.of(new Moment(
                batch.name(),
                detector,
                seen.seconds(),
                seen.size(),
                usual,
                apart,
                rank,
                sizes.length + 1,
                crowd,
                reader));
    }

    /** Returns the moments, the most unusual first. */
    public List<Moment> list() {
        return list;
    }

    /** Returns the moments of one batch. */
    public Moments of(Batch batch) {
        List<Moment> own = list.stream()
                .filter(moment -> moment.batch().equals(batch.name()))
                .toList();
        return new Moments("batch " + batch.name(), own, detectors, List.of(batch), held);
    }

    /**
     * Returns the batch with the most unusual moment; the last of the batches if there is no moment, and with no batch yet one of which
     * nothing is known.
     */
    public Batch mostUnusualBatch() {
        if (batches.isEmpty()) {
            return EmptyLogbook.batch(TemperatureUnit.CELSIUS);
        }
        String wanted = list.isEmpty() ? "" : list.get(0).batch();
        return batches.stream()
                .filter(batch -> batch.name().equals(wanted))
                .findFirst()
                .orElse(batches.get(batches.size() - 1));
    }

    /** Returns how many batches were looked at. */
    public int batches() {
        return batches.size();
    }

    @Override
    public String toString() {
        long with = list.stream().map(Moment::batch).distinct().count();
        return String.format(
                Locale.ROOT,
                "%d notable %s in %d of %d %s (%s).",
                list.size(),
                list.size() == 1 ? "moment" : "moments",
                with,
                batches.size(),
                batches.size() == 1 ? "batch" : "batches",
                name);
    }

    /** Returns the answer in three sentences: what stands out most, how unusual it is, what to do next. */
    public InShort inShort() {
        return MomentsInShort.of(list, batches.size(), held, (int) batches.stream()
                .filter(batch -> batch.logged().contains(Quantity.BEAN_TEMPERATURE))
                .count());
    }

    private Report page() {
        Report page = Report.titled("Notable moments of " + name).add(inShort());
        if (!list.isEmpty()) {
            page = page.add(Table.titled("Moments, the most unusual first")
                    .withText("batch", list, Moment::batch)
                    .withText("at", list, m -> m.at().toString())
                    .withText("what", list, m -> m.detector().name())
                    .withText("size", list, Moment::shownSize)
                    .withText("usual", list, Moment::shownUsual)
                    .withText("how unusual", list, Moment::unusual)
                    .withNote("The charge is compared with charges of about the same mass only."));
        }
        return page.fold(Report.titled("How this was worked out")
                .say(toString())
                .say("Looked for: " + looked()
                        + ". Thresholds: common practice, no source, unless a detector says otherwise."
                        + " Most of it is told by holding a batch against at least " + (FEWEST - 1)
                        + " others. An unusual moment is not a fault: look at the batch."));
    }

    private String looked() {
        return String.join("; ", detectors.stream().map(MomentDetector::name).toList());
    }

    @Override
    public Showable shownAs() {
        return page();
    }
}
