package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import parchment.display.Html;
import parchment.display.Showable;
import parchment.display.answer.InShort;
import parchment.evidence.finding.Verdict;
import parchment.feature.Features;
import parchment.logbook.Logbook;
import parchment.logbook.contents.Cautions;
import parchment.quantity.Temperature;

/** Whatever names a reading to roast by next says once what a logbook is not, and says it outside of its first three sentences. */
class CautionsOnPagesTest {
    private static final Logbook HILLSIDE = Logbook.open(Path.of("..", "datasets", "hillside"));

    private static long times(Showable page) {
        String html = page.html().orElseThrow();
        String before = html.substring(0, html.contains("<details>") ? html.indexOf("<details>") : html.length());
        long seen = Pattern.compile(Pattern.quote(Html.escape(Cautions.BESIDE_A_READING)))
                .matcher(before)
                .results()
                .count();
        long all = page.text().split(Pattern.quote(Cautions.BESIDE_A_READING), -1).length - 1;
        assertEquals(seen, all, "it stands on the first screen, and is not folded away");
        return all;
    }

    private static void notIn(InShort words) {
        for (String sentence : List.of(words.found(), words.howSure(), words.next())) {
            assertFalse(sentence.contains("safety device"), sentence);
        }
    }

    @Test
    void anAnswerCarriesItWhateverTheVerdict() {
        Evidence told = Evidence.of("body", Features.dropTemperature(), HILLSIDE);
        assertEquals(Verdict.SUGGESTIVE, told.verdict());
        Evidence open = Evidence.of("body", Features.developmentTime(), HILLSIDE);
        assertEquals(Verdict.CANNOT_TELL, open.verdict());
        assertEquals(
                "6 more batches have no lot written: add it, then they count too.",
                open.inShort().next());
        assertTrue(open.page().text().contains("would tell: a third each near 90 s"), open.page()::text);
        for (Evidence answer : List.of(told, open)) {
            assertEquals(1, times(answer.page()), answer::toString);
            notIn(answer.inShort());
        }
    }

    @Test
    void whatIsForetoldAtOneReadingCarriesIt() {
        Evidence answer = Evidence.of("body", Features.dropTemperature(), HILLSIDE);
        String told = answer.at(Temperature.celsius(205)).text();
        assertTrue(told.endsWith(". " + Cautions.BESIDE_A_READING), told);
    }

    @Test
    void aCompromiseAndPairsOfBatchesCarryIt() {
        TradeOff trade = TradeOff.of(List.of("body", "sweetness"), Features.dropTemperature(), HILLSIDE);
        assertEquals(1, times(trade), trade::toString);
        notIn(trade.inShort());
        DestinationOrPath path = DestinationOrPath.of("body", HILLSIDE);
        assertTrue(path.fit().isPresent(), path::toString);
        assertEquals(1, times(path), path::toString);
        notIn(path.inShort());
    }

    @Test
    void whatNamesNoReadingDoesNot() {
        Evidence fitted = Evidence.of("body", Features.batchOfTheDay(), HILLSIDE);
        assertTrue(fitted.analysis().isPresent(), fitted::toString);
        Evidence nothing = Evidence.of("acidity", Features.browningTime(), HILLSIDE);
        assertTrue(nothing.analysis().isEmpty(), nothing::toString);
        for (Evidence answer : List.of(fitted, nothing)) {
            assertEquals(0, times(answer.page()), answer::toString);
        }
    }

    @Test
    void itSaysWhoseLimitsHoldWhatAModelIsNotAndWhoMayChangeTheMachine() {
        Stream.of(
                        "Seen in this logbook",
                        "no plan",
                        "a model is not a safety device",
                        "what your machine's maker allows",
                        "never leave a roast unattended",
                        "licensed people")
                .forEach(words -> assertTrue(Cautions.BESIDE_A_READING.contains(words), words));
    }
}
