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
import parchment.display.InShort;
import parchment.display.Report;
import parchment.display.Showable;
import parchment.display.ShownAs;
import parchment.display.Table;
import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.feature.Role;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.sheet.Words;
import parchment.stats.Robust;

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

    private SecondLook(Logbook logbook, Unusual first, CentredRows looked, List<Apart> apart) {
        this.logbook = logbook;
        this.first = first;
        this.looked = looked;
        this.apart = List.copyOf(apart);
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
            apart.sort(Comparator.comparingDouble(Apart::score).reversed());
        }
        return new SecondLook(logbook, first, rows, apart);
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

    /** Returns the answer in three sentences: which batches both looks find, which only one, what to do next. */
    public InShort inShort() {
        int size = looked.batches().size();
        if (size < FEWEST || looked.names().size() < 2) {
            return new InShort(
                    "A second look at unusual batches cannot be taken.",
                    "It takes " + FEWEST + " batches with a curve; there are " + size + ".",
                    "Ask again when more are roasted.");
        }
        return new InShort(
                both().isEmpty()
                        ? "No batch stands apart at both looks."
                        : (both().size() == 1 ? "One batch stands" : both().size() + " batches stand")
                                + " apart at both looks, first of all batch " + both().get(0) + ".",
                "Only the first look finds " + Words.count(onlyFirst().size(), "batch", "batches") + " of " + size
                        + ", only the second " + onlySecond().size() + ".",
                both().isEmpty()
                        ? "Go by the reasons that the first look names; unusual is not bad."
                        : "Cup those that both find beside a usual batch: unusual is not bad.");
    }

    @Override
    public Showable shownAs() {
        Report page = Report.titled("Unusual batches of " + logbook.name() + " at a second look")
                .add(inShort());
        Report second = Report.titled("The second look").say(toString() + ".");
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
        return String.format(
                Locale.ROOT,
                "%d of %s apart at a second look, %d of them at the first look too",
                apart.size(),
                Words.count(looked.batches().size(), "batch stands", "batches stand"),
                both().size());
    }
}
