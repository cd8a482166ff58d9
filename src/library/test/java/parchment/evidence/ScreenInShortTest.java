package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import parchment.display.ShortSentences;
import parchment.display.answer.InShort;

/** Holds each first sentence of a screen by built looks. */
class ScreenInShortTest {
    private static Screen.Look look(String attribute, double statistic, double chance) {
        return new Screen.Look(attribute, "drop temperature", statistic, chance, 0.1, "1 °C");
    }

    private static InShort words(Screen.Shuffled shuffled, Screen.Look... looks) {
        InShort words = new Screen(List.of(looks), 3.4, shuffled, 30, 80, 400, 1).inShort();
        return ShortSentences.keptBy(words);
    }

    @Test
    void theLookFurthestAboveLuckIsToldFirst() {
        assertEquals(
                new InShort(
                        "Acidity fell with the drop temperature, further above luck than any other of 3 looks.",
                        "One other look is above luck too, and what is behind them this cannot say.",
                        "Ask each of them by itself next, and look at its picture."),
                words(
                        Screen.Shuffled.BATCHES_OF_ONE_LOT_AND_DAY,
                        look("sweetness", 4.0, 0.0499),
                        look("acidity", -5.0, 0.001),
                        look("body", 3.0, 0.05)));
        assertEquals(
                new InShort(
                        "Sweetness rose with the drop temperature, further above luck than any other of 1 looks.",
                        "No other look is above luck, but anything that moves with the calendar can do this.",
                        "Ask it by itself next, and look at its picture."),
                words(Screen.Shuffled.WHOLE_DAYS, look("sweetness", 4.0, 0.01)));
    }

    @Test
    void nothingAboveTheLineIsNothing() {
        assertEquals(
                new InShort(
                        "Nothing stands out: not one of 2 looks is above luck.",
                        "The furthest, sweetness rose with the drop temperature, is what the best of so many reaches by luck alone.",
                        "Ask the one question that you care about by itself, or cup more batches."),
                words(
                        Screen.Shuffled.BATCHES_OF_ONE_LOT_AND_DAY,
                        look("sweetness", 3.0, 0.05),
                        look("acidity", 1.0, 0.9)));
    }

    @Test
    void noLooksAtAllSaysWhatToCup() {
        assertEquals(
                new InShort(
                        "What goes with what cannot be told from these batches.",
                        "Too few batches were scored.",
                        "Cup more batches, two or more of one lot on the same roast day."),
                words(Screen.Shuffled.WHOLE_DAYS));
    }
}
