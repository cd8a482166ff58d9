package parchment.evidence;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import parchment.evidence.finding.Verdict;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.written.BatchConditions;
import parchment.logbook.written.CupScores;
import parchment.logbook.written.Cupping;
import parchment.quantity.Mass;
import parchment.quantity.Temperature;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/**
 * Adds the batches that a comparison of destination and path asks for to the logbook that asked, and counts how often they tell.
 *
 * <p>Drop temperature and development time moved together but for a little. The score follows the drop temperature by just the smallest
 * difference that matters over the middle 80 % of what was tried, and the development time not at all. The table of
 * docs/measurements/path-batches.md is its output. Arguments: logbooks, then the first seed (1 if none is given).
 */
final class PathBatchesStudy {
    private static final double MATTERS = 0.5;

    private PathBatchesStudy() {}

    /** Holds how many logbooks named enough pairs, how often the pairs told each of the two rightly, and how many batches they were. */
    record Count(int logbooks, int named, int finish, int added, double batches) {}

    static Count count(int logbooks, long first, double together) {
        int named = 0;
        int finish = 0;
        int added = 0;
        double batches = 0;
        for (long seed = first; seed < first + logbooks; seed++) {
            KnownTruth truth = new KnownTruth();
            truth.measureError = 0;
            truth.slope = MATTERS / (2 * 1.2816 * truth.dropSpread);
            KnownTruth.Drawn drawn = truth.draw(seed);
            Random random = new Random(seed + 99);
            Map<String, double[]> three = new LinkedHashMap<>();
            drawn.measure()
                    .readings()
                    .forEach((batch, reading) -> three.put(batch, new double[] {
                        reading.value(),
                        90 + 5 * (reading.value() - truth.center) + together * random.nextGaussian(),
                        540 + 25 * random.nextGaussian()
                    }));
            DestinationOrPath before = ask(drawn.logbook(), three);
            SeparatingBatches next = before.next().orElse(null);
            if (next == null || next.outcome() != SeparatingBatches.Outcome.ENOUGH) {
                continue;
            }
            named++;
            batches += next.batches();
            Logbook more = add(truth, drawn.logbook(), next.mixtures(), three, random);
            DestinationOrPath after = ask(more, three);
            PathContrast faster = after.contrast("faster finish");
            finish += faster.interval().lower() > 0 || small(faster) ? 1 : 0;
            PathContrast longer = after.contrast("added time");
            added += small(longer) ? 1 : 0;
        }
        return new Count(logbooks, named, finish, added, batches / Math.max(1, named));
    }

    private static boolean small(PathContrast contrast) {
        return contrast.verdict() == Verdict.NOTHING_SEEN || contrast.verdict() == Verdict.TOO_SMALL;
    }

    private static DestinationOrPath ask(Logbook logbook, Map<String, double[]> three) {
        String[] names = {"drop temperature", "development time", "first crack time"};
        List<Measure> measures = new ArrayList<>();
        for (int k = 0; k < 3; k++) {
            int column = k;
            Map<String, ModelFrames.Reading> readings = new LinkedHashMap<>();
            three.forEach((batch, row) -> readings.put(batch, new ModelFrames.Reading(row[column], Double.NaN)));
            measures.add(
                    new Measure(names[k], k == 0 ? Unit.TEMPERATURE : Unit.SECONDS, TemperatureUnit.CELSIUS, readings));
        }
        Measure rates = new Measure("development rate", Unit.RATE_OF_RISE, TemperatureUnit.CELSIUS, Map.of());
        return new PathQuestion(
                        "sweetness",
                        measures,
                        rates,
                        Map.of(),
                        List.of(),
                        EvidenceSettings.standard().withSmallestDifference(MATTERS))
                .ask(logbook);
    }

    /** Roasts two pairs a day, after all others, cups each day's batches together, and adds them to the logbook. */
    private static Logbook add(
            KnownTruth truth, Logbook logbook, List<double[]> mixtures, Map<String, double[]> three, Random random) {
        List<Batch> batches = new ArrayList<>(logbook.batches());
        List<CupScores> cups = new ArrayList<>(logbook.cups());
        List<Cupping> cuppings = new ArrayList<>(logbook.contents().cuppings());
        LocalDate start = LocalDate.of(2024, 9, 2);
        double lot = truth.lotSpread * random.nextGaussian();
        double[] cuppers = random.doubles(truth.cuppers).map(u -> u - 0.5).toArray();
        double day = 0;
        double cupping = 0;
        double[] sitting = new double[truth.cuppers];
        for (int i = 0; i < mixtures.size(); i++) {
            int number = i / 4;
            if (i % 4 == 0) {
                day = truth.daySpread * random.nextGaussian();
                cupping = truth.cuppingSpread * random.nextGaussian();
                for (int k = 0; k < sitting.length; k++) {
                    sitting[k] = truth.sittingSpread * random.nextGaussian();
                }
                cuppings.add(new Cupping("N" + number, Cupping.Said.YES, Cupping.Said.YES, Map.of()));
            }
            LocalDate date = start.plusDays(3L * number);
            String name = String.format(Locale.ROOT, "N%03d", i + 1);
            batches.add(Batch.named(name)
                    .roastedAt(OffsetDateTime.of(date.atTime(9, 15 * (i % 4)), ZoneOffset.UTC))
                    .lot("Lot N")
                    .machine("drum one")
                    .readerUnit(truth.reader)
                    .conditions(new BatchConditions(
                            Optional.of(Mass.kilograms(2 + 0.1 * random.nextGaussian())),
                            Optional.empty(),
                            Optional.empty(),
                            Optional.empty(),
                            Optional.of(Temperature.celsius(20 + random.nextGaussian())),
                            OptionalDouble.empty(),
                            OptionalDouble.empty(),
                            Optional.empty()))
                    .build());
            double[] mixture = mixtures.get(i);
            three.put(name, mixture);
            double own = truth.batchSpread * random.nextGaussian();
            for (int k = 0; k < truth.cuppers; k++) {
                double score = 6
                        + truth.slope * (mixture[0] - truth.center)
                        + lot
                        + day
                        + own
                        + cuppers[k]
                        + cupping
                        + sitting[k]
                        + truth.cupSpread * random.nextGaussian();
                cups.add(new CupScores(
                        "N" + number,
                        date.plusDays(5),
                        "new cupper " + (k + 1),
                        name,
                        Optional.empty(),
                        Optional.of("1"),
                        OptionalInt.empty(),
                        Map.of("sweetness", score),
                        Optional.empty()));
            }
        }
        return Logbook.of(logbook.contents().toBuilder()
                .batches(batches)
                .cups(cups)
                .cuppings(cuppings)
                .build());
    }

    /** Prints the table. */
    public static void main(String[] arguments) {
        int logbooks = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 400;
        long first = arguments.length > 1 ? Long.parseLong(arguments[1]) : 1;
        System.out.println(
                "| development time beside 5 s per °C | enough pairs named | batches, mean | faster finish told | added time told |");
        System.out.println("| --- | --- | --- | --- | --- |");
        for (double together : new double[] {1, 3}) {
            Count count = count(logbooks, first, together);
            System.out.printf(
                    Locale.ROOT,
                    "| %.0f s | %d of %d | %.0f | %s | %s |%n",
                    together,
                    count.named(),
                    count.logbooks(),
                    count.batches(),
                    percent(count.finish(), count.named()),
                    percent(count.added(), count.named()));
        }
    }

    private static String percent(int hits, int of) {
        double share = (double) hits / of;
        return String.format(Locale.ROOT, "%.1f ± %.1f %%", 100 * share, 100 * Math.sqrt(share * (1 - share) / of));
    }
}
