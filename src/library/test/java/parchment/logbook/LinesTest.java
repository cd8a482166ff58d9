package parchment.logbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;
import parchment.sheet.Lines;

class LinesTest {
    /** Hands out a few characters at a time, so that every border of a buffer falls somewhere. */
    private static Reader inPieces(String text, SplittableRandom random) {
        return new StringReader(text) {
            @Override
            public int read(char[] buffer, int from, int length) throws IOException {
                return super.read(buffer, from, Math.min(length, random.nextInt(1, 7)));
            }
        };
    }

    private static List<String> read(Reader reader) throws IOException {
        Lines lines = new Lines(reader);
        List<String> read = new ArrayList<>();
        while (lines.next()) {
            read.add(lines.text());
            assertEquals(read.size(), lines.number());
        }
        return read;
    }

    @RepeatedTest(30)
    void agreesWithTheLibraryWhereverTheBorderOfABufferFalls(RepetitionInfo repetition) throws IOException {
        SplittableRandom random = new SplittableRandom(repetition.getCurrentRepetition());
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < 300; i++) {
            text.append("x".repeat(random.nextInt(0, i % 50 == 0 ? 40_000 : 12)))
                    .append(List.of("\n", "\r\n", "\r").get(random.nextInt(3)));
        }
        if (random.nextBoolean()) {
            text.append("the end");
        }
        assertEquals(text.toString().lines().toList(), read(inPieces(text.toString(), random)));
    }

    @Test
    void tellsWhetherTheLastLineHasAnEnd() throws IOException {
        Lines lines = new Lines(new StringReader("a\nb"));
        lines.next();
        assertEquals(true, lines.complete());
        lines.next();
        assertEquals(false, lines.complete());
        assertEquals(false, lines.next());
    }

    @Test
    void refusesALineThatIsTooLongToBeARow() {
        String text = "a\n" + "x".repeat(3 * Lines.LONGEST);
        IOException e = assertThrows(IOException.class, () -> read(new StringReader(text)));
        assertEquals("line 2 is longer than 1048576 characters", e.getMessage());
    }
}
