package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.gather.ChargeEvidence.Taken;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.sheet.DateOrder;

/** Which charge stands where the fall, the typed words and the zero of the clock differ: one row on each side of each edge. */
class ChargeEvidenceTest {
    private static final Map<String, Optional<MarkKind>> MARKS = Map.of("charge", Optional.of(MarkKind.CHARGE));

    private static Recording recording(String heading, String form, int from, int to, List<Integer> typed) {
        List<List<String>> rows = IntStream.rangeClosed(from, to)
                .mapToObj(at -> List.of(Integer.toString(at), "200", typed.contains(at) ? "charge" : ""))
                .toList();
        return Recording.of(
                Tables.of(List.of(heading, "beans", "words"), rows),
                List.of(Meaning.time(form), Meaning.of(Quantity.BEAN_TEMPERATURE, "°C"), Meaning.EVENTS),
                DateOrder.ISO_ONLY);
    }

    private static ChargeEvidence typed(List<Double> seen, Integer... typed) {
        return ChargeEvidence.of(recording("t", "s", 0, 1000, List.of(typed)), seen, MARKS);
    }

    @ParameterizedTest
    @CsvSource({
        // The fall at 100 s, what was typed, and what is taken without and with an answer for what was typed.
        "101, 101, 101",
        "130, 130, 130",
        "131, 100, 131",
        "190, 100, 190",
        "70, 70, 70",
        "69, 100, 69",
        "339, 100, 339",
    })
    void oneBatchIsMadeOfAFallAndAChargeThatIsTypedLate(int typed, double taken, double answered) {
        ChargeEvidence evidence = typed(List.of(100.0), typed);
        assertEquals(List.of(taken), evidence.charges(Taken.FALL, Taken.FALL));
        assertEquals(List.of(answered), evidence.charges(Taken.WRITTEN, Taken.WRITTEN));
        assertEquals(taken != answered, !evidence.typedFarFromFall().isEmpty());
    }

    @Test
    void aChargeThatIsTypedFourMinutesAfterAFallIsAnother() {
        assertEquals(List.of(100.0, 340.0), typed(List.of(100.0), 340).charges(Taken.FALL, Taken.FALL));
        assertEquals(List.of(100.0, 700.0), typed(List.of(100.0, 700.0)).charges(Taken.FALL, Taken.FALL));
    }

    @Test
    void ofTwoTypedWithinFourMinutesTheOneNearestToTheFallStands() {
        assertEquals(List.of(100.0), typed(List.of(102.0), 20, 100).charges(Taken.FALL, Taken.FALL));
        assertEquals(List.of(20.0), typed(List.of(), 20, 100).charges(Taken.FALL, Taken.FALL));
        assertEquals(List.of(20.0), typed(List.of(), 20, 259).charges(Taken.FALL, Taken.FALL));
        assertEquals(List.of(20.0, 260.0), typed(List.of(), 20, 260).charges(Taken.FALL, Taken.FALL));
    }

    private static ChargeEvidence zero(String heading, int from, int to, List<Double> seen) {
        return ChargeEvidence.of(recording(heading, "s", from, to, List.of()), seen, MARKS);
    }

    @ParameterizedTest
    @CsvSource({
        "3, 0, 0",
        "-3, 0, 0",
        "30, 0, 0",
        "31, 31, 0",
        "-31, -31, 0",
        "400, 400, 0",
    })
    void aWrittenZeroStandsUnlessTheFallIsFarFromIt(double fall, double taken, double answered) {
        for (ChargeEvidence evidence :
                List.of(zero("seconds since charge", 0, 900, List.of(fall)), zero("t", -60, 900, List.of(fall)))) {
            assertEquals(List.of(taken), evidence.charges(Taken.FALL, Taken.FALL));
            assertEquals(answered, evidence.charges(Taken.FALL, Taken.WRITTEN).get(0));
            assertEquals(taken != answered, evidence.againstZero().isPresent());
        }
    }

    @Test
    void withoutAFallTheWrittenZeroIsTheCharge() {
        assertEquals(List.of(0.0), zero("Zeit seit Füllen", 0, 900, List.of()).charges(Taken.FALL, Taken.FALL));
        assertEquals(List.of(0.0), zero("t", -60, 900, List.of()).charges(Taken.FALL, Taken.FALL));
        assertEquals(List.of(), zero("t", 0, 900, List.of()).charges(Taken.FALL, Taken.FALL));
    }

    @Test
    void aClockThatIsNegativeOnceOrEndsSoonHasNoWrittenZero() {
        assertEquals(
                Optional.of("they are negative before it"),
                zero("t", -2, 241, List.of()).zero());
        assertEquals(Optional.empty(), zero("t", -1, 900, List.of()).zero());
        assertEquals(Optional.empty(), zero("t", -60, 240, List.of()).zero());
        assertEquals(
                Optional.of("their heading says so"),
                zero("s since charge", 5, 900, List.of()).zero());
    }

    @Test
    void aTypedChargeIsBelievedBeforeTheZero() {
        ChargeEvidence both = ChargeEvidence.of(recording("t", "s", -60, 900, List.of(12)), List.of(3.0), MARKS);
        assertEquals(List.of(12.0), both.charges(Taken.FALL, Taken.FALL));
    }

    @Test
    void aLaterFallIsABatchOfItsOwnBesideTheZero() {
        List<Double> charges =
                new ArrayList<>(zero("t", -60, 1800, List.of(2.0, 900.0)).charges(Taken.FALL, Taken.FALL));
        assertEquals(List.of(0.0, 900.0), charges);
    }
}
