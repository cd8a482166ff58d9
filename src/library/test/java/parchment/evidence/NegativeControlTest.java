package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import parchment.evidence.finding.Slope;

/** Holds the control to its bound, and its words to what a test at 5 in 100 can say. */
class NegativeControlTest {
    @Test
    void itIsSetOffBelowFiveInAHundred() {
        assertTrue(new NegativeControl(VerdictRulesTest.atChance(0.0499), 30).setOff());
        assertFalse(new NegativeControl(VerdictRulesTest.atChance(0.0501), 30).setOff());
        assertFalse(NegativeControl.MISSING.setOff());
    }

    @Test
    void eachOutcomeHasItsSentence() {
        assertEquals(
                "The measure of the next roast day goes with today's score (chance alone would do as much in 2 of 100 logbooks), which"
                        + " it cannot have changed. One logbook in twenty shows this by chance; otherwise something that moves with the"
                        + " calendar is behind both.",
                new NegativeControl(VerdictRulesTest.atChance(0.02), 30).toString());
        assertEquals(
                "The measure of the next roast day does not go with today's score (chance alone would do as much in 40 of 100"
                        + " logbooks), as it should be.",
                new NegativeControl(VerdictRulesTest.atChance(0.40), 30).toString());
        assertEquals(
                "Whether the next roast day's measure goes with today's score could not be checked: there are too few roast days.",
                new NegativeControl(Slope.MISSING, 2).toString());
        assertEquals(
                "Whether the next roast day's measure goes with today's score could not be checked: on 3 roast days it could not be"
                        + " told from the other terms of the model.",
                new NegativeControl(Slope.MISSING, 3).toString());
        assertEquals(
                "Whether the next roast day's measure goes with today's score could not be checked: on 45 roast days it could not be"
                        + " told from the other terms of the model.",
                new NegativeControl(Slope.MISSING, 45).toString());
    }

    @Test
    void theNextRoastDayIsTheOneAfterAndTheLastHasNone() {
        KnownTruth truth = new KnownTruth();
        truth.days = 40;
        truth.dayShareOfDrop = 0.7;
        truth.nextDayInScore = 0.3;
        truth.daySpread = 0.1;
        NegativeControl control = NegativeControl.of(KnownTruth.material(truth.draw(6)));
        assertEquals(39, control.roastDays());
        assertTrue(control.setOff());
        assertEquals(0.3, control.slope().estimate(), 3 * control.slope().standardError());
        assertTrue(control.slope().estimate() > 0);
    }

    /** One number per roast day has no more degrees of freedom than the days leave, however many batches a day has. */
    @Test
    void itsDegreesOfFreedomAreThoseOfTheDays() {
        KnownTruth truth = new KnownTruth();
        truth.days = 15;
        truth.batchesPerDay = 8;
        truth.daySpread = 0;
        ModelFrame material = KnownTruth.material(truth.draw(2));
        NegativeControl control = NegativeControl.of(material);
        assertTrue(control.slope().degreesOfFreedom() <= 13, control.slope().toString());
        assertTrue(
                FittedScores.of(material, ModelForm.STANDARD).slope().degreesOfFreedom() > 13,
                "as the feature itself has");
    }

    @Test
    void twoRoastDaysAreTooFewAndThreeAreTried() {
        KnownTruth truth = new KnownTruth();
        truth.days = 2;
        assertEquals(NegativeControl.MISSING, NegativeControl.of(KnownTruth.material(truth.draw(1))));
        truth.days = 3;
        assertEquals(2, NegativeControl.of(KnownTruth.material(truth.draw(1))).roastDays());
    }

    /** Three batches on three days: two have a next day, fewer scores than a model has terms. */
    @Test
    void whereTooFewScoresAreLeftToFitItSaysSo() {
        KnownTruth truth = new KnownTruth();
        truth.days = 3;
        truth.batchesPerDay = 1;
        truth.cuppers = 1;
        NegativeControl control = NegativeControl.of(KnownTruth.material(truth.draw(1)));
        assertEquals(new NegativeControl(Slope.MISSING, 2), control);
        assertFalse(control.setOff());
    }
}
