package parchment.logbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.calendar.RoastCalendar;
import parchment.logbook.written.Problem;
import parchment.quantity.Elapsed;

/** Holds the page on the logbook format to what is read. */
class LogbookFormatPageTest {
    private static final Pattern EXAMPLE = Pattern.compile("```\\w+ (\\S+)\\n(.*?)```", Pattern.DOTALL);

    @TempDir
    Path temporary;

    private static String page() throws IOException {
        return Files.readString(Path.of("..", "docs", "logbook-format.md"));
    }

    private Logbook example() throws IOException {
        WrittenFolder folder = new WrittenFolder(temporary);
        Matcher example = EXAMPLE.matcher(page());
        while (example.find()) {
            folder.withText(example.group(1), example.group(2));
        }
        return folder.open();
    }

    @Test
    void itsExamplesAreALogbook() throws IOException {
        Logbook logbook = example();
        assertEquals(
                List.of("batches.csv, line 3, column 'batch': found the batch '102' without a curve;"
                        + " expected a file 'curves/102.csv'; kept without a curve."),
                logbook.problems().list().stream().map(Problem::toString).toList());
        for (String table : FolderReader.TABLES) {
            assertTrue(Files.exists(temporary.resolve(table)), "an example of " + table);
        }
        assertEquals(List.of("sweetness", "body"), List.copyOf(logbook.attributes()));
        assertEquals(35, logbook.batch("101").extraNumber("chaff [g]"));
    }

    @Test
    void itsFactsAreAsItSays() throws IOException {
        Logbook logbook = example();
        RoastCalendar facts = RoastCalendar.of(logbook);
        assertEquals(OptionalInt.of(2), facts.batchOfTheDay(logbook.batch("102")));
        assertEquals(Optional.of(Elapsed.of(15, 41)), facts.sinceLastDrop(logbook.batch("102")));
        assertEquals(OptionalInt.of(4), facts.restDays(logbook.cups().get(0)));
    }

    @Test
    void namesEveryColumnAndSettingThatIsRead() throws IOException {
        String page = page();
        TreeSet<String> missing = new TreeSet<>();
        BatchesFile.FIELDS.forEach(field -> missing.add(field.name()));
        for (Quantity quantity : Quantity.values()) {
            missing.add(quantity.words());
            missing.add(quantity.words().replace(' ', '.'));
        }
        missing.addAll(Settings.KEYS);
        missing.addAll(LayoutFile.KEYS);
        missing.removeIf(page::contains);
        assertEquals(List.of(), List.copyOf(missing));
    }

    @Test
    void itsTwoFormsOfALayoutAreTheSame() throws IOException {
        Matcher written =
                Pattern.compile("```properties\\n(.*?)```", Pattern.DOTALL).matcher(page());
        assertTrue(written.find());
        new WrittenFolder(temporary).withText("layout.properties", written.group(1));
        CurveLayout inCode = CurveLayout.standard()
                .withDelimiter(';')
                .withDecimal(CurveLayout.Decimal.COMMA)
                .withRowsSkipped(2)
                .withTime("#1", "min:s")
                .with(Quantity.BEAN_TEMPERATURE, "Sensor 2", "°F")
                .with(Quantity.GAS, "#4", "mbar");
        assertEquals(inCode, CurveLayout.read(temporary.resolve("layout.properties")));
    }
}
