package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Keeps what a logger wrote after its clock began again, and says once for a folder how its letters were read. */
class ClockBeginsAgainTest {
    @TempDir
    Path temporary;

    private static double bean(int second) {
        return second < 60 ? 200 : 95 + 90 * Math.exp(-(second - 60) / 20.0) + 115 * (second - 60) / 600.0;
    }

    /** A roast of ten minutes whose clock goes back at a second, from where the temperature is off by so much. */
    private Path roast(String name, int again, double off, String heading, Charset letters) throws IOException {
        StringBuilder text = new StringBuilder("seconds;" + heading + ";air\n");
        for (int second = 0; second <= 660; second += 2) {
            boolean later = second >= again;
            text.append(String.format(
                    Locale.ROOT,
                    "%d;%.1f;%.1f\n",
                    later ? second - again : second,
                    bean(second) + (later ? off : 0),
                    230.0 + second % 7));
        }
        Path file = temporary.resolve("old").resolve(name);
        Files.createDirectories(file.getParent());
        Files.writeString(file, text.toString(), letters);
        return file;
    }

    private List<Recording> recordings(Gather gather) {
        return gather.gathering().curves().stream()
                .map(curve -> curve.recording().orElseThrow())
                .toList();
    }

    @Test
    void aSecondHalfOfTheSameRoastFollowsOneStepLater() throws IOException {
        roast("a.csv", 334, 0, "bean C", StandardCharsets.UTF_8);
        Gather gather = Gather.of(temporary.resolve("old"));
        Recording recording = recordings(gather).get(0);
        assertEquals(331, recording.seconds().size());
        assertEquals(660, recording.seconds().get(330));
        assertTrue(
                gather.text()
                        .contains(
                                "'a.csv': its clock begins again after 5:32, with 164 rows to come; the bean temperature goes on"
                                        + " there, so they follow one step later: yes (file.a.clock-begins-again)"),
                gather.text());
        assertFalse(gather.text().contains("without a time that rises"));
        assertEquals(
                167,
                recordings(gather.answer("file.a.clock-begins-again", "no"))
                        .get(0)
                        .seconds()
                        .size());
    }

    @Test
    void whereTheTemperatureDoesNotGoOnItIsAsked() throws IOException {
        for (double off : new double[] {9, -9, 12, -12}) {
            roast("a.csv", 334, off, "bean C", StandardCharsets.UTF_8);
            Gather gather = Gather.of(temporary.resolve("old"));
            assertEquals(331, recordings(gather).get(0).seconds().size(), "nothing is lost until it is answered");
            boolean asked = gather.gathering().questions().open().stream()
                    .anyMatch(open -> open.key().equals("file.a.clock-begins-again"));
            assertEquals(Math.abs(off) > 10, asked, "off by " + off + " °C");
        }
    }

    @Test
    void aTimeThatOnlyStumblesIsNoClockThatBeganAgain() throws IOException {
        Path file = roast("a.csv", 700, 0, "bean C", StandardCharsets.UTF_8);
        String text = Files.readString(file);
        Files.writeString(file, text.replace("\n400;", "\n0;"));
        Gather gather = Gather.of(temporary.resolve("old"));
        assertEquals(330, recordings(gather).get(0).seconds().size());
        assertTrue(gather.text().contains("1 row without a time that rises left out"), gather.text());
    }

    @Test
    void theLettersOfAFoldersFilesAreToldInOneLine() throws IOException {
        for (int i = 1; i <= 5; i++) {
            roast("courbes/c" + i + ".csv", 700, 0, "grain é C", Charset.forName("windows-1252"));
        }
        List<String> told = Gather.of(temporary.resolve("old")).gathering().questions().taken().stream()
                .filter(line -> line.contains("UTF-8"))
                .toList();
        assertEquals(
                List.of(
                        "5 files in 'courbes' have letters that are not UTF-8: read as Windows-1252, such as 'courbes/c1.csv'."),
                told);
        Files.delete(temporary.resolve("old/courbes/c2.csv"));
        Files.delete(temporary.resolve("old/courbes/c3.csv"));
        Files.delete(temporary.resolve("old/courbes/c4.csv"));
        Files.delete(temporary.resolve("old/courbes/c5.csv"));
        assertTrue(
                Gather.of(temporary.resolve("old"))
                        .gathering()
                        .questions()
                        .taken()
                        .contains(
                                "'courbes/c1.csv': The letters of the file are not UTF-8: read as Windows-1252, first on line 1."));
    }
}
