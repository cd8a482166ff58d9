package parchment.card;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import parchment.drift.Usual;
import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.stats.linear.Robust;

/**
 * Tells how a batch stands in its day: which batch of the day, how long the drum stood empty, the room, who roasted, how the day's others
 * went.
 */
final class BatchDay {
    /** Fewest others of which the usual range is told; common practice, no source. */
    static final int ENOUGH = 10;

    /** What lies beyond this share of the others, at either end, is told as out of the ordinary; common practice, no source. */
    static final double EDGE = 0.1;

    private final Batch batch;
    private final Logbook logbook;
    private final BatchTable table;

    private BatchDay(Batch batch, Logbook logbook) {
        this.batch = batch;
        this.logbook = logbook;
        this.table = BatchTable.of(
                logbook, Features.minutesSinceLastDrop(), Features.roomTemperature(), Features.batchOfTheDay());
    }

    static List<String> sentences(Batch batch, Logbook logbook) {
        BatchDay day = new BatchDay(batch, logbook);
        List<String> sentences = new ArrayList<>();
        sentences.add(day.place());
        day.pause().ifPresent(sentences::add);
        day.room().ifPresent(sentences::add);
        sentences.addAll(day.labels());
        day.others().ifPresent(sentences::add);
        return sentences;
    }

    private List<Batch> ofItsDay() {
        return batch.roastDay().isEmpty()
                ? List.of()
                : batches(b -> b.roastDay().equals(batch.roastDay()));
    }

    private List<Batch> batches(Predicate<Batch> condition) {
        return logbook.batches().stream()
                .filter(b -> !b.name().equals(batch.name()) && b.machine().equals(batch.machine()))
                .filter(condition)
                .toList();
    }

    private List<Batch> ofItsLot() {
        return batches(b -> b.lot().isPresent() && b.lot().equals(batch.lot()));
    }

    private double own(Feature feature) {
        return table.values(feature)[table.batches().indexOf(batch)];
    }

    private double[] values(Feature feature, List<Batch> of) {
        double[] all = table.values(feature);
        Set<Batch> wanted = new HashSet<>(of);
        return IntStream.range(0, all.length)
                .filter(i -> wanted.contains(table.batches().get(i)))
                .mapToDouble(i -> all[i])
                .filter(Double::isFinite)
                .toArray();
    }

    private String place() {
        if (batch.roastDay().isEmpty()) {
            return "No date was written for it, so nothing can be said of its day.";
        }
        int ofTheDay = ofItsDay().size() + 1;
        String on = "Roasted on " + batch.roastDay().get()
                + batch.machine().map(m -> " on " + m).orElse("");
        if (ofTheDay == 1) {
            return on + ", the only batch of the day.";
        }
        double place = own(Features.batchOfTheDay());
        double[] lots = values(Features.batchOfTheDay(), ofItsLot());
        String first = place == 1 && lots.length > 0
                ? firstOfTheirs(
                        lots.length, Arrays.stream(lots).filter(p -> p == 1).count())
                : "";
        return on + ", batch " + Math.round(place) + " of " + ofTheDay + " of the day" + first + ".";
    }

    private static String firstOfTheirs(int dated, long first) {
        return dated == 1
                ? "; its lot's one other with a date " + (first == 1 ? "came first on its day" : "did not come first")
                : "; of its lot's " + dated + " others with a date, " + first + " came first on theirs";
    }

    private Optional<String> pause() {
        return beside(
                Features.minutesSinceLastDrop(),
                batches(b -> true),
                "The drum stood empty for %s before it",
                "; 8 of 10 pauses of this machine are ");
    }

    private Optional<String> room() {
        return beside(Features.roomTemperature(), ofItsLot(), "The room had %s", "; 8 of 10 of its lot's others had ");
    }

    /** Says a number beside the middle eight in ten of others, where there are enough of them. */
    private Optional<String> beside(Feature feature, List<Batch> others, String words, String theirsAre) {
        double own = own(feature);
        if (!Double.isFinite(own)) {
            return Optional.empty();
        }
        Digits digits = Digits.of(new double[] {own}, feature.unit().withDigits(0), 0, logbook.readerUnit());
        String said = String.format(Locale.ROOT, words, digits.with(own));
        double[] theirs = values(feature, others);
        if (theirs.length < ENOUGH) {
            return Optional.of(said + ".");
        }
        double low = Robust.quantile(theirs, EDGE);
        double high = Robust.quantile(theirs, 1 - EDGE);
        // What prints as the end of the range is not told as beyond it.
        boolean above = own > high && !digits.with(own).equals(digits.with(high));
        boolean below = own < low && !digits.with(own).equals(digits.with(low));
        return Optional.of(said
                + theirsAre
                + digits.range(low, high)
                + (above ? ", so this is high." : below ? ", so this is low." : "."));
    }

    /** Says by whom and by which recipe it was roasted where more of its lot's others were by another. */
    private List<String> labels() {
        List<String> sentences = new ArrayList<>();
        for (Batch.Label label : List.of(Batch.Label.OPERATOR, Batch.Label.RECIPE)) {
            Map<String, Long> theirs = ofItsLot().stream()
                    .flatMap(b -> b.label(label).stream())
                    .collect(Collectors.groupingBy(word -> word, TreeMap::new, Collectors.counting()));
            Optional<Map.Entry<String, Long>> most =
                    theirs.entrySet().stream().max(Map.Entry.comparingByValue(Comparator.naturalOrder()));
            String own = batch.label(label).orElse("");
            if (most.isPresent()
                    && !own.isEmpty()
                    && theirs.getOrDefault(own, 0L) < most.get().getValue()) {
                long all = theirs.values().stream().mapToLong(n -> n).sum();
                long alike = theirs.getOrDefault(own, 0L);
                sentences.add("Its " + label.words() + " was " + own
                        + (2 * most.get().getValue() > all
                                ? "; that of most of its lot's others was "
                                        + most.get().getKey() + " ("
                                        + most.get().getValue() + " of " + all + ")."
                                : ", as in " + (alike == 0 ? "none" : alike) + " of its lot's " + all + " others."));
            }
        }
        return sentences;
    }

    /** Says how the day's other batches went, so that a day is told from a batch. */
    private Optional<String> others() {
        List<Batch> theirs = ofItsDay();
        if (theirs.isEmpty()) {
            return Optional.empty();
        }
        Map<Usual.Verdict, List<String>> byWord = new TreeMap<>();
        List<String> parts = new ArrayList<>();
        List<String> rare = new ArrayList<>();
        for (Batch other : theirs) {
            Usual usual = Usual.of(other, logbook);
            boolean nothingFound = usual.reasons().isEmpty();
            Optional<String> charge = usual.rareCharge().filter(words -> nothingFound);
            charge.ifPresentOrElse(
                    words -> rare.add(other.name() + " " + words),
                    () -> byWord.computeIfAbsent(usual.verdict(), v -> new ArrayList<>())
                            .add(other.name()));
        }
        byWord.forEach((verdict, names) -> parts.add(
                switch (verdict) {
                    case LIKE_THE_OTHERS -> names.size() + " as usual";
                    case A_LITTLE_UNLIKE_THE_OTHERS ->
                        names.size() + " a little unlike (" + String.join(", ", names) + ")";
                    case UNLIKE_THE_OTHERS -> names.size() + " unlike (" + String.join(", ", names) + ")";
                    case CANNOT_TELL -> "of " + names.size() + " it cannot be told";
                }));
        if (!rare.isEmpty()) {
            parts.add(rare.size() + " of a charge that too few are like to say more (" + String.join("; ", rare) + ")");
        }
        return Optional.of("The day's other batches, each beside its own lot: " + String.join(", ", parts) + ".");
    }
}
