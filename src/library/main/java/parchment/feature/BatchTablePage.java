package parchment.feature;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import parchment.display.Column;
import parchment.display.Table;
import parchment.display.answer.FirstFew;
import parchment.logbook.contents.EmptyLogbook;
import parchment.sheet.Words;

/** Shows a table of batches; of many features the usual ones, as a page has only so much width. */
final class BatchTablePage {
    private static final int WIDEST = 10;

    private static final Set<String> USUAL = Set.of(
            "drop temperature",
            "drop time",
            "first crack temperature",
            "drying time",
            "browning time",
            "development time",
            "development ratio",
            "mean rate of rise in browning",
            "mass loss");

    private BatchTablePage() {}

    static Table of(BatchTable table) {
        List<Feature> shown = table.features().size() <= WIDEST
                ? table.features()
                : table.features().stream()
                        .filter(f -> USUAL.contains(f.name()))
                        .toList();
        if (shown.isEmpty()) {
            shown = table.features().subList(0, WIDEST);
        }
        List<Integer> rows = IntStream.range(0, table.size()).boxed().toList();
        Table page = Table.titled(table.toString())
                .withText("batch", rows, i -> table.batches().get(i).name())
                .withText("lot", rows, i -> table.batches().get(i).lot().orElse(""));
        for (Feature feature : shown) {
            double[] values = table.values(feature);
            page = feature.unit().isTime()
                    ? page.withColumn(Column.printedNumber(
                            feature.name(),
                            rows,
                            i -> values[i],
                            i -> feature.unit().formatOnClock(values[i], table.reader())))
                    : page.withNumber(feature.name(), feature.unit(), table.reader(), rows, i -> values[i]);
        }
        if (shown.stream().anyMatch(feature -> feature.unit().isTime())) {
            page = page.withNote("Times are in minutes and seconds; values(...) gives them in seconds.");
        }
        if (shown.size() < table.features().size()) {
            page = page.withNote(String.format(
                    Locale.ROOT,
                    "%d more features were measured; names() lists them, values(...) gives their numbers.",
                    table.features().size() - shown.size()));
        }
        if (table.size() == 0) {
            return page.withNote(EmptyLogbook.WORDS);
        }
        for (String sentence : missing(table, shown)) {
            page = page.withNote(sentence);
        }
        return page;
    }

    /** Says for each feature shown how many batches lack it, and the commonest reason. */
    private static List<String> missing(BatchTable table, List<Feature> shown) {
        List<String> sentences = new ArrayList<>();
        for (Feature feature : shown) {
            Map<String, String> why = table.whyMissing(feature);
            if (why.isEmpty()) {
                continue;
            }
            Map<String, Integer> counts = new HashMap<>();
            why.values().forEach(reason -> counts.merge(reason, 1, Integer::sum));
            Map.Entry<String, Integer> most = counts.entrySet().stream()
                    .max(Map.Entry.<String, Integer>comparingByValue().thenComparing(Map.Entry.comparingByKey()))
                    .orElseThrow();
            sentences.add(String.format(
                    Locale.ROOT,
                    "%s is missing in %d of %s (%s), %sbecause %s",
                    Character.toUpperCase(feature.name().charAt(0))
                            + feature.name().substring(1),
                    why.size(),
                    Words.count(table.size(), "batch", "batches"),
                    FirstFew.of(table.batches().stream()
                            .map(batch -> batch.name())
                            .filter(why::containsKey)
                            .toList()),
                    counts.size() == 1 ? "" : "mostly ",
                    most.getKey()));
        }
        return sentences;
    }
}
