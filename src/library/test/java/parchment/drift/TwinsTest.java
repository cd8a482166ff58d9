package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.feature.Features;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.quantity.TemperatureUnit;

class TwinsTest {
    private static final Logbook HARBOUR = Logbook.open(Path.of("..", "datasets", "harbour"));

    private static Logbook aimed(double... kilograms) {
        return BuiltBatch.logbook(Arrays.stream(kilograms)
                .mapToObj(m -> BuiltBatch.of(m).withAim(205))
                .toList());
    }

    @Test
    void twinsAreMeantAlikeAndGiveTheRepeatability() {
        Twins twins = Twins.of(HARBOUR);
        for (Twins.Group group : twins.groups()) {
            Batch first = group.batches().get(0);
            for (Batch other : group.batches()) {
                assertEquals(first.lot(), other.lot());
                assertEquals(
                        first.conditions().greenMass().orElseThrow().kilograms(),
                        other.conditions().greenMass().orElseThrow().kilograms(),
                        0.03 * 2.5);
            }
        }
        Repeatability repeatability = twins.repeatability(Features.browningTime());
        double deviation = repeatability.standardDeviation().orElseThrow();
        assertTrue(repeatability.interval(0.90).contains(deviation));
        assertTrue(repeatability.degreesOfFreedom() == repeatability.batches() - repeatability.groups());
        Repeatability none = Twins.of(aimed(2, 3)).repeatability(Features.greenMass());
        assertTrue(none.toString().startsWith("Cannot tell how repeatable"), none.toString());
    }

    /** A step of 2 °C is one of 3.6 °F: the reader's degrees, as everywhere on the page. */
    @Test
    void whatCountsAsAlikeIsToldInTheReadersDegrees() {
        Logbook logbook = aimed(2, 2);
        assertTrue(
                Twins.of(logbook).text().contains("charge temperature within 2 °C, planned drop within 1 °C."),
                Twins.of(logbook).text());
        Twins fahrenheit = Twins.of(logbook.in(TemperatureUnit.FAHRENHEIT));
        assertTrue(
                fahrenheit.text().contains("charge temperature within 3.6 °F, planned drop within 1.8 °F."),
                fahrenheit.text());
    }

    @Test
    void repeatabilityAgreesWithTheWorkedFormula() {
        // Pooled standard deviation of 2.00, 2.02, 2.04 and of 3.00, 3.04: sqrt((0.0008 + 0.0008) / 3), by hand.
        Repeatability r = Twins.of(aimed(2.00, 2.02, 2.04, 3.00, 3.04)).repeatability(Features.greenMass());
        assertEquals(Math.sqrt(0.0016 / 3), r.standardDeviation().orElseThrow(), 1e-12);
        assertEquals(3, r.degreesOfFreedom());
        // Chi-squared with 3 degrees of freedom: 0.352 (5 %) and 7.815 (95 %), printed tables.
        assertEquals(Math.sqrt(0.0016 / 7.815), r.interval(0.90).lower(), 1e-5);
        assertEquals(Math.sqrt(0.0016 / 0.352), r.interval(0.90).upper(), 1e-4);
    }

    @ParameterizedTest
    @CsvSource({
        "2.059,205,180,1",
        "2.061,205,180,0",
        "2,205.99,180,1",
        "2,206.01,180,0",
        "2,205,181.99,1",
        "2,205,182.01,0",
        "2,205,NaN,0",
        "2,NaN,180,0"
    })
    void alikeIsWithinThreePerCentOfMassADegreeOfAimAndTwoOfCharge(double mass, double aim, double charge, int groups) {
        Twins twins = Twins.of(BuiltBatch.logbook(List.of(
                BuiltBatch.of(2).withAim(205).withCharge(180),
                BuiltBatch.of(mass).withAim(aim).withCharge(charge))));
        assertEquals(groups, twins.groups().size(), twins.toString());
    }

    @Test
    void groupsAreNamedByTheDropThatWasMeantAndByMassAndChargeWhereThatIsNotEnough() {
        BuiltBatch two = BuiltBatch.of(2).withCharge(180);
        List<BuiltBatch> rows =
                List.of(two.withAim(205), two.withAim(205), two.withAim(205), two.withAim(209), two.withAim(209));
        assertEquals(
                List.of("3 twins, lot one, planned drop 205.0 °C", "2 twins, lot one, planned drop 209.0 °C"),
                names(rows));
        BuiltBatch three = BuiltBatch.of(3).withCharge(185).withAim(205);
        assertEquals(
                List.of(
                        "2 twins, lot one, planned drop 205.0 °C, 2 kg, charge 180.0 °C",
                        "2 twins, lot one, planned drop 205.0 °C, 3 kg, charge 185.0 °C"),
                names(List.of(two.withAim(205), two.withAim(205), three, three)));
    }

    private static List<String> names(List<BuiltBatch> rows) {
        return Twins.of(BuiltBatch.logbook(rows)).groups().stream()
                .map(Twins.Group::toString)
                .toList();
    }

    @Test
    void withoutPlannedDropsItCannotBeTold() {
        Twins none = Twins.of(
                BuiltBatch.logbook(Stream.of(2.0, 2.0, 2.0).map(BuiltBatch::of).toList()));
        assertEquals(
                "Cannot tell which batches of built were meant alike: no planned drop temperature is written. Write it before"
                        + " charge, in the column 'planned drop temperature' of batches.csv",
                none.toString());
        assertTrue(none.repeatability(Features.greenMass())
                .toString()
                .startsWith("Cannot tell how repeatable green mass is"));
        Twins some = Twins.of(BuiltBatch.logbook(
                List.of(BuiltBatch.of(2).withAim(205), BuiltBatch.of(2).withAim(205), BuiltBatch.of(2))));
        assertEquals("2 of 3 batches have twins, in 1 group", some.toString());
        assertTrue(
                some.text().contains("1 of 3 batches has no planned drop temperature written and is left out"),
                some.text());
    }
}
