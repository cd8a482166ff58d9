package parchment.gather.corpus.unseen;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import parchment.gather.corpus.Roastery;
import parchment.gather.corpus.Roastery.Reading;
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.StrangeKind;
import parchment.logbook.MarkKind;

/**
 * Lets the logger run on one file a day, roast after roast by the clock on the wall, in an old encoding with semicolons and decimal commas; weighs into a list.
 */
final class SpanishDaySheets implements StrangeKind {
    @Override
    public String name() {
        return "a Spanish file a day by the wall clock, and a list of masses";
    }

    @Override
    public Set<Fact> facts() {
        return EnumSet.of(
                Fact.BEAN_CURVES,
                Fact.AIR_CURVES,
                Fact.BATCHES,
                Fact.DAYS,
                Fact.TIMES,
                Fact.LOTS,
                Fact.GREEN_MASSES,
                Fact.ROASTED_MASSES,
                Fact.YELLOWING,
                Fact.FIRST_CRACK,
                Fact.DROP);
    }

    @Override
    public void write(Roastery roastery, Path folder, Random random) throws IOException {
        Map<MarkKind, String> words = Map.of(
                MarkKind.CHARGE, "carga",
                MarkKind.YELLOWING, Pen.pick(random, "amarillo", "amarilla"),
                MarkKind.FIRST_CRACK_START, Pen.pick(random, "primer crac", "1er crac"),
                MarkKind.DROP, Pen.pick(random, "descarga", "salida"));
        for (Map.Entry<LocalDate, List<Roast>> day :
                Pen.byDay(roastery.batches()).entrySet()) {
            List<String> lines = new ArrayList<>();
            lines.add("Hoja del día;" + Pen.date(day.getKey(), "d 'de' MMMM 'de' yyyy", Locale.forLanguageTag("es"))
                    + ";;");
            lines.add(";;;");
            for (Roast roast : day.getValue()) {
                lines.add(Pen.line(';', "Tueste " + roast.number(), roast.lot(), "", ""));
                lines.add("hora;grano (°C);aire (°C);observaciones");
                List<Reading> rows = Pen.everyAndMarks(roast, 5, -15, Pen.end(roast, 15));
                List<String> remarks = Pen.words(roast, rows, words);
                for (int i = 0; i < rows.size(); i++) {
                    Reading row = rows.get(i);
                    lines.add(Pen.line(
                            ';',
                            Pen.time(Pen.clockAt(roast, row.seconds()), "HH:mm:ss"),
                            Pen.comma(row.beanCelsius(), 1),
                            Pen.comma(row.airCelsius(), 1),
                            remarks.get(i)));
                }
                lines.add(";;;");
            }
            Pen.save(Pen.file(folder, "hojas", "dia " + day.getKey() + ".csv"), Pen.OLD, Pen.CRLF, lines);
        }
        List<Object[]> list = new ArrayList<>();
        list.add(new Object[] {"Lista de tuestes"});
        list.add(new Object[] {"tueste", "fecha", "café", "verde (kg)", "tostado (kg)", "nota"});
        for (Roast roast : roastery.batches()) {
            list.add(new Object[] {
                (double) roast.number(),
                Pen.day(roast),
                roast.lot(),
                Pen.round(roast.greenKilograms(), 2),
                Pen.round(roast.roastedKilograms(), 2),
                roast.note().isEmpty() ? null : roast.note()
            });
        }
        Pen.spreadsheet(folder.resolve("lista.ods"), Map.of("tuestes", list));
        Leftovers.orders(Pen.file(folder, "pedidos.csv"), ';', random, "cliente", "gramos", "bolsas", "pagado");
    }
}
