package parchment.gather.corpus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.gather.corpus.CorpusScore.Item;
import parchment.gather.corpus.CorpusScore.Verdict;
import parchment.gather.corpus.CorpusStudy.Asked;
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.StrangeKind.Fact;
import parchment.logbook.Logbook;

class CorpusTest {
    private static final Set<Fact> ALL = EnumSet.allOf(Fact.class);

    @TempDir
    Path temporary;

    /** Floors that a gathering held when the row was written; the whole table is docs/measurements/gather.md. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    text: German curves in Windows-1252                 | 100
                    text: Spanish curves with a mark                    | 100
                    units: Fahrenheit written nowhere                   | 100
                    units: time as minutes and seconds since the charge | 100
                    units: date and time, month first, twelve hours     | 100
                    units: a row of units under the heads               | 100
                    layouts: marks typed beside the readings            | 100
                    layouts: readings by hand each 30 seconds from the charge | 100
                    """)
    void gathersAsMuchOfTheTruthAsBefore(String kind, double floor) throws IOException {
        CorpusScore score = CorpusStudy.measure(CorpusKinds.named(kind), 1, Asked.NOBODY);
        assertTrue(score.share(Verdict.RIGHT) >= floor, kind + ": " + score.share(Verdict.RIGHT) + score.failures());
    }

    @Test
    void holdsSixtyKindsAndMoreThatAreWrittenTheSameForTheSameSeed() throws IOException {
        List<Kind> kinds = CorpusKinds.all();
        assertTrue(kinds.size() >= 60, kinds.size() + " kinds");
        Set<String> names = new HashSet<>();
        for (Kind kind : kinds) {
            assertTrue(names.add(kind.name()), kind.name() + " is there twice");
            assertTrue(!kind.facts().isEmpty(), kind.name());
        }
        Kind kind = CorpusKinds.named("faults: a sheet of orders");
        kind.write(InventedRoastery.of(3), Files.createDirectories(temporary.resolve("one")), new Random(3));
        kind.write(InventedRoastery.of(3), Files.createDirectories(temporary.resolve("two")), new Random(3));
        assertEquals(
                Files.readString(temporary.resolve("one/orders.csv")),
                Files.readString(temporary.resolve("two/orders.csv")));
    }

    @Test
    void drawsRoasteriesOfTwelveToTwentyRoastsThatCanBeToldApart() {
        for (long seed = 1; seed <= 40; seed++) {
            Roastery roastery = InventedRoastery.of(seed);
            assertEquals(roastery, InventedRoastery.of(seed));
            int roasts = roastery.batches().size();
            assertTrue(roasts >= 12 && roasts <= 20, seed + ": " + roasts);
            int days = CurveParts.byDay(roastery).size();
            assertTrue(days >= 3 && days <= 6, seed + ": " + days + " days");
            for (Roast roast : roastery.batches()) {
                assertTrue(roast.readings().get(0).seconds() <= -40, "recorded before the charge");
                assertTrue(roast.roastedKilograms() < roast.greenKilograms());
            }
            assertTrue(!roastery.tastings().isEmpty());
            assertTrue(
                    roastery.batches().stream()
                            .anyMatch(roast -> roast.chargedAt().getDayOfMonth() > 12),
                    "a day that can be no month");
        }
    }

    private CorpusScore scoreOf(Path folder) {
        return CorpusScore.of(
                InventedRoastery.of(1),
                ALL,
                (roast, fact) -> true,
                new GatherEntry.Gathered(Optional.of(Logbook.open(folder)), "", List.of()));
    }

    private Path trueLogbook() throws IOException {
        Path folder = Files.createDirectories(temporary.resolve("true"));
        TrueLogbook.write(InventedRoastery.of(1), folder);
        return folder;
    }

    @Test
    void aLogbookThatIsTheTruthIsWhollyRight() throws IOException {
        CorpusScore score = scoreOf(trueLogbook());
        assertEquals(100, score.share(Verdict.RIGHT), score.failures());
        assertEquals(ALL, score.compared());
    }

    /** Each plant changes one cell of the true logbook; the score must see that one and nothing else. */
    @ParameterizedTest
    @CsvSource({
        "batches.csv, green mass [kg], GREEN_MASSES, WRONG_IN_SILENCE, 1.006",
        "batches.csv, green mass [kg], , RIGHT, 1.004",
        "batches.csv, roasted mass [kg], ROASTED_MASSES, WRONG_IN_SILENCE, 0.994",
        "batches.csv, drop [s], DROP, WRONG_IN_SILENCE, +2",
        "batches.csv, charge temperature [°C], CHARGE_TEMPERATURES, WRONG_IN_SILENCE, +1",
        "batches.csv, drop [s], , RIGHT, +1",
        "batches.csv, yellowing [s], YELLOWING, WRONG_IN_SILENCE, -2",
        "batches.csv, first crack start [s], FIRST_CRACK, LEFT_OUT_IN_SILENCE, blank",
        "batches.csv, lot, LOTS, WRONG_IN_SILENCE, Another",
        "batches.csv, lot, LOTS, LEFT_OUT_IN_SILENCE, blank",
        "cuppings.csv, sweetness, SCORES, WRONG_IN_SILENCE, +0.25",
        "cuppings.csv, cupper, SCORES, LEFT_OUT_IN_SILENCE, Nobody"
    })
    void aPlantedFaultIsSeen(String file, String column, Fact fact, Verdict verdict, String plant) throws IOException {
        Path folder = trueLogbook();
        TrueLogbook.plant(folder.resolve(file), column, plant);
        List<Item> failed = scoreOf(folder).items().stream()
                .filter(item -> item.verdict() != Verdict.RIGHT && item.fact() != Fact.MEAN_SCORES)
                .toList();
        if (fact == null) {
            assertEquals(List.of(), failed);
        } else {
            assertEquals(1, failed.size(), failed.toString());
            assertEquals(fact, failed.get(0).fact());
            assertEquals(verdict, failed.get(0).verdict());
        }
    }

    @Test
    void aBatchThatWasLeftOutAndOneThatNeverWasAreSeen() throws IOException {
        Path folder = trueLogbook();
        Path curve = folder.resolve("curves/62.csv");
        Files.move(curve, folder.resolve("curves/another.csv"));
        Path list = folder.resolve("batches.csv");
        Files.write(
                list,
                Files.readAllLines(list).stream()
                        .filter(line -> !line.startsWith("62,"))
                        .toList());
        Map<Fact, Long> failed = scoreOf(folder).items().stream()
                .filter(item -> item.verdict() != Verdict.RIGHT)
                .collect(Collectors.groupingBy(Item::fact, Collectors.counting()));
        assertEquals(2, failed.get(Fact.BATCHES), failed.toString());
        for (Fact fact : EnumSet.of(Fact.BEAN_CURVES, Fact.DAYS, Fact.GREEN_MASSES, Fact.DROP)) {
            assertEquals(1, failed.get(fact), fact.toString());
        }
    }

    @Test
    void aCurveThatStandsThreeSecondsOffOrTwoDegreesHighIsSeen() throws IOException {
        Path folder = trueLogbook();
        TrueLogbook.moveCurve(folder.resolve("curves/63.csv"), 3, 0);
        TrueLogbook.moveCurve(folder.resolve("curves/64.csv"), 0, 2);
        TrueLogbook.moveCurve(folder.resolve("curves/65.csv"), 1, 0);
        List<Item> failed = scoreOf(folder).items().stream()
                .filter(item -> item.verdict() != Verdict.RIGHT && item.fact() == Fact.BEAN_CURVES)
                .toList();
        assertEquals(List.of(63, 64), failed.stream().map(Item::batch).toList(), failed.toString());
        assertTrue(
                failed.get(0).words().contains("3.0 s too late"), failed.get(0).words());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    102: first crack was left out                                     | FIRST_CRACK  | true
                    102: first crack was left out                                     | GREEN_MASSES | false
                    103: first crack was left out                                     | FIRST_CRACK  | false
                    102: first crack is 9:20                                          | FIRST_CRACK  | false
                    curves/102.csv, line 7: found x; expected a number; row skipped.  | BEAN_CURVES  | true
                    curves/102.csv, line 7: found x; expected a number; row skipped.  | ROASTED_MASSES | false
                    batches.csv, line 3: found nothing for 102; expected a date       | DAYS         | true
                    No table of values, left out: roast log.csv.                      | LOTS         | true
                    No table of values, left out: Batch 107.csv.                      | LOTS         | false
                    No table of values, left out: another.csv.                        | LOTS         | false
                    Column 7 "Ende" is not known and left out                         | DROP         | true
                    Column 7 "Ende" is not known and left out                         | LOTS         | false
                    """)
    void aLossIsNamedOnlyByItsBatchItsFileOrItsColumn(String line, Fact fact, boolean named) {
        Roast roast = InventedRoastery.of(5).batches().get(1);
        assertEquals(102, roast.number());
        assertEquals(named, new NamedLosses(line, List.of("roast log.csv", "Batch 107.csv")).names(roast, fact));
    }
}
