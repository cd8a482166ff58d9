package parchment.align;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.display.answer.InShort;
import parchment.display.answer.Report;
import parchment.display.answer.ShownAs;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.phase.Phases;
import parchment.phase.found.Mark;
import parchment.phase.found.ProbeReading;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.Interval;
import parchment.stats.resample.GroupBootstrap;

/**
 * Splits how much batches differ into pace and marks: how long they took to the same temperature, and at what temperature a mark came.
 *
 * <p>The time of a mark is the time at which the batch passed the mark's usual temperature, plus the time by which the mark came later or
 * earlier than that. The spread of the time (its variance between batches) splits by the covariance of each part with the whole, so
 * that the shares sum to 1; a share may be negative where one part makes up for the other. The same is done for the steps of temperature
 * on the way to the drop. Intervals are 90 % percentile intervals from 499 draws of whole roast days.
 *
 * <pre>{@code
 * SpreadSplit.of(logbook)
 * }</pre>
 */
public final class SpreadSplit implements ShownAs {
    private static final List<MarkKind> MARKS = List.of(MarkKind.YELLOWING, MarkKind.FIRST_CRACK_START, MarkKind.DROP);
    private static final int DRAWS = 499;
    private static final long SEED = 20120501;
    private static final double LEVEL = 0.90;

    private final TemperatureUnit reader;
    private final int asked;
    private final List<OfMark> marks;
    private final List<OfStep> steps;
    private final double byTheClock;
    private final double byTheStage;
    private final List<String> notes;

    /**
     * Holds the split of one mark's time.
     *
     * @param kind the mark
     * @param batches how many batches have it, on one probe
     * @param usualCelsius the mean bean temperature at which it came
     * @param standardDeviation of its time between batches, in seconds
     * @param paceShare the share of the variance that is the time taken to the usual temperature
     * @param paceInterval the share's 90 % interval; missing ends with fewer than 5 roast days
     * @param errorShare the share of the variance that the uncertainty of the mark's time would make by itself
     */
    public record OfMark(
            MarkKind kind,
            int batches,
            double usualCelsius,
            double standardDeviation,
            double paceShare,
            Interval paceInterval,
            double errorShare) {
        /** Returns the share that is the mark coming hotter or colder than usual; with the pace's it sums to 1. */
        public double markShare() {
            return 1 - paceShare;
        }
    }

    /**
     * Holds the part of one stretch of the roast in the spread of the drop time.
     *
     * @param words the stretch
     * @param meanSeconds what the batches spent in it on average
     * @param standardDeviation of that between batches
     * @param share its share of the variance of the drop time; the shares of all stretches sum to 1
     */
    public record OfStep(String words, double meanSeconds, double standardDeviation, double share) {}

    private SpreadSplit(
            TemperatureUnit reader,
            int asked,
            List<OfMark> marks,
            List<OfStep> steps,
            double byTheClock,
            double byTheStage,
            List<String> notes) {
        this.reader = reader;
        this.asked = asked;
        this.marks = List.copyOf(marks);
        this.steps = List.copyOf(steps);
        this.byTheClock = byTheClock;
        this.byTheStage = byTheStage;
        this.notes = List.copyOf(notes);
    }

    /** Splits the spread of the batches on a logbook's latest probe. */
    public static SpreadSplit of(Logbook logbook) {
        OneProbe probe = OneProbe.of(logbook);
        TemperatureUnit reader = logbook.readerUnit();
        List<OfMark> marks = new ArrayList<>();
        for (MarkKind kind : MARKS) {
            split(probe.phases(), kind).ifPresent(marks::add);
        }
        int asked = logbook.batches().size();
        OneClock stages = OneClock.of(probe.phases(), Clock.BY_ALL_MARKS, reader, asked, List.of());
        List<Phases> both = stages.whole().stream().map(OneClock.Laid::phases).toList();
        OneClock seconds = OneClock.of(both, Clock.SINCE_CHARGE, reader, asked, List.of());
        double turn = parchment.stats.linear.Robust.median(both.stream()
                .flatMap(phases -> phases.mark(MarkKind.TURNING_POINT).stream())
                .mapToDouble(Mark::seconds)
                .toArray());
        return new SpreadSplit(
                reader,
                asked,
                marks,
                SpreadAlongTheWay.of(probe.phases(), reader),
                spread(seconds, turn),
                spread(stages, turn),
                probe.notes());
    }

    /** Returns the standard deviation between batches in °C, the root of the mean variance after the turning point. */
    private static double spread(OneClock one, double turn) {
        List<double[]> curves = one.whole().stream().map(one::values).toList();
        double[] positions = one.positions();
        double sum = 0;
        int count = 0;
        for (int k = 0; k < positions.length && curves.size() > 1; k++) {
            if (positions[k] >= turn) {
                int place = k;
                sum += variance(
                        curves.stream().mapToDouble(curve -> curve[place]).toArray());
                count++;
            }
        }
        return count == 0 ? Double.NaN : Math.sqrt(sum / count);
    }

    private static Optional<OfMark> split(List<Phases> all, MarkKind kind) {
        List<Mark> marks = new ArrayList<>();
        List<Optional<FirstPassages>> climbs = new ArrayList<>();
        List<String> days = new ArrayList<>();
        for (Phases phases : all) {
            Optional<Mark> mark = phases.mark(kind).filter(m -> m.probe().isPresent());
            Optional<FirstPassages> climb = FirstPassages.of(phases);
            if (mark.isPresent() && climb.isPresent()) {
                marks.add(mark.get());
                climbs.add(climb);
                days.add(OneClock.day(phases.batch()));
            }
        }
        double usual = marks.stream()
                .flatMap(mark -> mark.probe().stream())
                .mapToDouble(ProbeReading::celsius)
                .average()
                .orElse(Double.NaN);
        List<double[]> pairs = new ArrayList<>();
        List<String> labels = new ArrayList<>();
        double errors = 0;
        for (int i = 0; i < marks.size(); i++) {
            Mark mark = marks.get(i);
            double pace = climbs.get(i).map(climb -> climb.passage(usual)).orElse(Double.NaN);
            ProbeReading probe = mark.probe().orElseThrow();
            if (Double.isNaN(pace) && probe.celsius() < usual && probe.rateOfRise() > 0) {
                // The batch never came to the usual temperature: it would have, at the rate it had.
                pace = mark.seconds() + 60 * (usual - probe.celsius()) / probe.rateOfRise();
            }
            if (Double.isFinite(pace)) {
                pairs.add(new double[] {mark.seconds(), pace});
                labels.add(days.get(i));
                errors += mark.standardError() * mark.standardError();
            }
        }
        if (pairs.size() < Crowd.LEAST) {
            return Optional.empty();
        }
        double variance = variance(pairs.stream().mapToDouble(p -> p[0]).toArray());
        boolean enough = labels.stream().distinct().count() >= 5;
        Interval interval = enough
                ? GroupBootstrap.of(labels, SEED)
                        .interval(
                                DRAWS,
                                LEVEL,
                                draw -> paceShare(Arrays.stream(draw.rows())
                                        .mapToObj(pairs::get)
                                        .toList()))
                : new Interval(Double.NaN, Double.NaN, LEVEL);
        return Optional.of(new OfMark(
                kind,
                pairs.size(),
                usual,
                Math.sqrt(variance),
                paceShare(pairs),
                interval,
                errors / pairs.size() / variance));
    }

    private static double paceShare(List<double[]> pairs) {
        double[] whole = pairs.stream().mapToDouble(p -> p[0]).toArray();
        double[] pace = pairs.stream().mapToDouble(p -> p[1]).toArray();
        return covariance(pace, whole) / variance(whole);
    }

    static double variance(double[] values) {
        return covariance(values, values);
    }

    static double covariance(double[] a, double[] b) {
        double meanA = Arrays.stream(a).average().orElse(Double.NaN);
        double meanB = Arrays.stream(b).average().orElse(Double.NaN);
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += (a[i] - meanA) * (b[i] - meanB);
        }
        return sum / (a.length - 1);
    }

    /** Returns the split of each mark's time, in the order of the roast; marks of fewer than five batches are left out. */
    public List<OfMark> marks() {
        return marks;
    }

    /** Returns the parts of the spread of the drop time, from charge on. */
    public List<OfStep> steps() {
        return steps;
    }

    /** Returns the standard deviation of the bean temperature between batches at the same second since charge, in °C. */
    public double byTheClock() {
        return byTheClock;
    }

    /** Returns the standard deviation of the bean temperature at the same stage, on the common clock of all marks, in °C. */
    public double byTheStage() {
        return byTheStage;
    }

    /** Returns the share of the variance of the bean temperature that is timing: what goes when the marks are laid on each other. */
    public double timingShare() {
        return 1 - byTheStage * byTheStage / (byTheClock * byTheClock);
    }

    /** Returns the answer in three sentences: how much is pace, how sure that is, what to do next. */
    public InShort inShort() {
        return marks.stream()
                .filter(one -> one.kind() == MarkKind.DROP)
                .findFirst()
                .map(drop -> SplitInShort.of(
                        Stretches.whole(drop.usualCelsius(), reader), drop.paceShare(), drop.paceInterval()))
                .orElseGet(() -> SplitInShort.cannotTell(asked));
    }

    @Override
    public Showable shownAs() {
        Report page =
                Report.titled("How much is timing, how much is temperature").add(inShort());
        Report folded = Report.titled("How this was worked out").say(toString() + ".");
        for (String note : notes) {
            folded = folded.say(note);
        }
        if (!marks.isEmpty()) {
            folded = folded.add(Table.titled("When each mark came")
                    .withText("mark", marks, one -> one.kind().words())
                    .withNumber("batches", "", 0, marks, OfMark::batches)
                    .withNumber("usual temperature", Unit.TEMPERATURE, reader, marks, OfMark::usualCelsius)
                    .withNumber("spread of its time", "s", 0, marks, OfMark::standardDeviation)
                    .withText("pace up to there", marks, one -> ShareWords.of(one.paceShare()))
                    .withText("90 % interval", marks, one -> ShareWords.of(one.paceInterval()))
                    .withText("came hotter or colder", marks, one -> ShareWords.of(one.markShare()))
                    .withText("error of the mark", marks, one -> ShareWords.of(one.errorShare()))
                    .withNote(
                            "Spread is one standard deviation between batches. Pace: they took longer or shorter to the mark's"
                                    + " usual temperature. Hotter or colder: the mark came at another temperature. The two sum to"
                                    + " the whole; where one made up for the other, that one has all, and more. The error of the"
                                    + " mark is part of them."));
        }
        if (!steps.isEmpty()) {
            page = page.add(Table.titled("Where the spread of the drop time arose")
                    .withText("stretch", steps, OfStep::words)
                    .withNumber("mean", "s", 0, steps, OfStep::meanSeconds)
                    .withNumber("spread", "s", 0, steps, OfStep::standardDeviation)
                    .withText("share", steps, one -> ShareWords.of(one.share()))
                    .withRowsShown(steps.size())
                    .withNote(
                            "The shares sum to the whole. A stretch that made up for others was longer where they were"
                                    + " shorter."));
        }
        return page.fold(folded);
    }

    private String degrees() {
        if (!(byTheClock > 0)) {
            return "";
        }
        Unit unit = Unit.TEMPERATURE_STEP;
        String spreads = String.format(
                Locale.ROOT,
                "At the same second since charge the bean temperatures spread by %s (one standard deviation), at"
                        + " the same stage between the marks by %s",
                unit.formatStep(byTheClock, reader),
                unit.formatStep(byTheStage, reader));
        return timingShare() > 0
                ? spreads
                        + String.format(
                                Locale.ROOT,
                                ": %.0f %% of the variance is timing, %.0f %% is temperature",
                                100 * timingShare(),
                                100 * (1 - timingShare()))
                : spreads + ": laying the marks on each other does not bring the batches closer";
    }

    @Override
    public String toString() {
        Optional<OfMark> drop =
                marks.stream().filter(one -> one.kind() == MarkKind.DROP).findFirst();
        if (drop.isEmpty()) {
            return "Cannot tell how much of the spread is timing: it takes " + Crowd.LEAST
                    + " batches on one probe with a bean temperature and a drop, and of " + asked + " too few are such";
        }
        OfMark one = drop.get();
        String first = String.format(
                Locale.ROOT,
                "The drop time of %d batches spreads by %.0f s (one standard deviation). %s",
                one.batches(),
                one.standardDeviation(),
                ShareWords.ofDrop(one.paceShare(), Stretches.whole(one.usualCelsius(), reader)));
        return degrees().isEmpty() ? first : first + ". " + degrees();
    }
}
