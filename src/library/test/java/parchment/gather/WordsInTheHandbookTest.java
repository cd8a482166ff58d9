package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Holds that the words which docs/gather.md lists are known, each for what the page says, in six languages. */
class WordsInTheHandbookTest {
    private static final String HEAD = "| a column of | English | German | Spanish | Portuguese | French | Italian |";

    @Test
    void everyWordOfThePageIsKnownForWhatThePageSays() throws IOException {
        Path page = Path.of("..", "docs", "gather.md");
        List<String> lines = Files.readAllLines(Files.exists(page) ? page : Path.of("docs", "gather.md"));
        int head = lines.indexOf(HEAD);
        assertTrue(head > 0, "the page has the table");
        List<String> unknown = new ArrayList<>();
        int rows = 0;
        for (String line : lines.subList(head + 2, lines.size())) {
            if (!line.startsWith("|")) {
                break;
            }
            String[] cells = line.substring(1).split("\\|");
            assertEquals(7, cells.length, line);
            String meaning = cells[0].strip();
            for (int i = 1; i < cells.length; i++) {
                for (String word : cells[i].split(",")) {
                    if (!known(word.strip(), meaning)) {
                        unknown.add(word.strip() + " for " + meaning);
                    }
                }
            }
            rows++;
        }
        assertEquals(List.of(), unknown);
        assertEquals(19, rows);
    }

    private static boolean known(String word, String meaning) {
        return TradeWords.of(word).whole().stream()
                .anyMatch(found -> found.words().equals(meaning));
    }
}
