package parchment.drift;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import parchment.feature.BatchTable;
import parchment.feature.Features;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.stats.Estimate;
import parchment.stats.mixed.GroupEffect;
import parchment.stats.mixed.LinearMixedModel;
import parchment.stats.mixed.MixedDesign;
import parchment.stats.mixed.RandomTerm;

/**
 * What share of its mass a lot loses in the drum: of its own last batches, or as one more of all lots where few of its own were weighed.
 *
 * <p>What is roasted next loses what was lost of late and not what was lost a year ago, so that only the last twenty weighed batches count; of the
 * charge that is planned where eight of those twenty are of it.
 *
 * @param mean the mean loss; NaN if it cannot be told
 * @param shared the standard error that all batches of an order share: that of the mean, what roast days differ by, and what lots do
 * @param single what single batches of a day differ by, as a standard deviation
 * @param degrees degrees of freedom
 * @param own how many batches of the lot were weighed before and after
 * @param from from what it is known, in words
 */
record LotLoss(double mean, double shared, double single, double degrees, int own, String from) {
    private static final int FEWEST = 4;
    /** So few of its own, on as many days, say something if there are no others; common practice, no source. */
    private static final int FEWEST_ALONE = 2;
    /** Fewest weighed batches and lots that say what another lot may lose; common practice, no source. */
    private static final int FEWEST_OF_ALL = 8;

    private static final int FEWEST_LOTS = 2;

    /** So many of its last weighed batches say what it loses; common practice, no source. */
    static final int LAST = 20;

    /** So many of those of one charge speak for themselves; common practice, no source. */
    static final int ENOUGH_OF_CHARGE = 8;

    static LotLoss of(String lot, Logbook logbook) {
        return of(lot, logbook, Optional.empty());
    }

    /**
     * Finds the loss of a lot.
     *
     * @param charge the charge that is planned, where all batches of the order are of one
     */
    static LotLoss of(String lot, Logbook logbook, Optional<OneCharge> charge) {
        Weighed all = Weighed.of(logbook.ofLot(lot));
        if (all.size() >= FEWEST) {
            Weighed last = all.last(LAST);
            Optional<Weighed> like = charge.map(one -> last.of(one)).filter(found -> found.size() >= ENOUGH_OF_CHARGE);
            String more = like.isPresent() && like.get().size() < last.size()
                    ? " of about " + charge.orElseThrow().words()
                    : "";
            return ofItsOwn(
                    like.orElse(last),
                    all.size(),
                    last.size() < all.size()
                            ? more.isEmpty()
                                    ? "from the last " + LAST + " of " + all.size() + " weighed batches"
                                    : "from those" + more + " ("
                                            + like.orElseThrow().size() + ") among the last " + LAST + " of "
                                            + all.size() + " weighed batches"
                            : "from " + like.orElse(last).size() + " batches" + more);
        }
        return ofFew(lot, logbook, all);
    }

    private static LotLoss ofFew(String lot, Logbook logbook, Weighed own) {
        Weighed all = Weighed.of(logbook);
        if (all.size() >= FEWEST_OF_ALL && new TreeSet<>(all.lots).size() >= FEWEST_LOTS) {
            return ofAllLots(lot, own.size(), all);
        }
        return new HashSet<>(own.days).size() >= FEWEST_ALONE ? alone(own) : cannotTell(own.size());
    }

    /** The batches of named lots of which both masses are written. */
    private record Weighed(double[] losses, List<String> lots, List<String> days, List<Batch> batches) {
        static Weighed of(Logbook logbook) {
            BatchTable table = BatchTable.of(logbook, Features.massLoss());
            double[] values = table.values(Features.massLoss());
            List<String> lots = new ArrayList<>();
            List<String> days = new ArrayList<>();
            List<Double> losses = new ArrayList<>();
            List<Batch> weighed = new ArrayList<>();
            for (int i = 0; i < values.length; i++) {
                Batch batch = table.batches().get(i);
                if (Double.isFinite(values[i]) && batch.lot().isPresent()) {
                    losses.add(values[i]);
                    weighed.add(batch);
                    lots.add(batch.lot().get());
                    days.add(batch.roastDay().map(Object::toString).orElse("batch " + batch.name()));
                }
            }
            return new Weighed(losses.stream().mapToDouble(loss -> loss).toArray(), lots, days, weighed);
        }

        /** Returns the last so many in time; those without a date count as the earliest. */
        Weighed last(int count) {
            return at(IntStream.range(0, size())
                    .boxed()
                    .sorted(Comparator.comparing((Integer i) -> batches.get(i).roastedAt(), Weighed::inTime))
                    .skip(Math.max(0, size() - count))
                    .toList());
        }

        private static int inTime(Optional<OffsetDateTime> a, Optional<OffsetDateTime> b) {
            return a.isPresent() && b.isPresent()
                    ? a.get().compareTo(b.get())
                    : Boolean.compare(a.isPresent(), b.isPresent());
        }

        Weighed of(OneCharge charge) {
            return at(IntStream.range(0, size())
                    .boxed()
                    .filter(i -> charge.holds(batches.get(i)))
                    .toList());
        }

        private Weighed at(List<Integer> rows) {
            return new Weighed(
                    rows.stream().mapToDouble(i -> losses[i]).toArray(),
                    rows.stream().map(lots::get).toList(),
                    rows.stream().map(days::get).toList(),
                    rows.stream().map(batches::get).toList());
        }

        int size() {
            return losses.length;
        }
    }

    private static LotLoss ofItsOwn(Weighed own, int weighed, String from) {
        LinearMixedModel model = MixedDesign.of("mass loss", own.losses)
                .withRandom(RandomTerm.intercept("roast day", own.days))
                .fit();
        Estimate mean = model.terms().get(0);
        return new LotLoss(
                mean.estimate(),
                Math.hypot(mean.standardError(), model.standardDeviation("roast day")),
                model.residualStandardDeviation(),
                Math.max(2, Math.min(own.size() - 1.0, mean.degreesOfFreedom())),
                weighed,
                from);
    }

    /** Takes the lot as one of all lots: as far from their mean as its few batches, drawn towards it, or as any new lot may be. */
    private static LotLoss ofAllLots(String lot, int own, Weighed all) {
        LinearMixedModel model = MixedDesign.of("mass loss", all.losses)
                .withRandom(RandomTerm.intercept("lot", all.lots))
                .withRandom(RandomTerm.intercept("roast day", all.days))
                .fit();
        Estimate mean = model.terms().get(0);
        Optional<GroupEffect> effect = model.groupEffects("lot").stream()
                .filter(e -> e.group().equals(lot))
                .findFirst();
        double ofLot = effect.map(GroupEffect::standardError).orElse(model.standardDeviation("lot"));
        Set<String> lots = new TreeSet<>(all.lots);
        return new LotLoss(
                mean.estimate() + effect.map(GroupEffect::estimate).orElse(0.0),
                Math.hypot(Math.hypot(mean.standardError(), ofLot), model.standardDeviation("roast day")),
                model.residualStandardDeviation(),
                lots.size() - 1.0,
                own,
                String.format(
                        Locale.ROOT,
                        "from %d batches of %d lots, because %s of its own %s weighed",
                        all.size(),
                        lots.size(),
                        own == 0 ? "none" : "only " + own,
                        own == 1 ? "is" : "are"));
    }

    /** Two or three batches and no others: their mean, with the wide interval that so few deserve; days are taken as all that differs. */
    private static LotLoss alone(Weighed own) {
        double mean = 0;
        for (double loss : own.losses) {
            mean += loss / own.size();
        }
        double squares = 0;
        for (double loss : own.losses) {
            squares += (loss - mean) * (loss - mean);
        }
        int days = new HashSet<>(own.days).size();
        double spread = Math.sqrt(squares / (own.size() - 1));
        return new LotLoss(
                mean,
                spread * Math.sqrt(1 + 1.0 / days),
                0,
                days - 1.0,
                own.size(),
                "from " + own.size() + " batches, which are few");
    }

    private static LotLoss cannotTell(int own) {
        return new LotLoss(Double.NaN, Double.NaN, Double.NaN, Double.NaN, own, "");
    }

    boolean isKnown() {
        return Double.isFinite(mean);
    }

    /** Tells whether fewer of its own batches were weighed than a lot needs to speak for itself. */
    boolean isFromFew() {
        return own < FEWEST;
    }

    /** Returns the loss of an order roasted on one day: the day's difference does not average out over its batches. */
    Estimate ofAnOrder(int batches) {
        return new Estimate("mass loss", mean, Math.hypot(shared, single / Math.sqrt(Math.max(1, batches))), degrees);
    }

    /** Says why it cannot be told. */
    String whyNot() {
        return String.format(
                Locale.ROOT,
                "%d of its batches %s both masses, and %d are needed, or %d of several lots",
                own,
                own == 1 ? "has" : "have",
                FEWEST,
                FEWEST_OF_ALL);
    }
}
