package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;

/** What a gathering shows before it writes, what it asks, and what stands if nobody answers. */
class GatherPageTest {
    @TempDir
    Path temporary;

    private Path folder() throws IOException {
        return Files.createDirectories(temporary.resolve("Logger files"));
    }

    private void recording(String name, String... above) throws IOException {
        StringBuilder text = new StringBuilder();
        for (String line : above) {
            text.append(line).append('\n');
        }
        text.append("time [s],bean temperature [°C]\n");
        for (int i = 0; i <= 60; i++) {
            double degrees = i < 6 ? 190 - 18 * i : 90 + 2.05 * (i - 6);
            text.append(String.format(Locale.ROOT, "%d,%.1f%n", 10 * i, degrees + name.length() / 10.0));
        }
        Files.writeString(folder().resolve(name + ".csv"), text);
    }

    private void list(String... lines) throws IOException {
        Files.writeString(folder().resolve("list.csv"), String.join("\n", lines) + "\n");
    }

    private static List<String> keys(Gather gather) {
        return gather.gathering().questions().open().stream()
                .map(GatherQuestions.Open::key)
                .toList();
    }

    private List<String> names(Gather gather) {
        return gather.writeTo(temporary.resolve("made")).batches().stream()
                .map(Batch::name)
                .sorted()
                .toList();
    }

    @Test
    void thePageShowsDoubtfulJoinsFirstThenWhatIsOpen() throws IOException {
        recording("north 5");
        recording("south 5");
        recording("batch 6");
        list("batch,lot,green mass [kg]", "5,kela,5", "6,kela,5");
        Gather gather = Gather.of(folder());
        String text = gather.text();
        int doubtful = text.indexOf("1 recording joined to a row of the lists, doubtful: please look:");
        int certain = text.indexOf("1 recording joined to a row of the lists, certain:");
        int open = text.indexOf("Open questions");
        assertTrue(doubtful > 0 && certain > doubtful && open > certain, text);
        assertEquals(List.of("join.north-5"), keys(gather));
        assertTrue(text.contains("1 recording is in no list: 'south 5'."), text);
        assertTrue(gather.html().orElseThrow().contains("<h4>Which recording is which row</h4>"));
        assertFalse(Files.exists(temporary.resolve("made")));
        assertTrue(gather.toString().endsWith("1 question is open."), gather.toString());
    }

    @ParameterizedTest
    @CsvSource({"5, 5 6 south 5", "apart, 5 6 north 5"}) // The row is then the only other candidate's.
    void aDoubtfulJoinIsAsItWasAnswered(String answer, String names) throws IOException {
        recording("north 5");
        recording("south 5");
        recording("batch 6");
        list("batch,lot,green mass [kg]", "5,kela,5", "6,kela,5");
        Gather gather = Gather.of(folder()).answer("join.north-5", answer);
        assertEquals(List.of(), keys(gather));
        assertEquals(names, String.join(" ", names(gather)));
    }

    @Test
    void whatDecidesMostIsAskedFirst() throws IOException {
        recording("north 5", "Batch,x,3/4/2031");
        recording("south 5", "Batch,y,3/5/2031");
        list("batch,date,lot,green mass [kg]", "5,3/4/2031,kela,5", "6,3/5/2031,kela,5", "7,3/6/2031,kela,5");
        List<String> asked = new ArrayList<>();
        Gather.run(
                folder(),
                temporary.resolve("made"),
                Optional.empty(),
                question -> {
                    asked.add(question);
                    return Optional.of("");
                },
                new StringBuilder());
        assertTrue(
                asked.get(0).contains("How are the dates written: day/month/year or month/day/year?"),
                asked.toString());
    }

    /** Enter leaves out what can be read two ways, keeps what can be read one way only, and says how to answer later. */
    @Test
    void anUndecidedDateOnEnterIsNamedAndCanBeAnsweredLater() throws IOException {
        recording("batch 5");
        list("batch,date,lot,green mass [kg]", "5,3/4/2031,kela,5", "6,4/4/2031,kela,5");
        Gather gather = Gather.of(folder());
        assertEquals(List.of("date.order"), keys(gather));
        assertTrue(
                gather.text()
                        .contains("Nobody said how the dates are written: 1 date that can be read two ways is left out."
                                + " To take it in, answer date.order with day/month/year or month/day/year."),
                gather.text());
        Logbook left = gather.writeTo(temporary.resolve("first"));
        assertEquals("2031-04-04", left.batch("6").roastDay().orElseThrow().toString());
        assertTrue(left.batch("5").roastDay().isEmpty());
        Logbook answered = gather.answer("date.order", "day/month/year").writeTo(temporary.resolve("second"));
        assertEquals("2031-04-03", answered.batch("5").roastDay().orElseThrow().toString());
    }

    @ParameterizedTest
    @CsvSource({
        "Batch 101 - Wren, '', 101",
        "roast_2031-06-01_0800, 'Batch 101,06/13/2031 08:00,,', 101",
        "roast_2031-06-01_0800, '', roast_2031-06-01_0800",
        "Wren, '', Wren"
    })
    void aBatchIsCalledByItsShortestStableName(String file, String above, String name) throws IOException {
        if (above.isEmpty()) {
            recording(file);
        } else {
            recording(file, above);
        }
        assertEquals(List.of(name), names(Gather.of(folder())));
    }

    @Test
    void noTwoBatchesAreCalledAlike() throws IOException {
        recording("Batch 101 - Wren");
        recording("Batch 101 - Lark!");
        list("batch,lot,green mass [kg]", "7,kela,5");
        assertEquals(List.of("7", "Batch 101 - Lark!", "Batch 101 - Wren"), names(Gather.of(folder())));
    }

    @Test
    void aFileThatIsTheSameAsAnotherIsPassedOver() throws IOException {
        recording("batch 5");
        Files.createDirectories(folder().resolve("copies"));
        Files.copy(folder().resolve("batch 5.csv"), folder().resolve("copies/batch 5.csv"));
        Gather gather = Gather.of(folder());
        assertTrue(
                gather.text()
                        .contains(
                                "Left out, because another file of that name has the same bytes: 'copies/batch 5.csv'."),
                gather.text());
        assertEquals(List.of("5"), names(gather));
    }

    /** Against every way to pair up to five rows and columns. */
    @Test
    void noOtherAssignmentWeighsMore() {
        SplittableRandom random = new SplittableRandom(7);
        for (int trial = 0; trial < 300; trial++) {
            int rows = 1 + random.nextInt(5);
            int columns = 1 + random.nextInt(5);
            double[][] gains = new double[rows][columns];
            for (double[] row : gains) {
                for (int k = 0; k < columns; k++) {
                    row[k] = random.nextInt(8);
                }
            }
            int[] chosen = Assignment.of(gains);
            double sum = 0;
            boolean[] used = new boolean[columns];
            for (int i = 0; i < rows; i++) {
                if (chosen[i] >= 0) {
                    assertFalse(used[chosen[i]], "each column once");
                    used[chosen[i]] = true;
                    sum += gains[i][chosen[i]];
                }
            }
            assertEquals(best(gains, 0, new boolean[columns]), sum, 1e-9);
        }
    }

    private static double best(double[][] gains, int row, boolean[] used) {
        if (row == gains.length) {
            return 0;
        }
        double best = best(gains, row + 1, used);
        for (int k = 0; k < used.length; k++) {
            if (!used[k]) {
                used[k] = true;
                best = Math.max(best, gains[row][k] + best(gains, row + 1, used));
                used[k] = false;
            }
        }
        return best;
    }
}
