package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.logbook.Quantity;
import parchment.sheet.DateOrder;

class FolderNamesTest {
    private static final Path ROOT = Path.of("/old/2031-01-01 copy");

    private static FoundTable table(String file) {
        return Tables.of(
                ROOT.resolve(file).toString(), List.of(), List.of("time [s]", "bean"), List.of(List.of("0", "90")));
    }

    private static GatheredBatch curve(String file, Optional<LocalDate> day) {
        FoundTable table = table(file);
        Recording recording = Recording.of(
                table, List.of(Meaning.time("s"), Meaning.of(Quantity.BEAN_TEMPERATURE, "°C")), DateOrder.ISO_ONLY);
        return new GatheredBatch(
                TablePlace.of(table).stem(),
                0,
                Optional.empty(),
                day,
                Optional.of(recording),
                0,
                Double.NEGATIVE_INFINITY,
                Double.POSITIVE_INFINITY,
                Map.of(),
                Map.of(),
                List.of());
    }

    @ParameterizedTest
    @CsvSource({
        "2031-03-04/1.csv, 2031-03-04",
        "04.03.2031/1.csv, 2031-03-04",
        "Tuesday 4 March 2031/1.csv, 2031-03-04",
        "2031/03/04/1.csv, 2031-03-04",
        "2031-03-04/north/1.csv, 2031-03-04",
        "2031-03-01 to 2031-03-31/1.csv, ''",
        "export of 2031-03-04/1.csv, ''",
        "March 2031/1.csv, ''",
        "north/1.csv, ''",
        "1.csv, ''"
    })
    void aFolderNamesADayIfItIsADayAndNothingElseAndLiesWithinTheGatheredOne(String file, String day) {
        Optional<LocalDate> read = new FolderDays(Optional.of(ROOT))
                .of(ROOT.resolve(file))
                .flatMap(written -> written.on(DateOrder.DAY_MONTH_YEAR));
        assertEquals(day.isEmpty() ? Optional.empty() : Optional.of(LocalDate.parse(day)), read);
    }

    @Test
    void theDayOfAFolderIsToldAndAskedWhereItHoldsMoreThanADayHas() {
        List<FoundTable> many = new ArrayList<>();
        for (int i = 1; i <= 60; i++) {
            many.add(table("2031-03-04/" + i + ".csv"));
        }
        GatherQuestions told = new GatherQuestions(Map.of());
        assertTrue(FolderDays.decide(many, ROOT, told).root().isPresent());
        assertFalse(told.isOpen(FolderDays.KEY));
        assertTrue(
                told.taken()
                        .contains("  60 recordings without a date lie in 1 folder with a day for a name, such as"
                                + " '2031-03-04': they are of that day: yes (date.folders)"),
                told.taken().toString());
        many.add(table("2031-03-04/61.csv"));
        GatherQuestions asked = new GatherQuestions(Map.of());
        assertTrue(FolderDays.decide(many, ROOT, asked).root().isEmpty());
        assertTrue(asked.isOpen(FolderDays.KEY));
    }

    @Test
    void aRecordingWithADateOfItsOwnNeedsNoFolder() {
        GatherQuestions questions = new GatherQuestions(Map.of());
        assertEquals(
                FolderDays.NONE, FolderDays.decide(List.of(table("2031-03-04/2031-03-02 a.csv")), ROOT, questions));
        assertEquals(List.of(), questions.taken());
    }

    @Test
    void aNameThatStandsInTwoFoldersGetsTheFoldersBeforeIt() {
        Optional<LocalDate> day = Optional.of(LocalDate.of(2031, 3, 4));
        GatheredBatch dated = curve("2031-03-04/1.csv", day);
        GatheredBatch big = curve("Big/1.csv", Optional.empty());
        GatheredBatch alone = curve("Small/roast 7.csv", Optional.empty());
        FolderNames names = FolderNames.of(List.of(dated, big, alone));
        assertEquals(Optional.of("2031-03-04-1"), names.whole(dated));
        assertEquals(Optional.of("Big 1"), names.whole(big));
        assertEquals(Optional.empty(), names.whole(alone), "no other is called so");
        assertEquals(List.of("Small 7"), names.aliases(alone));
    }

    @Test
    void aFolderThatAllLieInSaysNothing() {
        GatheredBatch one = curve("Big/1.csv", Optional.empty());
        FolderNames names = FolderNames.of(List.of(one, curve("Big/2.csv", Optional.empty())));
        assertEquals(List.of(), names.around(one));
        assertEquals(List.of(), names.aliases(one));
        assertEquals(Optional.empty(), names.whole(one));
    }
}
