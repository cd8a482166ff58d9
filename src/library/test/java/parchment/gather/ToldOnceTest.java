package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Holds that what is alike is told once, and that what is not read is named. */
class ToldOnceTest {
    @TempDir
    Path temporary;

    private void write(String file, String text) throws IOException {
        Path path = temporary.resolve("old").resolve(file);
        Files.createDirectories(path.getParent());
        Files.writeString(path, text);
    }

    private static String readings(String above, String more) {
        StringBuilder text = new StringBuilder(above)
                .append("time [s];bean [C]")
                .append(more.isEmpty() ? "" : ";odd")
                .append('\n');
        for (int t = 0; t <= 700; t += 10) {
            double bean = t <= 60 ? 200 - 2 * t : 80 + (t - 60) * 0.2;
            text.append(String.format(Locale.ROOT, "%d;%.1f", t, bean))
                    .append(more.isEmpty() ? "" : t % 20 == 0 ? ";x" + more : ";" + t)
                    .append('\n');
        }
        return text.toString();
    }

    private String look() {
        StringBuilder out = new StringBuilder();
        assertEquals(0, Gather.look(temporary.resolve("old"), Optional.empty(), out), out.toString());
        return out.toString();
    }

    private static int count(String text, String part) {
        return text.split(java.util.regex.Pattern.quote(part), -1).length - 1;
    }

    @Test
    void theTablesOfATextOfNotesAreTakenTogether() throws IOException {
        write("curves/1.csv", readings("", ""));
        write("notes.txt", """
                Friday, 2 May 2031
                #1 08:04 Kela, 5000g in, 4276g out, yellow 4:16, fc 7:48, drop 10:04
                #2 08:30 Low Garden, 5000g in, 4217g out, yellow 4:48, fc 8:40, drop 11:46

                Monday, 5 May 2031
                #3 08:00 Kela, 5000g in, 4236g out, yellow 4:38, fc 8:14, drop 10:50
                #4 08:23 Kela, 5000g in, 4195g out, yellow 4:26, fc 8:10, drop 9:58
                #5 08:41 Kela, 5000g in, 4187g out, yellow 3:54, fc 6:44, drop 9:06
                """);
        String out = look();
        assertTrue(
                out.contains(
                        "'notes.txt': its 2 tables are no lists of batches, no score sheets and no recordings; left out."),
                out);
        assertTrue(out.contains("Sheet b: 'notes.txt', as the one before (sheet.b.kind)."), out);
        assertFalse(out.contains("are needed"), out);
    }

    @Test
    void filesOfOneKindThatAreNoRecordingsAreTakenTogether() throws IOException {
        write("curves/1.csv", readings("", ""));
        for (int i = 1; i <= 3; i++) {
            write("other/" + i + ".csv", "weather;wind\nfair;north\nfoul;south\n");
        }
        String out = look();
        assertEquals(1, count(out, "are needed"), out);
        assertTrue(
                out.contains(
                        "3 tables with the same headings, '1.csv', '2.csv', '3.csv': they are no lists of batches"),
                out);
    }

    @Test
    void columnsThatAreTheSameOnASecondSheetAreNotToldAgainAndNameNoFile() throws IOException {
        String head = "Batch,Date,Coffee,Green kg,Drop\n";
        write(
                "May.csv",
                head + "1,2031-05-02,Kela,5.0,10:10\n2,2031-05-02,Fell,5.1,10:20\n3,2031-05-03,Kela,5.0,11:10\n");
        write(
                "June.csv",
                head + "4,2031-06-02,Kela,5.0,10:10\n5,2031-06-02,Fell,5.1,10:20\n6,2031-06-03,Kela,5.0,11:10\n");
        String out = look();
        assertEquals(1, count(out, "Column 3 'Coffee' is named"), out);
        assertTrue(out.contains("Its columns are the same as those of sheet a (sheet.b.column.1 and so on)."), out);
    }

    @Test
    void massesAboveReadingsAndColumnsLeftOutAreNamed() throws IOException {
        write("1.csv", readings("Brand 1, Kela, 250 gram in, 210 gram uit\n", " 1"));
        String out = look();
        assertTrue(
                out.contains("Style a: the masses above the readings of 1 recording are not read, such as"
                        + " 'Brand 1, Kela, 250 gram in, 210 gram uit'. Write them into a list of batches."),
                out);
        assertTrue(
                out.contains("Style a: the values of column 3 'odd' are in no batch of its 1 recording. To keep them,"
                        + " answer style.a.column.3 with extra."),
                out);
    }

    @Test
    void aWordForMachineAndPersonIsAMachineWhereEachValueHasANumber() throws IOException {
        StringBuilder list = new StringBuilder("Nº;Data;Torrador;Café;Peso cru (kg);Peso torrado (kg)\n");
        for (int i = 1; i <= 8; i++) {
            list.append(i + ";0" + i + ".05.2031;Torrador " + (1 + i % 2) + ";Kela;15;13," + i + "\n");
        }
        write("torras.csv", list.toString());
        String out = look();
        assertTrue(out.contains("machine (sheet.a.column.3)"), out);
        assertFalse(out.contains("What is it?"), out);
    }
}
