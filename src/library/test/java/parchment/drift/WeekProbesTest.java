package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.calendar.machine.MachineDays;
import parchment.display.ShortSentences;
import parchment.drift.found.WeekCause;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.written.Upkeep;
import parchment.period.NearbyWork;
import parchment.period.ProbeChange;
import parchment.period.ProbeChange.Kind;
import parchment.quantity.TemperatureUnit;
import parchment.stats.Estimate;

class WeekProbesTest {
    /** A batch a day on one machine from 2025-01-01 on, and what the upkeep says. */
    private static Logbook days(int number, Upkeep... work) {
        List<Batch> batches = IntStream.range(0, number)
                .mapToObj(i -> Batch.named("B" + (i + 1))
                        .machine("drum")
                        .lot(i % 2 == 0 ? "one" : "two")
                        .roastedAt(LocalDate.of(2025, 1, 1)
                                .plusDays(i)
                                .atTime(12, 0)
                                .atOffset(ZoneOffset.UTC))
                        .build())
                .toList();
        return Logbook.of(LogbookContents.ofBatches("built", batches).toBuilder()
                .upkeep(List.of(work))
                .build());
    }

    private static ProbeChange change(Kind kind, int day, double chance, Estimate... offsets) {
        LocalDate on = LocalDate.of(2025, 1, day);
        return new ProbeChange("drum", kind, on, on, on, List.of(offsets), chance, "");
    }

    private static WeekCause cause(ProbeChange change, Logbook logbook) {
        WeekCause cause = WeekProbeCause.of(change, MachineDays.of(logbook).get(0), logbook);
        ShortSentences.keptBy(cause.howSure());
        ShortSentences.keptBy(cause.next());
        return cause;
    }

    private static final Estimate CRACK = new Estimate("first crack", -2.8, 0.3, Double.POSITIVE_INFINITY);
    private static final Estimate TURNING = new Estimate("turning point", -3.4, 0.6, Double.POSITIVE_INFINITY);
    private static final Estimate EMPTY = new Estimate("empty drum", -3, 0.1, Double.POSITIVE_INFINITY);

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "FOUND_AND_WRITTEN; CLEAR; The bean probe of drum was changed and reads lower since 2025-01-10; Read older notes with that in"
                        + " mind",
                "FOUND_WITHOUT_ENTRY; CLEAR; The bean probe of drum reads lower (nobody wrote why) since 2025-01-10; Look at the probe and its"
                        + " cable",
                "WRITTEN_WITHOUT_CHANGE; PERHAPS; The bean probe of drum was changed and may read lower since 2025-01-10; Take drop"
                        + " temperatures from before with care",
                "LOT_OR_PROBE; PERHAPS; The bean probe of drum may read lower (or it is the lot) since 2025-01-10; Roast an older lot again",
                "ONE_PLACE_ONLY; PERHAPS; The bean probe of drum may read lower (or a habit changed) since 2025-01-10; Look at the probe, and"
                        + " at how charge",
                "NOT_IN_THE_BEANS; PERHAPS; The bean probe of drum reads otherwise in the empty drum only since 2025-01-10; Look at the air"
                        + " probe",
                "STEP_OR_SLOW; PERHAPS; The bean probe of drum may read lower (or something changes slowly) since 2025-01-10; Look at the"
                        + " probe, and ask again"
            })
    void tellsEachKindOfChangeWithWhatToDo(Kind kind, WeekCause.Sure sure, String sentence, String next) {
        WeekCause cause = cause(change(kind, 10, 0.005, CRACK, TURNING, EMPTY), days(20));
        assertEquals(sure, cause.sure());
        assertEquals(sentence, cause.sentence().replaceFirst(": .*", ""));
        assertEquals(next, cause.next().substring(0, next.length()));
    }

    /** The change is dated to the tenth, from the ninth to the eleventh: work counts from three days before to three days after. */
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "5; Look at the probe and its cable, and write into upkeep.csv what was done.",
                "6; The upkeep says: ducts cleaned on 2025-01-06 (4 days before). That can do this too.",
                "9; The upkeep says: ducts cleaned on 2025-01-09 (the day before). That can do this too.",
                "10; The upkeep says: ducts cleaned on 2025-01-10 (the same day). That can do this too.",
                "11; The upkeep says: ducts cleaned on 2025-01-11 (the day after). That can do this too.",
                "14; The upkeep says: ducts cleaned on 2025-01-14 (4 days after). That can do this too.",
                "15; Look at the probe and its cable, and write into upkeep.csv what was done."
            })
    void otherWorkAboutThenIsSaidToDoThisToo(int day, String next) {
        LocalDate on = LocalDate.of(2025, 1, 10);
        ProbeChange change = new ProbeChange(
                "drum", Kind.FOUND_WITHOUT_ENTRY, on, on.minusDays(1), on.plusDays(1), List.of(CRACK), 0.005, "");
        Logbook logbook = days(
                20, new Upkeep("drum", LocalDate.of(2025, 1, day), "ducts cleaned, chaff", java.util.Optional.empty()));
        WeekCause cause = WeekProbeCause.of(change, MachineDays.of(logbook).get(0), logbook);
        assertEquals(next, cause.next());
        boolean near = day > 5 && day < 15;
        assertEquals(near ? WeekCause.Sure.PERHAPS : WeekCause.Sure.CLEAR, cause.sure());
        assertEquals(
                near
                        ? "the bean probe of drum may read lower (or it is the work of 2025-01-" + (day < 10 ? "0" : "")
                                + day + ")"
                        : "the bean probe of drum reads lower (nobody wrote why)",
                cause.what());
    }

    /** Every kind of change: work on something else explains those that nobody wrote, and work on a bean probe or another machine none. */
    @ParameterizedTest
    @CsvSource({
        "FOUND_AND_WRITTEN,false",
        "FOUND_WITHOUT_ENTRY,true",
        "WRITTEN_WITHOUT_CHANGE,false",
        "OTHER_WORK,false",
        "LOT_OR_PROBE,true",
        "ONE_PLACE_ONLY,true",
        "NOT_IN_THE_BEANS,true",
        "STEP_OR_SLOW,true"
    })
    void onlyAChangeThatNobodyWroteIsExplainedByOtherWork(Kind kind, boolean explained) {
        LocalDate day = LocalDate.of(2025, 1, 9);
        ProbeChange change = change(kind, 10, 0.005, CRACK);
        assertEquals(
                explained,
                NearbyWork.of(change, days(20, new Upkeep("drum", day, "burner serviced", java.util.Optional.empty())))
                        .isPresent());
        assertFalse(NearbyWork.of(
                        change, days(20, new Upkeep("drum", day, "bean probe cleaned", java.util.Optional.empty())))
                .isPresent());
        assertFalse(NearbyWork.of(
                        change, days(20, new Upkeep("other drum", day, "burner serviced", java.util.Optional.empty())))
                .isPresent());
    }

    @Test
    void inTheEmptyDrumOnlyTheWorkIsSaidToo() {
        Logbook logbook =
                days(20, new Upkeep("drum", LocalDate.of(2025, 1, 9), "fan replaced", java.util.Optional.empty()));
        assertEquals(
                "the bean probe of drum may read otherwise in the empty drum (or it is the work of 2025-01-09)",
                WeekProbeCause.of(
                                change(Kind.NOT_IN_THE_BEANS, 10, 0.005, EMPTY),
                                MachineDays.of(logbook).get(0),
                                logbook)
                        .what());
    }

    /** 90 % of a normal distribution lie within 1.645 standard deviations (table): 2.8 +- 0.49 and 3.4 +- 0.99. */
    @Test
    void theClearestStepInTheBeansIsToldFirstWithItsInterval() {
        Logbook logbook = days(20);
        ProbeChange change = change(Kind.FOUND_WITHOUT_ENTRY, 10, 0.005, TURNING, CRACK, EMPTY);
        assertEquals(
                "2.8 °C (2.3 to 3.3) lower at first crack, 3.4 °C (2.4 to 4.4) lower at the turning point",
                cause(change, logbook).size());
        assertEquals(
                "5.0 °F (4.2 to 5.9) lower at first crack, 6 °F (4 to 8) lower at the turning point",
                cause(change, logbook.in(TemperatureUnit.FAHRENHEIT)).size());
        assertEquals(
                "Luck alone shows such a step in about one of 200 logbooks.",
                cause(change, logbook).howSure());
    }

    @Test
    void whatWasFoundAndWrittenWithoutAChanceSaysThatTheReadingsWouldNotTell() {
        WeekCause cause = cause(change(Kind.FOUND_AND_WRITTEN, 17, Double.NaN, CRACK), days(20));
        assertEquals("The upkeep says so; the readings alone would not.", cause.howSure());
    }

    @Test
    void aStepAtTheLastDayThatIsSearchedMayHaveComeLater() {
        ProbeChange change = change(Kind.FOUND_WITHOUT_ENTRY, 17, 0.005, CRACK);
        assertEquals(
                "2.8 °C (2.3 to 3.3) lower at first crack; it may have come later",
                cause(change, days(20)).size());
        assertEquals(
                "2.8 °C (2.3 to 3.3) lower at first crack",
                cause(change, days(21)).size());
    }

    @Test
    void whatWasWrittenAndNotSeenSaysByHowMuchReadingsAreMovedAllTheSame() {
        WeekCause cause = cause(change(Kind.WRITTEN_WITHOUT_CHANGE, 17, Double.NaN, CRACK), days(20));
        assertEquals(
                "Too few batches to be sure that it reads differently; readings at first crack are moved down by about 2.8 °C (2.3 to"
                        + " 3.3).",
                cause.howSure());
        assertEquals("2.8 °C (2.3 to 3.3) lower at first crack", cause.size());
    }

    /** A batch a day: the eighth day from the end is the last that is news, and one before it is told as reckoned with. */
    @ParameterizedTest
    @CsvSource({"13,1,0", "12,0,1"})
    void aChangeIsNewsForEightRoastDays(int day, int news, int earlier) {
        Logbook logbook =
                days(20, new Upkeep("drum", LocalDate.of(2025, 1, day), "probe moved", java.util.Optional.empty()));
        List<Batch> week = logbook.batches().subList(13, 20);
        assertEquals(news, WeekProbes.of(logbook, week).size());
        assertEquals(earlier, WeekProbes.earlier(logbook, week).size());
    }

    @Test
    void aProbeChangedAfterTheLastRoastIsToldOnce() {
        Logbook logbook = days(
                12,
                new Upkeep("drum", LocalDate.of(2025, 1, 20), "probe moved", java.util.Optional.empty()),
                new Upkeep("drum", LocalDate.of(2025, 2, 20), "probe moved", java.util.Optional.empty()));
        List<String> told = new ArrayList<>();
        WeekProbes.of(logbook, logbook.batches())
                .forEach(news -> told.add(news.cause().toString()));
        assertEquals(
                List.of(
                        "No batch was roasted on the changed bean probe of drum since 2025-01-20. Write first crack of the next batches"
                                + " down: only they show what it reads."),
                told);
    }

    @Test
    void theYearSaysToWhichOtherWorkMayHaveMovedTheReadings() {
        Logbook logbook =
                days(20, new Upkeep("drum", LocalDate.of(2025, 1, 9), "ducts cleaned", java.util.Optional.empty()));
        assertEquals(
                List.of(
                        "The bean probe may read differently since about 2025-01-10. The upkeep says: ducts cleaned on 2025-01-09 (the day"
                                + " before). That can do this too."),
                YearPicture.otherWork(
                        List.of(
                                change(Kind.FOUND_WITHOUT_ENTRY, 10, 0.005, CRACK),
                                change(Kind.FOUND_AND_WRITTEN, 10, 0.005, CRACK),
                                change(Kind.FOUND_WITHOUT_ENTRY, 18, 0.005, CRACK)),
                        logbook));
    }

    /** The change is told as of the third of 20 days; it is news to the week from the 14th on if it may have come on its first day. */
    @ParameterizedTest
    @CsvSource({"13,false", "14,true", "15,true"})
    void aChangeThatMayHaveComeInTheWeekIsNewsOfIt(int latest, boolean news) {
        LocalDate on = LocalDate.of(2025, 1, 3);
        ProbeChange change = new ProbeChange(
                "drum", Kind.STEP_OR_SLOW, on, on, LocalDate.of(2025, 1, latest), List.of(CRACK), 0.005, "");
        Logbook logbook = days(20);
        assertEquals(
                news,
                WeekProbes.isNews(
                        change,
                        MachineDays.of(logbook).get(0),
                        logbook.batches().subList(13, 20)));
    }

    /** Four batches have moved since the 21st: of those since the 22nd it is three, more than half, since the 23rd it is two. */
    @ParameterizedTest
    @CsvSource({"21,true", "22,true", "23,false"})
    void aShiftIsOfADayIfMoreThanHalfOfItsBatchesAre(int day, boolean mostly) {
        Logbook lot = BuiltBatch.logbook(IntStream.range(0, 24)
                .mapToObj(i -> BuiltBatch.losing((i < 20 ? 0.14 : 0.17) + 0.001 * (i * 7 % 5)))
                .toList());
        WatchedShift shift = WatchedShift.of(
                        Watch.of(lot, parchment.feature.Features.massLoss()), java.util.Set.of("B24"))
                .orElseThrow();
        assertEquals(4, shift.batches());
        assertEquals(mostly, shift.isMostlySince(LocalDate.of(2025, 1, day)));
    }
}
