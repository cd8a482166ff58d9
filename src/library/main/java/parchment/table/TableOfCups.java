package parchment.table;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import parchment.calendar.RoastCalendar;
import parchment.logbook.Logbook;
import parchment.logbook.written.CupScores;
import parchment.logbook.written.Cupping;
import parchment.quantity.Unit;
import tech.tablesaw.api.Table;

/** A row for each cup that somebody scored. */
final class TableOfCups {
    private TableOfCups() {}

    static Table of(Logbook logbook) {
        Map<String, String> lots = new HashMap<>();
        logbook.whole().batches().forEach(batch -> batch.lot().ifPresent(lot -> lots.put(batch.name(), lot)));
        Map<String, Cupping.Said> blind = new HashMap<>();
        logbook.contents().cuppings().forEach(cupping -> blind.put(cupping.name(), cupping.blind()));
        RoastCalendar calendar = RoastCalendar.of(logbook);
        Rows<CupScores> rows = Rows.of(logbook.cups(), logbook.readerUnit())
                .text("cupping", cup -> Optional.of(cup.cupping()))
                .date("tasted on", cup -> Optional.of(cup.tastedOn()))
                .text("cupper", cup -> Optional.of(cup.cupper()))
                .text("batch", cup -> Optional.of(cup.batch()))
                .text("lot", cup -> Optional.ofNullable(lots.get(cup.batch())))
                .whole("rest", Unit.DAYS.toString(), calendar::restDays)
                .text("blind", cup -> said(blind.getOrDefault(cup.cupping(), Cupping.Said.NOT_WRITTEN)))
                .text("blind code", CupScores::blindCode)
                .text("cup", CupScores::cup)
                .whole("serving position", "", CupScores::servingPosition);
        for (String attribute : logbook.attributes()) {
            rows.number(attribute, Unit.POINTS, cup -> cup.score(attribute));
        }
        return rows.text("note", CupScores::note).extras(CupScores::extras).table(TableNames.of("Cups", logbook));
    }

    private static Optional<String> said(Cupping.Said said) {
        return switch (said) {
            case YES -> Optional.of("yes");
            case NO -> Optional.of("no");
            case NOT_WRITTEN -> Optional.empty();
        };
    }
}
