import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import parchment.stats.mixed.AddedFeatures;
import parchment.stats.mixed.LinearMixedModel;
import parchment.stats.mixed.MixedDesign;
import parchment.stats.resample.Permutation;
import parchment.stats.resample.PermutationTest;
import parchment.stats.mixed.RandomTerm;

/**
 * Times mixed models and a screen of features; prints "name,seconds,number" per timed run after warming up. Arguments: job (panel,
 * interaction, insteval, insteval-two, screen), file of data (any for screen), warm-up runs, timed runs. Started by mixed_models.py.
 */
public final class MixedModelSpeed {
    private MixedModelSpeed() {}

    public static void main(String[] arguments) throws IOException {
        String job = arguments[0];
        int warm = Integer.parseInt(arguments[2]);
        int runs = Integer.parseInt(arguments[3]);
        MixedDesign design = job.equals("screen") ? screenDesign() : design(job, Path.of(arguments[1]));
        for (int run = 0; run < warm + runs; run++) {
            long start = System.nanoTime();
            double number = job.equals("screen") ? screen(design) : design.fit().criterion();
            double seconds = 1e-9 * (System.nanoTime() - start);
            if (run >= warm) {
                System.out.printf(Locale.ROOT, "%s,%.4f,%.6f%n", job, seconds, number);
            }
        }
    }

    private static MixedDesign design(String job, Path file) throws IOException {
        Map<String, List<String>> data = read(file);
        if (job.startsWith("insteval")) {
            MixedDesign two = MixedDesign.of("y", numbers(data, "y"))
                    .withRandom(RandomTerm.intercept("s", words(data, "s")))
                    .withRandom(RandomTerm.intercept("d", words(data, "d")));
            if (job.equals("insteval-two")) {
                return two;
            }
            return two.withFactor("service", words(data, "service"))
                    .withRandom(RandomTerm.intercept("dept", words(data, "dept")))
                    .withRandom(RandomTerm.intercept(
                            "dept:service", RandomTerm.crossedWith(words(data, "dept"), words(data, "service"))));
        }
        MixedDesign panel = MixedDesign.of("score", numbers(data, "score"))
                .withCovariate("x1", numbers(data, "x1"))
                .withCovariate("x2", numbers(data, "x2"))
                .withCovariate("x3", numbers(data, "x3"))
                .withRandom(RandomTerm.intercept("taster", words(data, "taster")))
                .withRandom(RandomTerm.intercept("session", words(data, "session")))
                .withRandom(RandomTerm.intercept("batch", words(data, "batch")));
        return job.equals("panel")
                ? panel
                : panel.withRandom(RandomTerm.intercept(
                        "taster:session", RandomTerm.crossedWith(words(data, "taster"), words(data, "session"))));
    }

    private static Map<String, List<String>> read(Path file) throws IOException {
        Map<String, List<String>> columns = new LinkedHashMap<>();
        try (BufferedReader reader = Files.newBufferedReader(file)) {
            String[] names = reader.readLine().replace("\"", "").split(",");
            for (String name : names) {
                columns.put(name, new ArrayList<>());
            }
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                String[] cells = line.replace("\"", "").split(",");
                for (int k = 0; k < names.length; k++) {
                    columns.get(names[k]).add(cells[k]);
                }
            }
        }
        return columns;
    }

    private static List<String> words(Map<String, List<String>> data, String name) {
        return data.getOrDefault(name, List.of());
    }

    private static double[] numbers(Map<String, List<String>> data, String name) {
        return words(data, name).stream().mapToDouble(Double::parseDouble).toArray();
    }

    /** 300 batches on 75 days in 6 lots, 5 cups each by 5 cuppers. */
    private static MixedDesign screenDesign() {
        SplittableRandom random = new SplittableRandom(1);
        List<String> batch = new ArrayList<>();
        List<String> day = new ArrayList<>();
        List<String> cupper = new ArrayList<>();
        double[] y = new double[1500];
        for (int i = 0; i < y.length; i++) {
            batch.add("b" + i / 5);
            day.add("d" + i / 20);
            cupper.add("c" + i % 5);
            y[i] = random.nextGaussian();
        }
        return MixedDesign.of("score", y)
                .withRandom(RandomTerm.intercept("batch", batch))
                .withRandom(RandomTerm.intercept("day", day))
                .withRandom(RandomTerm.intercept("cupper", cupper));
    }

    /** 40 features by 6 attributes by 1,000 shuffles within days, the six models' fits and products included. */
    private static double screen(MixedDesign design) {
        SplittableRandom random = new SplittableRandom(2);
        List<double[]> features = new ArrayList<>();
        for (int k = 0; k < 40; k++) {
            features.add(random.doubles(300).toArray());
        }
        List<String> batches = design.randomTerms().get(0).groups();
        List<String> days = new ArrayList<>();
        for (int b = 0; b < 300; b++) {
            days.add(design.randomTerms().get(1).groups().get(5 * b));
        }
        List<AddedFeatures> attributes = new ArrayList<>();
        for (int a = 0; a < 6; a++) {
            double[] y = random.doubles(1500).toArray();
            LinearMixedModel model = design.withResponse(y).fit();
            attributes.add(AddedFeatures.to(model, batches));
        }
        PermutationTest test = PermutationTest.run(Permutation.withinBlocks(days, 3), 1000, order -> {
            List<double[]> shuffled = features.stream()
                    .map(feature -> Arrays.stream(order)
                            .mapToDouble(row -> feature[row])
                            .toArray())
                    .toList();
            return attributes.stream()
                    .flatMapToDouble(added -> Arrays.stream(added.statistics(shuffled)))
                    .toArray();
        });
        return test.luckLine(0.05);
    }
}
