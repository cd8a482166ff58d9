package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import parchment.display.ShortSentences;
import parchment.display.answer.InShort;
import parchment.feature.Features;
import parchment.period.ProbeChange;
import parchment.quantity.TemperatureUnit;
import parchment.stats.Estimate;
import parchment.stats.Interval;

/** Holds each first sentence on the probe, on where batches differ, and on batches that were meant alike. */
class DriftShortSentencesTest {
    private static void says(InShort words, String found, String howSure, String next) {
        ShortSentences.keptBy(words);
        assertEquals(found + "\n" + howSure + "\n" + next, words.text());
    }

    private static Estimate offset(String place, double celsius, double error) {
        return new Estimate(place, celsius, error, Double.POSITIVE_INFINITY);
    }

    private static ProbeChange change(ProbeChange.Kind kind, String day, Estimate... offsets) {
        LocalDate on = LocalDate.parse(day);
        return new ProbeChange("drum", kind, on, on, on, List.of(offsets), 0.001, "");
    }

    private static InShort shifts(ProbeChange... changes) {
        return ShiftsInShort.of(
                List.of(changes), ShiftsInShort.Searched.SEARCHED, ShiftsInShort.Machines.ONE, TemperatureUnit.CELSIUS);
    }

    @Test
    void aChangeOfTheProbeIsToldAtFirstCrackAndWhichWay() {
        says(
                shifts(change(
                        ProbeChange.Kind.FOUND_AND_WRITTEN,
                        "2024-10-07",
                        offset("turning point", -3.1, 0.3),
                        offset("first crack", -1.1, 0.2))),
                "From 2024-10-07 on the bean probe read 1.1 °C lower at first crack (0.8 to 1.4).",
                "The readings stepped for all lots, and the upkeep names work on the probe then.",
                "Nothing to do: answers about scores take it into account by themselves.");
        says(
                shifts(change(ProbeChange.Kind.FOUND_WITHOUT_ENTRY, "2024-10-07", offset("first crack", 1.1, 0.2))),
                "From 2024-10-07 on the bean probe read 1.1 °C higher at first crack (0.8 to 1.4).",
                "The readings stepped for all lots, but the upkeep names no work on the probe.",
                "Ask who touched the probe then, and write it into upkeep.csv.");
    }

    @Test
    void whereFirstCrackDoesNotShowItAnotherPlaceIsNamed() {
        ProbeChange.Kind found = ProbeChange.Kind.FOUND_AND_WRITTEN;
        assertEquals(
                "From 2024-10-07 on the bean probe read 2.0 °C higher in the empty drum (1.5 to 2.5).",
                shifts(change(found, "2024-10-07", offset("first crack", 0.3, 0.2), offset("empty drum", 2.0, 0.3)))
                        .found());
        assertEquals(
                "From 2024-10-07 on the bean probe read 2.0 °C lower at turning point (1.5 to 2.5).",
                shifts(change(
                                found,
                                "2024-10-07",
                                offset("first crack", Double.NaN, Double.NaN),
                                offset("turning point", -2.0, 0.3)))
                        .found());
        // 1.645 standard errors from zero on either side of the limit.
        assertEquals(
                "From 2024-10-07 on the bean probe read differently.",
                shifts(change(found, "2024-10-07", offset("first crack", -0.32, 0.2)))
                        .found());
        assertEquals(
                "From 2024-10-07 on the bean probe read 0.3 °C lower at first crack (0.0 to 0.7).",
                shifts(change(found, "2024-10-07", offset("first crack", -0.34, 0.2)))
                        .found());
    }

    @Test
    void aChangeIsToldInTheReadersDegreesAndOfItsMachine() {
        assertEquals(
                "From 2024-10-07 on the bean probe of drum read 1.8 °F higher at first crack (1.2 to 2.4).",
                ShiftsInShort.of(
                                List.of(change(
                                        ProbeChange.Kind.FOUND_AND_WRITTEN,
                                        "2024-10-07",
                                        offset("first crack", 1.0, 0.2))),
                                ShiftsInShort.Searched.SEARCHED,
                                ShiftsInShort.Machines.SEVERAL,
                                TemperatureUnit.FAHRENHEIT)
                        .found());
    }

    @Test
    void whatWasWrittenButNotSeenIsToldAsThat() {
        says(
                shifts(change(ProbeChange.Kind.WRITTEN_WITHOUT_CHANGE, "2024-10-07")),
                "The upkeep names work on the bean probe on 2024-10-07: it may read otherwise.",
                "Whether it reads differently cannot be told; readings before and after are kept apart.",
                "If the probe was only cleaned, say so in upkeep.csv.");
        says(
                shifts(change(ProbeChange.Kind.OTHER_WORK, "2024-10-07")),
                "After the work of 2024-10-07 the bean probe went on reading as before.",
                "It was work that moves no probe, and no step was seen.",
                "Nothing to do.");
    }

    @Test
    void whatMayNotBeTheProbeIsToldAsThat() {
        says(
                shifts(change(ProbeChange.Kind.LOT_OR_PROBE, "2024-10-07")),
                "From 2024-10-07 on the bean probe read differently, but the lot may be the reason.",
                "Fewer than two lots were roasted both before and after it.",
                "Roast a lot from before it once more: if it reads differently too, the probe moved.");
        says(
                shifts(change(ProbeChange.Kind.ONE_PLACE_ONLY, "2024-10-07")),
                "From 2024-10-07 on the bean probe read differently, but at one place of the curve only.",
                "Another habit of charging or of writing marks does the same.",
                "Ask who charged and who wrote the marks then.");
        says(
                shifts(change(ProbeChange.Kind.NOT_IN_THE_BEANS, "2024-10-07")),
                "From 2024-10-07 on the bean probe read differently in the empty drum, but not in the beans.",
                "The air probe may have moved, or the drum was heated otherwise before charge.",
                "Look at the air probe, and at how the drum was warmed up.");
        says(
                shifts(change(ProbeChange.Kind.STEP_OR_SLOW, "2024-10-07")),
                "About 2024-10-07 the readings of the bean probe changed, in a step or slowly.",
                "A slow change, such as dirty ducts, explains them about as well as a moved probe.",
                "Look at ducts, burner and probe, and write what you find into upkeep.csv.");
    }

    @Test
    void ofSeveralChangesTheLatestThatPartsBatchesIsTold() {
        ProbeChange first = change(ProbeChange.Kind.FOUND_WITHOUT_ENTRY, "2024-03-01", offset("first crack", 2, 0.2));
        ProbeChange second = change(ProbeChange.Kind.FOUND_AND_WRITTEN, "2024-05-01", offset("first crack", -2, 0.2));
        ProbeChange open = change(ProbeChange.Kind.LOT_OR_PROBE, "2024-07-01");
        ProbeChange work = change(ProbeChange.Kind.OTHER_WORK, "2024-09-01");
        assertEquals(
                "From 2024-05-01 on the bean probe read 2.0 °C lower at first crack (1.7 to 2.3).",
                shifts(first, second, open, work).found());
        assertEquals(
                "From 2024-07-01 on the bean probe read differently, but the lot may be the reason.",
                shifts(open, work).found());
    }

    @Test
    void withoutAChangeOrASearchItSaysWhy() {
        says(
                shifts(),
                "No change of the bean probe was seen in the readings.",
                "A small or a slow change could still hide in them.",
                "Go on writing every work on the probe into upkeep.csv.");
        says(
                ShiftsInShort.of(
                        List.of(),
                        ShiftsInShort.Searched.NO_DATES,
                        ShiftsInShort.Machines.ONE,
                        TemperatureUnit.CELSIUS),
                "Whether the bean probe changed cannot be told from the readings.",
                "No batch has a date.",
                "Write the roast days into batches.csv, then ask again.");
        says(
                ShiftsInShort.of(
                        List.of(change(ProbeChange.Kind.WRITTEN_WITHOUT_CHANGE, "2024-10-07")),
                        ShiftsInShort.Searched.TOO_FEW,
                        ShiftsInShort.Machines.ONE,
                        TemperatureUnit.CELSIUS),
                "The upkeep names work on the probe on 2024-10-07; whether its readings changed cannot be told.",
                "Too few batches can be read at two places that the beans do not move.",
                "Write first crack and charge temperature of every batch, and work on the probe into upkeep.csv.");
    }

    private static VarianceShares.Share share(String source, int groups, double share, double lower, double upper) {
        return new VarianceShares.Share(source, groups, 1, share, new Interval(lower, upper, 0.90));
    }

    private static InShort shares(VarianceShares.Share... shares) {
        return SharesInShort.of("browning time", List.of(shares), List.of());
    }

    @Test
    void theLargestSourceIsToldAndWhetherAnythingComesNear() {
        says(
                shares(share("roast days", 60, 0.20, 0.10, 0.39), share("batches within a day", 200, 0.60, 0.40, 0.80)),
                "Of what makes the browning time differ, about 60 parts in 100 lie between batches within a day (40 to 80).",
                "Nothing else comes near: roast days with 20 parts (10 to 39).",
                "Ask what differs from batch to batch: charge, mass, gas, time since the last drop.");
        says(
                shares(share("roast days", 60, 0.20, 0.10, 0.41), share("batches within a day", 200, 0.60, 0.40, 0.80)),
                "Of what makes the browning time differ, about 60 parts in 100 lie between batches within a day (40 to 80).",
                "What comes next may be as much: roast days with 20 parts (10 to 41).",
                "Ask what differs from batch to batch: charge, mass, gas, time since the last drop.");
    }

    @Test
    void aShareThatMayBeAnythingIsNotTold() {
        says(
                shares(share("lots", 3, 0.51, 0.03, 0.97), share("batches within a day", 200, 0.32, 0.02, 0.50)),
                "What makes the browning time differ most cannot be told.",
                "Between lots may lie anything from 3 to 97 parts in 100; there are only 3 of them.",
                "Ask again when more lots have been roasted.");
        assertEquals(
                "Between lots may lie anything from 3 to 97 parts in 100; there are only 10 of them.",
                shares(share("lots", 10, 0.7, 0.03, 0.97), share("roast days", 30, 0.3, 0.1, 0.4))
                        .howSure());
        assertEquals(
                "Between lots may lie anything from 3 to 97 parts in 100.",
                shares(share("lots", 11, 0.7, 0.03, 0.97), share("roast days", 30, 0.3, 0.1, 0.4))
                        .howSure());
        assertEquals(
                "What makes the browning time differ most cannot be told.",
                shares(share("lots", 9, 0.7, 0.35, 0.86), share("roast days", 30, 0.3, 0.1, 0.4))
                        .found());
        assertEquals(
                "Of what makes the browning time differ, about 70 parts in 100 lie between lots (37 to 86).",
                shares(share("lots", 9, 0.7, 0.37, 0.86), share("roast days", 30, 0.3, 0.1, 0.4))
                        .found());
    }

    @Test
    void eachSourceHasItsOwnAdvice() {
        advice("lots", "Compare batches of one lot only; lots differ by themselves.", "more lots have been roasted");
        advice(
                "roast days",
                "Ask what differs from day to day: the room, the warm-up, work on the machine.",
                "there are more roast days");
        advice(
                "roasters",
                "Let each roaster roast the same lots, and agree on how marks are written.",
                "more people have roasted");
        advice(
                "cuppers",
                "Let every cupper taste all the batches that you want to compare.",
                "more people have cupped");
        advice("cuppings", "Put batches that you want to compare into one cupping.", "there have been more cuppings");
        advice(
                "cups of a batch, and what else is left",
                "Taste more cups of each batch before you compare two.",
                "there are more batches");
    }

    private static void advice(String source, String next, String more) {
        VarianceShares.Share second = share("batches within a day", 90, 0.1, 0.05, 0.2);
        assertEquals(
                next,
                ShortSentences.keptBy(shares(share(source, 9, 0.7, 0.6, 0.8), second))
                        .next());
        assertEquals(
                "Ask again when " + more + ".",
                ShortSentences.keptBy(shares(share(source, 9, 0.7, 0.1, 0.9), second))
                        .next());
    }

    @Test
    void withoutSharesTheReasonIsTold() {
        says(
                SharesInShort.of(
                        "browning time",
                        List.of(),
                        List.of(
                                "Between lots nothing can be told: there is one only.",
                                "Shares need 20 rows with all of it written and two groups of something; there are 19.")),
                "Where the browning time differs cannot be told.",
                "Shares need 20 rows with all of it written and two groups of something; there are 19.",
                "Ask again when more has been written down.");
    }

    private static Repeatability drop(int batches, int groups) {
        return new Repeatability(
                Features.dropTemperature(),
                OptionalDouble.of(1.1),
                batches - groups,
                batches,
                groups,
                TemperatureUnit.CELSIUS);
    }

    /** 1.1 °C from 42 degrees of freedom: 0.67449 √2 · 1.1 = 1.05; the interval by chi-squared 28.14 and 58.12 (tables): 0.89 to 1.28. */
    @Test
    void twinsAreToldByHowNearHalfOfAllPairsCame() {
        says(
                TwinsInShort.of(240, 70, 20, Optional.of(drop(70, 28))),
                "Half of all pairs meant alike came within 1.0 °C of each other in drop temperature (0.9 °C to 1.3 °C).",
                "That rests on 70 batches in 28 groups; what nobody wrote down may have differed too.",
                "Do not chase a smaller difference from one batch to the next.");
        assertEquals(
                "That rests on 6 batches in 1 group; what nobody wrote down may have differed too.",
                ShortSentences.keptBy(TwinsInShort.of(9, 6, 0, Optional.of(drop(6, 1))))
                        .howSure());
    }

    @Test
    void withoutTwinsItSaysWhy() {
        says(
                TwinsInShort.of(3, 0, 3, Optional.empty()),
                "Which batches were meant alike cannot be told.",
                "No planned drop temperature is written.",
                "Write it before charge, in the column 'planned drop temperature' of batches.csv.");
        says(
                TwinsInShort.of(3, 0, 2, Optional.empty()),
                "No two batches were meant alike, as far as was written.",
                "Of 2 of 3 batches no planned drop temperature is written.",
                "Roast one plan twice now and then: it shows what differs by nobody's doing.");
        says(
                TwinsInShort.of(3, 0, 0, Optional.empty()),
                "No two batches were meant alike, as far as was written.",
                "Lot, recipe, roaster, mass, charge or planned drop always differed.",
                "Roast one plan twice now and then: it shows what differs by nobody's doing.");
        says(
                TwinsInShort.of(3, 0, 1, Optional.empty()),
                "No two batches were meant alike, as far as was written.",
                "Of 1 of 3 batches no planned drop temperature is written.",
                "Roast one plan twice now and then: it shows what differs by nobody's doing.");
        // An empty logbook lacks batches, not plans.
        assertEquals(
                "No two batches were meant alike, as far as was written.",
                TwinsInShort.of(0, 0, 0, Optional.empty()).found());
        says(
                TwinsInShort.of(3, 2, 0, Optional.empty()),
                "How far batches that were meant alike lie apart cannot be told.",
                "Of the 2 batches that have twins, no times, drops or masses are known.",
                "Log their curves and weigh them, then ask again.");
    }

    private static Repeatability times(double deviation, int batches, int groups) {
        return new Repeatability(
                Features.developmentTime(),
                OptionalDouble.of(deviation),
                batches - groups,
                batches,
                groups,
                TemperatureUnit.CELSIUS);
    }

    /** From 4 degrees of freedom on: chi-squared 0.711 and 9.488 (tables), 20 s · 0.9539 · √(4 / 9.488) = 12.4 and √(4 / 0.711): 45.3. */
    @Test
    void howNearPairsCameIsToldFromFourMoreBatchesThanGroupsOn() {
        says(
                times(20, 6, 2).inShort(),
                "Half of all pairs meant alike came within 19 s of each other in development time (12 s to 45 s).",
                "That rests on 6 batches in 2 groups; what nobody wrote down may have differed too.",
                "Do not chase a smaller difference from one batch to the next.");
        says(
                times(20, 5, 2).inShort(),
                "How far batches that were meant alike lie apart in development time cannot be told.",
                "Only 5 batches in 2 groups have it, and so few may lie near each other by luck.",
                "Roast one plan twice now and then, then ask again.");
        assertEquals(
                "Only 2 batches in 1 group have it, and so few may lie near each other by luck.",
                ShortSentences.keptBy(times(20, 2, 1).inShort()).howSure());
    }

    @Test
    void aFeatureThatNoTwoOfThemHaveIsToldAsThat() {
        Repeatability none =
                new Repeatability(Features.developmentTime(), OptionalDouble.empty(), 0, 0, 0, TemperatureUnit.CELSIUS);
        says(
                none.inShort(),
                "How far batches that were meant alike lie apart in development time cannot be told.",
                "No two of them have it.",
                "Roast one plan twice now and then: it shows what differs by nobody's doing.");
        assertTrue(none.text().contains(none.inShort().text()), none.text());
        assertTrue(
                times(20, 6, 2).text().contains("standard deviation 20.0 s"),
                times(20, 6, 2).text());
    }
}
