package parchment.gather.corpus;

import java.util.Set;
import java.util.function.Function;
import parchment.gather.corpus.CurveColumn.Clock;
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.StrangeKind.Fact;
import parchment.logbook.MarkKind;

/**
 * Says what a column of a list of roasts is called and holds.
 *
 * @param head its heading
 * @param facts what it tells
 * @param cell what stands in it
 */
record ListColumn(String head, Set<Fact> facts, Function<Roast, Object> cell) {
    static final double POUND = 0.45359237;
    static final double OUNCE = POUND / 16;
    static final double GRAM = 0.001;
    static final double KILOGRAM = 1;

    static ListColumn number(String head) {
        return new ListColumn(head, Set.of(Fact.BATCHES), Roast::number);
    }

    static ListColumn number(String head, String format) {
        return new ListColumn(head, Set.of(Fact.BATCHES), roast -> String.format(format, roast.number()));
    }

    static ListColumn date(String head) {
        return new ListColumn(
                head, Set.of(Fact.DAYS), roast -> roast.chargedAt().toLocalDate());
    }

    static ListColumn time(String head) {
        return new ListColumn(
                head, Set.of(Fact.TIMES), roast -> roast.chargedAt().toLocalTime());
    }

    static ListColumn at(String head) {
        return new ListColumn(head, Set.of(Fact.DAYS, Fact.TIMES), Roast::chargedAt);
    }

    static ListColumn serial(String head) {
        return new ListColumn(head, Set.of(Fact.DAYS, Fact.TIMES), roast -> Cells.serial(roast.chargedAt()));
    }

    static ListColumn lot(String head) {
        return new ListColumn(head, Set.of(Fact.LOTS), Roast::lot);
    }

    static ListColumn green(String head, double unit) {
        return new ListColumn(head, Set.of(Fact.GREEN_MASSES), roast -> mass(roast.greenKilograms(), unit));
    }

    static ListColumn roasted(String head, double unit) {
        return new ListColumn(head, Set.of(Fact.ROASTED_MASSES), roast -> mass(roast.roastedKilograms(), unit));
    }

    static Object mass(double kilograms, double unit) {
        double mass = kilograms / unit;
        if (unit == GRAM) {
            return (int) Math.round(mass);
        }
        return Cells.rounded(mass, unit == OUNCE ? 1 : unit == POUND ? 2 : 3);
    }

    static ListColumn yellowing(String head, Clock clock) {
        return mark(head, clock, MarkKind.YELLOWING, Fact.YELLOWING);
    }

    static ListColumn crack(String head, Clock clock) {
        return mark(head, clock, MarkKind.FIRST_CRACK_START, Fact.FIRST_CRACK);
    }

    static ListColumn drop(String head, Clock clock) {
        return mark(head, clock, MarkKind.DROP, Fact.DROP);
    }

    private static ListColumn mark(String head, Clock clock, MarkKind kind, Fact fact) {
        return new ListColumn(
                head, Set.of(fact), roast -> clock.written(roast.marks().get(kind)));
    }

    /** Returns the bean probe's reading at the charge, in °F. */
    static ListColumn chargeFahrenheit(String head) {
        return new ListColumn(
                head, Set.of(Fact.CHARGE_TEMPERATURES), roast -> Cells.rounded(atCharge(roast) * 9 / 5 + 32, 1));
    }

    static ListColumn chargeCelsius(String head) {
        return new ListColumn(head, Set.of(Fact.CHARGE_TEMPERATURES), ListColumn::atCharge);
    }

    static double atCharge(Roast roast) {
        return roast.readings().stream()
                .filter(reading -> reading.seconds() == 0)
                .findFirst()
                .orElseThrow()
                .beanCelsius();
    }

    static ListColumn note(String head) {
        return new ListColumn(head, Set.of(), Roast::note);
    }

    static ListColumn constant(String head, Object cell) {
        return new ListColumn(head, Set.of(), roast -> cell);
    }
}
