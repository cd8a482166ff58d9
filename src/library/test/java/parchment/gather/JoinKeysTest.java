package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The keys under which joins are answered: each names one recording, and what an answer says is taken or told. */
class JoinKeysTest {
    @TempDir
    Path temporary;

    private Path folder;

    @BeforeEach
    void list() throws IOException {
        folder = Files.createDirectories(temporary.resolve("Logger files"));
        Files.writeString(
                folder.resolve("list.csv"),
                "batch,date,green mass [kg]\nWren,2031-06-01,5\nKela,2031-06-02,6\nLow Orchard,2031-06-03,7\n");
    }

    private void recording(String name) throws IOException {
        StringBuilder text = new StringBuilder("time [s],bean temperature [°C]\n");
        for (int i = 0; i <= 60; i++) {
            double degrees = i < 6 ? 190 - 18 * i : 90 + 2.05 * (i - 6);
            text.append(String.format(Locale.ROOT, "%d,%.2f%n", 10 * i, degrees + name.hashCode() % 97 / 100.0));
        }
        Path file = folder.resolve(name + ".csv");
        Files.createDirectories(file.getParent());
        Files.writeString(file, text);
    }

    private static List<String> joined(Gather gather) {
        return gather.gathering().joins().stream()
                .filter(join -> !gather.gathering().apart().contains(join))
                .map(join -> folderOf(join.curve()) + "/" + join.curve().name() + " = "
                        + join.roast().name())
                .sorted()
                .toList();
    }

    private static String folderOf(GatheredBatch curve) {
        String[] path = curve.origin().split("/");
        return path[path.length - 2];
    }

    @Test
    void recordingsOfOneNameInTwoFoldersAreAnsweredEachByItsOwnKey() throws IOException {
        recording("a/101");
        recording("b/101");
        recording("b/102");
        Gather gather = Gather.of(folder)
                .answer("join.a-101", "Wren")
                .answer("join.b-101", "Kela")
                .answer("join.102", "Low Orchard");
        assertEquals(List.of("a/101 = Wren", "b/101 = Kela", "b/102 = Low Orchard"), joined(gather));
    }

    @Test
    void aKeyThatNamesTwoRecordingsIsToldWithTheirs() throws IOException {
        recording("a/101");
        recording("b/101");
        Gather gather = Gather.of(folder).answer("join.101", "Wren");
        assertEquals(List.of(), joined(gather));
        assertTrue(
                gather.text()
                        .contains(
                                "The answer to join.101 was not taken: 2 recordings are called so. Answer join.a-101 or"
                                        + " join.b-101."),
                gather.text());
    }

    @Test
    void anAnswerGoesOnToCountForTheRecordingThatHadItsNameToItself() throws IOException {
        recording("a/101");
        Path made = temporary.resolve("made");
        Gather.of(folder).answer("join.101", "Kela").writeTo(made);
        recording("b/101");
        for (int again = 0; again < 2; again++) {
            Gather gather = GatherPlace.of(Gather.of(folder), made).gather();
            assertEquals(List.of("a/101 = Kela"), joined(gather), gather.text());
            StringBuilder out = new StringBuilder();
            assertEquals(0, Gather.run(folder, made, Optional.empty(), Gather.NOBODY, out));
            assertFalse(out.toString().contains("was not"), out.toString());
        }
    }

    @Test
    void namesThatDifferBySignsOnlyHaveKeysOfTheirOwn() throws IOException {
        recording("a/10 1");
        recording("a/10-1");
        Gather gather = Gather.of(folder).answer("join.10-1", "Wren").answer("join.10-1-2", "Kela");
        assertEquals(List.of("a/10 1 = Wren", "a/10-1 = Kela"), joined(gather));
    }

    @ParameterizedTest
    @CsvSource({
        "apart, ''",
        "' APART ', ''",
        "Apart, ''",
        "Low Orchard, a/101 = Low Orchard",
        "' low orchard', a/101 = Low Orchard",
        "Orchard, ''"
    })
    void anAnswerIsTakenInOtherCapitalsAndWithBlanks(String answer, String joined) throws IOException {
        recording("a/101");
        Gather gather = Gather.of(folder).answer("join.101", answer);
        assertEquals(joined.isEmpty() ? List.of() : List.of(joined), joined(gather));
        assertEquals(
                answer.equals("Orchard"),
                gather.text().contains("No row of a list is called 'Orchard', or another recording has it"),
                gather.text());
    }

    @Test
    void aKeyThatNamesNothingIsToldOnThePageToo() throws IOException {
        recording("a/101");
        String text = Gather.of(folder).answer("join.110", "apart").text();
        assertTrue(text.contains("The answer to join.110 was not needed: nothing asks for it."), text);
    }

    @Test
    void aPlaceThatReadsLikeAnotherRecordingsNameGetsAKeyOfItsOwn() throws IOException {
        recording("a/101");
        recording("b/101");
        recording("a-101");
        Gathering gathering = Gather.of(folder).gathering();
        JoinKeys keys = JoinKeys.of(gathering.curves(), Map.of(), new GatherQuestions(Map.of()));
        List<String> all = gathering.curves().stream().map(keys::of).toList();
        assertEquals(3, Set.copyOf(all).size(), all.toString());
        assertTrue(all.contains("join.a-101"), all.toString());
    }
}
