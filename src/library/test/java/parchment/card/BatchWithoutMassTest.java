package parchment.card;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.display.ShortSentences;
import parchment.display.answer.InShort;
import parchment.drift.Usual;
import parchment.logbook.Logbook;
import parchment.logbook.Problems;
import parchment.logbook.written.BatchConditions;
import parchment.logbook.written.Problem;
import parchment.quantity.Temperature;

/** A batch whose green mass could not be read is held against batches of every charge; its card says so first. */
class BatchWithoutMassTest {
    private static final Problem MASS = new Problem(
            "batches.csv", 11, "green mass [kg]", "'500'", "10 g to 300 kg", "value treated as missing", "B10");

    private static CardLogbook without(double charge) {
        return CardLogbook.of(10)
                .change(
                        "B10",
                        b -> b.conditions(new BatchConditions(
                                Optional.empty(),
                                Optional.empty(),
                                Optional.of(Temperature.celsius(charge)),
                                Optional.empty(),
                                Optional.empty(),
                                OptionalDouble.empty(),
                                OptionalDouble.empty(),
                                Optional.empty())));
    }

    private static Logbook with(CardLogbook built, Problem... problems) {
        return Logbook.of(built.contents().toBuilder()
                .problems(new Problems(List.of(problems)))
                .build());
    }

    private static InShort card(Logbook logbook) {
        return ShortSentences.keptBy(BatchCard.of("B10", logbook).inShort());
    }

    @Test
    void theMassThatCouldNotBeReadStandsFirstAndIsToBeMended() {
        assertEquals(
                new InShort(
                        "The green mass of batch B10 could not be read: found '500'.",
                        "Beside batches of every charge it is like the others.",
                        "Mend it in batches.csv, line 11, and ask again."),
                card(with(without(180), MASS)));
        CardLogbook cupped = without(180).cup("open", "B10", "liking", 6);
        assertEquals(
                "Mend it in batches.csv, line 11, and ask again.",
                card(with(cupped, MASS)).next());
        assertEquals(
                "Beside batches of every charge it is unlike: charge temperature 260.0 °C, 80.0 °C above the usual.",
                card(with(without(260), MASS)).howSure().replaceFirst("\\d+\\.\\d °C above", "80.0 °C above"));
    }

    /** Nothing was found in its place; another column's problem; a mass of its own beside a problem. */
    @ParameterizedTest
    @CsvSource({"none,false", "green mass [kg],true", "roasted mass [kg],false"})
    void onlyAMassThatWasWrittenAndNotReadIsSaidToBe(String column, boolean said) {
        Problem problem = new Problem("batches.csv", 11, column, "'500'", "a mass", "value treated as missing", "B10");
        Logbook logbook = column.equals("none") ? with(without(180)) : with(without(180), problem);
        assertEquals(said, Usual.of(logbook.batch("B10"), logbook).massNotRead().isPresent());
        Logbook weighed = with(CardLogbook.of(10), MASS);
        assertEquals(Optional.empty(), Usual.of(weighed.batch("B10"), weighed).massNotRead());
    }
}
