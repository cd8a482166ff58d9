package parchment.phase;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import parchment.curve.CleanCurve;
import parchment.curve.Curve;
import parchment.curve.SmoothCurve;
import parchment.display.Progress;
import parchment.display.Showable;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.phase.found.Mark;
import parchment.phase.found.Phase;
import parchment.phase.found.Source;

/**
 * The marks and phases of one batch, on one clock that starts at charge.
 *
 * <pre>{@code
 * Phases.of(logbook.lastWithCurve())
 * }</pre>
 *
 * <p>Nothing is made up: a mark that nobody wrote and that does not show on the curve is missing, and so is each phase that needs it.
 * A written mark that contradicts another or the curve is questioned in words; it is kept if that is no more than their errors, and
 * otherwise {@linkplain #setAside set aside}.
 */
public final class Phases implements Showable {
    private final Batch batch;
    private final Map<MarkKind, Mark> marks;
    private final Map<MarkKind, Mark> setAside;
    private final Optional<OnCurve.Found> fall;
    private final List<String> notes;
    private final List<MarkDoubts.Doubt> doubts;
    private final double zeroOnLogger;
    private final MarkFinder.CurveUse use;
    private final Optional<CleanCurve> clean;
    private final Optional<SmoothCurve> bean;

    private Phases(Batch batch, MarkFinder.Result found) {
        this.batch = batch;
        this.marks = Collections.unmodifiableMap(new EnumMap<>(found.marks()));
        this.notes = List.copyOf(found.notes());
        this.zeroOnLogger = found.zeroOnLogger();
        this.use = found.curve();
        this.clean = found.clean();
        this.bean = found.bean();
        Map<MarkKind, Mark> aside = new EnumMap<>(MarkKind.class);
        aside.putAll(found.setAside());
        this.setAside = Collections.unmodifiableMap(aside);
        this.fall = found.fall();
        this.doubts = MarkDoubts.about(marks, setAside, clean);
    }

    /** Finds the marks and phases of a batch, with the usual uncertainty of written marks. */
    public static Phases of(Batch batch) {
        return of(batch, MarkHabit.STANDARD);
    }

    /** Finds the marks and phases of a batch, with the uncertainty of written marks given by a habit. */
    public static Phases of(Batch batch, MarkHabit habit) {
        MarkFinder.Result begun = MarkFinder.begin(batch, habit);
        return new Phases(
                batch, MarkFinder.read(batch, habit, MarkFinder.place(batch, habit, begun, EndOfRoast.USUAL)));
    }

    /**
     * Finds the marks and phases of all batches of a logbook, in its order and in parallel. The habit of rounding is read off the logbook,
     * and so is how exactly a drop is written and how late the logger is stopped; the noise is pooled over all curves of a logger.
     */
    public static List<Phases> of(Logbook logbook) {
        return logbook.remembered(
                        OfEveryBatch.class, book -> new OfEveryBatch(book.whole() == book ? find(book) : chosen(book)))
                .phases();
    }

    /** The kind of result under which a logbook remembers its phases. */
    private record OfEveryBatch(List<Phases> phases) {}

    private static List<Phases> chosen(Logbook filtered) {
        Map<String, Phases> all = new HashMap<>();
        of(filtered.whole()).forEach(one -> all.putIfAbsent(one.batch().name(), one));
        return filtered.batches().stream()
                .map(batch -> Optional.ofNullable(all.get(batch.name())).orElseGet(() -> of(batch)))
                .toList();
    }

    private static List<Phases> find(Logbook logbook) {
        MarkHabit habit = MarkHabit.of(logbook);
        List<Batch> batches = logbook.batches();
        try (Progress progress = Progress.of(2L * batches.size(), "finding marks")) { // Each batch is looked at twice.
            List<MarkFinder.Result> begun = batches.parallelStream()
                    .peek(batch -> progress.step())
                    .map(batch -> MarkFinder.begin(batch, habit))
                    .toList();
            EndOfRoast ends = EndOfRoast.of(batches, begun);
            List<MarkFinder.Result> placed = IntStream.range(0, batches.size())
                    .parallel()
                    .mapToObj(i -> MarkFinder.place(batches.get(i), habit, begun.get(i), ends))
                    .toList();
            List<MarkFinder.Result> pooled = LoggerNoise.pool(batches, placed);
            return IntStream.range(0, batches.size())
                    .parallel()
                    .peek(i -> progress.step())
                    .mapToObj(i -> new Phases(batches.get(i), MarkFinder.read(batches.get(i), habit, pooled.get(i))))
                    .toList();
        }
    }

    /** Returns a copy with more marks, such as predicted ones; a mark that is there already stays. */
    Phases with(List<Mark> more) {
        Map<MarkKind, Mark> all = new EnumMap<>(MarkKind.class);
        more.forEach(mark -> all.put(mark.kind(), mark));
        all.putAll(marks);
        return new Phases(batch, new MarkFinder.Result(all, setAside, notes, zeroOnLogger, use, fall, clean, bean));
    }

    /** Returns the batch. */
    public Batch batch() {
        return batch;
    }

    /** Returns the marks in the order of their kinds. */
    public List<Mark> marks() {
        return List.copyOf(marks.values());
    }

    /** Returns one mark, or nothing if it was neither written nor found. */
    public Optional<Mark> mark(MarkKind kind) {
        return Optional.ofNullable(marks.get(kind));
    }

    /**
     * Returns a written mark that is not used because it cannot be true beside another mark or the curve; {@link #questions} say why.
     */
    public Optional<Mark> setAside(MarkKind kind) {
        return Optional.ofNullable(setAside.get(kind));
    }

    /** Returns the drying phase, from charge to yellowing. */
    public Optional<Phase> drying() {
        return phase("drying", MarkKind.CHARGE, MarkKind.YELLOWING);
    }

    /** Returns the browning phase, from yellowing to the start of first crack. */
    public Optional<Phase> browning() {
        return phase("browning", MarkKind.YELLOWING, MarkKind.FIRST_CRACK_START);
    }

    /** Returns the development phase, from the start of first crack to the drop. */
    public Optional<Phase> development() {
        return phase("development", MarkKind.FIRST_CRACK_START, MarkKind.DROP);
    }

    /** Returns the phases that are known, in order. */
    public List<Phase> list() {
        List<Phase> list = new ArrayList<>();
        drying().ifPresent(list::add);
        browning().ifPresent(list::add);
        development().ifPresent(list::add);
        return list;
    }

    private Optional<Phase> phase(String name, MarkKind from, MarkKind to) {
        Mark start = marks.get(from);
        Mark end = marks.get(to);
        Mark charge = marks.get(MarkKind.CHARGE);
        if (start == null || end == null || charge == null || !(end.seconds() > start.seconds())) {
            return Optional.empty();
        }
        Mark turn = marks.get(MarkKind.TURNING_POINT);
        Mark rateStart = from == MarkKind.CHARGE && turn != null ? turn : start;
        return Optional.of(
                new Phase(name, start, end, charge, Optional.ofNullable(marks.get(MarkKind.DROP)), rateStart));
    }

    /** Returns what lacks, in sentences, each with what can be said without it; empty if nothing lacks. */
    public List<String> missing() {
        return MissingMarks.sentences(this);
    }

    /** Returns what in the written marks contradicts itself or the curve, in sentences. */
    public List<String> questions() {
        return doubts.stream().map(MarkDoubts.Doubt::why).toList();
    }

    /** Returns the marks that {@link #questions} ask to check, in the order of their kinds. */
    public List<MarkKind> questioned() {
        return doubts.stream().map(MarkDoubts.Doubt::kind).distinct().sorted().toList();
    }

    /** Returns how the clocks of logger and roaster were put together, where that was not plain. */
    public List<String> notes() {
        return notes;
    }

    /** Returns the time of charge on the logger's own clock, in seconds; 0 where the logger's clock starts at charge. */
    public double chargeOnLogger() {
        return zeroOnLogger;
    }

    /** Returns what was logged of a quantity, on the clock that starts at charge; nothing where the curve is set aside, as {@link #notes} say. */
    public Optional<Curve> curve(Quantity quantity) {
        return batch.curve(quantity)
                .filter(curve -> !isSetAside())
                .map(curve -> zeroOnLogger == 0 ? curve : curve.withZeroAt(zeroOnLogger));
    }

    /**
     * Returns whether the log holds the charge: false where it starts later than {@value LateStart#LATE_SECONDS} s after it, where the
     * charge is assumed, and without a curve. What was written at charge cannot be held against such a log.
     */
    public boolean isChargeLogged() {
        Mark charge = marks.get(MarkKind.CHARGE);
        return charge != null
                && charge.source() != Source.ASSUMED
                && clean.filter(LateStart::holdsTheCharge).isPresent();
    }

    /** Whether a curve was logged on a clock that cannot be that of a roast. */
    boolean isSetAside() {
        return use == MarkFinder.CurveUse.SET_ASIDE;
    }

    /** Returns the whole cleaned bean-temperature curve, on the clock that starts at charge. */
    public Optional<CleanCurve> clean() {
        return clean;
    }

    /** Returns the smoothed bean temperature from charge to drop, on the clock that starts at charge. */
    public Optional<SmoothCurve> bean() {
        return bean;
    }

    @Override
    public String toString() {
        List<Phase> list = list();
        String known = list.isEmpty()
                ? "no phase known"
                : list.stream().map(p -> p.name() + " " + p.duration()).collect(Collectors.joining(", "));
        return "Phases of batch " + batch.name() + ": " + known
                + mark(MarkKind.DROP).map(d -> ", drop at " + d.at()).orElse(", no drop") + ".";
    }

    @Override
    public String text() {
        return PhasesPage.of(this).text();
    }

    @Override
    public Optional<String> html() {
        return PhasesPage.of(this).html();
    }
}
