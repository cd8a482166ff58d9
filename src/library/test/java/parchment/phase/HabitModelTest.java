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
import parchment.phase.found.Source;
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
        return new HabitRow(phases, RisingPart.of(phases), day, List.of("lot", "1", "Ida"), 5);
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

    /** Every other day lies off by a little; the day of one mark lies far off, and must not widen its own interval. */
    @Test
    void theIntervalOfADayComesFromTheOtherDays() {
        List<HabitRow> rows = new ArrayList<>(rows(20, 1));
        HabitRow odd = row("odd", "its own day", 159);
        rows.add(odd);
        HabitModel model = new HabitModel(KIND, rows);
        assertTrue(model.isCalibrated());
        // Of 21 days the largest is asked for at 95 in 100: the odd day's, except on that day itself.
        double own = model.factor(odd, 0.95);
        double other = model.factor(rows.get(0), 0.95);
        assertTrue(own < other - 0.1, own + " on its own day, " + other + " on another");
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
        double spread = Math.max(1, parchment.stats.linear.Robust.medianAbsoluteDeviation(known));
        for (double times : new double[] {5, 8}) {
            List<HabitRow> more = new ArrayList<>(rows);
            more.add(row("far", "day 99", parchment.stats.linear.Robust.median(known) + times * spread));
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
        return new HabitRow(phases, RisingPart.of(phases), day, List.of("lot", "1", "Ida"), kilograms);
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

    /** A row like the others of its own lot or day: at so many °C, from a lot and a day of its own. */
    private static HabitRow of(String name, String day, String lot, double celsius) {
        HabitRow row = row(name, day, celsius);
        return new HabitRow(row.phases(), row.climb(), day, List.of(lot, "1", "Ida"), 5);
    }

    @Test
    void aRowWithoutTheMarkTeachesNothingAndAFoundMarkIsNotAWrittenOne() {
        List<HabitRow> rows = new ArrayList<>(rows(6, 1));
        Curve dips = ExampleRoast.curve("bean temperature", Unit.TEMPERATURE, ExampleRoast.BEAN, -40, 740, 5);
        Phases found = Phases.of(Batch.named("no mark")
                .curve(Quantity.BEAN_TEMPERATURE, dips)
                .writtenMark(MarkKind.DROP, Elapsed.seconds(740))
                .build());
        assertTrue(found.mark(MarkKind.TURNING_POINT).isPresent());
        HabitRow unmarked = new HabitRow(found, RisingPart.of(found), "day 99", List.of("lot", "1", "Ida"), 5);
        rows.add(unmarked);
        HabitModel model = new HabitModel(KIND, rows);
        assertEquals(6, model.learnt.size());
        assertEquals(6, model.days());
        assertTrue(Double.isNaN(HabitModel.writtenCelsius(unmarked, MarkKind.TURNING_POINT)));
        assertEquals(228, HabitModel.writtenCelsius(unmarked, MarkKind.DROP), 1);
    }

    @Test
    void ofSixMarksOneCanBeTheOddOne() {
        List<HabitRow> six = new ArrayList<>(rows(5, 1));
        six.add(row("far", "day 99", 185));
        assertEquals(1, new HabitModel(KIND, six).setAside.size());
    }

    /** Lots of their own: what was written of a lot's other batches counts for it, and less for another. */
    @Test
    void aLotsOwnMarksMoveWhatIsExpectedOfIt() {
        List<HabitRow> rows = new ArrayList<>();
        for (int d = 0; d < 12; d++) {
            double off = (d * 5 % 3 - 1) * 0.2;
            rows.add(of("a" + d, "day " + d, "early", 152 + off));
            rows.add(of("b" + d, "day " + d, "late", 158 - off));
        }
        HabitModel model = new HabitModel(KIND, rows);
        double early = model.expected(of("new", "another day", "early", 155)).value();
        double late = model.expected(of("new", "another day", "late", 155)).value();
        double unknown =
                model.expected(of("new", "another day", "new lot", 155)).value();
        assertEquals(152, early, 0.3);
        assertEquals(158, late, 0.3);
        assertEquals(155, unknown, 0.3);
        // What a lot is not known of is off by as much as lots differ.
        assertTrue(model.expected(of("new", "another day", "new lot", 155)).standardDeviation() > 2);
        assertTrue(model.expected(of("new", "another day", "early", 155)).standardDeviation() < 0.6);
    }

    /** Days of their own: a new day may lie as far off as days do, and a day's own marks never foretell it. */
    private static List<HabitRow> daysApart(int days, double ofTheLast) {
        List<HabitRow> rows = new ArrayList<>();
        for (int d = 0; d < days; d++) {
            double own = d == days - 1 ? ofTheLast : (d * 5 % 7 - 3) * 1.0;
            rows.add(row("a" + d, "day " + d, 155 + own + 0.1));
            rows.add(row("b" + d, "day " + d, 155 + own - 0.1));
        }
        return rows;
    }

    @Test
    void aNewDayMayLieAsFarOffAsDaysDo() {
        HabitModel model = new HabitModel(KIND, daysApart(14, 0));
        double deviation = model.expected(row("new", "another day", 155)).standardDeviation();
        assertTrue(deviation > 1.7 && deviation < 2.6, "" + deviation);
    }

    @Test
    void aDaysOwnMarksDoNotForetellIt() {
        List<HabitRow> rows = daysApart(14, 6);
        HabitModel model = new HabitModel(KIND, rows);
        assertEquals(155, model.expected(rows.get(27)).value(), 0.6);
        assertEquals(155, model.expected(rows.get(0)).value(), 1.2);
    }

    /** Where the rate is in the model, what it explains is no error any more. */
    @Test
    void whatTheRateExplainsIsNoError() {
        HabitModel model = new HabitModel(KIND, moving(8, 16, new double[] {5}));
        assertEquals(2, difference(model, 12, 5), 0.2);
        HabitRow new10 = moved("new", "another day", 10, 5, 155);
        assertTrue(model.expected(new10).standardDeviation() < 0.4, "" + model.expected(new10));
        HabitModel few = new HabitModel(KIND, moving(7, 14, new double[] {5}));
        assertTrue(few.expected(new10).standardDeviation() > 1, "" + few.expected(new10));
    }

    /** A batch whose curve tells no rate counts as one of the usual rate, and a mass that is not written as the usual mass. */
    @Test
    void whatIsMissingCountsAsUsual() {
        List<HabitRow> rows = moving(8, 24, MASSES);
        HabitRow usual = moved("new", "another day", 10, 5, 155);
        HabitModel model = new HabitModel(KIND, rows);
        HabitRow withoutClimb = new HabitRow(
                usual.phases(), java.util.Optional.empty(), usual.day(), usual.surroundings(), usual.kilograms());
        assertEquals(model.expected(usual).value(), model.expected(withoutClimb).value(), 0.2);
        // Half of the masses are not written: the others still teach what a kilogram does.
        List<HabitRow> half = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            HabitRow row = rows.get(i);
            half.add(
                    i % 4 == 0
                            ? new HabitRow(row.phases(), row.climb(), row.day(), row.surroundings(), Double.NaN)
                            : row);
        }
        assertTrue(difference(new HabitModel(KIND, half), 10, 6) > 0.7);
    }

    /**
     * Below twenty days: Student's t, times the root mean square of what days left out lay off, in standard deviations, if that is over 1.
     */
    @Test
    void theFactorIsWidenedByWhatDaysLeftOutLayOff() {
        List<HabitRow> rows = new ArrayList<>(rows(4, 2));
        for (int k = 0; k < 6; k++) {
            rows.add(row("off " + k, "day 9", 159 + 0.2 * k));
        }
        HabitModel model = new HabitModel(KIND, rows);
        assertFalse(model.isCalibrated());
        double squares = 0;
        for (HabitRow row : model.learnt) {
            double off =
                    HabitModel.writtenCelsius(row, KIND) - model.expected(row).value();
            squares += Math.pow(off / model.expected(row).standardDeviation(), 2) / model.learnt.size();
        }
        assertTrue(squares > 1.05, "" + squares);
        // Student's t of three degrees of freedom at 90 %: 2.3534.
        assertEquals(2.3534 * Math.sqrt(squares), model.factor(row("new", "another day", 155), 0.9), 2e-3 * squares);
    }

    /** From twenty days on the curve's own sign may help; where a mark has none, what is expected is that of the habit. */
    @Test
    void aCalibratedHabitWithoutASignExpectsWhatWasWritten() {
        HabitModel model = new HabitModel(KIND, rows(24, 2));
        assertTrue(model.isCalibrated());
        HabitRow row = row("new", "another day", 150);
        assertEquals(155, model.expected(row).value(), 0.3);
        assertEquals(1.2, model.expected(row).standardDeviation(), 0.3);
    }

    /** A drop that was found on the curve and not written is no habit of the pen. */
    @Test
    void aFoundDropIsNotAWrittenOne() {
        Curve falls = ExampleRoast.curve(
                "bean temperature",
                Unit.TEMPERATURE,
                t -> t <= 740 ? ExampleRoast.BEAN.applyAsDouble(t) : 228 - 1.5 * (t - 740),
                -40,
                780,
                2);
        Phases phases = Phases.of(
                Batch.named("found").curve(Quantity.BEAN_TEMPERATURE, falls).build());
        assertEquals(Source.FOUND, phases.mark(MarkKind.DROP).orElseThrow().source());
        HabitRow row = new HabitRow(phases, RisingPart.of(phases), "day", List.of("lot", "1", "Ida"), 5);
        assertTrue(Double.isNaN(HabitModel.writtenCelsius(row, MarkKind.DROP)));
    }

    /** With too few marks the common practice is moved towards those of other days, and never by the day's own. */
    @Test
    void tooFewMarksMoveTheCommonPracticeByThoseOfOtherDays() {
        HabitRow asked = row("new", "another day", 155);
        double none = new HabitModel(KIND, List.of()).expected(asked).value();
        HabitModel three =
                new HabitModel(KIND, List.of(row("a", "day 1", 160), row("b", "day 2", 160), row("c", "day 3", 160)));
        assertFalse(three.isLearnt());
        assertTrue(three.expected(asked).value() > none + 1, none + " " + three.expected(asked));
        assertTrue(three.expected(asked).value() < 160.1);
        HabitModel own =
                new HabitModel(KIND, List.of(row("a", "day 1", 160), row("b", "day 2", 160), row("c", "day 3", 175)));
        assertEquals(
                three.expected(row("new", "day 3", 155)).value(),
                own.expected(row("new", "day 3", 155)).value(),
                1e-9);
        assertTrue(own.expected(asked).value() > three.expected(asked).value() + 1);
    }

    /** Rises by 10 °C/min to where the beans crack, and by 5 °C/min from there on; the crack is written where the curve bends. */
    private static HabitRow bent(String name, String day, double crack) {
        double at = 6 * (crack - 100);
        Curve curve = ExampleRoast.curve(
                "bean temperature",
                Unit.TEMPERATURE,
                t -> t <= at ? 100 + t / 6 : crack + (t - at) / 12,
                0,
                at + 140,
                2);
        Phases phases = Phases.of(Batch.named(name)
                .curve(Quantity.BEAN_TEMPERATURE, curve)
                .writtenMark(MarkKind.FIRST_CRACK_START, Elapsed.seconds(at))
                .writtenMark(MarkKind.DROP, Elapsed.seconds(at + 140))
                .build());
        return new HabitRow(phases, RisingPart.of(phases), day, List.of("lot", "1", "Ida"), 5);
    }

    /** From twenty days on, where the curve's own bend has told the crack on all other days, it tells it on a new one. */
    @Test
    void theCurvesOwnBendTellsTheCrackOnceItHasDoneSoOnTwentyDays() {
        List<HabitRow> rows = new ArrayList<>();
        for (int d = 0; d < 24; d++) {
            rows.add(bent("b" + d, "day " + d, 196 + (d * 5 % 7 - 3) * 0.8));
        }
        HabitRow late = bent("new", "another day", 198.5);
        HabitModel model = new HabitModel(MarkKind.FIRST_CRACK_START, rows);
        assertEquals(198.5, model.expected(late).value(), 0.7);
        assertTrue(
                model.expected(late).standardDeviation() < 0.8,
                model.expected(late).toString());
        HabitModel few = new HabitModel(MarkKind.FIRST_CRACK_START, rows.subList(0, 19));
        // What the bend did to the rate is in the habit too, but does not tell as much.
        assertTrue(few.expected(late).value() < 197.5, few.expected(late).toString());
        assertTrue(
                few.expected(late).standardDeviation()
                        > 1.5 * model.expected(late).standardDeviation(),
                few.expected(late) + " " + model.expected(late));
    }
}
