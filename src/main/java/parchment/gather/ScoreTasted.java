package parchment.gather;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import parchment.sheet.Words;

/** Makes cups of what was read: with the day, the cupper and the batch that the row or what stands around the table says. */
final class ScoreTasted {
    private final ScoreColumns columns;
    private final ScoreSurroundings around;
    private final Set<String> open = new LinkedHashSet<>();

    ScoreTasted(ScoreColumns columns, ScoreSurroundings around) {
        this.columns = columns;
        this.around = around;
    }

    /** Returns the cups in the form that others take. */
    List<TastedCup> of(List<ScoredCup> from) {
        List<TastedCup> tasted = new ArrayList<>();
        for (ScoredCup cup : from) {
            Map<ScorePart, String> known = cup.known;
            List<String> notes = new ArrayList<>(cup.notes);
            String written = said(known, ScorePart.DAY);
            Optional<LocalDate> day = columns.day(written);
            if (day.isEmpty() && !written.isEmpty()) {
                notes.add("tasted on " + written);
                open.add("Which day is " + Words.quote(written) + "? Cups without a day of tasting cannot be written.");
            }
            String batch = said(known, ScorePart.BATCH);
            String roasted = said(known, ScorePart.ROASTED);
            if (!roasted.isEmpty()) {
                String plain = columns.day(roasted).map(LocalDate::toString).orElse(roasted);
                if (batch.isEmpty()) {
                    batch = plain;
                } else {
                    notes.add("roasted on " + plain);
                }
            }
            tasted.add(new TastedCup(
                    day,
                    said(known, ScorePart.CUPPING),
                    cup.isMean() ? "" : said(known, ScorePart.CUPPER),
                    batch,
                    said(known, ScorePart.CODE),
                    said(known, ScorePart.LOT),
                    number(known, ScorePart.CUP, notes),
                    cup.scores,
                    number(known, ScorePart.POSITION, notes),
                    String.join("; ", notes),
                    columns.table(),
                    cup.line));
        }
        return tasted;
    }

    private String said(Map<ScorePart, String> known, ScorePart part) {
        String own = known.getOrDefault(part, "");
        return own.isEmpty() ? around.use(part) : own;
    }

    private static int number(Map<ScorePart, String> known, ScorePart part, List<String> notes) {
        String written = known.getOrDefault(part, "");
        int number = ScoreCells.cupNumber(written);
        if (number == 0 && !written.isEmpty()) {
            notes.add(part.words() + " " + written);
        }
        return number;
    }

    /** Returns which days cannot be read, a question each. */
    List<String> open() {
        return new ArrayList<>(open);
    }
}
