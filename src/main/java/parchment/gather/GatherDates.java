package parchment.gather;

import java.util.List;
import parchment.sheet.DateOrder;

/** Decides in which order the dates of a folder are written, from all of them together; asks once if none of them shows it. */
final class GatherDates {
    static final String KEY = "date.order";
    static final String AS_WRITTEN = "as written";

    private GatherDates() {}

    static DateOrder decide(List<GatherStyle> styles, List<Table> sheets, GatherQuestions questions) {
        int first = 0;
        int second = 0;
        int inQuestion = 0;
        for (GatherStyle style : styles) {
            if (style.datesInQuestion()) {
                inQuestion += style.tables().size();
                first = Math.max(first, style.highestParts()[0]);
                second = Math.max(second, style.highestParts()[1]);
            }
        }
        for (Table sheet : sheets) {
            for (int i = 0; i < sheet.headings().size(); i++) {
                StrangeColumn column = StrangeColumn.of(sheet, i);
                boolean dates = column.mostly(StrangeColumn.Form.DATE) || column.mostly(StrangeColumn.Form.DATE_AND_TIME);
                if (dates && !column.first().matches("\\d{4}-.*")) {
                    inQuestion += column.filled();
                    first = Math.max(first, column.highestDateParts()[0]);
                    second = Math.max(second, column.highestDateParts()[1]);
                }
            }
        }
        if (inQuestion == 0) {
            return DateOrder.ISO_ONLY;
        }
        DateOrder certain = WrittenDate.certainOrder(first, second);
        String choices = "day/month/year, month/day/year, " + AS_WRITTEN + " (leave out what can be read two ways)";
        String answer = certain != DateOrder.ISO_ONLY
                ? questions.tell(
                        KEY, "Dates are read so, for one of them can be read no other way", certain.words(), GatherDates::isAnswer, choices)
                : questions.ask(
                        KEY,
                        "How are the dates written: day/month/year or month/day/year? None of them shows it. "
                                + "Enter leaves them out, and they can be answered later.",
                        AS_WRITTEN,
                        GatherDates::isAnswer,
                        choices,
                        inQuestion);
        for (DateOrder order : DateOrder.values()) {
            if (order != DateOrder.ISO_ONLY && order.words().equals(answer)) {
                return order;
            }
        }
        questions.leaveOut("Nobody said how the dates are written: those that can be read two ways are left out. To take them in,"
                + " answer " + KEY + " with day/month/year or month/day/year.");
        return DateOrder.ISO_ONLY;
    }

    private static boolean isAnswer(String text) {
        return text.equals(AS_WRITTEN)
                || text.isEmpty()
                || text.equals(DateOrder.DAY_MONTH_YEAR.words())
                || text.equals(DateOrder.MONTH_DAY_YEAR.words());
    }
}
