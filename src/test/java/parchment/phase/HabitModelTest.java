package parchment.phase;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.curve.Curve;
import parchment.logbook.Batch;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.quantity.Elapsed;
import parchment.quantity.Unit;

/** Rows built by hand: every curve rises by 10 °C/min from 100 °C at charge, so a mark written at t s stands at 100 + t / 6 °C. */
class HabitModelTest {
    private static final MarkKind KIND = MarkKind.YELLOWING;

    private static HabitRow row(String name, String day, double celsius) {
        Curve curve = ExampleRoast.curve("bean temperature", Unit.TEMPERATURE, t -> 100 + t / 6, 0, 660, 5);
        Batch batch = Batch.named(name)
                .curve(Quantity.BEAN_TEMPERATURE, curve)
                .writtenMark(KIND, Elapsed.seconds(6 * (celsius - 100)))
                .writtenMark(MarkKind.DROP, Elapsed.seconds(660))
                .build();
        Phases phases = Phases.of(batch);
        return new HabitRow(phases, Climb.of(phases), day, List.of("lot", "1", "Ida"), 5);
    }

    /** Marks around 155 °C that differ from row to row, so many to a day. */
    private static List<HabitRow> rows(int days, int perDay) {
        List<HabitRow> rows = new ArrayList<>();
        for (int d = 0; d < days; d++) {
            for (int k = 0; k < perDay; k++) {
                double off = ((d * 7 + k * 3) % 5 - 2) * 0.8;
                rows.add(row(d + "/" + k, "day " + d, 155 + off));
            }
        }
        return rows;
    }

    @Test
    void isLearntFromSixMarksOnFourDaysOn() {
        assertFalse(new HabitModel(KIND, rows(5, 1)).isLearnt());
        assertTrue(new HabitModel(KIND, rows(6, 1)).isLearnt());
        assertFalse(new HabitModel(KIND, rows(3, 3)).isLearnt());
        assertTrue(new HabitModel(KIND, rows(4, 2)).isLearnt());
    }

    @Test
    void isCalibratedFromTwentyDaysOn() {
        HabitModel few = new HabitModel(KIND, rows(19, 1));
        HabitModel enough = new HabitModel(KIND, rows(20, 1));
        assertFalse(few.isCalibrated());
        assertTrue(enough.isCalibrated());
        // Below, Student's t with two degrees of freedom less than days: 1.740 for 17 of them.
        HabitRow row = row("new", "another day", 155);
        assertTrue(few.factor(row, 0.9) >= 1.7396, "" + few.factor(row, 0.9));
        // From 20 days on the quantile of what left-out days lay off: whole scores of these rows, no table of t.
        assertEquals(enough.calibration.without("another day").factor(0.9), enough.factor(row, 0.9), 1e-12);
    }

    @Test
    void whatItSaysOfADayDoesNotDependOnWhatWasWrittenThatDay() {
        List<HabitRow> rows = rows(8, 2);
        List<HabitRow> changed = new ArrayList<>(rows);
        changed.set(0, row("0/0", "day 0", 158));
        HabitModel before = new HabitModel(KIND, rows);
        HabitModel after = new HabitModel(KIND, changed);
        double ownDay = after.expected(changed.get(0)).value()
                - before.expected(rows.get(0)).value();
        double otherDay = after.expected(rows.get(5)).value()
                - before.expected(rows.get(5)).value();
        // The variances are those of all days, so a day's own marks still move the weights a little.
        assertTrue(Math.abs(ownDay) < 0.05, "own day moved by " + ownDay);
        assertTrue(otherDay > 0.1, "other days moved by " + otherDay);
    }

    @Test
    void aMarkSixSpreadsFromTheOthersTeachesNothing() {
        List<HabitRow> rows = new ArrayList<>(rows(8, 1));
        double[] known = rows.stream()
                .mapToDouble(r -> HabitModel.writtenCelsius(r, KIND))
                .toArray();
        double spread = Math.max(1, parchment.stats.Robust.medianAbsoluteDeviation(known));
        for (double times : new double[] {5, 8}) {
            List<HabitRow> more = new ArrayList<>(rows);
            more.add(row("far", "day 99", parchment.stats.Robust.median(known) + times * spread));
            HabitModel model = new HabitModel(KIND, more);
            assertEquals(times > 6 ? 1 : 0, model.setAside.size(), times + " spreads");
            assertEquals(9, model.setAside.size() + model.learnt.size());
        }
        // Of five marks none can be told to be the odd one.
        List<HabitRow> five = new ArrayList<>(rows(4, 1));
        five.add(row("far", "day 99", 175));
        assertEquals(0, new HabitModel(KIND, five).setAside.size());
    }

    @Test
    void readsTheTemperatureOfAWrittenMarkOnly() {
        HabitRow row = row("a", "day", 155);
        assertEquals(155, HabitModel.writtenCelsius(row, KIND), 0.05);
        assertTrue(Double.isNaN(HabitModel.writtenCelsius(row, MarkKind.FIRST_CRACK_START)));
    }

    @Test
    void expectsTheMeanOfEvenRowsAndSaysHowFarANewDayMayLieOff() {
        HabitModel model = new HabitModel(KIND, rows(10, 2));
        HabitRow row = row("new", "another day", 150);
        assertEquals(155, model.expected(row).value(), 0.5);
        assertTrue(model.expected(row).standardDeviation() > 0.8, "" + model.expected(row));
        assertNotEquals(0, model.factor(row, 0.5));
        assertTrue(model.factor(row, 0.9) > model.factor(row, 0.5));
        assertEquals(10, model.days());
        assertEquals(1, model.model().size());
        assertEquals(0, new HabitModel(KIND, rows(3, 1)).model().size());
    }

    /** Logged at its own rate around 155 °C, and with its own green mass; the mark follows both. */
    private static HabitRow moved(String name, String day, double rate, double kilograms, double celsius) {
        Curve curve =
                ExampleRoast.curve("bean temperature", Unit.TEMPERATURE, t -> 100 + rate / 60 * t, 0, 6600 / rate, 5);
        Batch batch = Batch.named(name)
                .curve(Quantity.BEAN_TEMPERATURE, curve)
                .writtenMark(KIND, Elapsed.seconds(60 / rate * (celsius - 100)))
                .writtenMark(MarkKind.DROP, Elapsed.seconds(6600 / rate))
                .build();
        Phases phases = Phases.of(batch);
        return new HabitRow(phases, Climb.of(phases), day, List.of("lot", "1", "Ida"), kilograms);
    }

    private static final double[] RATES = {8, 12, 9, 11, 10};
    private static final double[] MASSES = {6, 5, 4, 5.5, 4.5, 5.2, 4.8};

    /** One degree more for each degree a minute, two for each kilogram, and a tenth of a degree of scatter. */
    private static double truth(double rate, double kilograms) {
        return 155 + (rate - 10) + 2 * (kilograms - 5);
    }

    private static List<HabitRow> moving(int days, int marks, double[] masses) {
        List<HabitRow> rows = new ArrayList<>();
        for (int i = 0; i < marks; i++) {
            double rate = RATES[i % RATES.length];
            double mass = masses[i % masses.length];
            rows.add(moved("m" + i, "day " + i % days, rate, mass, truth(rate, mass) + (i * 7 % 3 - 1) * 0.1));
        }
        return rows;
    }

    private static double difference(HabitModel model, double rate, double kilograms) {
        return model.expected(moved("new", "another day", rate, kilograms, 155)).value()
                - model.expected(moved("new", "another day", 10, 5, 155)).value();
    }

    /** The rate counts from 8 days and 12 marks on, the mass from 20 marks on: not before, and then by what is true. */
    @ParameterizedTest
    @CsvSource({
        "7, 14, false, false",
        "8, 11, false, false",
        "8, 12, true, false",
        "8, 19, true, false",
        "8, 20, true, true",
    })
    void rateAndMassCountFromEnoughMarksOnEnoughDaysOn(int days, int marks, boolean byRate, boolean byMass) {
        HabitModel model = new HabitModel(KIND, moving(days, marks, MASSES));
        assertEquals(byRate ? 2 : 0, difference(model, 12, 5), byMass ? 0.15 : byRate ? 0.9 : 1e-9);
        assertEquals(byMass ? 2 : 0, difference(model, 10, 6), byMass ? 0.15 : 1e-9);
        // A mass or a curve that is missing counts as the usual one.
        double unknown =
                model.expected(moved("new", "another day", 10, Double.NaN, 155)).value();
        assertEquals(model.expected(moved("new", "another day", 10, 5, 155)).value(), unknown, 1e-9);
    }

    /** Masses within 2 % of the usual one are the scale's own scatter. */
    @ParameterizedTest
    @CsvSource({"1.015, false", "1.025, true"})
    void aMassThatHardlyVariesIsLeftOut(double share, boolean byMass) {
        HabitModel model = new HabitModel(KIND, moving(8, 24, new double[] {5, 5, 5, 5 * share, 5, 5, 5}));
        assertEquals(
                byMass,
                model.model().get(0).toString().contains("green mass")
                        || model.model().get(0).text().contains("green mass"));
    }

    /** With few days Student's t with two degrees of freedom less than days, never less than two; of nothing learnt the normal. */
    @ParameterizedTest
    @CsvSource({"4, 4.3027", "10, 2.3060", "18, 2.1199"})
    void belowTwentyDaysTheFactorIsStudentsAtLeast(int days, double student) {
        HabitModel model = new HabitModel(KIND, rows(days, 2));
        double factor = model.factor(row("new", "another day", 155), 0.95);
        assertTrue(factor >= student - 1e-4 && factor < 1.5 * student, "" + factor);
        // Quantiles keep their ratio, however much is widened: 2.920, 1.860 and 1.746 at 90 %.
        double ratio = days == 4 ? 2.9200 / 4.3027 : days == 10 ? 1.8595 / 2.3060 : 1.7459 / 2.1199;
        assertEquals(ratio, model.factor(row("new", "another day", 155), 0.9) / factor, 1e-4);
        HabitModel nothing = new HabitModel(KIND, rows(3, 1));
        assertEquals(1.9600, nothing.factor(row("new", "another day", 155), 0.95), 1e-3);
    }
}
