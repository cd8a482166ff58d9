package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.evidence.finding.Verdict;
import parchment.feature.Features;
import parchment.logbook.Logbook;
import parchment.logbook.contents.Cautions;
import parchment.otherroastery.DropHabit;
import parchment.otherroastery.OtherRoastery;
import parchment.otherroastery.RoastDays;
import parchment.otherroastery.TrueCourse;

/** Asks every question of one whole logbook in which the gas was always moved against the drop: none may call it the drop. */
class LockstepFolderTest {
    @TempDir
    private Path folder;

    private static OtherRoastery roastery(DropHabit.Choice choice) {
        OtherRoastery ordinary = OtherRoastery.ordinary();
        return ordinary.withEveryLot("sweetness", TrueCourse.slope(6, 0.15))
                .withDrop(ordinary.drop().by(choice).withHiddenCause(0.1, 0))
                .withDays(RoastDays.of(40, 3))
                .withSeed(2);
    }

    @Test
    void inLockstepNoAnswerCallsItTheDrop() throws IOException {
        roastery(DropHabit.Choice.LOCKSTEP).writeTo(folder);
        Logbook logbook = Logbook.open(folder);

        Evidence evidence = Evidence.of("sweetness", Features.dropTemperature(), logbook);
        assertEquals(Verdict.CANNOT_TELL, evidence.verdict());
        assertTrue(
                evidence.reasons().get(0).startsWith("inside lots the drop temperature cannot be told from "),
                evidence.toString());

        DestinationOrPath path = DestinationOrPath.of("sweetness", logbook);
        for (String moved : List.of("faster finish", "later drop")) {
            PathContrast contrast = path.contrast(moved);
            assertEquals(Verdict.CANNOT_TELL, contrast.verdict(), path.toString());
            assertEquals(PathContrast.Separation.NOT_SEPARATED, contrast.separation());
        }
        PathContrast later = path.contrast("later drop");
        assertEquals(PathContrast.Because.MOVED_WITH_A_CONTROL, later.because(), later.toString());
        assertTrue(later.reason().contains("gas"), later.reason());
        assertTrue(
                path.text().contains("later drop") && path.text().contains("cannot be told from the rest or from what"),
                path.text());

        TradeOff trade = TradeOff.of(List.of("sweetness", "acidity"), Features.dropTemperature(), logbook);
        assertEquals(Verdict.CANNOT_TELL, trade.verdict());
        assertTrue(
                trade.text().contains("Verdict: cannot tell. Inside lots the drop temperature cannot be told from "),
                trade.text());
        assertTrue(trade.text().contains(Cautions.BESIDE_A_READING), trade.text());

        // The screen claims nothing of what is behind a look; it shows drop and gas both.
        Screen screen = Screen.of(logbook);
        List<String> features = screen.aboveTheLine().stream()
                .filter(look -> look.attribute().equals("sweetness"))
                .map(Screen.Look::feature)
                .toList();
        assertTrue(features.contains("drop temperature"), features.toString());
        assertTrue(features.stream().anyMatch(name -> name.contains("gas")), features.toString());
        assertTrue(screen.text().contains("nothing here says what is behind it"), screen.text());
    }

    @Test
    void whereGasOnlyLeansAgainstItTheSameQuestionsAreAnswered() throws IOException {
        roastery(DropHabit.Choice.LEANING).writeTo(folder);
        Logbook logbook = Logbook.open(folder);
        assertEquals(
                Verdict.SUGGESTIVE,
                DestinationOrPath.of("sweetness", logbook)
                        .contrast("later drop")
                        .verdict());
        assertTrue(TradeOff.of(List.of("sweetness", "acidity"), Features.dropTemperature(), logbook)
                .twins()
                .isEmpty());
    }
}
