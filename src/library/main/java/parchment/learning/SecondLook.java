package parchment.learning;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.IntStream;
import parchment.align.Unusual;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.display.answer.InShort;
import parchment.display.answer.Report;
import parchment.display.answer.ShownAs;
import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.feature.kind.Role;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.sheet.Words;
import parchment.stats.linear.Robust;

/**
 * Looks a second time for odd batches, by all their features at once, and says which both looks find and which only one.
 *
 * <p>The first look, {@link Unusual}, names what was different. The second cuts the batches apart at random, and a batch that is soon alone
 * stands apart: it knows no reasons, but sees several small differences together. A batch that only one of them finds is worth a glance, no more.
 *
 * <pre>{@code
 * SecondLook.of(logbook)
 * }</pre>
 *
 * <p>Drawn by a seed that stands on the page.
 *
 * @see <a href="https://doi.org/10.1109/ICDM.2008.17">Liu, Ting and Zhou 2008, ICDM: 413</a>
 */
public final class SecondLook implements ShownAs {
    /** Middle halves above the middle half from which on a score stands apart: Tukey 1977, Exploratory Data Analysis, inner fences. */
    private static final double FENCE = 1.5;
    /** A batch that takes as many cuts as rows drawn evenly has this score; below it none stands apart. */
    private static final double USUAL = 0.5;
    /** Fewest batches for a second look; common practice, no source. */
    private static final int FEWEST = 20;

    private static final long SEED = 1;

    private final Logbook logbook;
    private final Unusual first;
    private final CentredRows looked;
    private final List<Apart> apart;
    private final ApartByChance byChance;

    /**
     * Holds one batch that stands apart at the second look.
     *
     * @param batch the batch
     * @param score how soon it was alone, from 0 to 1; 0.5 is usual
     * @param farthest the two features in which it lies farthest from the mean of its lot and probe period
     * @param alsoAtFirstLook whether the first look found it too
     */
    public record Apart(Batch batch, double score, List<String> farthest, FirstLook alsoAtFirstLook) {
        /** Copies the features. */
        public Apart {
            farthest = List.copyOf(farthest);
        }
    }

    /** Says whether the first look found a batch too. */
    public enum FirstLook {
        /** It did, and says why. */
        FOUND,
        /** It did not. */
        NOT_FOUND
    }

    private SecondLook(Logbook logbook, Unusual first, CentredRows looked, List<Apart> apart, ApartByChance byChance) {
        this.logbook = logbook;
        this.first = first;
        this.looked = looked;
        this.apart = List.copyOf(apart);
        this.byChance = byChance;
    }

    /** Looks through a logbook. */
    public static SecondLook of(Logbook logbook) {
        Unusual first = Unusual.of(logbook);
        List<Feature> features = Features.all().list().stream()
                .filter(feature -> feature.role() != Role.CALENDAR)
                .toList();
        Set<String> withCurve = new LinkedHashSet<>();
        logbook.batches().stream()
                .filter(batch -> batch.beanTemperature().isPresent())
                .forEach(batch -> withCurve.add(batch.name()));
        CentredRows rows = CentredRows.of(BatchTable.of(logbook, features), features, withCurve);
        List<Apart> apart = new ArrayList<>();
        ApartByChance byChance = new ApartByChance(0, 0);
        if (rows.batches().size() >= FEWEST && rows.names().size() >= 2) {
            double[] scores = IsolatedBatches.scores(rows.rows(), SEED);
            double above = apartFrom(scores);
            for (int i = 0; i < scores.length; i++) {
                if (scores[i] > above) {
                    Batch batch = rows.batches().get(i);
                    apart.add(new Apart(
                            batch,
                            scores[i],
                            farthest(rows, i),
                            first.find(batch.name()).isPresent() ? FirstLook.FOUND : FirstLook.NOT_FOUND));
                }
            }
            byChance = ApartByChance.of(rows.rows(), SEED);
            apart.sort(Comparator.comparingDouble(Apart::score).reversed());
        }
        return new SecondLook(logbook, first, rows, apart, byChance);
    }

    /** Returns the score above which a batch stands apart from the others. */
    static double apartFrom(double[] scores) {
        double low = Robust.quantile(scores, 0.25);
        double high = Robust.quantile(scores, 0.75);
        return Math.max(USUAL, high + FENCE * (high - low));
    }

    private static List<String> farthest(CentredRows rows, int row) {
        double[] own = rows.rows().get(row);
        return IntStream.range(0, own.length)
                .boxed()
                .sorted(Comparator.comparingDouble(k -> -Math.abs(own[k])))
                .limit(2)
                .map(k -> rows.names().get(k) + (own[k] > 0 ? " high" : " low"))
                .toList();
    }

    /** Returns the batches that stand apart at the second look, the farthest first. */
    public List<Apart> apart() {
        return apart;
    }

    /** Returns the names of the batches that both looks find. */
    public List<String> both() {
        return names(FirstLook.FOUND);
    }

    /** Returns the names of the batches that only the second look finds. */
    public List<String> onlySecond() {
        return names(FirstLook.NOT_FOUND);
    }

    /** Returns the names of the batches that only the first look finds. */
    public List<String> onlyFirst() {
        List<String> both = both();
        return first.list().stream()
                .map(found -> found.batch().name())
                .filter(name -> !both.contains(name))
                .toList();
    }

    private List<String> names(FirstLook wanted) {
        return apart.stream()
                .filter(one -> one.alsoAtFirstLook() == wanted)
                .map(one -> one.batch().name())
                .toList();
    }

    private boolean refused() {
        return looked.batches().size() < FEWEST || looked.names().size() < 2;
    }

    /** Returns the answer in three sentences: which batches both looks find, how many either finds and how many chance would, what to do next. */
    public InShort inShort() {
        int size = looked.batches().size();
        if (size < FEWEST) {
            return new InShort(
                    "A second look at unusual batches cannot be taken.",
                    "It takes " + FEWEST + " batches with a curve; there " + (size == 1 ? "is " : "are ") + size + ".",
                    "Ask again when more are roasted.");
        }
        if (refused()) {
            return new InShort(
                    "A second look at unusual batches cannot be taken.",
                    "It takes two features that are known of the batches and differ between them.",
                    "Look which marks and readings are missing: write the ones and log the others.");
        }
        return said(size, first.list().size(), apart.size(), both(), byChance);
    }

    /** Says how many of so many batches each look found, and which both. */
    static InShort said(int size, int first, int second, List<String> both, ApartByChance byChance) {
        String counted = "The first look finds " + first + " of " + size + " batches, the second " + second
                + "; by chance alone the second would find " + byChance.about() + ".";
        if (first == 0 && second == 0) {
            return new InShort(
                    "Neither look finds an unusual batch.",
                    "Both went through " + size + " batches.",
                    "Go on as you do.");
        }
        return switch (both.size()) {
            case 0 ->
                new InShort(
                        "No batch stands apart at both looks.",
                        counted,
                        first == 0
                                ? "Glance at their curves: some stand apart in any logbook."
                                : "Go by the reasons that the first look names; unusual is not bad.");
            case 1 ->
                new InShort(
                        "One batch stands apart at both looks: " + both.get(0) + ".",
                        counted,
                        "Cup it beside a usual batch: unusual is not bad.");
            default ->
                new InShort(
                        both.size() + " batches stand apart at both looks, first of all batch " + both.get(0) + ".",
                        counted,
                        "Cup those that both find beside a usual batch: unusual is not bad.");
        };
    }

    @Override
    public Showable shownAs() {
        Report page = Report.titled("Unusual batches of " + logbook.name() + " at a second look")
                .add(inShort());
        if (refused()) {
            return page;
        }
        Report second = Report.titled("The second look").say(toString() + ".");
        second = second.say(String.format(
                Locale.ROOT,
                "Some stand apart in any logbook: of as many batches drawn by chance, whose features spread and move together as"
                        + " these do, %.1f on average and at most %d in %d draws.",
                byChance.mean(),
                byChance.most(),
                ApartByChance.DRAWS));
        if (!apart.isEmpty()) {
            second = second.add(
                    Table.titled("Batches that are soon alone")
                            .withText("batch", apart, one -> one.batch().name())
                            .withText(
                                    "roasted on",
                                    apart,
                                    one -> one.batch()
                                            .roastDay()
                                            .map(LocalDate::toString)
                                            .orElse(""))
                            .withNumber("soon alone", "", 2, apart, Apart::score)
                            .withText("farthest from its lot in", apart, one -> String.join(", ", one.farthest()))
                            .withText(
                                    "at the first look",
                                    apart,
                                    one -> first.find(one.batch().name())
                                            .map(found -> String.join("; ", found.reasons()))
                                            .orElse("not found"))
                            .withNote(
                                    "A batch that takes as many cuts as if all were drawn evenly has 0.5; those far above most others are listed."));
        }
        if (!onlyFirst().isEmpty()) {
            second = second.say("Only at the first look: " + String.join(", ", onlyFirst()) + ".");
        }
        second = second.say(
                "The batches were cut apart at random by " + looked.names().size()
                        + " features, each counted from the mean of its lot and probe period; seed " + SEED + ".");
        Report firstLook = Report.titled("The first look, with reasons").add(first);
        return page.fold(second).fold(firstLook);
    }

    @Override
    public String toString() {
        int size = looked.batches().size();
        if (refused()) {
            return Words.count(size, "batch", "batches") + " of " + logbook.name() + ", no second look taken";
        }
        return String.format(
                Locale.ROOT,
                "%d of %s %s apart at a second look, %d of these at the first look too",
                apart.size(),
                Words.count(size, "batch", "batches"),
                apart.size() == 1 ? "stands" : "stand",
                both().size());
    }
}
