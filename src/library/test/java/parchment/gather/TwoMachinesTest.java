package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two machines charged in the same minutes: which recording is which row is asked, one by one, and never in a question whose answers are alike. */
class TwoMachinesTest {
    @TempDir
    Path temporary;

    /** Writes pairs of roasts, one on each machine, each pair charged in one minute. */
    private Gather pairs(int pairs) throws IOException {
        Path folder = Files.createDirectories(temporary.resolve("Logger files"));
        StringBuilder list = new StringBuilder("Batch,Date,Time,Coffee,Green kg\n");
        for (int i = 0; i < pairs; i++) {
            String day = "2031-06-" + (11 + i / 4);
            String at = String.format(Locale.ROOT, "%02d%02d", 8 + i % 4, 10 + i);
            for (int machine = 0; machine < 2; machine++) {
                recording(folder, (machine == 0 ? "north " : "south ") + day + " " + at, 2 * i + machine);
                list.append(String.format(
                        Locale.ROOT,
                        "%d,%s,%s:%s,%s,5.%d%n",
                        61 + 2 * i + machine,
                        day,
                        at.substring(0, 2),
                        at.substring(2),
                        machine == 0 ? "Wren" : "Kela",
                        i));
            }
        }
        Files.writeString(folder.resolve("list.csv"), list);
        return Gather.of(folder);
    }

    private static void recording(Path folder, String name, int more) throws IOException {
        StringBuilder text = new StringBuilder("time [s],bean temperature [°C]\n");
        for (int i = 0; i <= 60; i++) {
            double degrees = i < 6 ? 190 - 18 * i : 90 + 2.05 * (i - 6);
            text.append(String.format(Locale.ROOT, "%d,%.2f%n", 10 * i, degrees + more / 100.0));
        }
        Files.writeString(folder.resolve(name + ".csv"), text);
    }

    private static List<GatherQuestions.Open> open(Gather gather) {
        return gather.gathering().questions().open();
    }

    @Test
    void timesThatTwoMachinesShareAreTimesOfDayAndNoDrops() throws IOException {
        Gather gather = pairs(8);
        assertTrue(gather.text().contains("Column 3 'Time' holds times that rise row by row"), gather.text());
        assertTrue(
                gather.gathering().batches().stream()
                        .allMatch(batch -> batch.marks().isEmpty()),
                "no time of day is a drop");
    }

    @Test
    void eachIsAskedAloneAndAnAnswerSettlesItsTwin() throws IOException {
        Gather gather = pairs(8);
        List<String> keys = new ArrayList<>();
        open(gather).forEach(open -> keys.add(open.key()));
        assertEquals(16, keys.size(), keys.toString());
        assertTrue(
                keys.stream().allMatch(key -> key.matches("join\\.(north|south)-2031-06-1\\d-\\d{4}")),
                keys.toString());
        assertEquals("apart", open(gather).get(0).proposal());
        Map<String, String> answers = Map.of("join.north-2031-06-11-0810", "61", "join.south-2031-06-11-0810", "62");
        Gather answered = gather;
        for (Map.Entry<String, String> answer : answers.entrySet()) {
            answered = answered.answer(answer.getKey(), answer.getValue());
        }
        assertEquals(14, open(answered).size());
        assertEquals(
                LocalDateTime.of(2031, 6, 11, 8, 10),
                answered.gathering().batches().get(0).roastedAt().orElseThrow());
        assertEquals(
                14,
                open(gather.answer("join.north-2031-06-11-0810", "61")).size(),
                "the other row is the other machine's");
    }

    @Test
    void manyAreToldWithTheirKeysInPlaceOfAQuestionThatHasNoUse() throws IOException {
        Gather gather = pairs(11);
        assertEquals(List.of(), open(gather));
        List<String> left = gather.gathering().questions().leftOut();
        assertTrue(
                left.contains(
                        "22 joins are doubtful, and none of them has a name or number in common: all are kept apart."
                                + " Those kept apart become a batch of the recording and another of the row. Each is answered with its"
                                + " key, such as join.north-2031-06-11-0810=61."),
                left.toString());
    }
}
