package parchment;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static parchment.feature.Features.developmentTime;
import static parchment.feature.Features.dropTemperature;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.display.Display;
import parchment.display.live.Asked;
import parchment.drift.LotYear;
import parchment.drift.VarianceShares;
import parchment.evidence.DestinationOrPath;
import parchment.evidence.Evidence;
import parchment.evidence.EvidenceSettings;
import parchment.evidence.Halo;
import parchment.evidence.Screen;
import parchment.evidence.TradeOff;
import parchment.feature.Feature;
import parchment.learning.SecondLook;
import parchment.learning.Yardstick;
import parchment.lesson.AnswerKey;
import parchment.lesson.Lesson;
import parchment.logbook.Logbook;
import parchment.logbook.written.CupScores;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.virtual.VirtualRoastery;

/** Holds which work counts as a question to the scores, and which two questions are one. */
class AskedOfScoresTest {
    private static final Logbook HILLSIDE = Logbook.open(Path.of("../datasets/hillside"));
    private static final List<String> ATTRIBUTES = List.copyOf(HILLSIDE.attributes());
    private static final String FIRST = ATTRIBUTES.get(0);
    private static final String SECOND = ATTRIBUTES.get(1);

    /** Returns what a session is told while the work is done. */
    private static List<Asked> askedBy(Runnable work) {
        List<Asked> asked = Collections.synchronizedList(new ArrayList<>());
        Display.Target listening = new Display.Target() {
            @Override
            public void show(Object value) {
                throw new AssertionError("nothing is shown");
            }

            @Override
            public void asked(Asked question) {
                asked.add(question);
            }
        };
        try (Display.Shown on = Display.on(listening)) {
            work.run();
        }
        return asked;
    }

    private static Asked oneAskedBy(Runnable work) {
        List<Asked> asked = askedBy(work);
        assertEquals(1, asked.size(), asked::toString);
        assertEquals("the scores of " + HILLSIDE.name(), asked.get(0).of());
        return asked.get(0);
    }

    private static Asked evidence(String attribute, Feature feature, Logbook logbook) {
        return oneAskedBy(() -> Evidence.of(attribute, feature, logbook));
    }

    private static String kind(Asked asked) {
        return asked.question().replaceFirst(";.*", "");
    }

    @Test
    void everyResultThatPutsAQuestionToTheScoresSaysSoOnce() {
        String lot = HILLSIDE.lots().get(0).name();
        assertEquals("Evidence", kind(evidence(FIRST, dropTemperature(), HILLSIDE)));
        assertEquals("DestinationOrPath", kind(oneAskedBy(() -> DestinationOrPath.of(FIRST, HILLSIDE))));
        assertEquals("TradeOff", kind(oneAskedBy(() -> TradeOff.of(ATTRIBUTES, dropTemperature(), HILLSIDE))));
        assertEquals("Halo", kind(oneAskedBy(() -> Halo.of(HILLSIDE))));
        assertEquals("Screen", kind(oneAskedBy(() -> Screen.of(HILLSIDE))));
        assertEquals("Yardstick", kind(oneAskedBy(() -> Yardstick.of(FIRST, HILLSIDE))));
        assertEquals("VarianceShares", kind(oneAskedBy(() -> VarianceShares.of(FIRST, HILLSIDE))));
        assertEquals("LotYear", kind(oneAskedBy(() -> LotYear.of(lot, FIRST, HILLSIDE))));
    }

    @Test
    void whatLooksAtTheRoastsAloneIsNoQuestionToTheScores() {
        assertEquals(List.of(), askedBy(() -> VarianceShares.of(dropTemperature(), HILLSIDE)));
        assertEquals(List.of(), askedBy(() -> LotYear.of(dropTemperature(), HILLSIDE)));
        assertEquals(List.of(), askedBy(() -> SecondLook.of(HILLSIDE)));
    }

    @Test
    void theSameQuestionIsTheSameAgain() {
        Asked once = evidence(FIRST, dropTemperature(), HILLSIDE);
        assertEquals(once, evidence(FIRST, dropTemperature(), HILLSIDE), "asked twice");
        assertEquals(
                once, evidence(FIRST, dropTemperature(), Logbook.open(Path.of("../datasets/hillside"))), "read anew");
        assertEquals(
                once, evidence(FIRST, dropTemperature(), HILLSIDE.in(TemperatureUnit.FAHRENHEIT)), "in another unit");
        assertEquals(once, evidence(FIRST, dropTemperature(), HILLSIDE.only(batch -> true)), "with an empty filter");
        List<CupScores> turned = new ArrayList<>(HILLSIDE.cups());
        Collections.reverse(turned);
        Logbook otherOrder =
                Logbook.of(HILLSIDE.contents().toBuilder().cups(turned).build());
        assertEquals(once, evidence(FIRST, dropTemperature(), otherOrder), "with the rows in another order");
        assertEquals(
                once,
                oneAskedBy(() -> Evidence.of(FIRST, dropTemperature(), HILLSIDE, EvidenceSettings.standard())),
                "with the settings written out");
    }

    @Test
    void anotherChoiceIsAnotherQuestion() {
        Asked once = evidence(FIRST, dropTemperature(), HILLSIDE);
        assertNotEquals(once, evidence(SECOND, dropTemperature(), HILLSIDE), "attribute");
        assertNotEquals(once, evidence(FIRST, developmentTime(), HILLSIDE), "feature");
        assertNotEquals(
                once,
                oneAskedBy(() -> Evidence.of(
                        FIRST,
                        dropTemperature(),
                        HILLSIDE,
                        EvidenceSettings.standard().withSmallestDifference(0.5))),
                "settings");
        String cupped = HILLSIDE.cups().get(0).batch();
        Asked filtered = evidence(
                FIRST, dropTemperature(), HILLSIDE.only(batch -> !batch.name().equals(cupped)));
        assertNotEquals(once, filtered, "filter");
        assertEquals(once.of(), filtered.of());
    }

    /** Five students' logbooks bear the roastery's name. */
    @Test
    void logbooksOfOneNameInTwoFoldersAreTwoLogbooks(@TempDir Path folder) throws IOException {
        Files.createDirectories(folder.resolve("student"));
        try (Stream<Path> files = Files.walk(Path.of("../datasets/hillside"))) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Path to = folder.resolve("student")
                        .resolve(Path.of("../datasets/hillside").relativize(file));
                Files.createDirectories(to.getParent());
                Files.copy(file, to);
            }
        }
        Logbook copy = Logbook.open(folder.resolve("student"));
        Asked ofCopy = evidence(FIRST, dropTemperature(), copy);
        Asked once = evidence(FIRST, dropTemperature(), HILLSIDE);
        assertEquals(once.of(), ofCopy.of());
        assertEquals(once.question(), ofCopy.question());
        assertNotEquals(once.which(), ofCopy.which());
        assertEquals(ofCopy, evidence(FIRST, dropTemperature(), Logbook.open(folder.resolve("student/../student"))));
        assertEquals(ofCopy, evidence(FIRST, dropTemperature(), copy.in(TemperatureUnit.FAHRENHEIT)));
    }

    /** A logbook in no folder is told by what its cups hold. */
    @Test
    void inventedLogbooksOfTwoSeedsAreTwoLogbooks() {
        Logbook seventh =
                VirtualRoastery.harbour().withBatches(12).withSeed(7).run().opened();
        Logbook eighth =
                VirtualRoastery.harbour().withBatches(12).withSeed(8).run().opened();
        String attribute = seventh.attributes().iterator().next();
        Asked once = askedBy(() -> Evidence.of(attribute, dropTemperature(), seventh))
                .get(0);
        Asked again = askedBy(() -> Evidence.of(attribute, dropTemperature(), seventh.in(TemperatureUnit.FAHRENHEIT)))
                .get(0);
        Asked other =
                askedBy(() -> Evidence.of(attribute, dropTemperature(), eighth)).get(0);
        assertEquals(once, again);
        assertEquals(once.of(), other.of());
        assertNotEquals(once.which(), other.which());
    }

    /** A key is what somebody's answers are held against; the work behind it shows nobody a finding. */
    @Test
    void aTeachersKeyAsksNothing() {
        List<Asked> asked =
                askedBy(() -> assertEquals("strong", AnswerKey.of(5, 1).key("verdict")));
        assertEquals(List.of(), asked);
        Lesson lesson = Lesson.open(5, 1);
        assertEquals(List.of(), askedBy(() -> lesson.check("verdict", "cannot tell")));
        assertEquals(
                1,
                askedBy(() -> Evidence.of("sweetness", dropTemperature(), lesson.logbook()))
                        .size());
    }

    @Test
    void twoFeaturesOfOneNameAndDifferentDefinitionAreTwoQuestions() {
        Feature byEye = Feature.of(
                "peak", Unit.NONE, "read by eye", path -> dropTemperature().measure(path));
        Feature byRule = Feature.of(
                "peak", Unit.NONE, "read by rule", path -> dropTemperature().measure(path));
        assertNotEquals(evidence(FIRST, byEye, HILLSIDE), evidence(FIRST, byRule, HILLSIDE));
    }

    @Test
    void theOrderOfTheAttributesWeighedDoesNotCountAndTheAimsDoNot() {
        Asked once = oneAskedBy(() -> TradeOff.of(List.of(FIRST, SECOND), dropTemperature(), HILLSIDE));
        assertEquals(once, oneAskedBy(() -> TradeOff.of(List.of(SECOND, FIRST), dropTemperature(), HILLSIDE)));
        assertEquals(
                once,
                oneAskedBy(() -> TradeOff.of(List.of(FIRST, SECOND), dropTemperature(), HILLSIDE)
                        .withAim(FIRST, parchment.evidence.Desirability.target(4, 6, 8))));
    }

    @Test
    void aQuestionThatCouldNotBePutIsNotCounted() {
        assertTrue(askedBy(() -> {
                    try {
                        Evidence.of("no such attribute", dropTemperature(), HILLSIDE);
                    } catch (IllegalArgumentException expected) {
                        return;
                    }
                    throw new AssertionError("there is no such attribute");
                })
                .isEmpty());
        Logbook unscored = HILLSIDE.only(batch -> false);
        assertEquals(List.of(), askedBy(() -> Screen.of(unscored)));
        assertEquals(List.of(), askedBy(() -> Halo.of(unscored)));
    }
}
