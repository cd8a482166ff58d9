package parchment.gather;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import parchment.sheet.Words;

/** Makes cups of what was read: with the day, the cupper and the batch that the row or what stands around the table says. */
final class ScoreTasted {
    private final ScoreColumns columns;
    private final ScoreSurroundings around;
    private final Map<String, Integer> twoWays = new LinkedHashMap<>();
    private final Map<String, Integer> unknown = new LinkedHashMap<>();

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
                boolean needsOrder =
                        WrittenDay.find(written).filter(WrittenDay::needsOrder).isPresent();
                (needsOrder ? twoWays : unknown).merge(written, 1, Integer::sum);
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

    /** Returns which days cannot be read, a question for those that only need the order of the folder's dates, and one for those that are none. */
    List<String> open() {
        List<String> open = new ArrayList<>();
        if (!twoWays.isEmpty()) {
            open.add("Which day is " + such(twoWays) + "? " + GatherDates.KEY
                    + " answers it; until then nobody knows when they were tasted, and they are left out.");
        }
        if (!unknown.isEmpty()) {
            open.add("Which day is " + such(unknown) + "? Cups without a day of tasting cannot be written.");
        }
        return open;
    }

    private static String such(Map<String, Integer> days) {
        String first = days.keySet().iterator().next();
        int cups = days.values().stream().mapToInt(Integer::intValue).sum();
        return Words.quote(first)
                + (days.size() == 1 ? "" : ", and " + Words.count(days.size() - 1, "more such day", "more such days"))
                + ", of " + Words.count(cups, "cup", "cups");
    }
}
