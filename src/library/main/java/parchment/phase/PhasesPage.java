package parchment.phase;

import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import parchment.display.Table;
import parchment.display.answer.Report;
import parchment.logbook.MarkKind;
import parchment.phase.found.Mark;
import parchment.phase.found.Phase;
import parchment.quantity.Temperature;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/** Shows marks and phases of one batch on one page. */
final class PhasesPage {
    private PhasesPage() {}

    static Report of(Phases phases) {
        TemperatureUnit reader = phases.batch().readerUnit();
        Report page = Report.titled(
                        "Marks and phases of batch " + phases.batch().name())
                .add(marks(phases, reader));
        if (!phases.list().isEmpty()) {
            page = page.add(table(phases.list(), reader));
        }
        page = say(page, "What is missing", phases.missing());
        page = say(page, "Please check", phases.questions());
        page = say(page, "Clocks", phases.notes());
        if (phases.clean().isPresent()) {
            page = page.say(phases.clean().get().text());
        }
        return page;
    }

    private static Report say(Report page, String heading, List<String> sentences) {
        return sentences.isEmpty() ? page : page.heading(heading).say(String.join(" ", sentences));
    }

    /** Returns the unit with as many decimals as the smallest error of a column asks for. */
    private static <R> Unit fitting(Unit unit, TemperatureUnit reader, List<R> rows, ToDoubleFunction<R> error) {
        return rows.stream().mapToDouble(error).filter(one -> one > 0).min().stream()
                .mapToObj(smallest -> unit.withDigitsFor(smallest, reader))
                .findFirst()
                .orElse(unit);
    }

    /** No error at all is one that is not known. */
    private static double error(double known) {
        return known > 0 ? known : Double.NaN;
    }

    private static Table marks(Phases phases, TemperatureUnit reader) {
        List<Mark> marks = phases.marks();
        Optional<Temperature> charge = phases.batch().conditions().chargeTemperature();
        Unit temperatures = fitting(Unit.TEMPERATURE_STEP, reader, marks, Mark::beanTemperatureStandardError);
        return Table.titled("Marks")
                .withText("mark", marks, m -> m.kind().words())
                .withText("at", marks, m -> m.at().toString())
                .withNumber(
                        "±",
                        fitting(Unit.SECONDS, reader, marks, Mark::standardError),
                        reader,
                        marks,
                        m -> error(m.standardError()))
                .withText("source", marks, m -> m.source().words() + (m.how().isEmpty() ? "" : ": " + m.how()))
                .withNumber(
                        "bean temperature",
                        Unit.TEMPERATURE.withDigits(temperatures.digits()),
                        reader,
                        marks,
                        m -> (m.kind() == MarkKind.CHARGE ? charge : m.beanTemperature())
                                .map(t -> t.celsius())
                                .orElse(Double.NaN))
                .withNumber("±", temperatures, reader, marks, m -> error(m.beanTemperatureStandardError()))
                .withNote(
                        "The true number lies within its ± about two times in three. The bean temperature is the smoothed probe reading"
                                + (charge.isPresent()
                                        ? "; that of charge is the charge temperature as written."
                                        : "."));
    }

    private static Table table(List<Phase> phases, TemperatureUnit reader) {
        Unit shares = fitting(Unit.SHARE, reader, phases, p -> p.share().standardError());
        Unit rates = fitting(
                Unit.RATE_OF_RISE, reader, phases, p -> p.meanRateOfRise().standardError());
        return Table.titled("Phases")
                .withText("phase", phases, Phase::name)
                .withText("length", phases, p -> p.duration().toString())
                .withNumber(
                        "±",
                        fitting(Unit.SECONDS, reader, phases, Phase::durationStandardError),
                        reader,
                        phases,
                        p -> error(p.durationStandardError()))
                .withNumber(
                        "share of the roast",
                        shares,
                        reader,
                        phases,
                        p -> p.share().value())
                .withNumber("±", shares, reader, phases, p -> error(p.share().standardError()))
                .withNumber(
                        "from",
                        Unit.TEMPERATURE,
                        reader,
                        phases,
                        p -> p.startTemperature().value())
                .withNumber(
                        "to",
                        Unit.TEMPERATURE,
                        reader,
                        phases,
                        p -> p.endTemperature().value())
                .withNumber(
                        "mean rate of rise",
                        rates,
                        reader,
                        phases,
                        p -> p.meanRateOfRise().value())
                .withNumber(
                        "±",
                        rates,
                        reader,
                        phases,
                        p -> error(p.meanRateOfRise().standardError()))
                .withNote("Temperatures and rate of drying count from the turning point.");
    }
}
