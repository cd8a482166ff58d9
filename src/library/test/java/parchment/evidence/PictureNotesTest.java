package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import parchment.evidence.finding.Verdict;
import parchment.feature.Features;
import parchment.logbook.Logbook;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/** Holds how a picture is said to be read: why a line is dashed follows what decided, and luck is named only where it is in question. */
class PictureNotesTest {
    private static final Measure DROP =
            new Measure("drop temperature", Unit.TEMPERATURE, TemperatureUnit.CELSIUS, Map.of());

    private final ModelFrame material = Evidence.of(
                    "acidity", Features.browningTime(), Logbook.open(Path.of("..", "datasets", "hillside")))
            .material();

    private List<String> notes(Verdict verdict, VerdictRules.Why why, Findings.Planned planned) {
        return PictureNotes.of(
                DROP,
                material,
                new VerdictRules.Judgement(
                        verdict,
                        List.of(),
                        NextBatches.Kind.MORE,
                        new VerdictRules.Decisive(why, List.of("gas in drying"))),
                planned,
                0.9);
    }

    @Test
    void whyTheLineIsDashedFollowsWhatDecided() {
        String along = "what it shows may come from something that moved along with the drop temperature";
        Map<VerdictRules.Why, String> doubts = new EnumMap<>(Map.of(
                VerdictRules.Why.MOVED_WITH_ANOTHER, along,
                VerdictRules.Why.FOLLOWS_A_FACT, along,
                VerdictRules.Why.NEXT_DAY_GOES_WITH_IT_TOO,
                        "what it shows may come from something that changes with the date",
                VerdictRules.Why.OPEN, "what it shows may be luck",
                VerdictRules.Why.NOT_RARE_ENOUGH, "what it shows may be luck",
                VerdictRules.Why.HARDLY_VARIED, "the drop temperature hardly varied",
                VerdictRules.Why.MOSTLY_ERROR, "most of the spread along it is error of reading",
                VerdictRules.Why.TOO_FEW_DAYS_LEFT, "these batches cannot tell"));
        doubts.forEach((why, doubt) -> assertEquals(
                "The line is dashed because " + doubt + ".",
                notes(Verdict.CANNOT_TELL, why, Findings.Planned.NOT_BY_CHANCE).get(0)));
    }

    @Test
    void aLineThatIsToldIsNotDashedAndPlannedDotsAreSaidToBe() {
        String band = "At any one place along the axis the true average lies inside the band 90 times in 100.";
        List<String> plain = notes(Verdict.SUGGESTIVE, VerdictRules.Why.NOT_BLIND, Findings.Planned.NOT_BY_CHANCE);
        assertEquals(band, plain.get(0));
        List<String> planned = notes(Verdict.SUGGESTIVE, VerdictRules.Why.NOT_BLIND, Findings.Planned.BY_CHANCE);
        assertEquals(plain.size() + 1, planned.size());
        assertEquals(
                "A dot stands at the drop temperature that chance planned for the batch, not at what came out.",
                planned.get(2));
    }
}
