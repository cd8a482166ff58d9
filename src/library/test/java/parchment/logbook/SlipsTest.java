package parchment.logbook;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.logbook.contents.AssumedScale;
import parchment.logbook.written.BatchConditions;
import parchment.logbook.written.Problem;
import parchment.quantity.Mass;

/** Slips of the pen that a logbook's other rows give away: a score beyond the scale of all others, a mass that no roast goes with. */
class SlipsTest {
    @TempDir
    Path folder;

    private Logbook scored(int slips, String settings) throws IOException {
        StringBuilder batches = new StringBuilder("batch,roasted at\n");
        StringBuilder cups = new StringBuilder("cupping,tasted on,cupper,batch,sweetness\n");
        for (int i = 1; i <= 40; i++) {
            batches.append("B").append(i).append(",2031-01-06T09:00\n");
            cups.append("C1,2031-01-08,Ana,B").append(i).append(i <= slips ? ",72\n" : ",7\n");
        }
        Files.writeString(folder.resolve("batches.csv"), batches);
        Files.writeString(folder.resolve("cuppings.csv"), cups);
        Files.writeString(folder.resolve("logbook.properties"), "time.zone=UTC\n" + settings);
        return Logbook.open(folder);
    }

    private static List<Problem> ofScores(Logbook logbook) {
        return logbook.problems().list().stream()
                .filter(problem -> problem.column().equals("sweetness"))
                .toList();
    }

    @Test
    void aScoreBeyondTheScaleOfAllOthersIsNamedWithItsLineAndKept() throws IOException {
        Logbook logbook = scored(1, "");
        assertEquals(
                List.of(new Problem(
                        "cuppings.csv",
                        2,
                        "sweetness",
                        "72 for batch 'B1'",
                        "at most 10, as in the other 39 scores; write scale.sweetness into logbook.properties",
                        "kept as written, and every answer counts it: correct it if it is a slip")),
                ofScores(logbook));
        assertEquals(72, logbook.cups().get(0).score("sweetness"));
    }

    @Test
    void moreThanFiveInAHundredAreAScaleAndNoSlips() throws IOException {
        assertEquals(2, ofScores(scored(2, "")).size());
        assertEquals(0, ofScores(scored(3, "")).size());
    }

    @Test
    void whereAScaleIsWrittenTheWrittenOneDecides() throws IOException {
        assertEquals(0, ofScores(scored(1, "scale.sweetness=0..100\n")).size());
        Logbook logbook = scored(1, "scale.sweetness=0..10\n");
        assertEquals("value treated as missing", ofScores(logbook).get(0).done());
    }

    @Test
    void theAssumedScaleIsTheSmallestThatHoldsNearlyAll() {
        assertEquals(new AssumedScale(10, 0, 0), AssumedScale.of(new double[0]));
        assertEquals(new AssumedScale(10, 0, 2), AssumedScale.of(new double[] {10, Double.NaN, 3}));
        assertEquals(new AssumedScale(20, 0, 2), AssumedScale.of(new double[] {10.5, 3}));
        assertEquals(new AssumedScale(100, 0, 2), AssumedScale.of(new double[] {20.5, 3}));
        assertEquals(new AssumedScale(1000, 0, 1), AssumedScale.of(new double[] {100.5}));
    }

    /** Returns what the first batch's masses became beside so many others of 2.5 kg. */
    private Logbook weighed(String green, String roasted, int others) throws IOException {
        StringBuilder batches = new StringBuilder("batch,roasted at,green mass [kg],roasted mass [kg]\n");
        batches.append("B0,2031-01-06T08:00,")
                .append(green)
                .append(",")
                .append(roasted)
                .append("\n");
        for (int i = 1; i <= others; i++) {
            batches.append("B").append(i).append(",2031-01-06T09:00,2.5,2.13\n");
        }
        Files.writeString(folder.resolve("batches.csv"), batches);
        Files.writeString(folder.resolve("logbook.properties"), "time.zone=UTC\n");
        return Logbook.open(folder);
    }

    private static String masses(Logbook logbook) {
        BatchConditions conditions = logbook.batch("B0").conditions();
        return kilograms(conditions.greenMass()) + " and " + kilograms(conditions.roastedMass());
    }

    private static String kilograms(Optional<Mass> mass) {
        return mass.map(one -> Double.toString(one.kilograms())).orElse("missing");
    }

    @Test
    void aGreenMassFarFromAllChargesIsTheOneThatIsSetAside() throws IOException {
        Logbook logbook = weighed("25.0", "2.13", 8);
        assertEquals("missing and 2.13", masses(logbook));
        assertEquals(
                "[batches.csv, line 2, column 'green mass [kg]': found '25.0'; expected a mass that goes with the roasted mass, 2.13 kg;"
                        + " usually about 2.5 kg are charged; value treated as missing.]",
                logbook.problems().in("batches.csv").list().toString());
        assertEquals("missing and 2.13", masses(weighed("0.25", "2.13", 8)));
    }

    @Test
    void anotherWayRoundTheRoastedMassIsSetAside() throws IOException {
        assertEquals("2.5 and missing", masses(weighed("2.5", "21.4", 8)));
        assertEquals("2.5 and missing", masses(weighed("2.5", "0.21", 8)));
        assertEquals(
                "12.0 and missing",
                masses(weighed("12", "0.21", 8)),
                "both are off: nobody can tell the green mass is wrong");
    }

    @Test
    void fourTimesTheUsualChargeIsNotFarAndSevenOthersAreTooFew() throws IOException {
        assertEquals("10.0 and missing", masses(weighed("10", "2.13", 8)));
        assertEquals("missing and 2.13", masses(weighed("10.1", "2.13", 8)));
        assertEquals("12.0 and missing", masses(weighed("12", "2.13", 7)));
    }

    @Test
    void massesThatGoTogetherStandHoweverUnusual() throws IOException {
        assertEquals("25.0 and 21.3", masses(weighed("25", "21.3", 8)));
    }

    @ParameterizedTest
    @CsvSource({
        "12.5,  '',    3, 12.5 and missing",
        "12.51, '',    3, missing and missing",
        "25,    '',    3, missing and missing",
        "0.5,   '',    3, 0.5 and missing",
        "0.499, '',    3, missing and missing",
        "12.51, '',    2, 12.51 and missing",
        "12.51, 10.6,  3, 12.51 and 10.6",
        "26,    0.21,  3, missing and missing",
    })
    void aGreenMassFiveTimesOffThatNoRoastedMassSpeaksForIsMissing(
            String green, String roasted, int others, String masses) throws IOException {
        assertEquals(masses, masses(weighed(green, roasted, others)));
    }

    @Test
    void aMassFiveTimesOffIsNamedWithItsLineWhatIsUsualAndWhatToDo() throws IOException {
        assertEquals(
                "[batches.csv, line 2, column 'green mass [kg]': found '0.025'; expected about 2.5 kg, the usual charge where no machine"
                        + " is named; this is less than a fifth of it; value treated as missing: correct it, or, if it is right, write"
                        + " its roasted mass too.]",
                weighed("0.025", "", 8).problems().in("batches.csv").list().toString());
        assertEquals(
                "[batches.csv, line 2, column 'green mass [kg]': found '250'; expected about 2.5 kg, the usual charge where no machine is"
                        + " named; this is more than five times as much; kept as written, for the roasted mass goes with it: correct both"
                        + " if they are slips.]",
                weighed("250", "213", 8).problems().in("batches.csv").list().toString());
    }

    @Test
    void aMassIsHeldAgainstThoseOfItsOwnMachineInTheWrittenUnit() throws IOException {
        StringBuilder batches = new StringBuilder("batch,roasted at,machine,green mass [lb]\n");
        for (int i = 1; i <= 4; i++) {
            batches.append("S").append(i).append(",2031-01-06T09:00,sample drum,0.25\n");
            batches.append("L").append(i).append(",2031-01-06T09:00,large drum,25\n");
        }
        Files.writeString(folder.resolve("logbook.properties"), "time.zone=UTC\n");
        Files.writeString(folder.resolve("batches.csv"), batches);
        assertEquals(0, Logbook.open(folder).problems().in("batches.csv").list().size());
        Files.writeString(folder.resolve("batches.csv"), batches.append("L5,2031-01-06T09:00,large drum,0.25\n"));
        assertEquals(
                "[batches.csv, line 10, column 'green mass [lb]': found '0.25'; expected about 25 lb, the usual charge of 'large drum';"
                        + " this is less than a fifth of it; value treated as missing: correct it, or, if it is right, write its"
                        + " roasted mass too.]",
                Logbook.open(folder).problems().in("batches.csv").list().toString());
    }

    @Test
    void aSizeThatMoreThanAQuarterIsChargedInIsNoSlip() throws IOException {
        for (int small : new int[] {2, 3}) {
            StringBuilder batches = new StringBuilder("batch,roasted at,green mass [kg]\n");
            for (int i = 1; i <= 8; i++) {
                batches.append("B").append(i).append(",2031-01-06T09:00,").append(i <= small ? "0.1\n" : "5\n");
            }
            Files.writeString(folder.resolve("batches.csv"), batches);
            Files.writeString(folder.resolve("logbook.properties"), "time.zone=UTC\n");
            assertEquals(
                    small == 2 ? 2 : 0,
                    Logbook.open(folder).problems().in("batches.csv").list().size());
        }
    }
}
