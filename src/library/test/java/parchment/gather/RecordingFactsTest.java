package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.quantity.MassUnit;

/** Holds that the lot above readings and the mass in a file's name are read where no list has them, or named. */
class RecordingFactsTest {
    @TempDir
    Path temporary;

    private void write(String file, String text) throws IOException {
        Path path = temporary.resolve("old").resolve(file);
        Files.createDirectories(path.getParent());
        Files.writeString(path, text);
    }

    private static String readings(String above) {
        StringBuilder text = new StringBuilder(above).append("time [s];bean [C]\n");
        for (int t = 0; t <= 700; t += 10) {
            text.append(String.format(Locale.ROOT, "%d;%.1f%n", t, t <= 60 ? 200 - 2.0 * t : 80 + (t - 60) * 0.2));
        }
        return text.toString();
    }

    private String gather() throws IOException {
        StringBuilder out = new StringBuilder();
        assertEquals(
                0,
                Gather.run(temporary.resolve("old"), temporary.resolve("made"), Optional.empty(), Gather.NOBODY, out),
                out.toString());
        return out.toString();
    }

    private Batch batch(String name) throws IOException {
        return Logbook.open(temporary.resolve("made")).batch(name);
    }

    private static double kilograms(Batch batch) {
        return batch.conditions().greenMass().orElseThrow().in(MassUnit.KILOGRAM);
    }

    @Test
    void theLotAboveTheReadingsAndTheMassInTheNameAreTheBatchs() throws IOException {
        write("2031-06-11 08.56 batch 61 5,38kg.csv", readings("coffee: Salt Meadow\n"));
        write("2031-06-11 09.16 batch 62 4,2kg.csv", readings("coffee: Lantern Hill\n"));
        String out = gather();
        assertEquals(Optional.of("Salt Meadow"), batch("61").lot());
        assertEquals(5.38, kilograms(batch("61")), 1e-9);
        assertEquals(Optional.of("Lantern Hill"), batch("62").lot());
        assertEquals(4.2, kilograms(batch("62")), 1e-9);
        assertTrue(out.contains("names.green-mass"), out);
    }

    @Test
    void whatAListSaysStands() throws IOException {
        write("2031-06-11 batch 61 5kg.csv", readings("coffee: Salt Meadow\n"));
        write("2031-06-11 batch 62 5kg.csv", readings("coffee: Salt Meadow\n"));
        write(
                "list.csv",
                "batch;date;coffee;green mass [kg];roasted mass [kg]\n61;2031-06-11;Quay;4.9;4.2\n62;2031-06-11;Quay;4.8;4.1\n");
        gather();
        assertEquals(Optional.of("Quay"), batch("61").lot());
        assertEquals(4.9, kilograms(batch("61")), 1e-9);
    }

    @Test
    void aMassInANameThatIsNotReadIsNamed() throws IOException {
        write("2031-06-11 batch 61 5kg 4kg.csv", readings(""));
        String out = gather();
        assertTrue(batch("61").conditions().greenMass().isEmpty());
        assertTrue(
                out.contains("The mass in the name of 1 file, such as '2031-06-11 batch 61 5kg 4kg', is not used."),
                out);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "batch 61 5,38kg | 5.38",
                "batch 61 5.4 kg | 5.4",
                "batch 61 800g | 0.8",
                "batch 61 10 lb | 4.5359237",
                "batch 61 0 kg |",
                "batch 61 1,250g |",
                "batch 61 5kg in 4kg out |",
                "batch 61 12gauge |",
                "batch 61 |"
            })
    void oneMassWithItsUnitIsReadAndAnotherIsNot(String name, String kilograms) {
        assertEquals(Optional.ofNullable(kilograms), RecordingFacts.kilograms(name));
    }
}
