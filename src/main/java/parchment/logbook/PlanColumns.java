package parchment.logbook;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import parchment.quantity.TemperatureUnit;
import parchment.sheet.Header;
import parchment.sheet.Numbers;
import parchment.sheet.Words;

/**
 * Reads what a row of batches.csv says was planned: the drop, any other control under a heading that begins with "planned", by whom, and of
 * which trial and set the batch is. A column of another control stays an extra as well, so that it can serve as a measure.
 */
final class PlanColumns {
    private static final String PLANNED = "planned ";

    /** What a bean probe can read at charge or drop, in degrees Celsius. */
    private static final double LOWEST = 20;

    private static final double HIGHEST = 350;

    private static final String NOT_USED = "kept as an extra, not used as a plan";

    private PlanColumns() {}

    static BatchPlan of(Row row) {
        BatchPlan.PlannedBy by = BatchPlan.PlannedBy.NOT_WRITTEN;
        Optional<String> written = row.text("planned by");
        if (written.isPresent()) {
            switch (Header.name(written.get())) {
                case "chance" -> by = BatchPlan.PlannedBy.CHANCE;
                case "choice" -> by = BatchPlan.PlannedBy.CHOICE;
                default ->
                    row.problem(
                            "planned by",
                            Words.quote(written.get()),
                            "'chance' or 'choice'",
                            "value treated as missing");
            }
        }
        Optional<String> trial = row.name("trial");
        return new BatchPlan(
                row.temperature("planned drop temperature", 120, 300), by, others(row), trial, set(row, trial));
    }

    /** A column 'set' without a trial is the roaster's own and says nothing of a draw. */
    private static Optional<String> set(Row row, Optional<String> trial) {
        Optional<String> set = row.name("set");
        if (trial.isEmpty()) {
            return Optional.empty();
        }
        if (set.isEmpty() || !set.get().matches("[1-9]\\d{0,4}")) {
            row.problem(
                    "set",
                    set.map(Words::quote).orElse("nothing"),
                    "the number of the set in the trial " + Words.quote(trial.get()),
                    "value treated as missing");
            return Optional.empty();
        }
        return set;
    }

    private static Map<String, BatchPlan.Planned> others(Row row) {
        Map<String, BatchPlan.Planned> others = new LinkedHashMap<>();
        row.headersOfExtras().forEach((index, header) -> {
            String name = Header.name(header.name());
            if (name.startsWith(PLANNED) && !name.equals(PLANNED.strip())) {
                row.at(index)
                        .flatMap(text -> planned(row, header, text))
                        .ifPresent(planned -> others.putIfAbsent(
                                name.substring(PLANNED.length()).strip(), planned));
            }
        });
        return others;
    }

    private static Optional<BatchPlan.Planned> planned(Row row, Header header, String text) {
        double number = Numbers.parse(row.plain(text), Numbers.Decimal.POINT);
        Optional<TemperatureUnit> degrees = Header.temperatureUnit(header.plainUnit());
        boolean isTemperature = Header.name(header.name()).endsWith("temperature");
        if (isTemperature && degrees.isEmpty()) {
            return Optional.empty(); // Without its unit a temperature is not guessed at; the column stays an extra.
        }
        if (degrees.isPresent()) {
            TemperatureUnit unit = degrees.get();
            if (!(number >= unit.fromCelsius(LOWEST) && number <= unit.fromCelsius(HIGHEST))) {
                row.problemIn(
                        header,
                        Words.quote(text),
                        String.format(
                                Locale.ROOT,
                                "a number from %.0f to %.0f %s (another unit in the heading?)",
                                unit.fromCelsius(LOWEST),
                                unit.fromCelsius(HIGHEST),
                                unit.symbol()),
                        NOT_USED);
                return Optional.empty();
            }
            return Optional.of(new BatchPlan.Planned(unit.toCelsius(number), TemperatureUnit.CELSIUS.symbol()));
        }
        if (!Bounds.ON_A_SCALE.holds(number)) {
            row.problemIn(header, Words.quote(text), Bounds.ON_A_SCALE.words(), NOT_USED);
            return Optional.empty();
        }
        return Optional.of(new BatchPlan.Planned(number, header.unit()));
    }
}
