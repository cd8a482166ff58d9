package parchment.gather.corpus;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import parchment.gather.corpus.CorpusScore.Verdict;
import parchment.gather.corpus.unseen.UnseenKinds;

/**
 * Measures how much of the truth a gathering finds in all kinds of strange folders.
 *
 * <p>The tables of docs/measurements/gather.md are its output; the page names the command. Arguments: the seeds as first-last, then words that the
 * wanted kinds' names hold (all if none is given); {@code unseen} takes the twenty kinds that the rules were not made with. {@code write folder words} writes the folders of those kinds, seed 1, to look at.
 */
final class CorpusStudy {
    /** Says who answers the questions of a gathering. */
    enum Asked {
        NOBODY,
        /** Answers what the kind knows, and takes what is proposed everywhere else. */
        THE_ROASTER
    }

    private static final String UNSEEN = "unseen";

    private CorpusStudy() {}

    /** Prints the tables. */
    public static void main(String[] arguments) throws IOException {
        if (arguments.length > 2 && arguments[0].equals("write")) {
            write(Path.of(arguments[1]), List.of(arguments).subList(2, arguments.length));
            return;
        }
        String[] seeds = (arguments.length > 0 ? arguments[0] : "1-1").split("-");
        boolean unseen = List.of(arguments).contains(UNSEEN);
        List<String> words = List.of(arguments).subList(Math.min(1, arguments.length), arguments.length).stream()
                .filter(word -> !word.equals(UNSEEN))
                .toList();
        List<Measured> all = new ArrayList<>();
        List<Measured> answered = new ArrayList<>();
        for (StrangeKind kind : unseen ? UnseenKinds.all() : CorpusKinds.all()) {
            if (!words.isEmpty() && words.stream().noneMatch(kind.name()::contains)) {
                continue;
            }
            Measured alone = new Measured(kind.name());
            Measured asked = new Measured(kind.name());
            for (long seed = Long.parseLong(seeds[0]); seed <= Long.parseLong(seeds[seeds.length - 1]); seed++) {
                CorpusScore score = measure(kind, seed, Asked.NOBODY);
                alone.add(score);
                boolean answers =
                        !kind.answers(kind.in(InventedRoastery.of(seed))).isEmpty();
                asked.add(answers ? measure(kind, seed, Asked.THE_ROASTER) : score);
            }
            all.add(alone);
            answered.add(asked);
            System.err.println(alone.row() + " " + alone.failures);
        }
        System.out.println(table(all, answered));
    }

    private static void write(Path place, List<String> words) throws IOException {
        for (Kind kind : CorpusKinds.all()) {
            if (words.stream().anyMatch(kind.name()::contains)) {
                Path folder = place.resolve(
                        kind.name().replaceAll("[^\\p{L}\\p{N}.]+", " ").strip());
                kind.write(kind.in(InventedRoastery.of(1)), Files.createDirectories(folder), new Random(1));
            }
        }
    }

    /** Writes the folder of a kind and a seed, gathers it, and compares. */
    static CorpusScore measure(StrangeKind kind, long seed, Asked asked) throws IOException {
        Path place = Files.createTempDirectory("corpus");
        try {
            Roastery roastery = kind.in(InventedRoastery.of(seed));
            Path folder = Files.createDirectories(place.resolve("old"));
            kind.write(roastery, folder, new Random(seed));
            return CorpusScore.of(
                    roastery,
                    kind,
                    asked == Asked.NOBODY
                            ? GatherEntry.gather(folder, place.resolve("made"))
                            : GatherEntry.gather(folder, place.resolve("made"), kind.answers(roastery)));
        } finally {
            delete(place);
        }
    }

    private static void delete(Path place) throws IOException {
        try (Stream<Path> paths = Files.walk(place)) {
            for (Path path : paths.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(path);
            }
        }
    }

    private static String table(List<Measured> all, List<Measured> answered) {
        StringBuilder text = new StringBuilder(groups(all))
                .append(
                        "\n| kind | items | right | named | wrong but named | left out in silence"
                                + " | wrong in silence | right with answers |\n| --- | --- | --- | --- | --- | --- | --- | --- |\n");
        Measured sum = new Measured("all kinds");
        Measured sumAnswered = new Measured("all kinds");
        for (int i = 0; i < all.size(); i++) {
            text.append(all.get(i).row())
                    .append(answered.get(i).percent(Verdict.RIGHT))
                    .append(" |\n");
            sum.add(all.get(i));
            sumAnswered.add(answered.get(i));
        }
        text.append(sum.row()).append(sumAnswered.percent(Verdict.RIGHT)).append(" |\n\n");
        text.append(String.format(
                Locale.ROOT,
                "Kinds with 80 %% right or more: %d of %d.%n%n",
                all.stream().filter(kind -> kind.share(Verdict.RIGHT) >= 80).count(),
                all.size()));
        all.stream()
                .filter(kind -> !kind.failures.isEmpty())
                .sorted(Comparator.comparingDouble(kind -> kind.share(Verdict.RIGHT)))
                .forEach(kind -> text.append("- ")
                        .append(kind.percent(Verdict.RIGHT))
                        .append(" % ")
                        .append(kind.name)
                        .append(": ")
                        .append(kind.failures)
                        .append('\n'));
        return text.toString();
    }

    /** Returns the kinds' sums by the word before the colon. */
    private static String groups(List<Measured> all) {
        Map<String, Measured> groups = new LinkedHashMap<>();
        for (Measured kind : all) {
            groups.computeIfAbsent(kind.name.split(":")[0], Measured::new).add(kind);
        }
        StringBuilder text = new StringBuilder("| kinds | items | right | named | wrong but named | left out in silence"
                + " | wrong in silence |\n| --- | --- | --- | --- | --- | --- | --- |\n");
        groups.values().forEach(group -> text.append(group.row().strip()).append('\n'));
        return text.toString();
    }

    /** Adds up the verdicts of one kind. */
    private static final class Measured {
        private final String name;
        private final long[] counts = new long[Verdict.values().length];
        private String failures = "";

        Measured(String name) {
            this.name = name;
        }

        void add(CorpusScore score) {
            for (Verdict verdict : Verdict.values()) {
                counts[verdict.ordinal()] += score.count(verdict);
            }
            if (failures.isEmpty()) {
                failures = score.failures();
            }
        }

        void add(Measured other) {
            for (int i = 0; i < counts.length; i++) {
                counts[i] += other.counts[i];
            }
        }

        long items() {
            return Arrays.stream(counts).sum();
        }

        double share(Verdict verdict) {
            return 100.0 * counts[verdict.ordinal()] / Math.max(1, items());
        }

        String percent(Verdict verdict) {
            return String.format(Locale.ROOT, "%.1f", share(verdict));
        }

        String row() {
            StringBuilder row = new StringBuilder("| " + name + " | " + items() + " | ");
            for (Verdict verdict : Verdict.values()) {
                row.append(percent(verdict)).append(" | ");
            }
            return row.toString();
        }
    }
}
