package parchment.phase;

import java.util.List;
import java.util.Optional;
import parchment.display.Report;
import parchment.display.Table;
import parchment.logbook.MarkKind;
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

    private static Table marks(Phases phases, TemperatureUnit reader) {
        List<Mark> marks = phases.marks();
        Optional<Temperature> charge = phases.batch().conditions().chargeTemperature();
        return Table.titled("Marks")
                .withText("mark", marks, m -> m.kind().words())
                .withText("at", marks, m -> m.at().toString())
                .withNumber("±", "s", 0, marks, Mark::standardError)
                .withText("source", marks, m -> m.source().words() + (m.how().isEmpty() ? "" : ": " + m.how()))
                .withNumber(
                        "bean temperature",
                        Unit.TEMPERATURE,
                        reader,
                        marks,
                        m -> (m.kind() == MarkKind.CHARGE ? charge : m.beanTemperature())
                                .map(t -> t.celsius())
                                .orElse(Double.NaN))
                .withNumber("±", Unit.TEMPERATURE_STEP, reader, marks, Mark::beanTemperatureStandardError)
                .withNote("The true number lies within its ± about two times in three. The bean temperature is the smoothed probe reading"
                        + (charge.isPresent() ? "; that of charge is the charge temperature as written." : "."));
    }

    private static Table table(List<Phase> phases, TemperatureUnit reader) {
        return Table.titled("Phases")
                .withText("phase", phases, Phase::name)
                .withText("length", phases, p -> p.duration().toString())
                .withNumber("±", "s", 0, phases, Phase::durationStandardError)
                .withNumber(
                        "share of the roast",
                        Unit.SHARE,
                        reader,
                        phases,
                        p -> p.share().value())
                .withNumber("±", Unit.SHARE, reader, phases, p -> p.share().standardError())
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
                        Unit.RATE_OF_RISE,
                        reader,
                        phases,
                        p -> p.meanRateOfRise().value())
                .withNumber(
                        "±",
                        Unit.RATE_OF_RISE.withDigits(2),
                        reader,
                        phases,
                        p -> p.meanRateOfRise().standardError())
                .withNote("Temperatures and rate of drying count from the turning point.");
    }
}
