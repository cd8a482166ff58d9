package parchment.drift;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;
import parchment.display.Report;
import parchment.display.Sentence;
import parchment.display.Showable;
import parchment.display.ShownAs;
import parchment.feature.BatchTable;
import parchment.feature.Features;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.LogbookException;
import parchment.quantity.Mass;
import parchment.stats.Estimate;
import parchment.stats.GroupEffect;
import parchment.stats.Interval;
import parchment.stats.LinearMixedModel;
import parchment.stats.MixedDesign;
import parchment.stats.RandomTerm;
import parchment.stats.Robust;

/**
 * Says how much green coffee an order of roasted coffee takes, from the mass loss of the lot's own batches.
 *
 * <pre>{@code
 * GreenNeeded.of(logbook.lastWithCurve().lot().orElseThrow(), Mass.kilograms(12), logbook)
 * }</pre>
 *
 * <p>The interval is that of the next batches: it holds what roast days and batches differ by, and what is not known of the lot's mean.
 * It supposes that the lot is roasted as it was; a darker roast loses more. With fewer than four of its own batches weighed, the lot is
 * taken as one more of the logbook's lots: its mean is drawn towards theirs, and the interval holds what lots differ by.
 */
public final class GreenNeeded implements ShownAs {
    private static final int FEWEST = 4;
    /** Fewest weighed batches and lots that say what another lot may lose; common practice, no source. */
    private static final int FEWEST_OF_ALL = 8;

    private static final int FEWEST_LOTS = 2;
    /** No batch loses more, as the check of batches.csv has it; common practice, no source. */
    private static final double MOST_LOST = 0.4;

    private static final double LEVEL = 0.90;

    private final String lot;
    private final Mass roasted;
    private final int used;
    private final int batches;
    private final double size;
    private final Estimate loss;
    private final String from;

    private GreenNeeded(String lot, Mass roasted, int used, int batches, double size, Estimate loss, String from) {
        this.lot = lot;
        this.roasted = roasted;
        this.used = used;
        this.batches = batches;
        this.size = size;
        this.loss = loss;
        this.from = from;
    }

    /**
     * Works out the green coffee for an order.
     *
     * @param roasted what is to be delivered, above 0
     * @throws LogbookException if the logbook has no such lot, or the order is not above 0
     */
    public static GreenNeeded of(String lot, Mass roasted, Logbook logbook) {
        if (!(roasted.kilograms() > 0)) {
            throw new LogbookException(
                    "An order is a mass above 0, but for '" + lot + "' it is " + roasted + ". Write it as 12 kg.");
        }
        BatchTable table = BatchTable.of(logbook.ofLot(lot), Features.massLoss(), Features.greenMass());
        double[] losses = table.values(Features.massLoss());
        double size = Robust.median(table.values(Features.greenMass()));
        List<String> days = new ArrayList<>();
        for (Batch batch : table.batches()) {
            days.add(
                    batch.roastedAt().isPresent()
                            ? batch.roastDay().orElseThrow().toString()
                            : "batch " + batch.name());
        }
        int used = 0;
        double sum = 0;
        for (double value : losses) {
            used += Double.isFinite(value) ? 1 : 0;
            sum += Double.isFinite(value) ? value : 0;
        }
        if (used < FEWEST) {
            return ofAllLots(lot, roasted, logbook, used, size);
        }
        int count = count(roasted, sum / used, size);
        LinearMixedModel model = MixedDesign.of("mass loss", losses)
                .withRandom(RandomTerm.intercept("roast day", days))
                .fit();
        Estimate mean = model.terms().get(0);
        double ofDay = model.standardDeviation("roast day");
        // All of the order on one roast day: the days' differences then do not average out.
        double error = Math.sqrt(mean.standardError() * mean.standardError()
                + ofDay * ofDay
                + model.residualStandardDeviation() * model.residualStandardDeviation() / count);
        double degrees = Math.max(2, Math.min(used - 1.0, mean.degreesOfFreedom()));
        return new GreenNeeded(
                lot,
                roasted,
                used,
                count,
                size,
                new Estimate("mass loss", mean.estimate(), error, degrees),
                "from " + used + " batches");
    }

    private static int count(Mass roasted, double loss, double size) {
        return Double.isFinite(size) ? (int) Math.max(1, Math.ceil(roasted.kilograms() / (1 - loss) / size)) : 1;
    }

    /** Takes the lot as one of all lots: as far from their mean as its few batches, drawn towards it, or as any new lot may be. */
    private static GreenNeeded ofAllLots(String lot, Mass roasted, Logbook logbook, int own, double ownSize) {
        BatchTable table = BatchTable.of(logbook, Features.massLoss(), Features.greenMass());
        double[] losses = table.values(Features.massLoss());
        List<String> lots = new ArrayList<>();
        List<String> days = new ArrayList<>();
        TreeSet<String> weighed = new TreeSet<>();
        int used = 0;
        for (int i = 0; i < losses.length; i++) {
            Batch batch = table.batches().get(i);
            lots.add(batch.lot().orElse(""));
            days.add(
                    batch.roastedAt().isPresent()
                            ? batch.roastDay().orElseThrow().toString()
                            : "batch " + batch.name());
            if (Double.isFinite(losses[i]) && batch.lot().isPresent()) {
                used++;
                weighed.add(batch.lot().get());
            }
        }
        double size = Double.isFinite(ownSize) ? ownSize : Robust.median(table.values(Features.greenMass()));
        if (used < FEWEST_OF_ALL || weighed.size() < FEWEST_LOTS) {
            Estimate none = new Estimate("mass loss", Double.NaN, Double.NaN, Double.NaN);
            return new GreenNeeded(lot, roasted, own, 0, size, none, "");
        }
        LinearMixedModel model = MixedDesign.of("mass loss", losses)
                .withRandom(RandomTerm.intercept("lot", lots))
                .withRandom(RandomTerm.intercept("roast day", days))
                .fit();
        Estimate mean = model.terms().get(0);
        double between = model.standardDeviation("lot");
        Optional<GroupEffect> effect = model.groupEffects("lot").stream()
                .filter(e -> e.group().equals(lot))
                .findFirst();
        double value = mean.estimate() + effect.map(GroupEffect::estimate).orElse(0.0);
        double ofLot = effect.map(GroupEffect::standardError).orElse(between);
        double ofDay = model.standardDeviation("roast day");
        int count = count(roasted, value, size);
        double error = Math.sqrt(mean.standardError() * mean.standardError()
                + ofLot * ofLot
                + ofDay * ofDay
                + model.residualStandardDeviation() * model.residualStandardDeviation() / count);
        return new GreenNeeded(
                lot,
                roasted,
                own,
                count,
                size,
                new Estimate("mass loss", value, error, weighed.size() - 1.0),
                String.format(
                        Locale.ROOT,
                        "from %d batches of %d lots, because %s of its own %s weighed",
                        used,
                        weighed.size(),
                        own == 0 ? "none" : "only " + own,
                        own == 1 ? "is" : "are"));
    }

    /** Returns the green mass needed on average, in kg; NaN if it cannot be told. */
    public double kilograms() {
        return roasted.kilograms() / (1 - loss.estimate());
    }

    /** Returns the interval of the green mass, in kg: 90 of 100 such orders need an amount within it. */
    public Interval interval() {
        Interval of = loss.interval(LEVEL);
        return new Interval(
                roasted.kilograms() / (1 - Math.max(0, of.lower())),
                roasted.kilograms() / (1 - Math.min(MOST_LOST, of.upper())),
                LEVEL);
    }

    @Override
    public Showable shownAs() {
        return Report.titled("Green coffee for an order").say(Sentence.of(toString()) + ".");
    }

    @Override
    public String toString() {
        if (Double.isNaN(loss.estimate())) {
            return String.format(
                    Locale.ROOT,
                    "Cannot tell how much green coffee %.1f kg of %s take: %d of its batches %s both masses, and %d are needed, or %d of"
                            + " several lots",
                    roasted.kilograms(),
                    lot,
                    used,
                    used == 1 ? "has" : "have",
                    FEWEST,
                    FEWEST_OF_ALL);
        }
        Interval interval = interval();
        return String.format(
                Locale.ROOT,
                "%.1f kg of roasted %s take %.2f kg of green coffee (%.2f to %.2f, 90 %% interval), in %d %s of about %.2f kg; mass"
                        + " loss %.1f %%, %s",
                roasted.kilograms(),
                lot,
                kilograms(),
                interval.lower(),
                interval.upper(),
                batches,
                batches == 1 ? "batch" : "batches",
                Math.min(size, kilograms() / batches),
                100 * loss.estimate(),
                from);
    }
}
