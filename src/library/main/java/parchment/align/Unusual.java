package parchment.align;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.display.answer.InShort;
import parchment.display.answer.Report;
import parchment.display.answer.ShownAs;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.sheet.Words;

/**
 * Finds the batches of a logbook that did not go as the others of their kind, and says of each in words what was different.
 *
 * <p>Batches are held against those of the same lot on the same probe; lots with fewer than ten batches are taken together. A batch is
 * listed if its rate of rise along the temperature leaves the fences of the functional boxplot (Sun and Genton 2011), or if a time, a
 * temperature or a move of a control lies beyond Tukey's outer fences and is large enough to matter; if its probe read too high or too low
 * all the way; or if its written charge temperature is not borne out by its curve. The depth is the modified band
 * depth of López-Pintado and Romo 2009: about a half in the middle of the others, near 0 at their edge.
 *
 * <pre>{@code
 * Unusual.of(logbook)
 * }</pre>
 *
 * @see parchment.stats.warp.FunctionalBoxplot
 */
public final class Unusual implements ShownAs {
    private final Logbook logbook;
    private final List<Found> found;
    private final int looked;
    private final List<String> tooFew;
    private final int notLooked;
    private final Map<String, Peers.Kind> heldAgainst;

    /**
     * Holds one unusual batch.
     *
     * @param batch the batch
     * @param comparedWith what it was held against, with the number of batches
     * @param depth the modified band depth of its path among them, 0 to about 0.5; NaN if its path has no rates
     * @param secondsOff the largest difference in seconds among the reasons; 0 if no reason is about seconds
     * @param reasons what was different, in words
     */
    public record Found(Batch batch, String comparedWith, double depth, double secondsOff, List<String> reasons) {
        /** Copies the reasons. */
        public Found {
            reasons = List.copyOf(reasons);
        }

        @Override
        public String toString() {
            return "batch " + batch.name() + ": " + String.join("; ", reasons);
        }
    }

    private Unusual(
            Logbook logbook, List<Found> found, int looked, List<String> tooFew, Map<String, Peers.Kind> heldAgainst) {
        this.heldAgainst = new LinkedHashMap<>(heldAgainst);
        this.notLooked = logbook.batches().size() - looked;
        this.logbook = logbook;
        this.found = found;
        this.looked = looked;
        this.tooFew = tooFew;
    }

    /** Looks through a logbook. */
    public static Unusual of(Logbook logbook) {
        List<Found> found = new ArrayList<>();
        List<String> tooFew = new ArrayList<>();
        Map<String, Peers.Kind> heldAgainst = new LinkedHashMap<>();
        int looked = 0;
        for (Peers peers : Peers.of(logbook)) {
            if (peers.members().size() < Peers.ENOUGH) {
                tooFew.add(peers.words() + " (" + peers.members().size() + ")");
            } else {
                looked += peers.members().size();
                peers.members().forEach(phases -> heldAgainst.put(phases.batch().name(), peers.kind()));
                found.addAll(PathOddities.of(peers, logbook.readerUnit()));
            }
        }
        found.sort(Comparator.comparingDouble((Found one) -> -one.secondsOff())
                .thenComparing(one -> one.batch().name()));
        return new Unusual(logbook, List.copyOf(found), looked, List.copyOf(tooFew), heldAgainst);
    }

    /** Returns the unusual batches, those with the largest difference in time first. */
    public List<Found> list() {
        return found;
    }

    /** Returns what is unusual in one batch, if it is. */
    public Optional<Found> find(String batch) {
        return found.stream().filter(one -> one.batch().name().equals(batch)).findFirst();
    }

    /** Returns the answer in three sentences: which batches stand apart, against what, what to do next. */
    public InShort inShort() {
        if (looked == 0) {
            return new InShort(
                    "Which batches are unusual cannot be told.",
                    "No " + Peers.ENOUGH + " batches with a bean temperature are of one probe.",
                    "Ask again when more are roasted.");
        }
        if (found.isEmpty()) {
            return new InShort(
                    "None of " + Words.count(looked, "batch", "batches")
                            + " stands apart from those that it was held against." + notLookedAt(),
                    "Each was held against " + others() + ".",
                    "Nothing to do; the cup decides.");
        }
        Found first = found.get(0);
        return new InShort(
                found.size() + " of " + Words.count(looked, "batch", "batches") + " "
                        + (found.size() == 1 ? "stands" : "stand") + " apart"
                        + (found.size() == 1 ? ": batch " : ", most of all batch ")
                        + first.batch().name()
                        + first.batch().roastDay().map(day -> " of " + day).orElse("") + "." + notLookedAt(),
                "It was " + first.reasons().get(0).replaceFirst(" \\(.*", "") + ", held against "
                        + others(Objects.requireNonNull(
                                heldAgainst.get(first.batch().name()))) + ".",
                "Cup " + (found.size() == 1 ? "it" : "those in the table")
                        + " beside a usual batch: unusual is not bad.");
    }

    private String others() {
        List<Peers.Kind> kinds = heldAgainst.values().stream().distinct().toList();
        return kinds.size() == 1
                ? others(kinds.get(0))
                : "others on the same probe, of its own lot where that has " + Peers.ENOUGH + " batches";
    }

    private static String others(Peers.Kind kind) {
        return switch (kind) {
            case LOT -> "its lot's others on the same probe";
            case NO_LOT -> "others without a lot on the same probe";
            case SEVERAL_LOTS -> "others of several lots on the same probe";
        };
    }

    private String notLookedAt() {
        return notLooked == 0
                ? ""
                : " " + notLooked + (notLooked == 1 ? " more batch" : " more batches")
                        + " could not be held against any.";
    }

    @Override
    public Showable shownAs() {
        Report page = Report.titled("Unusual batches of " + logbook.name()).add(inShort());
        if (!found.isEmpty()) {
            page = page.add(Table.titled("What was different")
                    .withText("batch", found, one -> one.batch().name())
                    .withText(
                            "roasted on",
                            found,
                            one -> one.batch()
                                    .roastDay()
                                    .map(LocalDate::toString)
                                    .orElse(""))
                    .withText("what was different", found, one -> String.join("; ", one.reasons()))
                    .withNumber("depth", "", 2, found, Found::depth)
                    .withText("compared with", found, Found::comparedWith)
                    .withNote(
                            "Depth is the share of pairs of batches that hold the batch's rate of rise between them: about"
                                    + " 0.5 in the middle, near 0 at the edge."));
        }
        if (!tooFew.isEmpty()) {
            page = page.say("Too few batches to say what is usual (" + Peers.ENOUGH + " are needed): "
                    + String.join(", ", tooFew) + ".");
        }
        return page.say("Unusual is not bad: the cup decides. What was different may be what was meant.");
    }

    @Override
    public String toString() {
        return looked == 0
                ? "Cannot tell which batches are unusual: no " + Peers.ENOUGH
                        + " batches with a bean temperature are of one probe"
                : String.format(
                        Locale.ROOT,
                        "%d of %s with a bean temperature %s apart from the others of %s lot and probe",
                        found.size(),
                        Words.count(looked, "batch", "batches"),
                        found.size() == 1 ? "stands" : "stand",
                        found.size() == 1 ? "its" : "their");
    }
}
