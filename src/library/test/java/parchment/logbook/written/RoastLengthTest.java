package parchment.logbook.written;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.logbook.Logbook;
import parchment.logbook.WrittenFolder;

/** A clock that counts something else than its heading says is asked about, on either side of a minute and of two hours, and never converted. */
class RoastLengthTest {
    private static final String USED =
            "kept, but no mark and no answer uses a curve whose roast is shorter or longer. ";

    @TempDir
    Path folder;

    private Logbook curve(String time, double from, double to, int readings) throws IOException {
        List<String> lines = new ArrayList<>(List.of(time + ",bean temperature [°C]"));
        for (int i = 0; i < readings; i++) {
            lines.add(String.format(
                    Locale.ROOT, "%.3f,%.1f", from + (to - from) * i / (readings - 1), 100 + 100.0 * i / readings));
        }
        return new WrittenFolder(folder)
                .with("curves/1.csv", lines.toArray(String[]::new))
                .open();
    }

    private static List<String> problems(Logbook logbook) {
        return logbook.problems().list().stream()
                .filter(problem -> problem.expected().equals("a roast of one minute to two hours"))
                .map(problem -> problem.column() + "; " + problem.found() + "; " + problem.done())
                .toList();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "time [s]   | -60000 | 766197 | 300 | 12769:57 (766,197 s) | Are these milliseconds? Divide them by 1,000, or let 'gather' read the file",
                "time [s]   | 0      | 7201   | 300 | 120:01 (7,201 s)     | Are these milliseconds? Divide them by 1,000, or let 'gather' read the file",
                "time [s]   | 8000   | 15201  | 300 | 120:01 (7,201 s)     | Are these milliseconds? Divide them by 1,000, or let 'gather' read the file",
                "time [min] | 0      | 740    | 300 | 740:00 (44,400 s)    | Is the unit right? Write the times in seconds, under 'time [s]'",
                "time [s]   | -1     | 12.3   | 300 | 0:12 (12 s)          | Are these minutes? Write 'time [min]'",
                "time [s]   | 0      | 59     | 10  | 0:59 (59 s)          | Are these minutes? Write 'time [min]'",
                "time [min] | 0      | 0.2    | 100 | 0:12 (12 s)          | Is the unit right? Write the times in seconds, under 'time [s]'"
            })
    void asksAboutTheUnit(String time, double from, double to, int readings, String found, String asked)
            throws IOException {
        Logbook logbook = curve(time, from, to, readings);
        assertEquals(List.of(time + "; a curve of " + found + "; " + USED + asked), problems(logbook));
        assertEquals(
                readings, logbook.batch("1").beanTemperature().orElseThrow().size());
    }

    /** Nine readings may be a log that was cut; hours of warming up before zero are no roast. */
    @ParameterizedTest
    @CsvSource({
        "time [s], -9000, 7200, 300",
        "time [s], 8000, 15200, 300",
        "time [s], 0, 60, 300",
        "time [s], 0, 59, 9",
        "time [min], 0, 12.3, 300",
        "time, 0, 12.3, 300"
    })
    void asksNothingOfARoast(String time, double from, double to, int readings) throws IOException {
        assertEquals(List.of(), problems(curve(time, from, to, readings)));
    }
}
