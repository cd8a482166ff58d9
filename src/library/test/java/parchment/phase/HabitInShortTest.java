package parchment.phase;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import parchment.display.ShortSentences;
import parchment.display.answer.InShort;
import parchment.logbook.MarkKind;
import parchment.quantity.TemperatureUnit;

/** Holds each first sentence on where a roaster writes marks. */
class HabitInShortTest {
    private static final HabitInShort.Written YELLOWING =
            new HabitInShort.Written(MarkKind.YELLOWING, 157.9, OptionalDouble.of(2.1));
    private static final HabitInShort.Written CRACK =
            new HabitInShort.Written(MarkKind.FIRST_CRACK_START, 190.4, OptionalDouble.of(1.1));
    private static final HabitInShort.Written NO_YELLOWING =
            new HabitInShort.Written(MarkKind.YELLOWING, Double.NaN, OptionalDouble.empty());
    private static final HabitInShort.Written NO_CRACK =
            new HabitInShort.Written(MarkKind.FIRST_CRACK_START, Double.NaN, OptionalDouble.empty());

    private static void says(
            TemperatureUnit reader,
            HabitInShort.Written one,
            HabitInShort.Written other,
            String found,
            String howSure,
            String next) {
        InShort words = ShortSentences.keptBy(HabitInShort.of(List.of(one, other), reader));
        assertEquals(found + "\n" + howSure + "\n" + next, words.text());
    }

    @Test
    void bothHabitsAreToldWithHowSteadyTheyAre() {
        says(
                TemperatureUnit.CELSIUS,
                YELLOWING,
                CRACK,
                "You write yellowing around 157.9 °C and first crack start around 190.4 °C.",
                "Once lot, day and pace are known, two of three marks lie within 2.1 °C and 1.1 °C of where they are expected.",
                "Write both the same way each time; what is foretold can be no steadier than the pen.");
    }

    @Test
    void oneHabitIsToldAndTheOtherAskedFor() {
        says(
                TemperatureUnit.FAHRENHEIT,
                NO_YELLOWING,
                CRACK,
                "You write first crack start around 374.7 °F.",
                "Once lot, day and pace are known, two of three marks lie within 2.0 °F of where they are expected.",
                "Write yellowing of more batches too; it takes 6 written marks on 4 roast days.");
        says(
                TemperatureUnit.CELSIUS,
                YELLOWING,
                NO_CRACK,
                "You write yellowing around 157.9 °C.",
                "Once lot, day and pace are known, two of three marks lie within 2.1 °C of where they are expected.",
                "Write first crack start of more batches too; it takes 6 written marks on 4 roast days.");
    }

    @Test
    void noHabitSaysWhatIsNeeded() {
        says(
                TemperatureUnit.CELSIUS,
                NO_YELLOWING,
                NO_CRACK,
                "Where you write your marks cannot be told yet.",
                "Each kind needs 6 written marks on 4 roast days.",
                "Write yellowing and first crack start of every batch, then ask again.");
    }
}
