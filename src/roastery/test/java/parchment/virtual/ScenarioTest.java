package parchment.virtual;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import parchment.virtual.chance.Chance;
import parchment.virtual.people.Cupper;
import parchment.virtual.people.FlavourSurface;
import parchment.virtual.people.Habit;
import parchment.virtual.physics.Charge;
import parchment.virtual.physics.DrumMachine;
import parchment.virtual.physics.GreenBeans;
import parchment.virtual.physics.Probes;
import parchment.virtual.physics.RoastSimulator;
import parchment.virtual.physics.Roaster;
import parchment.virtual.physics.SimulatedRoast;
import parchment.virtual.physics.SimulatedRoast.Trace;
import parchment.virtual.written.VirtualBatch;

class ScenarioTest {
    private static final String SMALL = """
            [roastery]
            name = Corner roastery (invented)
            first day = 2025-01-07
            [lot: Stone Bridge]
            arrived = 2024-12-02
            [attribute: sweetness]
            level = 6
            [cupper: Ada]
            """;

    static Stream<String> names() {
        return Scenario.builtIn().stream();
    }

    /** Every built-in scenario roasts like a drum: from yellowing through first crack to a drop within 17 minutes. */
    @ParameterizedTest
    @MethodSource("names")
    void everyScenarioThatComesWithTheLibraryRoasts(String name) {
        VirtualLogbook logbook =
                VirtualRoastery.of(Scenario.named(name)).withBatches(24).run();
        int cracked = 0;
        for (VirtualBatch batch : logbook.batches()) {
            assertTrue(batch.roast().drop() > 420 && batch.roast().drop() < 1020, batch.name() + " " + batch.roast());
            assertEquals(batch.plan().meantDrop(), batch.dropReading(), 6, batch.name());
            cracked += Double.isNaN(batch.roast().firstCrackStart()) ? 0 : 1;
        }
        assertTrue(cracked >= 22, name + ": " + cracked + " of 24 reached first crack");
        assertTrue(logbook.opened().batches().size() == 24);
        assertTrue(Scenario.named(name).text().contains(VirtualLogbook.WARNING), name);
    }

    @Test
    void everyFileOfAScenarioIsListed() throws IOException {
        Path folder = Path.of("roastery/main/resources/parchment/virtual");
        try (Stream<Path> files = Files.list(folder)) {
            assertEquals(
                    Scenario.builtIn().stream().sorted().toList(),
                    files.map(file -> file.getFileName().toString().replace(".scenario", ""))
                            .sorted()
                            .toList());
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            level = 6              | levl = 6              | line 7: [attribute] has no 'levl'. Did you mean 'level'?
            level = 6              | level = high          | line 7: 'level' expects a number from 0 to 10, but was given 'high'.
            level = 6              | level = 11            | line 7: 'level' expects a number from 0 to 10, but was given '11'.
            level = 6              | surface = peek        | line 7: 'surface' expects as set or drawn or peak or rising or falling or flat, but was given 'peek'. Did you mean 'peak'?
            [lot: Stone Bridge]    | [lott: Stone Bridge]  | line 4: there is no section 'lott'. Did you mean 'lot'?
            [lot: Stone Bridge]    | [lot]                 | line 4: expected a heading of the form [lot: name]
            arrived = 2024-12-02   | arrived = 2.12.2024   | line 5: 'arrived' expects a day such as 2024-03-18, but was given '2.12.2024'.
            arrived = 2024-12-02   | moisture [%] = 11     | line 4: the section [lot] needs a line 'arrived = ...'
            arrived = 2024-12-02   | arrived = 2025-12-02  | no lot is in store on the first day, 2025-01-07
            name = Corner roastery (invented) | name       | line 2: expected 'key = value', but found 'name'.
            [cupper: Ada]          | [recipe]              | a scenario needs a section [cupper: name].
            [cupper: Ada]          | [attribute: sweetness] | line 8: a second section [attribute: sweetness]; expected it once.
            """)
    void saysFileAndLineAndWhatWasExpected(String line, String instead, String words) {
        String text = SMALL.replace(line, instead);
        IllegalArgumentException error =
                assertThrows(IllegalArgumentException.class, () -> Scenario.of(text, "corner.scenario"));
        assertTrue(error.getMessage().startsWith("corner.scenario"), error.getMessage());
        assertTrue(error.getMessage().contains(words), error.getMessage());
    }

    @Test
    void saysThatAUnitIsAnother() {
        String text = SMALL + "[recipe]\ndrop [°F] = 400\n";
        String message = assertThrows(IllegalArgumentException.class, () -> Scenario.of(text, "x.scenario"))
                .getMessage();
        assertEquals("x.scenario, line 10: 'drop' is expected in °C, but was given in '°F'.", message);
    }

    @Test
    void saysWhichNameIsUnknown() {
        String points = SMALL.replace("arrived", "flavour = swetness 0.3\narrived");
        assertEquals(
                "x.scenario, line 5: 'flavour' names the attribute 'swetness', which has no section [attribute: swetness]."
                        + " Did you mean 'sweetness'?",
                assertThrows(IllegalArgumentException.class, () -> Scenario.of(points, "x.scenario"))
                        .getMessage());
        String slip = SMALL
                + "[mislabelled lot]\nlot = Stone Bridge\nwritten as = Stone Brige\nfrom = 2025-01-01\nto = 2025-02-01\n";
        assertTrue(
                assertThrows(IllegalArgumentException.class, () -> Scenario.of(slip, "x.scenario"))
                        .getMessage()
                        .contains(
                                "line 11: 'written as' names the lot 'Stone Brige', which has no section. Did you mean 'Stone Bridge'?"));
        assertTrue(assertThrows(IllegalArgumentException.class, () -> Scenario.named("harbor"))
                .getMessage()
                .contains("Did you mean 'harbour'?"));
    }

    @Test
    void tellsThreeProblemsAtOnceAndCountsTheRest() {
        String text = SMALL.replace("level = 6", "a = 1\nb = 2\nc = 3\nd = 4\ne = 5");
        String message = assertThrows(IllegalArgumentException.class, () -> Scenario.of(text, "x.scenario"))
                .getMessage();
        assertEquals(4, message.lines().count());
        assertTrue(message.endsWith("And 2 more."), message);
    }

    @Test
    void readsAFileWithByteOrderMarkWindowsLineEndsAndComments(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("corner.scenario");
        Files.writeString(
                file,
                "\uFEFF" + SMALL.replace("level = 6", "LEVEL   =  6   # points").replace("\n", "\r\n"),
                StandardCharsets.UTF_8);
        Scenario scenario = Scenario.read(file);
        assertEquals("corner", scenario.name());
        assertEquals(6, scenario.story().surfaces().get(0).level());
    }

    @Test
    void aFolderWrittenInBlocksIsTheSameAsOneFromMemory(@TempDir Path folder) throws IOException {
        VirtualRoastery roastery =
                VirtualRoastery.of(Scenario.named("untidy-year")).withSeed(3).withBatches(30);
        VirtualLogbook written = roastery.write(folder.resolve("in blocks"), 8);
        VirtualLogbook whole = roastery.run();
        whole.writeTo(folder.resolve("from memory"));
        assertEquals(files(folder.resolve("from memory")), files(folder.resolve("in blocks")));
        assertEquals(whole.truth().sealedText(), written.truth().sealedText());
    }

    @Test
    void theNumberOfProcessorsMovesNothing() throws Exception {
        VirtualRoastery roastery =
                VirtualRoastery.of(Scenario.named("curve-chaser")).withBatches(24);
        Map<String, String> one = new java.util.concurrent.ForkJoinPool(1)
                .submit(() -> roastery.run().files())
                .get();
        Map<String, String> four = new java.util.concurrent.ForkJoinPool(4)
                .submit(() -> roastery.run().files())
                .get();
        assertEquals(one, four);
    }

    @Test
    void aSurfaceDrawnFromTheSeedIsAnotherWithAnotherSeed() {
        VirtualRoastery roastery =
                VirtualRoastery.of(Scenario.named("one-cause")).withBatches(4);
        FlavourSurface first = roastery.withSeed(1).run().surfaces().get(1);
        assertEquals(first, roastery.withSeed(1).run().surfaces().get(1));
        assertNotEquals(first, roastery.withSeed(2).run().surfaces().get(1));
        FlavourSurface flat = roastery.withSeed(1).run().surfaces().get(0);
        assertEquals(flat.points(198, 200, 60), flat.points(212, 280, 180));
    }

    /** Drawn surfaces are smooth, have the shape that was asked for, and stay far from the scale's ends. */
    @Test
    void shapesAreWhatTheyAreCalled() {
        for (int seed = 0; seed < 200; seed++) {
            FlavourSurface peak = FlavourSurface.drawn("a", "peak", Chance.of(seed, "peak"));
            double best = 0;
            double at = 0;
            for (double t = 196; t <= 216; t += 0.25) {
                double points = peak.points(t, 240, 120);
                assertTrue(points > 0.5 && points < 9, "peak " + points);
                if (points > best) {
                    best = points;
                    at = t;
                }
            }
            assertTrue(at > 201 && at < 211, "peak at " + at);
            FlavourSurface rising = FlavourSurface.drawn("a", "rising", Chance.of(seed, "rising"));
            assertTrue(rising.points(210, 240, 120) > rising.points(200, 240, 120) + 0.5);
            FlavourSurface falling = FlavourSurface.drawn("a", "falling", Chance.of(seed, "falling"));
            assertTrue(falling.points(210, 240, 120) < falling.points(200, 240, 120) - 0.5);
        }
    }

    @Test
    void aMislabelledLotIsWrittenWrongAndKnownToTheTruth() {
        VirtualLogbook logbook = VirtualRoastery.of(Scenario.named("untidy-year"))
                .withBatches(120)
                .run();
        int wrong = 0;
        for (VirtualBatch batch : logbook.batches()) {
            String written = Written.of(logbook, batch).lot().orElse("");
            String truth = batch.plan().lot().name();
            if (!written.isEmpty() && !written.equals(truth)) {
                wrong++;
                assertEquals("Weir Side", truth);
                assertEquals("Kiln Row", written);
            }
        }
        assertTrue(wrong >= 3, wrong + " batches");
        assertTrue(logbook.truth().text().contains("mislabelled lots"));
    }

    @Test
    void traitsOfACupperThatAreGivenHoldAndTheOthersAreDrawn() {
        VirtualLogbook logbook =
                VirtualRoastery.of(Scenario.named("untidy-year")).withBatches(4).run();
        Map<String, Cupper> cuppers = new HashMap<>();
        logbook.cuppers().forEach(cupper -> cuppers.put(cupper.name(), cupper));
        assertEquals(0.8, cuppers.get("Ada").bias());
        assertEquals(0.55, cuppers.get("Ada").halo());
        assertEquals(0.08, cuppers.get("Bela").fatigue());
        assertEquals(0.25, cuppers.get("Cleo").contrast());
        assertTrue(cuppers.get("Cleo").noise() >= 0.45 && cuppers.get("Cleo").noise() <= 0.75);
    }

    /** How much the reading ten minutes after charge moves for a tenth of gas, and for three tenths of air, from 5:00 on. */
    private static double[] sensitivity(DrumMachine machine) {
        double[] readings = new double[3];
        for (int i = 0; i < 3; i++) {
            double gas = i == 1 ? 0.9 : 0.8;
            double air = i == 2 ? 0.7 : 0.4;
            SimulatedRoast roast = RoastSimulator.of(machine, Probes.fitted())
                    .roast(
                            GreenBeans.ordinary(),
                            Charge.of(2.1, 180),
                            sight -> sight.seconds() >= 560
                                    ? Roaster.Move.drop(gas, air)
                                    : sight.seconds() < 300
                                            ? Roaster.Move.settings(0.9, 0.4)
                                            : Roaster.Move.settings(gas, air));
            readings[i] = roast.at(Trace.BEAN_READING, 560);
        }
        return new double[] {readings[1] - readings[0], readings[2] - readings[0]};
    }

    /** The strong flame answers to gas and hardly to air; where the burner is weak the air moves far more for each °C that gas moves. */
    @Test
    void machinesAnswerAsTheirCharactersSay() {
        double[] strong = sensitivity(DrumMachine.strongFlame());
        double[] ordinary = sensitivity(DrumMachine.fitted());
        double[] air = sensitivity(DrumMachine.weakBurner());
        String found = java.util.Arrays.toString(strong)
                + java.util.Arrays.toString(ordinary)
                + java.util.Arrays.toString(air);
        assertTrue(strong[0] > ordinary[0] && ordinary[0] > air[0], found);
        assertTrue(Math.abs(strong[1] / strong[0]) < 0.25, found);
        assertTrue(Math.abs(air[1] / air[0]) > 2 * Math.abs(strong[1] / strong[0]), found);
        assertTrue(Math.abs(air[1]) > Math.abs(ordinary[1]), found);
    }

    /** Each habit leaves its own trace: gas moved to and fro after the cut, and how much less gas there is at the end. */
    @Test
    void habitsLeaveTheirTrace() {
        Map<String, Double> moves = new TreeMap<>();
        Map<String, Double> early = new TreeMap<>();
        for (String habit : Habit.names()) {
            String text = SMALL + "[roaster: R]\nhabit = " + habit + "\n";
            for (VirtualBatch batch : VirtualRoastery.of(Scenario.of(text, "x.scenario"))
                    .withBatches(30)
                    .run()
                    .batches()) {
                SimulatedRoast roast = batch.roast();
                for (int second = (int) roast.yellowing() + 50; second < roast.size(); second++) {
                    double move = roast.sample(Trace.GAS, second) - roast.sample(Trace.GAS, second - 1);
                    moves.merge(habit, Math.abs(move) / 30, Double::sum);
                }
                double late = roast.at(Trace.GAS, roast.drop());
                early.merge(habit, (roast.at(Trace.GAS, 60) - late) / 30, Double::sum);
            }
        }
        assertTrue(moves.get("chases the curve") > 2 * moves.get("steady"), moves.toString());
        assertTrue(early.get("pushes early") > early.get("steady") + 0.05, early.toString());
        assertTrue(early.get("goes gently") < early.get("steady"), early.toString());
    }

    @Test
    void cropsFollowOneAnotherUnderANumber() {
        String text = SMALL.replace("arrived", "arrives again after = 60\narrived");
        VirtualLogbook logbook = VirtualRoastery.of(Scenario.of(text, "x.scenario"))
                .withBatches(80)
                .run();
        Map<String, Integer> lots = new TreeMap<>();
        logbook.batches().forEach(batch -> lots.merge(batch.plan().lot().name(), 1, Integer::sum));
        assertTrue(lots.keySet().containsAll(java.util.Set.of("Stone Bridge", "Stone Bridge 2")), lots.toString());
        for (VirtualBatch batch : logbook.batches()) {
            assertTrue(batch.plan().lot().age(batch.plan().roastedAt().toLocalDate()) < 60);
        }
        assertTrue(logbook.lots().size() == lots.size(), "lots that have not come yet are not in the book");
    }

    private static Map<String, String> files(Path folder) throws IOException {
        Map<String, String> files = new TreeMap<>();
        try (Stream<Path> walk = Files.walk(folder)) {
            for (Path path : walk.filter(Files::isRegularFile).toList()) {
                files.put(folder.relativize(path).toString(), Files.readString(path, StandardCharsets.UTF_8));
            }
        }
        return files;
    }
}
