package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.logbook.Logbook;

/** Asks for the day of tasting where a score sheet's cups cannot be written without it. */
class TastingDayTest {
    @TempDir
    Path temporary;

    private Gather folder(String heading) throws IOException {
        Path folder = Files.createDirectories(temporary.resolve("old"));
        StringBuilder list = new StringBuilder("Roast,Date,Time,Coffee,Green kg,Roasted kg,First crack,Drop\n");
        StringBuilder scores = new StringBuilder(
                "Roast" + (heading.isEmpty() ? "" : "," + heading) + ",Cupper,sweetness,acidity,body\n");
        for (int i = 1; i <= 12; i++) {
            list.append(String.format(
                    java.util.Locale.ROOT,
                    "%d,2031-01-%02d,08:%02d,Quay,12,%.2f,%d:%02d,%d:%02d\n",
                    i,
                    i,
                    10 + i,
                    10.1 + i * 0.02,
                    8 + i % 2,
                    3 * i,
                    10 + i % 2,
                    4 * i));
            for (String cupper : List.of("Ilse", "Noor")) {
                scores.append(i)
                        .append(heading.isEmpty() ? "" : String.format(",2031-02-%02d", i))
                        .append(',')
                        .append(cupper)
                        .append(String.format(
                                java.util.Locale.ROOT,
                                ",%.2f,%.2f,%.2f\n",
                                6 + i % 5 * 0.25,
                                7 + i % 3 * 0.25,
                                6.5 + i % 4 * 0.5));
            }
            if (!heading.isEmpty()) {
                // Means have no day, and nothing is asked for them.
                scores.append(i)
                        .append(String.format(
                                java.util.Locale.ROOT,
                                ",,mean,%.2f,%.2f,%.2f\n",
                                6 + i % 5 * 0.25,
                                7 + i % 3 * 0.25,
                                6.5 + i % 4 * 0.5));
            }
        }
        Files.writeString(folder.resolve("roasts.csv"), list);
        Files.writeString(folder.resolve("scores.csv"), scores);
        return Gather.of(folder);
    }

    @Test
    void cupsWithoutADayAreNotCountedAndTheirDayIsTheFirstQuestion() throws IOException {
        Gather gather = folder("");
        assertEquals("This would make 12 batches, 0 with a curve.", GatherWords.wouldMake(gather.gathering()));
        GatherQuestions.Open first = gather.gathering().questions().open().get(0);
        assertTrue(
                first.listed()
                        .startsWith(
                                "On which day were the 24 cups of 'scores.csv' tasted? Without a day none of them is written."
                                        + " Answer with the day, or with the heading of the column that holds it. Not answered yet; until then, in doubt: unknown ("),
                first.listed());
        assertTrue(first.listed().endsWith(".tasted; it decides 24 cups)"), first.listed());

        Gather answered = gather.answer(first.key(), "2031-03-18");
        assertEquals(
                "This would make 12 batches, 0 with a curve, and 24 scored cups.",
                GatherWords.wouldMake(answered.gathering()));
        assertFalse(answered.text().contains("On which day was this tasted"), answered.text());
        assertEquals(24, answered.writeTo(temporary.resolve("new")).cups().size());
        assertFalse(first.valid().test("some day"));
    }

    @Test
    void theDayMayBeAColumnThatIsNamed() throws IOException {
        Gather gather = folder("Roasted on");
        List<GatherQuestions.Open> open = gather.gathering().questions().open();
        assertEquals(0, gather.gathering().scored().written());
        gather = gather.answer(open.get(0).key(), "roasted ON");
        assertEquals(24, gather.gathering().scored().written());
        Logbook read = gather.writeTo(temporary.resolve("new"));
        assertEquals(24, read.cups().size());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Fecha cata",
                "Fecha de la cata",
                "Data degustazione",
                "Data della degustazione",
                "Date dégustation",
                "Date de dégustation",
                "Data da prova",
                "Data prova",
                "Verkostet am",
                "Verkostungsdatum",
                "Tasted on",
                "Cupping date",
                "Date cupped",
                "Dégusté le"
            })
    void theWordsForTheDayOfTastingAreKnown(String heading) throws IOException {
        Gather gather = folder(heading);
        assertEquals(24, gather.gathering().scored().written(), gather.text());
        assertFalse(gather.text().contains("On which day"), gather.text());
    }

    @Test
    void aQuestionMarkTellsWhatCanBeAnsweredAndChangesNothing() throws IOException {
        Gather gather = folder("");
        GatherQuestions.Open first = gather.gathering().questions().open().get(0);
        Gather asked = gather.answer(first.key(), "?")
                .answer("sheet.a.column.1", "?")
                .answer("sheet.b.column.1", "?")
                .answer("time.zone", "?");
        assertEquals(first.listed(), asked.gathering().questions().open().get(0).listed());
        assertTrue(
                asked.text().contains(first.key() + " can be: unknown, a day such as 2031-03-18, Roast, Cupper,"),
                asked.text());
        assertTrue(asked.text().contains("time.zone can be: a time zone such as Europe/Berlin."), asked.text());
        assertTrue(asked.text().contains("column.1 can be: batch, blind code, lot, cupper, attribute,"), asked.text());
        assertEquals(GatherWords.wouldMake(gather.gathering()), GatherWords.wouldMake(asked.gathering()));
        assertTrue(org.junit.jupiter.api.Assertions.assertThrows(
                        parchment.logbook.contents.LogbookException.class,
                        () -> gather.answer(first.key(), "some day").gathering())
                .getMessage()
                .contains("is none of: unknown"));
    }

    /** The day stands once, above the first cupper's table; with a second day on the sheet nobody knows which the third table is of. */
    @ParameterizedTest
    @ValueSource(strings = {"", "2031-02-04"})
    void tablesOneBelowTheOtherAreOfTheOneDayThatStandsAboveTheFirst(String second) throws IOException {
        folder("Tasted");
        Path folder = temporary.resolve("old");
        Files.delete(folder.resolve("scores.csv"));
        List<String> lines = new java.util.ArrayList<>(List.of("Cupping 1", "Tasted on 3 February 2031"));
        for (String cupper : List.of("Ilse", "Noor", "Maren")) {
            lines.add("");
            if (cupper.equals("Noor") && !second.isEmpty()) {
                lines.add("Tasted on," + second);
            }
            lines.add("Cupper," + cupper);
            lines.add("batch,acidity,sweetness,body");
            lines.addAll(List.of("1,6,6.5,7.5", "2,6.25,7.5,5.25", "3,4.5,7.25,4.75"));
        }
        Files.write(folder.resolve("cupping 1.csv"), lines);
        Gather gather = Gather.of(folder);
        List<String> asked = gather.gathering().questions().open().stream()
                .map(GatherQuestions.Open::listed)
                .filter(line -> line.startsWith("On which day were the 3 cups of 'cupping 1.csv' tasted?"))
                .toList();
        assertEquals(second.isEmpty() ? 0 : 1, asked.size());
        String days = gather.gathering().scored().cups().stream()
                .map(cup -> cup.cup().tastedOn().map(String::valueOf).orElse("none"))
                .distinct()
                .sorted()
                .collect(java.util.stream.Collectors.joining(" "));
        assertEquals(second.isEmpty() ? "2031-02-03" : "2031-02-03 2031-02-04 none", days);
    }
}
