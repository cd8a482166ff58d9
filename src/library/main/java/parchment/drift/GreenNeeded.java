package parchment.drift;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parchment.display.Showable;
import parchment.display.answer.InShort;
import parchment.display.answer.Report;
import parchment.display.answer.Sentence;
import parchment.display.answer.ShownAs;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookException;
import parchment.quantity.Mass;
import parchment.quantity.MassUnit;
import parchment.stats.Interval;

/**
 * Reckons how much green coffee an order of roasted coffee takes, from the mass loss of the lot's own batches, and in which of the charges
 * that were really used for it.
 *
 * <pre>{@code
 * GreenNeeded.of(logbook.lastWithCurve().lot().orElseThrow(), Mass.kilograms(12), logbook)
 * }</pre>
 *
 * <p>The interval is that of the next batches: it holds what roast days and batches differ by, and what is not known of the lot's mean.
 * It supposes that the lot is roasted as it was; a darker roast loses more. With fewer than four of its own batches weighed, the lot is
 * taken as one more of the logbook's lots: its mean is drawn towards theirs, and the interval holds what lots differ by. If there are no such
 * others, two or three of its own on different days still tell, with a wide interval.
 */
public final class GreenNeeded implements ShownAs {
    /** No batch loses more, as the check of batches.csv has it; common practice, no source. */
    private static final double MOST_LOST = 0.4;
    /** A batch less is worth a word if it misses no more of the order; common practice, no source. */
    private static final double LITTLE = 0.05;

    /** So little of an order missing is not worth a word; common practice, no source. */
    private static final double LEAST_SHORT = 0.005;

    /** So little of an order may be missing on average where that saves a batch; common practice, no source. */
    private static final double ALLOWED = 0.01;

    private static final double LEVEL = 0.90;

    private final String lot;
    private final Mass roasted;
    private final MassWords masses;
    private final LotLoss loss;
    private final ChargeSizes sizes;
    private final Optional<Charges> charges;
    private final Optional<Charges> less;
    private final Optional<Charges> more;
    private final MassWords weighed;

    private GreenNeeded(String lot, Mass roasted, MassUnit unit, MassWords weighed, LotLoss loss, ChargeSizes sizes) {
        this.weighed = weighed;
        this.lot = lot;
        this.roasted = roasted;
        this.masses = MassWords.in(unit);
        this.loss = loss;
        this.sizes = sizes;
        double green = roasted.kilograms() / (1 - loss.mean());
        boolean planned = loss.isKnown() && !sizes.sizes().isEmpty();
        Optional<Charges> covering = planned ? Optional.of(Charges.covering(green, sizes)) : Optional.empty();
        Optional<Charges> below = planned ? Charges.fallingShort(green, sizes) : Optional.empty();
        Optional<Charges> enough =
                below.filter(fewer -> fewer.batches() < covering.orElseThrow().batches() && isEnough(fewer));
        this.charges = enough.or(() -> covering);
        this.more = enough.flatMap(fewer -> covering);
        this.less = enough.isPresent() ? Optional.empty() : below;
    }

    /** Tells whether charges give the order on average but for so little that it is lost in what such orders differ by anyhow. */
    private boolean isEnough(Charges fewer) {
        double anyhow = fewer.kilograms()
                * loss.ofAnOrder(fewer.batches()).interval(LEVEL).width()
                / 2;
        return missing(fewer) <= Math.min(ALLOWED * roasted.kilograms(), anyhow);
    }

    /**
     * Works out the green coffee for an order, told in the unit that the logbook's masses are written in.
     *
     * @param lot the lot, or a blend that is roasted as one
     * @param roasted what is to be delivered, above 0
     * @throws LogbookException if the logbook has no such lot, or the order is not above 0
     */
    public static GreenNeeded of(String lot, Mass roasted, Logbook logbook) {
        return of(lot, roasted, logbook.massUnit(), logbook);
    }

    /**
     * Works out the green coffee for an order and tells it in a unit of one's own, with charges in it, or as the logbook has them where both
     * are metric or both avoirdupois.
     *
     * @param lot the lot, or a blend that is roasted as one
     * @param roasted what is to be delivered, above 0
     * @param unit the unit in which all masses are told
     * @throws LogbookException if the logbook has no such lot, or the order is not above 0
     */
    public static GreenNeeded of(String lot, Mass roasted, MassUnit unit, Logbook logbook) {
        if (!(roasted.kilograms() > 0)) {
            throw new LogbookException(
                    "An order is a mass above 0, but for '" + lot + "' it is " + roasted + ". Write it as 12 kg.");
        }
        // Charges are weighed as the logbook has them: an order in ounces does not make ounces of the pounds of its
        // charges.
        MassWords weighed = MassWords.in(unit.isOfOneSystemWith(logbook.massUnit()) ? logbook.massUnit() : unit);
        ChargeSizes sizes = ChargeSizes.of(lot, weighed.unit(), logbook);
        GreenNeeded first = new GreenNeeded(lot, roasted, unit, weighed, LotLoss.of(lot, logbook), sizes);
        // The loss is that of the charge that most of the order is planned in; what charges cover it may follow from
        // that loss.
        return first.charges
                .flatMap(one -> one.most(weighed.unit()))
                .map(most -> LotLoss.of(lot, logbook, Optional.of(most)))
                .map(loss -> new GreenNeeded(lot, roasted, unit, weighed, loss, sizes))
                .orElse(first);
    }

    /** Returns the lot. */
    public String lot() {
        return lot;
    }

    /** Returns the unit in which all masses are told. */
    public MassUnit unit() {
        return masses.unit();
    }

    /** Returns what is to be delivered. */
    public Mass roasted() {
        return roasted;
    }

    /** Returns the green mass needed on average, in kg; NaN if it cannot be told. */
    public double kilograms() {
        return roasted.kilograms() / (1 - loss.mean());
    }

    /** Returns the interval of the green mass, in kg: 90 of 100 such orders need an amount within it. */
    public Interval interval() {
        Interval of = lossInterval();
        return new Interval(
                roasted.kilograms() / (1 - Math.max(0, of.lower())),
                roasted.kilograms() / (1 - Math.min(MOST_LOST, of.upper())),
                LEVEL);
    }

    private Interval lossInterval() {
        return loss.ofAnOrder(charges.map(Charges::batches).orElse(1)).interval(LEVEL);
    }

    /** Returns the green mass that is charged, in kg, which is that of whole charges; NaN if it cannot be told. */
    public double charged() {
        return charges.map(Charges::kilograms).orElse(Double.NaN);
    }

    /** Returns the charges in words, as in "2 batches of 5 kg and 1 of 2.5 kg"; empty if they cannot be told. */
    public Optional<String> charges() {
        return charges.map(one -> one.words(weighed));
    }

    /** Returns what the charges give roasted, in kg: 90 of 100 such orders give an amount within it. */
    public Interval given() {
        Interval of = lossInterval();
        return new Interval(
                charged() * (1 - Math.min(MOST_LOST, of.upper())), charged() * (1 - Math.max(0, of.lower())), LEVEL);
    }

    /** Returns the answer in three sentences: the green coffee and its charges, how sure that is, what comes of it. */
    public InShort inShort() {
        String order = masses.exact(roasted.kilograms()) + " of roasted " + lot;
        if (!loss.isKnown()) {
            return new InShort(
                    "How much green coffee " + order + " take cannot be told.",
                    loss.own() == 0
                            ? "None of its batches was weighed before and after roasting."
                            : "Only " + loss.own() + " of its batches " + (loss.own() == 1 ? "was" : "were")
                                    + " weighed before and after roasting.",
                    "Weigh the green and the roasted coffee of four batches and ask again.");
        }
        Interval need = interval();
        return new InShort(
                order + " take about " + masses.estimated(kilograms(), need.width()) + " of green coffee"
                        + charges.map(all -> ", in " + all.words(weighed)).orElse("") + ".",
                "Nine of ten such orders take " + masses.range(need.lower(), need.upper())
                        + (loss.isFromFew() ? "; few of its batches were weighed yet." : "."),
                next());
    }

    private String next() {
        if (charges.isEmpty()) {
            return "Write the green mass of each batch into batches.csv: then the charges are told too.";
        }
        Interval given = given();
        double middle = charged() * (1 - loss.mean());
        double green = greenMore();
        if (green > 0) {
            double by = roasted.kilograms() - given.lower();
            return "You may be short by up to " + masses.upTo(by) + "; " + masses.upTo(green)
                    + " more green coffee makes that unlikely.";
        }
        // Charges that are the order itself may miss it by a rounding.
        double over = Math.max(0, middle - roasted.kilograms());
        return "That gives " + masses.estimated(middle, given.width()) + " roasted ("
                + masses.bareRange(given.lower(), given.upper()) + "), "
                + (masses.isNothing(over, given.width())
                        ? "so nothing is left over."
                        : "so about " + masses.estimated(over, given.width()) + " is left over.");
    }

    /** Returns how much green coffee more makes it unlikely that the order falls short, in kg; 0 where it is unlikely already. */
    private double greenMore() {
        double missing = roasted.kilograms() - given().lower();
        double lost = Math.min(MOST_LOST, lossInterval().upper());
        return missing < LEAST_SHORT * roasted.kilograms() ? 0 : missing / (1 - lost);
    }

    /** Says how it was worked out, a sentence each. */
    List<String> workedOut() {
        if (!loss.isKnown()) {
            return List.of(Sentence.of(toString()) + ".");
        }
        return List.of(
                String.format(Locale.ROOT, "Mass loss of %s: %.1f %%, %s.", lot, 100 * loss.mean(), loss.from())
                        + (charges.isEmpty()
                                ? ""
                                : " Nine of ten such orders come to " + masses.range(given().lower(), given().upper())
                                        + " roasted."),
                "Of the charges used for it those are taken that cover the order with the least left over, in at most one batch more"
                        + " than the fewest. Fewer batches are taken if they miss no more than 1 % of the order on average.");
    }

    /** Says which charges were used and how often; empty where that cannot be told. */
    Optional<String> used() {
        return sizes.sizes().isEmpty()
                ? Optional.empty()
                : Optional.of((sizes.whose() == ChargeSizes.Whose.ITS_OWN
                                ? "Charges used for " + lot + ": "
                                : "No green mass is written for " + lot + "; charges used for all lots: ")
                        + sizes.words(weighed) + ".");
    }

    /** Returns the answer with what else helps to decide, in sentences. */
    String words() {
        return inShort()
                + alternative().map(words -> " " + words).orElse("")
                + used().map(words -> " " + words).orElse("");
    }

    /** Returns fewer batches that would miss a little of the order, or more that would not, in a sentence; empty if there are none. */
    Optional<String> alternative() {
        if (more.isPresent()) {
            double missing = missing(covering());
            return Optional.of(
                    Sentence.of(covering().words(weighed)) + (covering().batches() == 1 ? " is " : " are ")
                            + masses.estimated(missing, missing) + " roasted short on average; "
                            + more.get().words(weighed) + " would cover it.");
        }
        double little = LITTLE * roasted.kilograms();
        int batches = charges.map(Charges::batches).orElse(0);
        return less.filter(fewer -> missing(fewer) <= little)
                .filter(fewer ->
                        fewer.batches() < batches || fewer.batches() == batches && -missing(covering()) > little)
                .map(fewer -> Sentence.of(fewer.words(weighed)) + " would be about "
                        + masses.estimated(missing(fewer), missing(fewer)) + " roasted short.");
    }

    private Charges covering() {
        return charges.orElseThrow();
    }

    private double missing(Charges fewer) {
        return roasted.kilograms() - fewer.kilograms() * (1 - loss.mean());
    }

    @Override
    public Showable shownAs() {
        Report workedOut = Report.titled("How this was worked out");
        for (String said : workedOut()) {
            workedOut = workedOut.say(said);
        }
        Report page = Report.titled("Green coffee for an order").add(inShort());
        page = alternative().map(page::say).orElse(page);
        return used().map(page::say)
                .orElse(page)
                .fold(workedOut.say("Roasted as it was; a darker roast loses more. Weigh cooled and before sorting."));
    }

    @Override
    public String toString() {
        String order = masses.exact(roasted.kilograms()) + " of roasted " + lot;
        if (!loss.isKnown()) {
            return "Cannot tell how much green coffee " + order + " take: " + loss.whyNot();
        }
        Interval interval = interval();
        return String.format(
                Locale.ROOT,
                "%s take %s of green coffee (%s, 90 %% interval)%s; mass loss %.1f %%, %s",
                order,
                masses.estimated(kilograms(), interval.width()),
                masses.range(interval.lower(), interval.upper()),
                charges.map(all -> ", in " + all.words(weighed)).orElse(""),
                100 * loss.mean(),
                loss.from());
    }
}
