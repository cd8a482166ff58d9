package parchment.trial;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.curve.Curve;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.Quantity;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.written.BatchConditions;
import parchment.logbook.written.BatchPlan;
import parchment.logbook.written.Machine;
import parchment.quantity.Temperature;
import parchment.quantity.Unit;
import parchment.trial.sealed.ClosedDraw;
import parchment.trial.sealed.DrawnLine;
import parchment.trial.sealed.SealCheck;

/** What must hold before anything is drawn: a row on each side of each border, on built batches. */
class CoinFlipTest {
    @TempDir
    Path temporary;

    /** Batches with these charge temperatures; a planned one besides where a miss is given. */
    private static List<Batch> charged(double miss, double... charges) {
        List<Batch> batches = new ArrayList<>();
        for (double charge : charges) {
            int sign = batches.size() % 2 == 0 ? 1 : -1;
            Batch.Builder batch = Batch.named("B" + (batches.size() + 1))
                    .conditions(new BatchConditions(
                            Optional.empty(),
                            Optional.empty(),
                            Optional.of(Temperature.celsius(charge)),
                            Optional.empty(),
                            Optional.empty(),
                            OptionalDouble.empty(),
                            OptionalDouble.empty(),
                            Optional.empty()));
            if (!Double.isNaN(miss)) {
                batch.plan(new BatchPlan(
                        Optional.empty(),
                        BatchPlan.PlannedBy.CHOICE,
                        Map.of("charge temperature", new BatchPlan.Planned(charge + sign * miss, "°C")),
                        Optional.empty(),
                        Optional.empty()));
            }
            batches.add(batch.build());
        }
        return batches;
    }

    private static final double[] TRIED = {187, 187, 187, 190, 190, 190, 190, 193, 193, 193};

    private static Logbook logbook(List<Batch> batches) {
        return Logbook.of(LogbookContents.ofBatches("built", batches));
    }

    /** A flip against which nothing speaks. */
    private static CoinFlip sound(Logbook logbook) {
        return CoinFlip.ofChargeTemperature("sweetness", Temperature.celsius(190))
                .withStep(3)
                .withSets(4)
                .triedIn(logbook)
                .sellableBetween(187, 193)
                .makerAllowsBetween(150, 193)
                .makerAllowsAirUpTo(Temperature.celsius(270))
                .hittingWithin(1)
                .withCuppers("Ada", "Ben");
    }

    private static Logbook tried() {
        return logbook(charged(Double.NaN, TRIED));
    }

    @Test
    void nothingSpeaksAgainstEndsThatWereTriedSoldAndAllowed() {
        assertEquals(List.of(), sound(tried()).reasonsAgainst());
        assertEquals(
                "Coin flip: what charge temperature does to sweetness, around 190.0 by 3.0 °C, 4 sets of 3. It can be sealed.",
                sound(tried()).text());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "187.1;193;187.0 °C",
                "187;192.9;193.0 °C",
                "187.1;192.9;187.0 °C or 193.0 °C",
            })
    void bothEndsMustHaveBeenTriedThreeTimes(double low, double high, String untried) {
        double[] charges = {187, 187, low, 190, 193, 193, high};
        double least = Math.min(187, low);
        assertEquals(
                List.of(String.format(
                        Locale.ROOT,
                        "The logbook 'built' has not tried %s: three batches must have come out there or beyond, and its batches"
                                + " came out between %.1f °C and %.1f °C. Take another middle or a smaller step.",
                        untried,
                        least,
                        Math.max(193, high))),
                sound(logbook(charged(Double.NaN, charges))).reasonsAgainst());
    }

    @Test
    void aLogbookWithoutThatControlSaysSo() {
        assertEquals(
                List.of(
                        "The logbook 'built' has not tried 187.0 °C or 193.0 °C: three batches must have come out there or"
                                + " beyond, and no charge temperature can be read in it. Take another middle or a smaller step."),
                sound(logbook(List.of(Batch.named("B1").build()))).reasonsAgainst());
    }

    @ParameterizedTest
    @CsvSource({"187.1, 193, 187.0", "187, 192.9, 193.0", "180, 200, ''"})
    void bothEndsMustBeSellable(double low, double high, String reached) {
        assertEquals(
                reached.isEmpty()
                        ? List.of()
                        : List.of("You said that " + low + " °C to " + DrawnLine.target(high)
                                + " °C can be sold, but the draw would reach " + reached
                                + " °C. Take another middle or a smaller step."),
                sound(tried()).sellableBetween(low, high).reasonsAgainst());
    }

    @ParameterizedTest
    @CsvSource({"187.1, 193, 187.0", "187, 192.9, 193.0", "187, 193, ''"})
    void bothEndsMustBeAllowedByTheMaker(double low, double high, String reached) {
        assertEquals(
                reached.isEmpty()
                        ? List.of()
                        : List.of("You said that " + DrawnLine.target(low) + " °C to " + DrawnLine.target(high)
                                + " °C is allowed by the maker, but the draw would reach " + reached
                                + " °C. Take another middle or a smaller step."),
                sound(tried()).makerAllowsBetween(low, high).reasonsAgainst());
    }

    @Test
    void whatOnlyTheRoasterKnowsIsAskedFor() {
        CoinFlip bare = CoinFlip.ofChargeTemperature("sweetness", Temperature.celsius(190))
                .withStep(3)
                .withSets(4)
                .triedIn(tried());
        assertEquals(
                List.of(
                        "Nobody is named who will cup, and the logbook names nobody. Say it with withCuppers(...).",
                        "You have not said between which settings the coffee can be sold. Say it with sellableBetween(...): every"
                                + " batch of a trial is coffee that somebody drinks.",
                        "You have not said what the machine's maker allows for the charge temperature. Look into the manual, and say"
                                + " it with makerAllowsBetween(...).",
                        "Neither the logbook's machines.csv nor you say how hot the air may become by the maker's limits. Say it with"
                                + " makerAllowsAirUpTo(...).",
                        "The logbook has fewer than ten batches with a written aim of the charge temperature, so it does not tell how"
                                + " closely you hit it. Say it with hittingWithin(...), the usual miss to either side."),
                bare.reasonsAgainst());
        assertEquals(
                List.of(
                        "It is not said how many sets are to be drawn. Say it with withSets(...).",
                        "It is not said how far the ends are from the middle. Say it with withStep(...).",
                        "It is not said in which logbook the ends were tried. Say it with triedIn(logbook)."),
                CoinFlip.ofFirstGas("sweetness", 70, "%").reasonsAgainst());
        Path folder = temporary.resolve("flip-1");
        assertEquals(
                "Nothing was drawn. " + String.join(" ", bare.reasonsAgainst().subList(0, 3)) + " And 2 reasons more.",
                assertThrows(IllegalArgumentException.class, () -> bare.sealTo(folder))
                        .getMessage());
        assertFalse(Files.exists(folder));
    }

    @ParameterizedTest
    @CsvSource({"1.00, true", "1.01, false"})
    void aStepIsAtLeastThreeUsualMisses(double miss, boolean enough) {
        assertEquals(
                enough
                        ? List.of()
                        : List.of(
                                "You usually miss your aim by 1.01 °C, and a step must be at least three times that, or batches of"
                                        + " different targets come out alike: take a step of 3.10 °C or more, not 3.00 °C."),
                sound(tried()).hittingWithin(miss).reasonsAgainst());
    }

    /** Half of the misses are 0.6 or less to either side: 1.4826 times that is 0.89 °C, less than a third of the step. */
    @Test
    void theLogbookTellsTheMissFromTenAimsOn() {
        CoinFlip flip = CoinFlip.ofChargeTemperature("sweetness", Temperature.celsius(190))
                .withStep(3)
                .withSets(4)
                .sellableBetween(187, 193)
                .makerAllowsBetween(150, 193)
                .makerAllowsAirUpTo(Temperature.celsius(270))
                .withCuppers("Ada");
        assertEquals(List.of(), flip.triedIn(logbook(charged(0.6, TRIED))).reasonsAgainst());
        assertEquals(
                List.of(
                        "You usually miss your aim by 1.04 °C, and a step must be at least three times that, or batches of"
                                + " different targets come out alike: take a step of 3.20 °C or more, not 3.00 °C."),
                flip.triedIn(logbook(charged(0.7, TRIED))).reasonsAgainst());
        double[] nine = {187, 187, 187, 190, 190, 190, 193, 193, 193};
        assertTrue(flip.triedIn(logbook(charged(0.6, nine)))
                .reasonsAgainst()
                .get(0)
                .startsWith("The logbook has fewer than ten batches with a written aim"));
    }

    /** Aims that chance drew count alone where there are ten; the chosen ones of the same batches miss by more. */
    @Test
    void drawnAimsCountAloneWhereThereAreTen() {
        List<Batch> batches = new ArrayList<>(charged(3, TRIED));
        for (Batch batch : charged(0.3, TRIED)) {
            batches.add(Batch.named("C" + batches.size())
                    .conditions(batch.conditions())
                    .plan(new BatchPlan(
                            Optional.empty(),
                            BatchPlan.PlannedBy.CHANCE,
                            batch.plan().others(),
                            Optional.empty(),
                            Optional.empty()))
                    .build());
        }
        CoinFlip flip = CoinFlip.ofChargeTemperature("sweetness", Temperature.celsius(190))
                .withStep(3)
                .withSets(4)
                .sellableBetween(187, 193)
                .makerAllowsBetween(150, 193)
                .makerAllowsAirUpTo(Temperature.celsius(270))
                .withCuppers("Ada");
        assertEquals(List.of(), flip.triedIn(logbook(batches)).reasonsAgainst());
        assertEquals(
                1,
                flip.triedIn(logbook(batches.subList(0, 19))).reasonsAgainst().size());
    }

    @Test
    void theAirLimitOfTheLogbookCountsWhereTheRoasterStatesNone() {
        LogbookContents contents = LogbookContents.ofBatches("built", charged(Double.NaN, TRIED)).toBuilder()
                .machines(List.of(new Machine(
                        "drum",
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.of(Temperature.celsius(270)),
                        Optional.empty(),
                        Optional.empty(),
                        OptionalDouble.empty(),
                        Map.of())))
                .build();
        CoinFlip flip = CoinFlip.ofChargeTemperature("sweetness", Temperature.celsius(190))
                .withStep(3)
                .withSets(4)
                .sellableBetween(187, 193)
                .makerAllowsBetween(150, 193)
                .hittingWithin(1)
                .withCuppers("Ada");
        assertEquals(List.of(), flip.triedIn(Logbook.of(contents)).reasonsAgainst());
        assertEquals(1, flip.triedIn(tried()).reasonsAgainst().size());
    }

    private static List<Batch> gassed(double lastAir) {
        List<Batch> batches = new ArrayList<>();
        double[] gas = {65, 65, 65, 70, 70, 75, 75, 75};
        double[] seconds = {-10, 0, 60, 120, 180, 240, 300, 360, 420, 480, 540, 600};
        for (double each : gas) {
            double[] gases = new double[seconds.length];
            double[] airs = new double[seconds.length];
            double[] beans = new double[seconds.length];
            for (int i = 0; i < seconds.length; i++) {
                gases[i] = i == 0 ? 20 : i < 6 ? each : 40;
                airs[i] = each == 75 ? 200 + (lastAir - 200) * i / (seconds.length - 1) : 200 + i;
                beans[i] = i < 2 ? 200 : 100 + 9 * i;
            }
            batches.add(Batch.named("G" + batches.size())
                    .curve(Quantity.GAS, Curve.of("gas", Unit.labelled("%"), seconds, gases))
                    .curve(Quantity.AIR_TEMPERATURE, Curve.of("air", Unit.TEMPERATURE, seconds, airs))
                    .curve(Quantity.BEAN_TEMPERATURE, Curve.of("bean", Unit.TEMPERATURE, seconds, beans))
                    .build());
        }
        return batches;
    }

    @ParameterizedTest
    @CsvSource({"260, true", "300, false"})
    void theGasAtChargeIsReadFromTheCurvesAndTheAirMustStayBelowItsLimit(double air, boolean allowed) {
        List<String> reasons = CoinFlip.ofFirstGas("sweetness", 70, "%")
                .withStep(5)
                .withSets(4)
                .triedIn(logbook(gassed(air)))
                .sellableBetween(65, 75)
                .makerAllowsBetween(20, 100)
                .makerAllowsAirUpTo(Temperature.celsius(270))
                .hittingWithin(0)
                .withCuppers("Ada")
                .reasonsAgainst();
        assertEquals(allowed ? 0 : 1, reasons.size(), reasons.toString());
        if (!allowed) {
            assertTrue(
                    reasons.get(0)
                            .matches(
                                    "At 70\\.0 % and above the air has reached \\d{3}\\.\\d °C in this logbook, but the maker allows"
                                            + " 270\\.0 °C\\. Do not draw targets there: take a lower middle\\."),
                    reasons.get(0));
        }
        assertEquals(
                1,
                CoinFlip.ofFirstGas("sweetness", 70, "mbar")
                        .withStep(5)
                        .withSets(4)
                        .triedIn(logbook(gassed(260)))
                        .sellableBetween(65, 75)
                        .makerAllowsBetween(20, 100)
                        .makerAllowsAirUpTo(Temperature.celsius(270))
                        .hittingWithin(0)
                        .withCuppers("Ada")
                        .reasonsAgainst()
                        .size());
    }

    @Test
    void aSeedIsForAVirtualRoasteryAlone() {
        assertEquals(
                List.of(
                        "A seed makes a draw that can be foreseen. It is only for the logbook of a virtual roastery; leave it out."),
                sound(tried()).withSeed(7).reasonsAgainst());
        Logbook invented = Logbook.of(LogbookContents.ofBatches("built", charged(Double.NaN, TRIED)).toBuilder()
                .provenance(Logbook.Provenance.INVENTED)
                .build());
        assertEquals(List.of(), sound(invented).withSeed(7).reasonsAgainst());
    }

    @Test
    void setsOfThreeCannotHaveEndsAlone() {
        assertEquals(
                List.of("A set of three cannot have both ends alike often. Take sets of 2 or 4, or keep the middle."),
                sound(tried()).withEndsOnly().reasonsAgainst());
        assertEquals(List.of(), sound(tried()).withEndsOnly().withSetsOf(4).reasonsAgainst());
    }

    @Test
    void whatCannotBeMeantIsRefusedAtOnce() {
        CoinFlip flip = sound(tried());
        assertEquals("A trial has 1 to 999 sets, but 0 were asked for.", refusal(() -> flip.withSets(0)));
        assertEquals("A trial has 1 to 999 sets, but 1000 were asked for.", refusal(() -> flip.withSets(1000)));
        assertEquals(
                "A set has 2, 3 or 4 batches, but 5 were asked for: they are roasted on one day and cupped at one table.",
                refusal(() -> flip.withSetsOf(5)));
        assertEquals(
                "A set has 2, 3 or 4 batches, but 1 were asked for: they are roasted on one day and cupped at one table.",
                refusal(() -> flip.withSetsOf(1)));
        assertEquals("A step is a number of 0.1 or more, but 0.04 was given.", refusal(() -> flip.withStep(0.04)));
        assertEquals(
                "The lower end comes first, and is below the upper one, but they are 193.0 and 193.0.",
                refusal(() -> flip.sellableBetween(193, 193)));
        assertEquals(
                "A usual miss is a number of 0 or more, but -1.0 was given.", refusal(() -> flip.hittingWithin(-1)));
        assertEquals("A cupper scores 1 to 20 cups of a batch, but 0 were given.", refusal(() -> flip.withCups(0)));
        assertEquals(
                "A cupper is named without commas, colons and bars, but one is 'Ada, Ben'.",
                refusal(() -> flip.withCuppers("Ada, Ben")));
        assertEquals(
                "A trial asks about one attribute of the score sheet, such as \"sweetness\", but was given 'a|b'.",
                refusal(() -> CoinFlip.of("a|b", Temperature.celsius(203))));
        assertEquals(
                "A trial is named after its folder, with letters, digits, blanks, dots and dashes, but this one is 'a;b'.",
                refusal(() -> flip.sealTo(temporary.resolve("a;b"))));
    }

    private static String refusal(Runnable work) {
        return assertThrows(IllegalArgumentException.class, work::run).getMessage();
    }

    @Test
    void neverWritesIntoALogbookOrOverSomethingElse() throws IOException {
        Path logbook = Files.createDirectories(temporary.resolve("My Roasts"));
        Files.writeString(logbook.resolve("batches.csv"), "batch,roasted at\n");
        assertEquals(
                "'" + logbook.resolve("flip-1") + "' lies in the logbook '" + logbook.toRealPath()
                        + "', and nothing is written there. Name a folder beside it.",
                refusal(() -> sound(tried()).sealTo(logbook.resolve("flip-1"))));
        Path folder = temporary.resolve("flip-1");
        sound(tried()).sealTo(folder);
        String sealed = Files.readString(folder.resolve("seal.txt"));
        assertThrows(RuntimeException.class, () -> sound(tried()).sealTo(folder));
        assertEquals(sealed, Files.readString(folder.resolve("seal.txt")));
    }

    @Test
    void sealsThePlanAsItWasStated() throws IOException {
        Path folder = temporary.resolve("flip 2");
        TrialFolder trial = sound(tried())
                .withSetsOf(4)
                .withTwoLooks()
                .withSmallestDifference(0.25)
                .withLostBatchWithin(1.5)
                .withCups(3)
                .sealTo(folder, SealedTrial.NOON);
        assertEquals("""
                parchment-plan-1
                trial: flip 2
                question: sweetness, charge temperature
                targets [°C]: 187.0 190.0 193.0
                draw: permuted, within lot and day, sets of 4
                sets: 4
                smallest difference that matters [points over the targets]: 0.25
                primary: slope as assigned, batch means within set, two-sided, 2.94 in 100 at each of 2 looks
                interval: 90 in 100, randomisation
                secondary: achieved value, Anderson-Rubin set, 90 in 100
                lost: counted by target, bounds +-1.50 point
                looks: 2
                cuppers: Ada Ben
                cups: 3
                shown in: C
                drawn by: chance of this computer, kept nowhere
                checked: tried: 3 batches at 187.0 or below, 3 at 193.0 or above
                checked: can be sold: 187.0 to 193.0
                checked: is allowed by the maker: 150.0 to 193.0
                checked: air: at most 270.0 °C allowed, and not logged: watch it
                checked: usual miss of an aim: 1.00, a third of the step or less
                written: 2026-12-01T12:00:00Z
                """, Files.readString(folder.resolve("plan.txt")));
        assertEquals(SealCheck.Outcome.WHOLE, trial.verify(trial.seal()).outcome());
        assertEquals(
                16,
                ClosedDraw.uncover(Files.readString(folder.resolve("draw.closed")))
                        .size());
    }
}
