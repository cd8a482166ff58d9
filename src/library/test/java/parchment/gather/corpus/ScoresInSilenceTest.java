package parchment.gather.corpus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.Roastery.Tasting;
import parchment.gather.corpus.StrangeKind.Fact;

/**
 * Holds that nothing on a score sheet is left out in silence: every score and every strange word stands in cuppings.csv or in a line of the report
 * that names its file. Each score of the invented truth is a number of its own, so that it can be found again.
 */
class ScoresInSilenceTest {
    private static final int WORDS = 6;

    @TempDir
    Path folder;

    static Stream<Kind> kinds() {
        return KindsOfScores.all().stream();
    }

    /** A short roastery: every twentieth reading, and scores with two digits behind the point, each once. */
    private static Roastery traced(long seed) {
        Roastery all = InventedRoastery.of(seed);
        List<Roast> batches = all.batches().stream()
                .map(roast -> new Roast(
                        roast.number(),
                        roast.chargedAt(),
                        roast.lot(),
                        roast.greenKilograms(),
                        roast.roastedKilograms(),
                        roast.marks(),
                        IntStream.range(0, roast.readings().size())
                                .filter(i -> i % 20 == 0)
                                .mapToObj(roast.readings()::get)
                                .toList(),
                        roast.note()))
                .toList();
        List<Tasting> tastings = new ArrayList<>();
        List<Integer> hundredths = new ArrayList<>(
                IntStream.range(200, 900).filter(i -> i % 10 != 0).boxed().toList());
        Collections.shuffle(hundredths, new Random(seed));
        int next = 0;
        for (Tasting tasting : all.tastings()) {
            Map<String, Double> scores = new LinkedHashMap<>();
            for (String attribute : tasting.scores().keySet()) {
                scores.put(attribute, hundredths.get(next++) / 100.0);
            }
            tastings.add(new Tasting(
                    tasting.cupping(), tasting.tastedOn(), tasting.cupper(), tasting.batch(), tasting.code(), scores));
        }
        return new Roastery(batches, tastings);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("kinds")
    void nothingIsLeftOutInSilence(Kind kind) throws IOException {
        long seed = 1 + kind.name().length() % 3;
        Roastery roastery = traced(seed);
        Path from = Files.createDirectories(folder.resolve("from"));
        kind.write(roastery, from, new Random(seed));
        few(from);
        List<String[]> strewn = strew(from, new Random(seed));
        GatherEntry.Gathered gathered = GatherEntry.gather(from, folder.resolve("to"));
        Path cuppings = folder.resolve("to").resolve("cuppings.csv");
        assertTrue(Files.exists(cuppings), gathered.report());
        String written = Files.readString(cuppings);
        List<String> cells = Arrays.stream(written.split("[,\\n]")).toList();
        List<String> lines = gathered.report().lines().toList();
        List<String> lost = new ArrayList<>();
        for (String[] word : strewn) {
            boolean told = written.contains(word[1])
                    || lines.stream().anyMatch(line -> line.contains(word[1]) && line.contains(word[0]));
            if (!told) {
                lost.add(word[1] + " in place of " + word[2] + " in " + word[0]);
            }
        }
        for (Tasting tasting : kind.facts().contains(Fact.SCORES) ? roastery.tastings() : List.<Tasting>of()) {
            tasting.scores().forEach((attribute, score) -> {
                String cell = String.format(Locale.ROOT, "%.2f", score).replaceAll("0$", "");
                boolean replaced = strewn.stream()
                        .anyMatch(word -> word[2].replace(',', '.').equals(cell));
                boolean told = cells.contains(cell)
                        || lines.stream()
                                .anyMatch(line -> line.contains(String.valueOf(tasting.batch()))
                                        && line.contains("joins no batch"))
                        || replaced;
                if (!told) {
                    lost.add(attribute + " " + cell + " of batch " + tasting.batch());
                }
            });
        }
        assertEquals(List.of(), lost, gathered.report());
    }

    /** Leaves two curves: what is tasted stands in the list. */
    private static void few(Path from) throws IOException {
        try (Stream<Path> files = Files.list(from)) {
            for (Path file : files.filter(
                            path -> String.valueOf(path.getFileName()).startsWith("Batch "))
                    .sorted()
                    .skip(2)
                    .toList()) {
                Files.delete(file);
            }
        }
    }

    /** Writes words that stand nowhere else in place of scores of the score sheets that are text. */
    private static List<String[]> strew(Path from, Random random) throws IOException {
        List<String[]> strewn = new ArrayList<>();
        try (Stream<Path> files = Files.list(from)) {
            for (Path file : files.sorted().toList()) {
                String name = String.valueOf(file.getFileName());
                if (!name.endsWith("csv")
                        || name.startsWith("Batch")
                        || name.startsWith("Roasts")
                        || name.startsWith("key")) {
                    continue;
                }
                Charset charset =
                        name.startsWith("Verkostung") ? Charset.forName("windows-1252") : StandardCharsets.UTF_8;
                List<String> lines = new ArrayList<>(Files.readAllLines(file, charset));
                for (int i = 0; i < WORDS; i++) {
                    int row = 1 + random.nextInt(lines.size() - 1);
                    String sign = lines.get(row).contains(";") ? ";" : ",";
                    String[] cells = lines.get(row).split(sign, -1);
                    int column = random.nextInt(cells.length);
                    if (!cells[column].matches("\\d[.,]\\d\\d?")) {
                        continue;
                    }
                    String word = "odd" + strewn.size() + "word";
                    strewn.add(new String[] {name, word, cells[column]});
                    cells[column] = word;
                    lines.set(row, String.join(sign, cells));
                }
                Files.write(file, lines, charset);
            }
        }
        return strewn;
    }
}
