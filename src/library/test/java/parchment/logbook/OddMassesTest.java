package parchment.logbook;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.logbook.written.Problem;

/** Which green masses are doubted: those above the machine's largest batch first, then those far from all others of the machine. */
class OddMassesTest {
    @TempDir
    Path folder;

    /** A logbook of a drum with these green masses; the largest batch is written where it is not empty. */
    private Logbook charged(String largest, String heading, String masses) throws IOException {
        StringBuilder batches = new StringBuilder(
                "batch,roasted at,machine,green mass [" + heading + "],roasted mass [" + heading + "]\n");
        int next = 1;
        for (String mass : masses.split(" ")) {
            String[] both = mass.split("/");
            batches.append("B")
                    .append(next++)
                    .append(",2031-01-06T09:00,drum,")
                    .append(both[0])
                    .append(",");
            batches.append(both.length > 1 ? both[1] : "").append("\n");
        }
        Files.writeString(folder.resolve("batches.csv"), batches);
        Files.writeString(folder.resolve("logbook.properties"), "time.zone=UTC\n");
        if (largest != null) {
            Files.writeString(folder.resolve("machines.csv"), "machine,largest batch [kg]\ndrum," + largest + "\n");
        }
        return Logbook.open(folder);
    }

    private static String kept(Logbook logbook) {
        return String.join(
                " ",
                logbook.batches().stream()
                        .map(batch -> batch.conditions()
                                .greenMass()
                                .map(mass -> Double.toString(mass.kilograms()))
                                .orElse("-"))
                        .toList());
    }

    private static List<String> told(Logbook logbook) {
        return logbook.problems().in("batches.csv").list().stream()
                .map(Problem::toString)
                .toList();
    }

    @ParameterizedTest
    @CsvSource({
        // Above the largest batch, even where only one mass is known; up to a fiftieth above it, as where pounds were
        // rounded, is not.
        "2.8, 20.98,                     -",
        "2.8, 2.856,                     2.856",
        "2.8, 2.857,                     -",
        "2.8, 2.1 20.98,                 2.1 -",
        // Without a largest batch one among three is nothing to say what is usual by, and ten times is beyond five.
        ",    2.1 2.1 20.98,             2.1 2.1 20.98",
        ",    2.1 2.1 2.098 20.98,       2.1 2.1 2.098 -",
        ",    2 2 2 10,                  2.0 2.0 2.0 10.0",
        ",    2 2 2 10.01,               2.0 2.0 2.0 -",
        ",    2 2 2 0.4,                 2.0 2.0 2.0 0.4",
        ",    2 2 2 0.39,                2.0 2.0 2.0 -",
        // Slips in more than a quarter are a second size, unless the machine cannot hold it.
        ",    2 2 2 20 20,               2.0 2.0 2.0 20.0 20.0",
        "2.8, 2 2 2 20 20,               2.0 2.0 2.0 - -",
        // What is above counts for nothing in what is usual.
        "2.8, 2 2 2 0.39 20 20,          2.0 2.0 2.0 - - -",
        // Half above are slips; more than half are a largest batch that is wrong. Of three masses that cannot be told.
        "2.8, 2 2 20 20,                 2.0 2.0 - -",
        "2.8, 2 20 20 20,                2.0 20.0 20.0 20.0",
        "2.8, 20 20 20,                  - - -",
        "2.8, 20 20 20 20,               20.0 20.0 20.0 20.0"
    })
    void aMassIsDoubtedAboveTheLargestBatchOrFarFromTheOthers(String largest, String masses, String left)
            throws IOException {
        assertEquals(left, kept(charged(largest, "kg", masses)));
    }

    @Test
    void oneAboveTheLargestBatchIsNamedWithItsLineAndWhatToDo() throws IOException {
        Logbook logbook = charged("2.8", "kg", "2.1 20.98");
        assertEquals(
                List.of(
                        "batches.csv, line 3, column 'green mass [kg]': found '20.98'; expected at most 2.8 kg, the largest batch of 'drum' in"
                                + " machines.csv; value treated as missing: correct it, or, if it is right, write its roasted mass too."),
                told(logbook));
    }

    @Test
    void oneThatItsRoastedMassGoesWithIsKeptAndAskedAbout() throws IOException {
        Logbook logbook = charged("2.8", "kg", "2.1/1.8 20.98/17.9");
        assertEquals("2.1 20.98", kept(logbook));
        assertEquals(
                List.of(
                        "batches.csv, line 3, column 'green mass [kg]': found '20.98'; expected at most 2.8 kg, the largest batch of 'drum' in"
                                + " machines.csv; kept as written, for the roasted mass goes with it: correct both if they are slips."),
                told(logbook));
    }

    @Test
    void aLargestBatchThatMostAreAboveIsAskedAboutOnce() throws IOException {
        assertEquals(
                List.of(
                        "batches.csv, line 3, column 'green mass [kg]': found more in 3 of the 4 batches of 'drum'; expected at most 2.8 kg, the"
                                + " largest batch of 'drum' in machines.csv; all kept as written: correct the largest batch, or the unit in a"
                                + " heading."),
                told(charged("2.8", "kg", "2 20 20 20")));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "g|2.1 2.2 2.098 2.1|4 of 4 numbers that look like kg, such as 2.1|kg",
                "g|2100 2.2 2.098 2.1 2.1|4 of 5 numbers that look like kg, such as 2.2|kg",
                "kg|2100 2200 2098 2100|4 of 4 numbers that look like g, such as 2100|g"
            })
    void aColumnInAnotherUnitThanItsHeadingIsNamedOnce(String heading, String masses, String found, String other)
            throws IOException {
        List<String> told = told(charged(null, heading, masses));
        assertEquals(
                List.of("batches.csv, line " + (masses.startsWith("2100 2.2") ? 3 : 2) + ", column 'green mass ["
                        + heading + "]': found "
                        + found + "; expected masses in " + heading + ", as the heading says; if they are in " + other
                        + ", write ["
                        + other + "] there; values treated as missing."),
                told);
    }

    @ParameterizedTest
    @CsvSource({
        "g, 2.1 2.2 2.1, 3",
        "g, 2.1 2.2 2.1 2100, 3",
        "g, 2.1 2.2 2.1 2100 0.001, 4",
        "kg, 0.001 0.001 0.001 0.001, 4"
    })
    void tooFewOrUndecidedAreNamedOneByOne(String heading, String masses, int problems) throws IOException {
        assertEquals(problems, told(charged(null, heading, masses)).size(), Arrays.toString(masses.split(" ")));
    }
}
