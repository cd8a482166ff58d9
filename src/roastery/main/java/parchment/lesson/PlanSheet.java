package parchment.lesson;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import parchment.display.Showable;
import parchment.display.answer.ShownAs;
import parchment.quantity.TemperatureUnit;
import parchment.sheet.CsvText;
import parchment.virtual.RoastPlan;

/**
 * Collects the batches that a student wants the invented machine to roast. Overprinted on every showing: never roast from it.
 */
public final class PlanSheet implements ShownAs {
    private final String csv;
    private final RoastPlan plan;

    private PlanSheet(String csv, RoastPlan plan) {
        this.csv = csv;
        this.plan = plan;
    }

    static PlanSheet of(String lot, List<String> drops, TemperatureUnit unit) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("lot", "drop temperature [" + unit.symbol() + "]"));
        for (String drop : drops) {
            OptionalDouble number = AnswerText.temperature(drop, unit);
            if (number.isEmpty()) {
                throw new IllegalArgumentException(
                        "A plan needs a bean temperature for each batch, as in \"203\"; batch " + rows.size()
                                + " has \"" + drop + "\".");
            }
            rows.add(List.of(lot, String.format(Locale.ROOT, "%.1f", number.getAsDouble())));
        }
        String csv = CsvText.of(rows);
        return new PlanSheet(csv, RoastPlan.typed(csv, "your plan").in(unit));
    }

    /** Returns the plan as the text of a CSV file. */
    public String csv() {
        return csv;
    }

    /** Returns the plan as the virtual roastery reads it. */
    public RoastPlan plan() {
        return plan;
    }

    @Override
    public Showable shownAs() {
        return plan;
    }

    @Override
    public String toString() {
        return plan.toString();
    }
}
