package parchment.evidence;

import java.util.List;
import parchment.display.answer.InShort;
import parchment.evidence.finding.Wording;

/** Puts the many looks of a screen into three sentences. */
final class ScreenInShort {
    private ScreenInShort() {}

    static InShort of(Screen screen) {
        if (screen.looks().isEmpty()) {
            return new InShort(
                    "What goes with what cannot be told from these batches.",
                    screen.whyNot().isEmpty()
                            ? "Too few batches were scored."
                            : Wording.sentence(screen.whyNot()).replaceFirst("[.]*$", "."),
                    "Cup more batches, two or more of one lot on the same roast day.");
        }
        List<Screen.Look> above = screen.aboveTheLine();
        Screen.Look first = screen.looks().get(0);
        String look = first.attribute() + (first.statistic() >= 0 ? " rose" : " fell") + " with the " + first.feature();
        if (above.isEmpty()) {
            return new InShort(
                    screen.looks().size() == 1
                            ? "Nothing stands out: the one look is not above luck."
                            : "Nothing stands out: not one of " + screen.looks().size() + " looks is above luck.",
                    "The furthest, " + look + ", is what the best of so many reaches by luck alone.",
                    "Ask the one question that you care about by itself, or cup more batches.");
        }
        int others = above.size() - 1;
        return new InShort(
                Wording.sentence(look) + ", further above luck than any other of "
                        + screen.looks().size() + " looks.",
                (others == 0
                                ? "No other look is above luck"
                                : others == 1
                                        ? "One other look is above luck too"
                                        : others + " other looks are above luck too")
                        + (screen.shuffled() == Screen.Shuffled.WHOLE_DAYS
                                ? ", but anything that moves with the calendar can do this."
                                : ", and what is behind them this cannot say."),
                "Ask " + (others == 0 ? "it" : "each of them") + " by itself next, and look at its picture.");
    }
}
