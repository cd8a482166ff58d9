package parchment.learning;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import parchment.chart.Plot;
import parchment.display.Showable;
import parchment.display.answer.InShort;
import parchment.display.answer.ShownAs;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.contents.ScoreQuestion;
import parchment.sheet.Words;
import parchment.stats.Estimate;

/**
 * Answers which kinds of roast there are in a logbook: batches whose rate of rise ran alike, named by what differs.
 *
 * <p>Two batches are as far apart as their rates of rise are on average, up to half a minute of early or late forgiven. Batches that lie
 * near each other are put together. A split into kinds is told only if each kind comes again when roast days are drawn anew,
 * and if the kinds lie further apart than those cut out of one kind of the same spread; otherwise the answer is that they cannot be told from one kind.
 * A kind is no cause of its scores.
 *
 * <pre>{@code
 * KindsOfRoast.of(logbook)
 * }</pre>
 *
 * <p>Batches of one machine are taken, the one with the most. Drawn by a seed that stands on the page.
 *
 * @see <a href="https://doi.org/10.1016/j.csda.2006.11.025">Hennig 2007, Comput. Stat. Data Anal. 52:258</a>, for how kinds that come again are told
 */
public final class KindsOfRoast implements ShownAs {
    /** Fewest batches and roast days; common practice, no source. */
    private static final int FEWEST_BATCHES = 20;

    private static final int FEWEST_DAYS = 8;
    private static final long SEED = 1;

    private final Logbook logbook;
    private final RatePaths paths;
    private final StableSplit.Search search;
    private final List<Kind> kinds;
    private final String attribute;
    private final String notCompared;

    /**
     * Holds one kind of roast.
     *
     * @param name what differs most, as in "slower to yellowing, later drop"
     * @param differs everything that differs, with numbers
     * @param batches the names of its batches
     * @param stability how much of it comes again when roast days are drawn anew, 0 to 1
     * @param lots its lots, with how many batches are of each
     * @param scored how many of its batches were scored
     * @param score the mean score of its batches less that of the others, cuppers and cuppings allowed for; its error is missing with too few roast days
     */
    public record Kind(
            String name,
            String differs,
            List<String> batches,
            double stability,
            String lots,
            int scored,
            Estimate score) {
        /** Copies the batches. */
        public Kind {
            batches = List.copyOf(batches);
        }
    }

    private KindsOfRoast(
            Logbook logbook,
            RatePaths paths,
            StableSplit.Search search,
            List<Kind> kinds,
            String attribute,
            String notCompared) {
        this.logbook = logbook;
        this.paths = paths;
        this.search = search;
        this.kinds = List.copyOf(kinds);
        this.attribute = attribute;
        this.notCompared = notCompared;
    }

    /** Looks for kinds of roast. Takes some seconds. */
    public static KindsOfRoast of(Logbook logbook) {
        RatePaths paths = RatePaths.of(logbook);
        List<Batch> batches =
                paths.batches().stream().map(phases -> phases.batch()).toList();
        List<String> days = batches.stream().map(KindsOfRoast::day).toList();
        boolean enough =
                batches.size() >= FEWEST_BATCHES && days.stream().distinct().count() >= FEWEST_DAYS;
        StableSplit.Search search = enough
                ? StableSplit.search(paths.distances(), days, SEED)
                : new StableSplit.Search(Optional.empty(), List.of());
        String attribute = logbook.attributes().isEmpty() ? "" : logbook.scored("overall", "liking", "sweetness");
        if (search.found().isEmpty()) {
            return new KindsOfRoast(logbook, paths, search, List.of(), attribute, "");
        }
        StableSplit found = search.found().get();
        Map<String, Double> levels = attribute.isEmpty() ? Map.of() : BatchLevels.of(logbook, attribute);
        KindWords words = KindWords.of(logbook, batches, paths.rates());
        List<String> names = words.names(found.split().kinds());
        KindScores scores = KindScores.of(batches, days, levels);
        List<Kind> kinds = new ArrayList<>();
        for (int k = 0; k < found.split().kinds().size(); k++) {
            BitSet members = found.split().kinds().get(k);
            List<Batch> own = members.stream().mapToObj(batches::get).toList();
            kinds.add(new Kind(
                    names.get(k),
                    words.words(members),
                    own.stream().map(Batch::name).toList(),
                    found.stability().get(k),
                    lots(own),
                    (int) own.stream()
                            .filter(batch -> levels.containsKey(batch.name()))
                            .count(),
                    scores.lessOthers(members)));
        }
        KindsOfRoast answer = new KindsOfRoast(
                logbook,
                paths,
                search,
                kinds,
                attribute,
                words.notCompared(found.split().kinds()).orElse(""));
        return levels.isEmpty() ? answer : ScoreQuestion.answered(answer, logbook, attribute);
    }

    /** A batch without a date counts as a day of its own. */
    private static String day(Batch batch) {
        return batch.roastDay().map(LocalDate::toString).orElse("batch " + batch.name());
    }

    private static String lots(List<Batch> batches) {
        Map<String, Long> counts = batches.stream()
                .collect(Collectors.groupingBy(
                        batch -> batch.lot().orElse("no lot"), java.util.TreeMap::new, Collectors.counting()));
        return counts.entrySet().stream()
                .sorted((a, b) -> Long.compare(b.getValue(), a.getValue()))
                .map(entry -> entry.getKey() + " " + entry.getValue())
                .collect(Collectors.joining(", "));
    }

    /** Returns the kinds, that with the most batches first; empty if they cannot be told from one kind. */
    public List<Kind> kinds() {
        return kinds;
    }

    /** Returns the names of the batches that are near no kind; all if there are no kinds. */
    public List<String> inNoKind() {
        LinkedHashSet<String> names = paths.batches().stream()
                .map(phases -> phases.batch().name())
                .collect(Collectors.toCollection(LinkedHashSet::new));
        kinds.forEach(kind -> kind.batches().forEach(names::remove));
        return List.copyOf(names);
    }

    /** Returns the answer in three sentences: which kinds there are, how sure that is, what to do next. */
    public InShort inShort() {
        return KindsPage.inShort(this);
    }

    /** Returns what is drawn: the rates of rise of each kind, their middle and the middle eight of ten. */
    public Plot plot() {
        return KindsPicture.of(this);
    }

    RatePaths paths() {
        return paths;
    }

    Logbook logbook() {
        return logbook;
    }

    StableSplit.Search search() {
        return search;
    }

    /** What could not be compared between the kinds, and why; empty if all was. */
    String notCompared() {
        return notCompared;
    }

    String attribute() {
        return attribute;
    }

    long roastDays() {
        return paths.batches().stream()
                .map(phases -> day(phases.batch()))
                .distinct()
                .count();
    }

    boolean enough() {
        return paths.batches().size() >= FEWEST_BATCHES && roastDays() >= FEWEST_DAYS;
    }

    static String fewest() {
        return FEWEST_BATCHES + " batches of " + FEWEST_DAYS + " roast days";
    }

    static long seed() {
        return SEED;
    }

    /** Returns the rates of the batches of a kind; kinds count from 0. */
    List<double[]> rates(int kind) {
        BitSet members = search.found().orElseThrow().split().kinds().get(kind);
        return IntStream.range(0, paths.rates().size())
                .filter(members::get)
                .mapToObj(paths.rates()::get)
                .toList();
    }

    @Override
    public Showable shownAs() {
        return KindsPage.of(this);
    }

    @Override
    public Optional<String> svg() {
        return plot().svg();
    }

    @Override
    public String toString() {
        int size = paths.batches().size();
        if (!enough()) {
            return Words.count(size, "batch", "batches") + " of " + logbook.name() + ", too few to look for kinds";
        }
        return kinds.isEmpty()
                ? String.format(
                        Locale.ROOT, "%d batches of %s, which cannot be told from one kind", size, logbook.name())
                : String.format(
                        Locale.ROOT,
                        "%d batches of %s in %d kinds: %s",
                        size,
                        logbook.name(),
                        kinds.size(),
                        kinds.stream()
                                .map(kind -> kind.name() + " (" + kind.batches().size() + ")")
                                .collect(Collectors.joining("; ")));
    }
}
