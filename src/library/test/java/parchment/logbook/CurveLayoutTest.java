package parchment.logbook;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.logbook.contents.LogbookException;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

class CurveLayoutTest {
    @TempDir
    Path temporary;

    @Test
    void readsALoggersFileThroughTheLayoutInTheFolder() throws IOException {
        Logbook logbook = new WrittenFolder(temporary)
                .with(
                        "curves/layout.properties",
                        "delimiter=semicolon",
                        "decimal=comma",
                        "rows.to.skip=2",
                        "time.form=time of day",
                        "time=Uhrzeit",
                        "bean temperature=Fühler 2 [°F]".replace(" temp", ".temp"),
                        "gas=#4 [mbar]")
                .with(
                        "curves/1.csv",
                        "Logger 3",
                        "gestartet;heute",
                        "Nr;Uhrzeit;Fühler 2;Gas",
                        "1;23:59:58;392,5;12",
                        "2;23:59:59,5;390;12",
                        "3;00:00:01;388;13,5")
                .withText("curves/own.csv", WrittenFolder.CURVE)
                .open();
        Batch batch = logbook.batch("1");
        assertArrayEquals(
                new double[] {0, 1.5, 3}, batch.beanTemperature().orElseThrow().seconds(), 1e-9);
        assertEquals((392.5 - 32) / 1.8, batch.beanTemperature().orElseThrow().valueAt(0), 1e-9);
        assertEquals(
                Unit.labelled("mbar"), batch.curve(Quantity.GAS).orElseThrow().unit());
        assertEquals(13.5, batch.curve(Quantity.GAS).orElseThrow().valueAt(2));
        assertEquals(
                113, logbook.batch("own").beanTemperature().orElseThrow().size(), "a file in the logbook's own form");
        assertEquals(0, logbook.problems().size(), logbook.problems().text());
    }

    @Test
    void readsAFileWithoutHeadingsThroughALayoutInCode() throws IOException {
        WrittenFolder folder =
                new WrittenFolder(temporary).with("curves/1.csv", "x\t0:00\t200", "x\t0:30\t190", "x\t61:00\t195");
        CurveLayout layout = CurveLayout.standard()
                .withHeadings(CurveLayout.Headings.NO)
                .withTime("#2", "min:s")
                .with(Quantity.BEAN_TEMPERATURE, "#3", "°C");
        Batch batch = Logbook.open(folder.path(), layout).batch("1");
        assertArrayEquals(
                new double[] {0, 30, 3660},
                batch.beanTemperature().orElseThrow().between(0, 4000).seconds());
    }

    @Test
    void writesItselfAsTheSettingsItIsReadFrom() {
        CurveLayout layout = CurveLayout.standard()
                .withDelimiter('\t')
                .withDecimal(CurveLayout.Decimal.COMMA)
                .withRowsSkipped(3)
                .withHeadings(CurveLayout.Headings.NO)
                .withTimeOfDay("#1")
                .with(Quantity.AIR_TEMPERATURE, "#2", "K")
                .with(Quantity.DRUM_SPEED, "#3", "1/min");
        ProblemLog problems = new ProblemLog("layout.properties");
        assertEquals(layout, LayoutFile.of(layout.settings(), problems));
        assertTrue(problems.toList().isEmpty());
        assertEquals("the layout of the logbook format", CurveLayout.standard().toString());
    }

    @Test
    void saysWhatIsWrongWithALayout() throws IOException {
        ProblemLog problems = new ProblemLog("layout.properties");
        LayoutFile.of(Map.of("delimitr", ";"), problems);
        LayoutFile.of(Map.of("time", "Clock [hours]"), problems);
        LayoutFile.of(Map.of("bean.temperature", "Probe"), problems);
        LayoutFile.of(Map.of("decimal", "dot"), problems);
        String text = problems.toList().toString();
        assertTrue(text.contains("Did you mean 'delimiter'?"), text);
        assertTrue(text.contains("needs the unit s, min, min:s or h:min:s; it was given 'hours'"), text);
        assertTrue(text.contains("needs the unit °C, °F or K"), text);
        assertTrue(text.contains("expected point or comma"), text);
        new WrittenFolder(temporary).with("layout.properties", "decimal=dot");
        assertThrows(LogbookException.class, () -> CurveLayout.read(temporary.resolve("layout.properties")));
        assertThrows(
                IllegalArgumentException.class, () -> CurveLayout.standard().withRowsSkipped(-1));
    }

    @Test
    void namesTheColumnThatALayoutAsksForInVain() throws IOException {
        Logbook logbook = new WrittenFolder(temporary)
                .with("curves/layout.properties", "time=Clock [s]", "bean.temperature=Beans [°F]")
                .with("curves/1.csv", "clock,beens", "0,390")
                .open();
        String text = logbook.problems().text();
        assertTrue(text.contains("no column 'Beans' for the bean temperature"), text);
        assertEquals(TemperatureUnit.CELSIUS, logbook.readerUnit());
    }
}
