package parchment.gather.corpus;

import java.time.LocalDateTime;
import java.util.Set;
import parchment.gather.corpus.Roastery.Reading;
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.StrangeKind.Fact;

/**
 * Says what a column of a file of readings is called and holds.
 *
 * @param head its heading
 * @param facts what it tells
 * @param cell what stands in it
 */
record CurveColumn(String head, Set<Fact> facts, Cell cell) {
    /** Returns what stands in a cell. */
    @FunctionalInterface
    interface Cell {
        Object of(Roast roast, Reading reading);
    }

    /** How a time is written. */
    enum Clock {
        SECONDS,
        MILLISECONDS,
        DECIMAL_MINUTES,
        MINUTES,
        HOURS,
        DAY_SHARE;

        Object written(double seconds) {
            return switch (this) {
                case SECONDS -> seconds == Math.rint(seconds) ? (Object) (int) seconds : (Object) seconds;
                case MILLISECONDS -> Math.round(seconds * 1000);
                case DECIMAL_MINUTES -> Cells.rounded(seconds / 60, 4);
                case MINUTES -> Cells.minutes(seconds);
                case HOURS -> Cells.hours(seconds);
                case DAY_SHARE -> Cells.rounded(seconds / 86_400, 8);
            };
        }
    }

    /** Returns the time since the recording began. */
    static CurveColumn sinceStart(String head, Clock clock) {
        return new CurveColumn(
                head,
                Set.of(),
                (roast, reading) -> clock.written(
                        reading.seconds() - roast.readings().get(0).seconds()));
    }

    /** Returns the time since the charge; negative before it. */
    static CurveColumn sinceCharge(String head, Clock clock) {
        return new CurveColumn(head, Set.of(), (roast, reading) -> clock.written(reading.seconds()));
    }

    static LocalDateTime at(Roast roast, Reading reading) {
        return roast.chargedAt().plusSeconds(Math.round(reading.seconds()));
    }

    /** Returns the time of day. */
    static CurveColumn timeOfDay(String head) {
        return new CurveColumn(
                head, Set.of(), (roast, reading) -> at(roast, reading).toLocalTime());
    }

    /** Returns date and time. */
    static CurveColumn dateAndTime(String head) {
        return new CurveColumn(head, Set.of(Fact.DAYS, Fact.TIMES), CurveColumn::at);
    }

    static CurveColumn date(String head) {
        return new CurveColumn(
                head, Set.of(Fact.DAYS), (roast, reading) -> at(roast, reading).toLocalDate());
    }

    /** Returns date and time as a spreadsheet counts them: days since the 30th of December 1899. */
    static CurveColumn serial(String head) {
        return new CurveColumn(
                head, Set.of(Fact.DAYS, Fact.TIMES), (roast, reading) -> Cells.serial(at(roast, reading)));
    }

    static CurveColumn bean(String head) {
        return new CurveColumn(head, Set.of(Fact.BEAN_CURVES), (roast, reading) -> reading.beanCelsius());
    }

    static CurveColumn air(String head) {
        return new CurveColumn(head, Set.of(Fact.AIR_CURVES), (roast, reading) -> reading.airCelsius());
    }

    static CurveColumn beanFahrenheit(String head) {
        return new CurveColumn(
                head,
                Set.of(Fact.BEAN_CURVES),
                (roast, reading) -> Cells.rounded(reading.beanCelsius() * 9 / 5 + 32, 1));
    }

    static CurveColumn airFahrenheit(String head) {
        return new CurveColumn(
                head, Set.of(Fact.AIR_CURVES), (roast, reading) -> Cells.rounded(reading.airCelsius() * 9 / 5 + 32, 1));
    }

    static CurveColumn gas(String head) {
        return new CurveColumn(head, Set.of(Fact.GAS), (roast, reading) -> (int) reading.gasPercent());
    }

    /** Returns the running number of the batch beside each reading. */
    static CurveColumn batch(String head) {
        return new CurveColumn(head, Set.of(Fact.BATCHES), (roast, reading) -> roast.number());
    }

    static CurveColumn constant(String head, Object cell) {
        return new CurveColumn(head, Set.of(), (roast, reading) -> cell);
    }

    /** Returns what was typed beside the readings: charge and the marks, in these words. */
    static CurveColumn typed(String head, String charge, String yellowing, String crack, String drop) {
        return new CurveColumn(head, Set.of(Fact.YELLOWING, Fact.FIRST_CRACK, Fact.DROP), (roast, reading) -> {
            double at = reading.seconds();
            if (at == 0) {
                return charge;
            }
            return roast.marks().entrySet().stream()
                    .filter(mark -> mark.getValue() == at)
                    .map(mark -> switch (mark.getKey()) {
                        case YELLOWING -> yellowing;
                        case FIRST_CRACK_START -> crack;
                        case DROP -> drop;
                        default -> "";
                    })
                    .findFirst()
                    .orElse("");
        });
    }
}
