package parchment.logbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.logbook.written.Problem;

/** Names that look the same and are written in other signs of Unicode (UAX 15): an accent as a sign of its own, or not. */
class UnicodeFormsTest {
    private static final String COMPOSED = "N\u00FA\u00F1ez";
    private static final String TAKEN_APART = Normalizer.normalize(COMPOSED, Normalizer.Form.NFD);
    /** The first accent composed, the second taken apart. */
    private static final String MIXED = "N\u00FAn\u0303ez";

    @TempDir
    Path temporary;

    private WrittenFolder batches(String... names) throws IOException {
        StringBuilder text = new StringBuilder("batch,roasted at\n");
        for (int i = 0; i < names.length; i++) {
            text.append(names[i]).append(",2025-03-04T0").append(i).append(":15\n");
        }
        return new WrittenFolder(temporary).withText("batches.csv", text.toString());
    }

    private static String curve(int last) {
        return WrittenFolder.curve("°C", 0, 560, 5, last);
    }

    private static double last(Batch batch) {
        return batch.beanTemperature().orElseThrow().valueAt(112);
    }

    private static boolean says(Logbook logbook, String... parts) {
        return logbook.problems().list().stream()
                .map(Problem::toString)
                .anyMatch(line -> List.of(parts).stream().allMatch(line::contains));
    }

    @Test
    void theTwoFormsAreTwoNamesToJava() {
        assertFalse(COMPOSED.equals(TAKEN_APART));
        assertFalse(COMPOSED.equals(MIXED) || TAKEN_APART.equals(MIXED));
    }

    @Test
    void oneBatchAndOneFileOfAnotherFormAreOne() throws IOException {
        for (String batch : List.of(COMPOSED, TAKEN_APART)) {
            String file = batch.equals(COMPOSED) ? TAKEN_APART : COMPOSED;
            Files.deleteIfExists(temporary.resolve("curves/" + batch + ".csv"));
            Logbook logbook = batches(batch)
                    .withText("curves/" + file + ".csv", curve(205))
                    .with("cuppings.csv", "cupping,tasted on,cupper,batch,body", "a,2025-03-08,Ana," + file + ",5")
                    .open();
            assertEquals(1, logbook.batches().size());
            assertEquals(205, last(logbook.batch(batch)));
            assertEquals(batch, logbook.cups().get(0).batch());
            assertEquals(0, logbook.problems().size(), logbook.problems().text());
            Files.delete(temporary.resolve("curves/" + file + ".csv"));
        }
    }

    @Test
    void twoBatchesThatDifferInFormAloneKeepTheirOwnCurvesAndCups() throws IOException {
        for (List<String> order : List.of(List.of(COMPOSED, TAKEN_APART), List.of(TAKEN_APART, COMPOSED))) {
            Logbook logbook = batches(order.get(0), order.get(1))
                    .withText("curves/" + COMPOSED + ".csv", curve(205))
                    .withText("curves/" + TAKEN_APART + ".csv", curve(210))
                    .with(
                            "cuppings.csv",
                            "cupping,tasted on,cupper,batch,body",
                            "a,2025-03-08,Ana," + COMPOSED + ",5",
                            "a,2025-03-08,Ana," + TAKEN_APART + ",7")
                    .open();
            assertEquals(205, last(logbook.batch(COMPOSED)));
            assertEquals(210, last(logbook.batch(TAKEN_APART)));
            assertEquals(COMPOSED, logbook.cups().get(0).batch());
            assertEquals(TAKEN_APART, logbook.cups().get(1).batch());
            assertEquals(0, logbook.problems().size(), logbook.problems().text());
        }
    }

    @Test
    void aFileThatIsExactlyNeitherOfTwoBatchesGoesToNeither() throws IOException {
        Logbook logbook = batches(COMPOSED, TAKEN_APART)
                .withText("curves/" + MIXED + ".csv", curve(205))
                .with("cuppings.csv", "cupping,tasted on,cupper,batch,body", "a,2025-03-08,Ana," + MIXED + ",5")
                .open();
        assertTrue(logbook.batch(COMPOSED).beanTemperature().isEmpty());
        assertTrue(logbook.batch(TAKEN_APART).beanTemperature().isEmpty());
        assertEquals(205, last(logbook.batch(MIXED)));
        assertEquals(MIXED, logbook.cups().get(0).batch());
        assertTrue(
                says(logbook, "a curve of no batch", "2 batches look the same in other signs of Unicode"),
                logbook.problems().text());
    }

    @Test
    void oneOfTwoBatchesMayHaveTheOnlyFileAndTheOtherHasNone() throws IOException {
        Logbook logbook = batches(COMPOSED, TAKEN_APART)
                .withText("curves/" + COMPOSED + ".csv", curve(205))
                .open();
        assertEquals(205, last(logbook.batch(COMPOSED)));
        assertTrue(logbook.batch(TAKEN_APART).beanTemperature().isEmpty());
        assertTrue(says(logbook, "without a curve"), logbook.problems().text());
    }

    @Test
    void ofTwoFilesThatLookTheSameTheOneOfTheVeryNameIsTheBatchs() throws IOException {
        for (String batch : List.of(COMPOSED, TAKEN_APART)) {
            String other = batch.equals(COMPOSED) ? TAKEN_APART : COMPOSED;
            Logbook logbook = batches(batch)
                    .withText("curves/" + batch + ".csv", curve(205))
                    .withText("curves/" + other + ".csv", curve(210))
                    .open();
            assertEquals(205, last(logbook.batch(batch)));
            assertEquals(210, last(logbook.batch(other)));
            assertTrue(
                    says(logbook, "a curve of no batch", "1 batch looks the same in other signs of Unicode"),
                    logbook.problems().text());
        }
    }

    @Test
    void filesAloneKeepTheirNamesWhereTwoLookTheSame() throws IOException {
        WrittenFolder folder = new WrittenFolder(temporary).withText("curves/" + TAKEN_APART + ".csv", curve(210));
        assertEquals(210, last(folder.open().batch(COMPOSED)), "one alone has the composed name, as it is typed");
        Logbook both =
                folder.withText("curves/" + COMPOSED + ".csv", curve(205)).open();
        assertEquals(205, last(both.batch(COMPOSED)));
        assertEquals(210, last(both.batch(TAKEN_APART)));
    }
}
