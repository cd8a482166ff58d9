package parchment.gather;

import java.util.List;
import java.util.Optional;
import parchment.gather.StrangeColumn.Form;
import parchment.logbook.LogbookFiles;
import parchment.logbook.MarkKind;
import parchment.quantity.MassUnit;
import parchment.sheet.Header;

/** Proposes what the columns of a list of batches mean: a heading of batches.csv with its unit, or one of a few words. */
final class SheetProposal {
    static final String DATE = "date";
    static final String CHARGE_TIME = "time of charge";
    static final List<String> OWN_WORDS = List.of(DATE, CHARGE_TIME, "extra", "leave out");

    private SheetProposal() {}

    /** Returns whether an answer is a heading of batches.csv with a unit it may have, or one of the words. */
    static boolean isKnown(String answer) {
        Header header = Header.parse(answer);
        return OWN_WORDS.contains(header.name()) || LogbookFiles.isBatchColumn(header);
    }

    /** Proposes a heading of batches.csv for a column. */
    static String propose(StrangeColumn column) {
        Header header = Header.parse(column.heading());
        String name = Header.plain(header.name()).replaceAll("[^\\p{L}\\p{N} ]", "");
        boolean numbers = column.mostly(Form.NUMBER);
        if (isKnown(header.written()) && !OWN_WORDS.contains(header.name())) {
            return header.written();
        }
        if (name.matches("(batch|roast|no|nr|number|id|(batch|roast) (no|nr|number|id|name))")) {
            return "batch";
        }
        if (column.mostly(Form.DATE_AND_TIME)) {
            return "roasted at";
        }
        if (column.mostly(Form.DATE)) {
            return name.contains("date") || name.contains("day") || name.contains("roast") ? DATE : "extra";
        }
        if (numbers
                && name.matches(
                        "(green|in|raw|batch size|green in|weight in|green weight|charge weight)( kg| g| lb)?")) {
            return "green mass [" + massUnit(header, name, column) + "]";
        }
        if (numbers && name.matches("(roasted|out|roasted out|weight out|roasted weight|end weight)( kg| g| lb)?")) {
            return "roasted mass [" + massUnit(header, name, column) + "]";
        }
        Optional<MarkKind> mark = name.matches("end|total|total time|roast time|time out|end time")
                ? Optional.of(MarkKind.DROP)
                : name.equals("first crack") || name.equals("crack")
                        ? Optional.of(MarkKind.FIRST_CRACK_START)
                        : MarkWords.of(name).filter(LogbookFiles.MARKS::contains);
        if (mark.isPresent() && (column.mostly(Form.CLOCK) || numbers)) {
            String unit = column.mostly(Form.CLOCK) ? "min:s" : column.quantile(1) < 40 ? "min" : "s";
            return mark.get().words() + " [" + unit + "]";
        }
        if (column.mostly(Form.CLOCK)) {
            return name.matches(".*(start|charge|time|clock).*") ? CHARGE_TIME : "extra";
        }
        if (numbers && name.contains("charge") && name.contains("temp")) {
            return "charge temperature [" + (column.quantile(0.5) > 260 ? "°F" : "°C") + "]";
        }
        if (name.matches("lot|coffee|bean|beans|green lot|green coffee")) {
            return "lot";
        }
        if (name.matches("operator|roaster|roasted by|who")) {
            return "operator";
        }
        return name.matches("notes|comment|comments|remark|remarks")
                ? "note"
                : column.filled() == 0 ? "leave out" : "extra";
    }

    private static String massUnit(Header header, String name, StrangeColumn column) {
        for (MassUnit unit : MassUnit.values()) {
            if (header.plainUnit().equals(unit.symbol()) || name.endsWith(" " + unit.symbol())) {
                return unit.symbol();
            }
        }
        return column.quantile(0.5) > 100 ? "g" : "kg";
    }
}
