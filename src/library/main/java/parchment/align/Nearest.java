package parchment.align;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import parchment.align.score.ShrunkenScores;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.display.answer.InShort;
import parchment.display.answer.Report;
import parchment.display.answer.ShownAs;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.contents.LogbookException;
import parchment.phase.Phases;
import parchment.phase.found.Mark;
import parchment.quantity.Temperature;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.linear.Robust;

/**
 * Answers which roasts were most like a given one.
 *
 * <p>Two batches are as far apart as the seconds that one of them spent elsewhere: over steps of 5 °C of bean temperature, the differences
 * of the time spent in each, without regard to sign, summed; the time up to the first step counts as one more. A temperature that only
 * one of them reached counts with all the time spent there. The distance is in seconds, 0 for equal paths, the same both ways, and never
 * shorter by a detour over a third batch. Only batches between the same two changes of the probe are searched, written or found in the
 * readings, as those of another are not on the same scale; those of the same lot stand first.
 *
 * <pre>{@code
 * Nearest.to(logbook.lastWithCurve(), logbook)
 * }</pre>
 */
public final class Nearest implements ShownAs {
    private static final double STEP_CELSIUS = 5;
    private static final int SHOWN = 5;

    private final Batch batch;
    private final TemperatureUnit reader;
    private final List<Neighbour> neighbours;
    private final String attribute;
    private final ShrunkenScores scores;
    private final int otherProbe;
    private final List<String> notes;
    private final NotHeld notHeld;

    /**
     * Holds one batch and how far it is.
     *
     * @param batch the other batch
     * @param secondsElsewhere the distance: the seconds that one of the two spent elsewhere on the temperature axis
     * @param sameLot whether both are of one lot
     * @param drop when and how hot it was dropped, if known
     */
    public record Neighbour(Batch batch, double secondsElsewhere, Lot sameLot, Optional<Mark> drop) {}

    /** Says whether two batches are of one lot. */
    public enum Lot {
        /** Both are of the same lot. */
        SAME,
        /** They are of different lots, or a lot was not written. */
        OTHER
    }

    private Nearest(
            Batch batch,
            TemperatureUnit reader,
            List<Neighbour> neighbours,
            String attribute,
            ShrunkenScores scores,
            int otherProbe,
            List<String> notes,
            NotHeld notHeld) {
        this.batch = batch;
        this.reader = reader;
        this.neighbours = List.copyOf(neighbours);
        this.attribute = attribute;
        this.scores = scores;
        this.otherProbe = otherProbe;
        this.notes = List.copyOf(notes);
        this.notHeld = notHeld;
    }

    /**
     * Searches a logbook for the batches that are most like one of it.
     *
     * @throws LogbookException if the logbook has no such batch, or others have a bean temperature and the batch has none
     */
    public static Nearest to(Batch batch, Logbook logbook) {
        return ifKnown(batch, logbook)
                .or(() -> NoCurve.of(batch) && Peers.of(logbook).isEmpty()
                        ? Optional.of(withoutCurves(batch, logbook))
                        : Optional.empty())
                .orElseThrow(() -> new LogbookException(
                        "Batch '" + batch.name() + "' has no bean temperature, so no other can be like it."
                                + " Choose a batch with a curve, such as logbook.lastWithCurve()."));
    }

    private static Nearest withoutCurves(Batch batch, Logbook logbook) {
        String attribute = logbook.scored("overall", "liking", "sweetness");
        return new Nearest(
                batch,
                logbook.readerUnit(),
                List.of(),
                attribute,
                ShrunkenScores.of(logbook, attribute),
                0,
                List.of(),
                new NotHeld(0, NotHeld.Whose.ITS_OWN));
    }

    /**
     * Searches in the same way; empty if the batch has no bean temperature.
     *
     * @throws LogbookException if the logbook has no such batch
     */
    public static Optional<Nearest> ifKnown(Batch batch, Logbook logbook) {
        ByProbe periods = ByProbe.of(logbook);
        String period = periods.period(logbook.batch(batch.name()));
        Map<String, Phases> all = new HashMap<>();
        Map<String, FirstPassages> climbs = new HashMap<>();
        int otherProbe = 0;
        for (Phases phases : Phases.of(logbook)) {
            Optional<FirstPassages> climb = FirstPassages.of(phases);
            boolean same = periods.period(phases.batch()).equals(period);
            otherProbe += same ? 0 : 1;
            if (climb.isPresent() && same) {
                all.put(phases.batch().name(), phases);
                climbs.put(phases.batch().name(), climb.get());
            }
        }
        FirstPassages own = climbs.get(batch.name());
        if (own == null) {
            return Optional.empty();
        }
        double base = base(climbs);
        List<Neighbour> neighbours = new ArrayList<>();
        for (Batch other : logbook.batches()) {
            FirstPassages climb = climbs.get(other.name());
            Phases phases = all.get(other.name());
            if (climb != null && phases != null && !other.name().equals(batch.name())) {
                double distance = distance(own, climb, base);
                if (Double.isFinite(distance)) {
                    boolean lot = batch.lot().isPresent() && batch.lot().equals(other.lot());
                    neighbours.add(
                            new Neighbour(other, distance, lot ? Lot.SAME : Lot.OTHER, phases.mark(MarkKind.DROP)));
                }
            }
        }
        neighbours.sort(Comparator.comparingDouble(Neighbour::secondsElsewhere)
                .thenComparing(one -> one.batch().name()));
        String attribute = logbook.scored("overall", "liking", "sweetness");
        return Optional.of(new Nearest(
                batch,
                logbook.readerUnit(),
                neighbours,
                attribute,
                ShrunkenScores.of(logbook, attribute),
                otherProbe,
                periods.found(List.of(logbook.batch(batch.name()))),
                NotHeld.of(batch.name(), climbs, base, neighbours.size())));
    }

    /** Returns the temperature that every climb of the probe has begun below, on a whole step. */
    private static double base(Map<String, FirstPassages> climbs) {
        double highest = Robust.quantile(
                climbs.values().stream().mapToDouble(FirstPassages::from).toArray(), 0.95);
        return Math.ceil(highest / STEP_CELSIUS) * STEP_CELSIUS;
    }

    /** Returns the seconds spent elsewhere; NaN where a gap hides a step, or a climb begins above the first step. */
    static double distance(FirstPassages a, FirstPassages b, double base) {
        double sum = Math.abs(a.passage(base) - b.passage(base));
        for (double edge = base; edge < Math.max(a.to(), b.to()); edge += STEP_CELSIUS) {
            sum += Math.abs(spent(a, edge) - spent(b, edge));
        }
        return sum;
    }

    private static double spent(FirstPassages climb, double from) {
        if (from >= climb.to()) {
            return 0;
        }
        double to = from + STEP_CELSIUS;
        return (to >= climb.to() ? climb.toSeconds() : climb.passage(to)) - climb.passage(from);
    }

    /** Returns all batches of the probe, the nearest first, whatever their lot. */
    public List<Neighbour> list() {
        return neighbours;
    }

    /** Returns the nearest batches of the same lot. */
    public List<Neighbour> ofSameLot() {
        return some(Lot.SAME);
    }

    /** Returns the nearest batches of other lots. */
    public List<Neighbour> ofOtherLots() {
        return some(Lot.OTHER);
    }

    private List<Neighbour> some(Lot lot) {
        return neighbours.stream()
                .filter(one -> one.sameLot() == lot)
                .limit(SHOWN)
                .toList();
    }

    /** Says why there are no neighbours, in a sentence: no other batch was read by the probe, or a curve is not whole. */
    public String whyNone() {
        return notHeld.words();
    }

    /** Returns the answer in three sentences: which is nearest, how near that is, what to do next. */
    public InShort inShort() {
        if (NoCurve.of(batch)) {
            return NoCurve.inShort("Which roast was most like batch " + batch.name() + " cannot be told.");
        }
        if (neighbours.isEmpty() && notHeld.others() > 0) {
            return NearestInShort.ofTornCurves(batch.name(), whyNone());
        }
        return NearestInShort.of(batch.name(), neighbours, neighbours.isEmpty() ? Double.NaN : usual(), otherProbe);
    }

    /** Returns the distance that half of all batches are farther than. */
    private double usual() {
        return Robust.median(
                neighbours.stream().mapToDouble(Neighbour::secondsElsewhere).toArray());
    }

    @Override
    public Showable shownAs() {
        Report page = Report.titled("Batches most like batch " + batch.name()).add(inShort());
        if (!ofSameLot().isEmpty()) {
            page = page.add(table("Of the same lot, on the same probe", ofSameLot()));
        }
        if (!ofOtherLots().isEmpty()) {
            page = page.add(table(
                    batch.lot().isPresent() ? "Of other lots, on the same probe" : "On the same probe", ofOtherLots()));
        }
        Report folded = Report.titled("How this was worked out").say(toString() + ".");
        for (String note : notes) {
            folded = folded.say(note);
        }
        if (otherProbe > 0) {
            folded = folded.say(
                    otherProbe == 1
                            ? "1 batch was read by another probe, or before or after it was moved, and is not searched: its"
                                    + " temperatures are not on the same scale."
                            : otherProbe
                                    + " batches were read by another probe, or before or after it was moved, and are not"
                                    + " searched: their temperatures are not on the same scale.");
        }
        return page.fold(folded.say(
                "What was alike was the bean temperature. Alike on paper is not alike in the cup: beans, room and air"
                        + " may have differed."));
    }

    private Table table(String title, List<Neighbour> rows) {
        Table table = Table.titled(title)
                .withText("batch", rows, one -> one.batch().name())
                .withText("lot", rows, one -> one.batch().lot().orElse(""))
                .withText(
                        "roasted on",
                        rows,
                        one -> one.batch().roastDay().map(LocalDate::toString).orElse(""))
                .withNumber("spent elsewhere", "s", 0, rows, Neighbour::secondsElsewhere)
                .withText(
                        "dropped at",
                        rows,
                        one -> one.drop().map(mark -> mark.at().toString()).orElse(""))
                .withNumber(
                        "drop temperature",
                        Unit.TEMPERATURE,
                        reader,
                        rows,
                        one -> one.drop()
                                .flatMap(Mark::beanTemperature)
                                .map(Temperature::celsius)
                                .orElse(Double.NaN));
        if (rows.stream().allMatch(one -> score(one).isEmpty())) {
            return table.withNote("None of these was cupped for " + attribute + ".");
        }
        return table.withNumber(
                        "scores",
                        "",
                        0,
                        rows,
                        one -> score(one).map(score -> (double) score.scores()).orElse(0.0))
                .withNumber(
                        "mean " + attribute,
                        "points",
                        2,
                        rows,
                        one -> score(one).map(ShrunkenScores.Score::mean).orElse(Double.NaN))
                .withNumber(
                        "shrunken",
                        "points",
                        2,
                        rows,
                        one -> score(one).map(ShrunkenScores.Score::shrunken).orElse(Double.NaN))
                .withNumber(
                        "±",
                        "points",
                        2,
                        rows,
                        one -> score(one)
                                .map(ShrunkenScores.Score::standardError)
                                .orElse(Double.NaN))
                .withDashForMissing("not cupped for " + attribute + ", or too few scores in the logbook to shrink")
                .withNote(scores.note(attribute) + " The true number lies within its ± about two times in three.");
    }

    private Optional<ShrunkenScores.Score> score(Neighbour one) {
        return scores.of(one.batch().name());
    }

    @Override
    public String toString() {
        if (neighbours.isEmpty()) {
            return notHeld.others() > 0
                    ? whyNone().replaceFirst("\\.$", "")
                    : "No other batch with a bean temperature was read by the same probe as batch " + batch.name();
        }
        if (neighbours.size() == 1) {
            return String.format(
                    Locale.ROOT,
                    "The one other batch on the same probe is batch %s: it or batch %s spent %.0f s elsewhere",
                    neighbours.get(0).batch().name(),
                    batch.name(),
                    neighbours.get(0).secondsElsewhere());
        }
        return String.format(
                Locale.ROOT,
                "Of %d batches on the same probe, batch %s is nearest to batch %s: one of the two spent %.0f s elsewhere (half of all"
                        + " batches are farther than %.0f s)",
                neighbours.size(),
                neighbours.get(0).batch().name(),
                batch.name(),
                neighbours.get(0).secondsElsewhere(),
                usual());
    }
}
