package parchment.gather.corpus;

import java.util.List;
import parchment.gather.corpus.CurveColumn.Clock;
import parchment.gather.corpus.CurveParts.Headings;

/** Units of temperature and mass, forms of time. */
final class KindsOfUnits {
    private KindsOfUnits() {}

    private static CurveParts timed(CurveColumn time) {
        return CurveParts.of(time, CurveColumn.bean("Beans °C"), CurveColumn.air("Air °C"), CurveColumn.gas("Gas %"));
    }

    private static Kind.Part masses(double unit, String written) {
        return ListParts.of(
                        ListColumn.number("Batch"),
                        ListColumn.at("Charged"),
                        ListColumn.lot("Coffee"),
                        ListColumn.green("Green" + written, unit),
                        ListColumn.roasted("Roasted" + written, unit))
                .text(TextStyle.PLAIN, "weights.csv");
    }

    private static Kind.Part marks(Clock clock, String written) {
        return ListParts.of(
                        ListColumn.number("Batch"),
                        ListColumn.yellowing("Yellowing" + written, clock),
                        ListColumn.crack("First crack" + written, clock),
                        ListColumn.drop("Drop" + written, clock))
                .text(TextStyle.PLAIN, "times.csv");
    }

    private static Kind.Part curves() {
        return CorpusKinds.LOGGED.files(TextStyle.PLAIN, Naming.number("Batch %d.csv"));
    }

    static List<Kind> all() {
        CurveParts fahrenheit = CurveParts.of(
                CurveColumn.sinceStart("Time", Clock.MINUTES),
                CurveColumn.beanFahrenheit("Bean Temp"),
                CurveColumn.airFahrenheit("Exhaust Temp"),
                CurveColumn.gas("Burner %"));
        return List.of(
                Kind.of(
                        "units: Fahrenheit written in the heads",
                        CurveParts.of(
                                        CurveColumn.sinceStart("Time (s)", Clock.SECONDS),
                                        CurveColumn.beanFahrenheit("Bean (°F)"),
                                        CurveColumn.airFahrenheit("Exhaust (°F)"),
                                        CurveColumn.gas("Gas (%)"))
                                .files(TextStyle.PLAIN, Naming.number("Batch %d.csv"))),
                Kind.of(
                        "units: Fahrenheit written nowhere",
                        fahrenheit.files(TextStyle.AMERICAN, Naming.number("Batch %d.csv"))),
                Kind.of(
                        "units: Fahrenheit and pounds, American dates",
                        fahrenheit.files(TextStyle.AMERICAN, Naming.number("%d.csv")),
                        ListParts.of(
                                        ListColumn.number("Batch #"),
                                        ListColumn.date("Date"),
                                        ListColumn.time("Time"),
                                        ListColumn.lot("Bean"),
                                        ListColumn.green("Green lb", ListColumn.POUND),
                                        ListColumn.roasted("Roasted lb", ListColumn.POUND),
                                        ListColumn.crack("First Crack", Clock.MINUTES),
                                        ListColumn.drop("Drop", Clock.MINUTES))
                                .text(TextStyle.AMERICAN.dates("M/d/yyyy", "h:mm a"), "roasts.csv")),
                Kind.of("units: masses in grams", curves(), masses(ListColumn.GRAM, " (g)")),
                Kind.of("units: masses in pounds", curves(), masses(ListColumn.POUND, " (lb)")),
                Kind.of("units: masses in ounces", curves(), masses(ListColumn.OUNCE, " oz")),
                Kind.of("units: masses in grams, written nowhere", curves(), masses(ListColumn.GRAM, "")),
                Kind.of("units: marks in seconds", curves(), marks(Clock.SECONDS, " (s)")),
                Kind.of("units: marks in minutes with a point", curves(), marks(Clock.DECIMAL_MINUTES, " (min)")),
                Kind.of("units: marks in hours, minutes, seconds", curves(), marks(Clock.HOURS, "")),
                Kind.of(
                        "units: time in milliseconds",
                        timed(CurveColumn.sinceStart("Time (ms)", Clock.MILLISECONDS))
                                .files(TextStyle.PLAIN, Naming.number("Batch %d.csv"))),
                Kind.of(
                        "units: time in milliseconds, written nowhere",
                        timed(CurveColumn.sinceStart("t", Clock.MILLISECONDS))
                                .files(TextStyle.PLAIN, Naming.number("Batch %d.csv"))),
                Kind.of(
                        "units: time in minutes with a point",
                        timed(CurveColumn.sinceStart("Time (min)", Clock.DECIMAL_MINUTES))
                                .files(TextStyle.PLAIN, Naming.number("Batch %d.csv"))),
                Kind.of(
                        "units: time as minutes and seconds since the charge",
                        timed(CurveColumn.sinceCharge("Time", Clock.MINUTES))
                                .fromTheCharge()
                                .files(TextStyle.PLAIN, Naming.number("Batch %d.csv"))),
                Kind.of(
                        "units: time as hours, minutes, seconds",
                        timed(CurveColumn.sinceStart("Elapsed", Clock.HOURS))
                                .files(TextStyle.PLAIN, Naming.number("Batch %d.csv"))),
                Kind.of(
                        "units: time as share of a day",
                        timed(CurveColumn.sinceStart("Time", Clock.DAY_SHARE))
                                .files(TextStyle.PLAIN, Naming.number("Batch %d.csv"))),
                Kind.of(
                        "units: date and time as serial numbers",
                        timed(CurveColumn.serial("Timestamp")).files(TextStyle.PLAIN, Naming.number("Batch %d.csv"))),
                Kind.of(
                        "units: time of day, the day in a list",
                        timed(CurveColumn.timeOfDay("Clock")).files(TextStyle.PLAIN, Naming.number("Batch %d.csv")),
                        ListParts.of(
                                        ListColumn.number("Batch"),
                                        ListColumn.date("Date"),
                                        ListColumn.time("Charged"),
                                        ListColumn.lot("Coffee"))
                                .text(TextStyle.GERMAN.dates("dd.MM.yyyy", "HH:mm:ss"), "days.csv")),
                Kind.of(
                        "units: date and time, day first",
                        timed(CurveColumn.dateAndTime("Zeitpunkt"))
                                .files(TextStyle.GERMAN.dates("dd.MM.yyyy", "HH:mm:ss"), Naming.number("%d.csv"))),
                Kind.of(
                        "units: date and time, month first, twelve hours",
                        timed(CurveColumn.dateAndTime("Timestamp"))
                                .files(TextStyle.AMERICAN.dates("M/d/yyyy", "h:mm:ss a"), Naming.number("%d.csv"))),
                Kind.of(
                        "units: date and time in two columns",
                        CurveParts.of(
                                        CurveColumn.date("Date"),
                                        CurveColumn.timeOfDay("Time"),
                                        CurveColumn.bean("BEANS"),
                                        CurveColumn.air("AIR"),
                                        CurveColumn.gas("GAS"))
                                .files(TextStyle.PLAIN.dates("yyyy/MM/dd", "HH:mm:ss"), Naming.number("%d.csv"))),
                Kind.of(
                        "units: a row of units under the heads",
                        CurveParts.of(
                                        CurveColumn.sinceStart("Time|s", Clock.SECONDS),
                                        CurveColumn.beanFahrenheit("Beans|°F"),
                                        CurveColumn.airFahrenheit("Exhaust|°F"),
                                        CurveColumn.gas("Gas|%"))
                                .headed(Headings.WITH_UNITS_BELOW)
                                .files(TextStyle.PLAIN, Naming.number("Batch %d.csv"))));
    }
}
