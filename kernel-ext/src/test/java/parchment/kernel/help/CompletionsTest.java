package parchment.kernel.help;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import parchment.kernel.cell.Evaluator;
import parchment.kernel.cell.RecordingPage;

class CompletionsTest {
    private static Evaluator evaluator;

    @BeforeAll
    static void open() {
        evaluator = Evaluator.open();
        Path demo = Path.of("..", "datasets", "harbour").toAbsolutePath().normalize();
        String cell = "var logbook = Logbook.open(Path.of(\"" + demo.toString().replace('\\', '/') + "\"));";
        assertTrue(evaluator.run(cell, new RecordingPage()).fine());
    }

    @AfterAll
    static void close() {
        evaluator.close();
    }

    private static List<String> after(String code) {
        return evaluator.complete(code, code.length()).matches();
    }

    @Test
    void offersTheLogbooksMethodsBeforeThoseOfEveryValue() {
        List<String> matches = after("logbook.");
        assertEquals("attributes()", matches.get(0));
        int firstOfAll = matches.indexOf("equals(");
        assertTrue(firstOfAll > matches.indexOf("upkeep()"), matches.toString());
        assertTrue(
                matches.subList(firstOfAll, matches.size()).containsAll(List.of("getClass()", "hashCode()", "wait(")));
    }

    @Test
    void offersTheConstantsOfAKind() {
        List<String> matches = after("Clock.");
        assertTrue(matches.containsAll(List.of("BY_BEAN_TEMPERATURE", "SINCE_CHARGE", "valueOf(")), matches.toString());
        assertEquals(
                Set.of("class", "EnumDesc"),
                Set.copyOf(matches.subList(matches.indexOf("values()") + 1, matches.size())));
    }

    @Test
    void offersFeaturesByTheirBareNames() {
        assertEquals(List.of("dropTemperature()", "dropTime()"), after("dropT"));
        assertEquals(
                "dropTemperature()", after("Evidence.of(\"sweetness\", dropT").get(0));
    }

    @Test
    void offersTheLibrarysTypesBeforeJavas() {
        List<String> matches = after("Ev");
        assertEquals(List.of("Evidence", "EvidenceSettings"), matches.subList(0, 2));
        assertTrue(matches.contains("EventObject"), matches.toString());
    }

    @Test
    void knowsWhatTheLinesBeforeDeclare() {
        assertEquals(List.of("batch(", "batches()"), after("var mine = logbook\nmine.bat"));
    }

    @Test
    void offersAttributesInsideAText() {
        Completions found = evaluator.complete("Evidence.of(\"sw\", dropTime(), logbook)", 15);
        assertEquals(new Completions(List.of("sweetness"), 13, 15), found);
        assertTrue(after("Evidence.of(\"").containsAll(List.of("sweetness", "acidity")));
    }

    @Test
    void offersTheLotsBatchesAndFeaturesThatAMethodAsksFor() {
        List<String> lots = after("logbook.ofLot(\"");
        assertEquals(3, lots.size(), lots.toString());
        assertEquals(240, after("logbook.batch(\"").size());
        assertEquals(List.of("drop temperature", "drop time"), after("Features.named(\"drop t"));
    }

    @Test
    void offersNothingInACommentOrInATextNoNameBeginsLike() {
        assertEquals(List.of(), after("// logbook."));
        assertEquals(List.of(), after("/* logbook."));
        assertEquals(List.of(), after("var s = \"logbook."));
        assertFalse(after("/* one */ logbook.").isEmpty());
    }
}
