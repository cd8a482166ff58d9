package parchment.virtual;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.virtual.written.VirtualBatch;
import parchment.virtual.written.VirtualCupping;

class RoastPlanTest {
    private static final VirtualRoastery ROASTERY =
            VirtualRoastery.of(Scenario.named("one-cause")).withSeed(5).withBatches(40);

    private static final String PLAN = """
            batch,lot,green mass [kg],charge temperature [°C],drop temperature [°C],habit
            low,Slate Hill,2.1,182,199,steady
            high,Slate Hill,2.1,182,208,steady
            ,slate hill,,,204,chases the curve
            """;

    @Test
    void roastsWhatWasPlannedAfterTheLastBatchAndCupsAllOfIt() {
        VirtualLogbook roasted = ROASTERY.roast(RoastPlan.of(PLAN, "plan.csv"));
        List<VirtualBatch> past = ROASTERY.run().batches();
        LocalDate last = past.get(past.size() - 1).plan().roastedAt().toLocalDate();
        assertEquals(
                List.of("low", "high", "P3"),
                roasted.batches().stream().map(VirtualBatch::name).toList());
        for (VirtualBatch batch : roasted.batches()) {
            assertTrue(batch.plan().roastedAt().toLocalDate().isAfter(last));
            assertEquals(batch.plan().meantDrop(), batch.dropReading(), 3.5);
            assertEquals("Slate Hill", batch.plan().lot().name());
        }
        assertEquals(182, roasted.batches().get(0).roast().charge().reading());
        assertTrue(roasted.batches().get(1).endTemperature()
                > roasted.batches().get(0).endTemperature() + 5);
        Set<String> cupped = new HashSet<>();
        for (VirtualCupping cupping : roasted.cuppings()) {
            assertEquals(VirtualCupping.Blind.YES, cupping.blind());
            cupping.scores().forEach(score -> cupped.add(score.batch() + score.cupper()));
        }
        assertEquals(3 * 5, cupped.size(), "each batch by each of five cuppers");
        assertEquals(3, roasted.opened().batches().size());
    }

    /** The cuppers and the surfaces are those of the year before, so that what was learnt there holds here. */
    @Test
    void theSamePeopleAndTheSameTruthAsInTheLogbook() {
        VirtualLogbook roasted = ROASTERY.roast(RoastPlan.of(PLAN, "plan.csv"));
        VirtualLogbook year = ROASTERY.run();
        assertEquals(year.surfaces(), roasted.surfaces());
        assertEquals(year.cuppers(), roasted.cuppers());
        assertEquals(
                roasted.files(), ROASTERY.roast(RoastPlan.of(PLAN, "again.csv")).files());
    }

    @Test
    void readsFahrenheitAndPounds() {
        RoastPlan plan = RoastPlan.of(
                "Lot,Green Mass [lb],Drop temperature [F],Charge temperature [°F]\nSlate Hill,4.5,401,356\n",
                "plan.csv");
        assertEquals(205, plan.lines().get(0).dropReading(), 1e-9);
        assertEquals(180, plan.lines().get(0).chargeReading().orElseThrow(), 1e-9);
        assertEquals(2.041, plan.lines().get(0).greenMass().orElseThrow(), 0.001);
    }

    @Test
    void settingsOfThePlanAreFollowed() {
        RoastPlan plan = RoastPlan.of(
                "lot,drop temperature [°C],gas at start [%],gas after yellowing [%],airflow at end [%]\n"
                        + "Slate Hill,205,100,95,30\nSlate Hill,205,85,60,90\n",
                "plan.csv");
        List<VirtualBatch> batches = ROASTERY.roast(plan).batches();
        assertTrue(batches.get(1).roast().drop() > batches.get(0).roast().drop() + 60, "less gas, more air: slower");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            lot,drop temperatur [°C]           | Slate Hill,205     | plan.csv, line 1: a plan has no column 'drop temperatur'. Did you mean 'drop temperature'?
            lot,drop temperature               | Slate Hill,205     | plan.csv, line 1: the column 'drop temperature' needs its unit in brackets: [°C] or [°F].
            lot,habit                          | Slate Hill,steady  | plan.csv, line 1: a plan needs the column 'drop temperature'.
            lot,drop temperature [°C]          | Slate Hill,hot     | plan.csv, line 2: the drop temperature is expected to be a number, but is 'hot'.
            lot,drop temperature [°C]          | Slate Hill,260     | plan.csv, line 2: the drop temperature is expected from 185.0 to 230.0 °C on this invented machine, but is '260'.
            lot,drop temperature [°F]          | Slate Hill,205     | plan.csv, line 2: the drop temperature is expected from 365.0 to 446.0 °F on this invented machine, but is '205'.
            lot,drop temperature [°C],habit    | Slate Hill,205,stedy | plan.csv, line 2: There is no habit 'stedy'. Did you mean 'steady'?
            batch,lot,drop temperature [°C]    | ../x,Slate Hill,205 | plan.csv, line 2: a batch's name has letters, digits and dashes only; found '../x'.
            lot,drop temperature [°C]          | Slate Hil,205      | plan.csv, line 2: there is no lot 'Slate Hil' in store
            """)
    void saysWhatIsWrongWithAPlan(String headers, String line, String words) {
        String message = assertThrows(
                        IllegalArgumentException.class,
                        () -> ROASTERY.roast(RoastPlan.of(headers.strip() + "\n" + line + "\n", "plan.csv")))
                .getMessage();
        assertTrue(message.startsWith(words), message);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"A,203|plan.csv: the plan breaks off or has a quotation mark too few: write it again.",
                "A,\"203\"5|plan.csv: the plan breaks off or has a quotation mark too few: write it again.",
                "A,203,5|plan.csv, line 2: '5' stands in a column without a heading. A number with a decimal comma stands in quotation marks.",
            })
    void aPlanThatCannotBeTakenApartIsToldInWords(String line, String words) {
        assertEquals(words, refusal("lot,drop temperature [°C]\n" + line + "\n"));
    }

    private static String refusal(String plan) {
        return assertThrows(IllegalArgumentException.class, () -> RoastPlan.of(plan, "plan.csv"))
                .getMessage();
    }

    @Test
    @Timeout(5)
    void aCellHasAHundredLettersAtMost() {
        String heading = "lot,drop temperature [°C]\n";
        String longest = "2" + "0".repeat(99);
        assertTrue(refusal(heading + "A," + longest + "\n")
                .startsWith("plan.csv, line 2: the drop temperature is expected from"));
        assertEquals(
                "plan.csv, line 2: a cell has 101 letters; at most 100 are expected.",
                refusal(heading + "A," + longest + "0\n"));
        assertEquals(
                "plan.csv, line 2: a cell has 900,000 letters; at most 100 are expected.",
                refusal(heading + "A," + "2".repeat(900_000) + "\n"));
        assertEquals(
                "plan.csv, line 1: a cell has 900,000 letters; at most 100 are expected.",
                refusal("lot," + "d".repeat(900_000) + "\nA,203\n"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "lot,drop temperature [°C],\nA,203,\n",
                "lot;drop temperature [°C];;\nA;203;;\n;;;\n",
                "sep=;\nlot;drop temperature [°C]\nA;203\n",
                "\uFEFF\r\nlot\tdrop temperature [°C]\r\nA\t203\r\n"
            })
    void aPlanIsReadAsASpreadsheetSavedIt(String text) {
        List<RoastPlan.Line> lines = RoastPlan.of(text, "plan.csv").lines();
        assertEquals(1, lines.size());
        assertEquals("A", lines.get(0).lot());
        assertEquals(203, lines.get(0).dropReading());
    }

    @Test
    void saysThatABatchIsPlannedTwice() {
        String twice = "batch,lot,drop temperature [°C]\na,Slate Hill,205\n\na,Slate Hill,206\n";
        assertEquals(
                "plan.csv, line 4: the batch 'a' is planned twice; give each its own name.",
                assertThrows(IllegalArgumentException.class, () -> RoastPlan.of(twice, "plan.csv"))
                        .getMessage());
    }

    /** Wherever a virtual sheet is looked at, it says that nothing may be roasted from it. */
    @Test
    void everySheetIsOverprinted() {
        RoastPlan plan = RoastPlan.of(PLAN, "plan.csv");
        VirtualLogbook roasted = ROASTERY.roast(plan);
        for (String html : List.of(plan.html().orElseThrow(), roasted.html().orElseThrow())) {
            assertTrue(html.contains("<strong>Invented machine: do not roast.</strong>"), html);
            assertTrue(html.contains(">Invented machine: do not roast</text>"), html);
            // It runs through the digits of tables, which have to stay readable.
            assertTrue(html.contains("fill-opacity=\"0.12\">Invented machine"), html);
        }
        assertTrue(plan.toString().endsWith(VirtualLogbook.WARNING));
        assertTrue(roasted.toString().endsWith(VirtualLogbook.WARNING));
        for (String file : List.of("README.md", "logbook.properties", "machines.csv", "datapackage.json")) {
            assertTrue(roasted.files().get(file).contains(VirtualLogbook.WARNING), file);
        }
        assertEquals(List.of("Slate Hill", "Fern Gully"), ROASTERY.lotsInStore());
    }
}
