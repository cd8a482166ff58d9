package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import parchment.evidence.finding.Slope;
import parchment.evidence.finding.Verdict;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.written.CupScores;
import parchment.logbook.written.Upkeep;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/** Feeds the page of destination and path with built records: what stands against readings on today's probe, and the first sentence. */
@Tag("says")
class DestinationOrPathPageTest {
    /** Batches A1 and A2 were roasted on the drum, B1 and B2 on the barrel, the last of each on this day. */
    private static final LocalDate LAST = LocalDate.of(2025, 3, 6);

    private static final String DRUM = doubt("drum");
    private static final String BARREL = doubt("barrel");

    private static String doubt(String machine) {
        return "The upkeep says that the bean probe of " + machine
                + " was changed on 2025-03-07, after the last roast written here: readings are told as the probe before it read them,"
                + " and \"today's probe\" means that one. What the new one reads shows only once batches are roasted with it.";
    }

    private static final class Case {
        List<Upkeep> upkeep = new ArrayList<>();
        Set<String> scored = Set.of("A1", "A2", "B1", "B2");
        Set<String> withoutDevelopment = Set.of();
        boolean onTheProbe = true;
        List<PathContrast> contrasts = List.of(contrast("added time", Verdict.CANNOT_TELL));

        Case moved(String machine, LocalDate day) {
            upkeep.add(new Upkeep(machine, day, "bean probe moved", Optional.empty()));
            return this;
        }

        DestinationOrPath asked() {
            List<Batch> batches = new ArrayList<>();
            List<CupScores> cups = new ArrayList<>();
            Map<String, ModelFrames.Reading> drops = new LinkedHashMap<>();
            Map<String, ModelFrames.Reading> times = new LinkedHashMap<>();
            Map<String, ModelFrames.Reading> early = new LinkedHashMap<>();
            for (String name : List.of("A1", "A2", "B1", "B2")) {
                String machine = name.startsWith("A") ? "drum" : "barrel";
                batches.add(Batch.named(name)
                        .roastedAt(OffsetDateTime.of(
                                LAST.minusDays(name.endsWith("1") ? 1 : 0).atTime(9, 0), ZoneOffset.UTC))
                        .lot("Lot A")
                        .machine(machine)
                        .build());
                drops.put(name, new ModelFrames.Reading(205, 0.3).onTodaysProbe(205, 0, onTheProbe ? machine : ""));
                early.put(name, new ModelFrames.Reading(540, 2));
                if (!withoutDevelopment.contains(name)) {
                    times.put(name, new ModelFrames.Reading(90, 2));
                }
                if (scored.contains(name)) {
                    cups.add(new CupScores(
                            "C1",
                            LAST.plusDays(5),
                            "Ida",
                            name,
                            Optional.empty(),
                            Optional.empty(),
                            OptionalInt.empty(),
                            Map.of("sweetness", 6.0),
                            Optional.empty()));
                }
            }
            Logbook logbook = Logbook.of(LogbookContents.ofBatches("two machines", batches).toBuilder()
                    .cups(cups)
                    .upkeep(upkeep)
                    .build());
            List<Measure> measures = List.of(
                    new Measure("drop temperature", Unit.TEMPERATURE, TemperatureUnit.CELSIUS, drops),
                    new Measure("development time", Unit.SECONDS, TemperatureUnit.CELSIUS, times),
                    new Measure("first crack time", Unit.SECONDS, TemperatureUnit.CELSIUS, early));
            PathQuestion question = new PathQuestion(
                    "sweetness", measures, measures.get(0), Map.of(), List.of(), EvidenceSettings.standard());
            return new DestinationOrPath(
                    question,
                    JointFrame.of("sweetness", logbook, measures),
                    Optional.empty(),
                    contrasts,
                    Optional.empty());
        }

        /** Returns the paragraphs that are folded away. */
        List<String> workedOut() {
            List<String> paragraphs = List.of(asked().text().split("\n\n"));
            return paragraphs.subList(paragraphs.indexOf("How this was worked out") + 1, paragraphs.size());
        }

        /** Returns the paragraphs of the page between the first sentences and the picture. */
        List<String> doubts() {
            List<String> paragraphs = List.of(asked().text().split("\n\n"));
            assertTrue(paragraphs.get(1).contains(" cannot be told from these batches."), paragraphs.toString());
            int picture = paragraphs.indexOf(paragraphs.stream()
                    .filter(words -> words.contains("There is nothing to draw"))
                    .findFirst()
                    .orElseThrow());
            return paragraphs.subList(2, picture);
        }
    }

    private static PathContrast contrast(String name, Verdict verdict) {
        Slope slope = verdict == Verdict.CANNOT_TELL ? Slope.MISSING : new Slope(0.3, 0.05, 40);
        return new PathContrast(
                name,
                "one thing changes, the others stay",
                "10 s",
                slope,
                slope,
                slope.interval(0.9),
                new Reliability(1, 0, 1, 9),
                1,
                1,
                verdict,
                PathContrast.Because.TOO_WIDE,
                "so it was");
    }

    private static Case of() {
        return new Case();
    }

    @Test
    void withoutAChangeOfTheProbeNothingStandsAgainstReadings() {
        assertEquals(List.of(), of().doubts());
    }

    @Test
    void aChangeOfTheProbeAfterTheLastRoastIsSaidBeforeThePicture() {
        assertEquals(List.of(DRUM), of().moved("drum", LAST.plusDays(1)).doubts());
    }

    @Test
    void aChangeOnTheLastRoastDayIsNoChangeAfterIt() {
        assertEquals(
                List.of(
                        "The bean probe of drum was changed on 2025-03-06 and may read otherwise. Whether it reads differently cannot"
                                + " be told; readings before and after are kept apart."),
                of().moved("drum", LAST).doubts());
    }

    @Test
    void workThatIsNoChangeOfTheBeanProbeRaisesNone() {
        Case cleaned = of();
        cleaned.upkeep.add(new Upkeep("drum", LAST.plusDays(1), "burner cleaned", Optional.empty()));
        assertEquals(List.of(), cleaned.doubts());
    }

    @Test
    void whatStandsAgainstTwoMachinesIsSaidOfEachOnce() {
        assertEquals(
                List.of(DRUM + " " + BARREL),
                of().moved("drum", LAST.plusDays(1))
                        .moved("barrel", LAST.plusDays(1))
                        .doubts());
    }

    /** A machine of which no batch stands behind the answer casts no doubt on it. */
    @Test
    void onlyTheMachinesOfTheBatchesBehindTheAnswerCount() {
        Case unscored = of().moved("drum", LAST.plusDays(1));
        unscored.scored = Set.of("B1", "B2");
        assertEquals(List.of(), unscored.doubts());
        unscored.scored = Set.of("A2", "B1", "B2");
        assertEquals(List.of(DRUM), unscored.doubts());
        Case unmarked = of().moved("drum", LAST.plusDays(1));
        unmarked.withoutDevelopment = Set.of("A1", "A2");
        assertEquals(List.of(), unmarked.doubts());
    }

    @Test
    void measuresThatNoProbeReadsAreNotDoubted() {
        Case free = of().moved("drum", LAST.plusDays(1));
        free.onTheProbe = false;
        assertEquals(List.of(), free.doubts());
    }

    @Test
    void theComparisonsAreSortedByTheirVerdict() {
        Case sorted = of();
        sorted.contrasts = List.of(
                contrast("added time", Verdict.CANNOT_TELL),
                contrast("swapped time", Verdict.NOTHING_SEEN),
                contrast("faster finish", Verdict.SUGGESTIVE),
                contrast("later drop", Verdict.TOO_SMALL),
                contrast("slower start", Verdict.CANNOT_TELL));
        assertEquals(
                "Suggestive: faster finish. Too small to matter: later drop. Nothing seen: swapped time. Cannot tell: added time and"
                        + " slower start. Faster finish: suggestive; so it was. Per 10 s +0.30 points (90 % interval +0.22 to +0.38).",
                sorted.workedOut().get(0));
    }

    @Test
    void whatWasLeftOutIsCountedBesideWhatWasNot() {
        assertEquals(
                "Behind it: 4 batches, 2 roast days, 1 cupping, 1 cupper, 4 scores. Nothing was left out.",
                of().workedOut().get(1));
        Case without = of();
        without.withoutDevelopment = Set.of("A1");
        without.scored = Set.of("A1", "A2", "B1");
        assertEquals(
                "Behind it: 2 batches, 2 roast days, 1 cupping, 1 cupper, 2 scores. 1 batch left out (A1): the measure is missing; 1 batch"
                        + " left out (B2): no score of sweetness.",
                without.workedOut().get(1));
    }
}
