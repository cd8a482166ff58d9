package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.logbook.MarkKind;

/** What becomes of joins: what is asked of doubtful ones, what is written of all, and what a second gathering makes of them. */
class JoinAnswersTest {
    @TempDir
    Path temporary;

    private Path folder() throws IOException {
        return Files.createDirectories(temporary.resolve("Logger files"));
    }

    private void recording(String name) throws IOException {
        StringBuilder text = new StringBuilder("time [s],bean temperature [°C]\n");
        for (int i = 0; i <= 60; i++) {
            double degrees = i < 6 ? 190 - 18 * i : 90 + 2.05 * (i - 6);
            text.append(String.format(Locale.ROOT, "%d,%.2f%n", 10 * i, degrees + name.hashCode() % 97 / 100.0));
        }
        Files.writeString(folder().resolve(name + ".csv"), text);
    }

    private void list(String... rows) throws IOException {
        Files.writeString(
                folder().resolve("list.csv"), "batch,date,green mass [kg]\n" + String.join("\n", rows) + "\n");
    }

    private static List<String> sure(Gather gather) {
        return gather.gathering().joins().stream()
                .map(join -> join.curve().name() + " = " + join.roast().name() + " " + join.sure())
                .toList();
    }

    @Test
    void aJoinFromBeforeStaysAsSureAsItWas() throws IOException {
        recording("r1");
        recording("Batch 2");
        list("1,2031-06-01,5", "2,2031-06-02,6", "3,2031-06-03,7", "4,2031-06-04,5", "5,2031-06-05,6");
        Gather first = Gather.of(folder());
        assertEquals(List.of("r1 = 1 LIKELY", "Batch 2 = 2 CERTAIN"), sure(first));
        Path made = temporary.resolve("made");
        first.writeTo(made);
        Gather second = GatherPlace.of(Gather.of(folder()), made).gather();
        assertEquals(List.of("r1 = 1 LIKELY", "Batch 2 = 2 CERTAIN"), sure(second));
        assertTrue(
                second.text().contains("'r1' is row '1', because its file 'r1' has the number 1, as before."),
                second.text());
    }

    @Test
    void everyJoinIsWrittenWithHowSureItIsAndWhy() throws IOException {
        recording("r1");
        for (int i = 2; i <= 5; i++) {
            recording("Batch " + i);
        }
        list("1,2031-06-01,5", "2,2031-06-02,6", "3,2031-06-03,7", "4,2031-06-04,5", "5,2031-06-05,6");
        Gather gather = Gather.of(folder());
        assertTrue(
                gather.text()
                        .contains(
                                "All joins are in gathered.txt of the new logbook, each with how sure it is and why."),
                gather.text());
        Path made = temporary.resolve("made");
        gather.writeTo(made);
        String report = Files.readString(made.resolve("gathered.txt"));
        assertTrue(report.contains("likely: 'r1' is row '1', because its file 'r1' has the number 1."), report);
        for (int i = 2; i <= 5; i++) {
            assertTrue(
                    report.contains("certain: 'Batch " + i + "' is row '" + i + "', because its file 'Batch " + i
                            + "' has the number " + i + "."),
                    report);
        }
    }

    @Test
    void theQuestionOfManyDoubtfulJoinsSaysWhatYesAndNoDo() throws IOException {
        for (int i = 1; i <= 3; i++) {
            recording("2031-06-0" + i + " roast " + i);
            recording("2031-07-01 cup" + (char) ('a' + i));
        }
        list(
                "1,2031-06-11,5",
                "2,2031-06-12,6",
                "3,2031-06-13,7",
                "41,2031-07-01,5",
                "42,2031-07-01,6",
                "43,2031-07-01,7");
        Gather gather = Gather.of(folder());
        GatherQuestions.Open asked = gather.gathering().questions().open().stream()
                .filter(open -> open.key().equals("joins.doubtful"))
                .findFirst()
                .orElseThrow();
        assertTrue(
                asked.question()
                        .contains(
                                "Yes puts together the 3 that have a name or number in common and keeps 3 apart; no keeps all 6 apart."),
                asked.question());
        assertEquals(3, gather.gathering().apart().size());
        assertEquals(
                6, gather.answer("joins.doubtful", "no").gathering().apart().size());
    }

    /** A day of a clock 7 minutes ahead: the first recording is nearer to the second one's row, which is why it stays apart. */
    @ParameterizedTest
    @ValueSource(ints = {1, 5})
    void whatWasKeptApartStaysApartOnceItsRivalsAreJoined(int days) {
        List<GatheredBatch> curves = new ArrayList<>();
        List<ListedRoast> rows = new ArrayList<>();
        for (int day = 0; day < days; day++) {
            LocalDateTime eight = MadeJoins.EIGHT.plusDays(day);
            Map<MarkKind, Double> drop = Map.of(MarkKind.DROP, 600.0);
            curves.add(MadeJoins.curveAt("REG" + (day + 10), eight));
            rows.add(MadeJoins.row("T" + day + "a", Optional.of(eight.minusMinutes(8)), Optional.empty(), drop));
            rows.add(MadeJoins.row(
                    "T" + day + "b",
                    Optional.of(eight.plusMinutes(4)),
                    Optional.empty(),
                    Map.of(MarkKind.DROP, 590.0)));
            curves.add(MadeJoins.curveAt("x" + day, eight.plusMinutes(4)));
        }
        JoinAnswers first = JoinAnswers.of(curves, rows, Map.of(), AgreedJoins.NONE, new GatherQuestions(Map.of()));
        Map<String, String> names = new HashMap<>();
        curves.forEach(curve -> names.put(curve.origin(), curve.name()));
        first.joined()
                .forEach(join -> names.put(join.curve().origin(), join.roast().name()));
        JoinAnswers second = JoinAnswers.of(curves, rows, names, AgreedJoins.NONE, new GatherQuestions(Map.of()));
        assertEquals(pairs(first.joined()), pairs(second.joined()));
        assertEquals(pairs(first.apart()), pairs(second.apart()));
        assertEquals(days, first.apart().size());
    }

    private static List<String> pairs(List<Join> joins) {
        return joins.stream()
                .map(join -> join.curve().name() + " = " + join.roast().name() + " " + join.sure())
                .sorted()
                .toList();
    }
}
