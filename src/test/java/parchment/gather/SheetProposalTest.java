package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What each column of a list of batches is taken for, by its heading and its values. */
class SheetProposalTest {
    private static String proposed(String heading, String... cells) {
        List<List<String>> rows = Arrays.stream(cells).map(List::of).toList();
        Table file = Tables.of(List.of(heading), rows);
        return SheetProposal.propose(StrangeColumn.of(file, 0));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                // As batches.csv has it.
                "green mass [kg]|1.2|green mass [kg]",
                "Drop [min:s]|9:30|Drop [min:s]",
                "operator|ann|operator",
                // A unit that it cannot have.
                "green mass [s]|1.2|extra",
                // The batch.
                "Batch|17|Batch",
                "Roast|17|batch",
                "Roast No.|17|batch",
                "nr|17|batch",
                "ID|17|batch",
                "batch name|17|batch",
                "batch weight|x|extra",
                // Dates.
                "when|2025-03-04 09:15|roasted at",
                "Roast date|2025-03-04|date",
                "day|4.3.2025|date",
                "roasted|2025-03-04|date",
                "expiry|2025-03-04|extra",
                // Masses.
                "green in kg|1.2|green mass [kg]",
                "Green g|1200|green mass [g]",
                "weight in (lb)|2.5|green mass [lb]",
                "raw|100|green mass [kg]",
                "raw|101|green mass [g]",
                "batch size|12|green mass [kg]",
                "raw|a lot|extra",
                "Out|1.02|roasted mass [kg]",
                "roasted weight (g)|1020|roasted mass [g]",
                "end weight lb|2.2|roasted mass [lb]",
                "out|a little|extra",
                // Marks.
                "Total time|9:30|drop [min:s]",
                "end|39.9|drop [min]",
                "end|40|drop [s]",
                "roast time|560|drop [s]",
                "Crack|8:10|first crack start [min:s]",
                "first crack|490|first crack start [s]",
                "yellow|4.5|yellowing [min]",
                "Yellow point|4:30|yellowing [min:s]",
                "crack|loud|extra",
                "second crack|610|second crack start [s]",
                // Times of the day.
                "start|9:15|time of charge",
                "Clock|9:15|time of charge",
                "lunch|12:15|extra",
                // Charge.
                "charge temp|260|charge temperature [°C]",
                "Charge temperature|261|charge temperature [°F]",
                "charge temp|hot|extra",
                "temp|200|extra",
                "charge|200|extra",
                // Words.
                "Coffee|Cinder Ridge|lot",
                "green lot|Cinder Ridge|lot",
                "who|ann|operator",
                "Roasted by|ann|operator",
                "Comments|fine|note",
                "remark|fine|note",
                "weather|rain|extra",
            })
    void takesAColumnForWhatItsHeadingAndValuesSay(String heading, String cell, String proposal) {
        assertEquals(proposal, proposed(heading, cell, cell));
    }

    @Test
    void anEmptyColumnOfNoKnownNameIsLeftOut() {
        assertEquals("leave out", proposed("weather", "", ""));
        assertEquals("note", proposed("notes", "", ""));
    }

    @Test
    void ourOwnWordsAreNoHeading() {
        assertEquals("extra", proposed("extra", "rain"));
        assertEquals("date", proposed("date", "2025-03-04"));
        assertEquals("extra", proposed("date", "rain"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "date",
                "Date",
                "time of charge",
                "extra",
                "leave out",
                "batch",
                "green mass [kg]",
                "Green_Mass [g]"
            })
    void knowsWhatMayBeAnswered(String answer) {
        assertTrue(SheetProposal.isKnown(answer), answer);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "weather", "green mass", "green mass [s]", "leave", "drop [kg]"})
    void knowsWhatMayNotBeAnswered(String answer) {
        assertFalse(SheetProposal.isKnown(answer), answer);
    }
}
