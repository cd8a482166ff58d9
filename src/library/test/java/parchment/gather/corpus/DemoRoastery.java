package parchment.gather.corpus;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import parchment.curve.Curve;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.LogbookFiles;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.logbook.written.CupScores;
import parchment.quantity.MassUnit;

/**
 * Writes a demo logbook down again as a strange folder: American and in one spreadsheet, or German and in text.
 *
 * <p>Nothing of the logbook format is kept: no heading, no unit, no name of a file.
 */
final class DemoRoastery {
    private final Logbook logbook;

    DemoRoastery(Logbook logbook) {
        this.logbook = logbook;
    }

    private static Object optional(Optional<?> value) {
        return value.isPresent() ? value.get() : "";
    }

    /** Returns a curve with its own name for each quantity; only what the batch logged. */
    Grid curve(Batch batch, Words words) {
        List<Curve> curves = new ArrayList<>();
        List<Object> head = new ArrayList<>(List.of(words.time()));
        for (Map.Entry<Quantity, String> column : words.quantities().entrySet()) {
            batch.curve(column.getKey()).ifPresent(curve -> {
                curves.add(curve);
                head.add(column.getValue());
            });
        }
        Grid grid = new Grid(batch.name()).row(head);
        // A probe without a reading at an instant has no reading there, though the others have.
        double[] instants = curves.stream()
                .flatMapToDouble(curve -> Arrays.stream(curve.seconds()))
                .sorted()
                .distinct()
                .toArray();
        for (double at : instants) {
            List<Object> row = new ArrayList<>(List.of(Cells.rounded(at, 1)));
            for (Curve curve : curves) {
                int place = curve.position(at);
                boolean there = place >= 0 && place < curve.size() && curve.secondsAt(place) == at;
                row.add(there ? words.written(curve, curve.valueAt(place)) : "");
            }
            grid.row(row);
        }
        return grid;
    }

    /** Returns the list of roasts. */
    Grid list(Words words) {
        Grid grid = new Grid("Roasts").row(words.list());
        for (Batch batch : logbook.batches()) {
            List<Object> row = new ArrayList<>(List.of(
                    batch.name(),
                    optional(batch.roastedAt().map(at -> at.toLocalDate())),
                    optional(batch.roastedAt().map(at -> at.toLocalTime())),
                    optional(batch.lot()),
                    optional(batch.conditions().greenMass().map(mass -> words.mass(mass.in(MassUnit.KILOGRAM)))),
                    optional(batch.conditions().roastedMass().map(mass -> words.mass(mass.in(MassUnit.KILOGRAM))))));
            for (MarkKind kind : LogbookFiles.MARKS) {
                if (kind != MarkKind.SECOND_CRACK_START) {
                    row.add(optional(batch.writtenMark(kind).map(mark -> Cells.minutes(mark.seconds()))));
                }
            }
            grid.row(row);
        }
        return grid;
    }

    /** Returns the scores, one row a cup and attribute, with a column for each cupper. */
    Grid cuppersAsColumns(Words words) {
        List<String> cuppers =
                logbook.cups().stream().map(CupScores::cupper).distinct().toList();
        List<Object> head = new ArrayList<>(words.scores());
        head.addAll(cuppers);
        Grid grid = new Grid("Scores").row(head);
        Map<String, List<CupScores>> byCup = new LinkedHashMap<>();
        logbook.cups()
                .forEach(cup -> byCup.computeIfAbsent(
                                cup.cupping() + "|" + cup.batch() + "|"
                                        + cup.cup().orElse(""),
                                key -> new ArrayList<>())
                        .add(cup));
        for (List<CupScores> cups : byCup.values()) {
            for (String attribute : logbook.attributes()) {
                List<Object> row = new ArrayList<>(List.of(
                        cups.get(0).tastedOn(),
                        cups.get(0).batch(),
                        optional(cups.get(0).cup()),
                        attribute));
                for (String cupper : cuppers) {
                    row.add(optional(cups.stream()
                            .filter(cup ->
                                    cup.cupper().equals(cupper) && cup.scores().containsKey(attribute))
                            .map(cup -> cup.score(attribute))
                            .findFirst()));
                }
                grid.row(row);
            }
        }
        return grid;
    }

    /**
     * Says how it is written.
     *
     * @param time the heading of the time since charge, in seconds
     * @param quantities the headings of the curves
     * @param list the headings of the list
     * @param scores the headings of the scores before the cuppers' names
     * @param scale of temperatures
     * @param massUnit in kilograms
     */
    record Words(
            String time,
            EnumMap<Quantity, String> quantities,
            List<String> list,
            List<String> scores,
            Scale scale,
            double massUnit) {
        enum Scale {
            CELSIUS,
            FAHRENHEIT
        }

        static Words american() {
            EnumMap<Quantity, String> quantities = new EnumMap<>(Quantity.class);
            quantities.put(Quantity.BEAN_TEMPERATURE, "Bean Temp (F)");
            quantities.put(Quantity.values()[1], "Exhaust Temp (F)");
            quantities.put(Quantity.GAS, "Gas %");
            quantities.put(Quantity.AIRFLOW, "Airflow %");
            return new Words(
                    "Elapsed (s)",
                    quantities,
                    List.of(
                            "Batch #",
                            "Roast Date",
                            "Time",
                            "Coffee",
                            "Green (lb)",
                            "Roasted (lb)",
                            "Yellow",
                            "1st Crack",
                            "1st Crack End",
                            "Drop"),
                    List.of("Cupped", "Batch #", "Cup", "Attribute"),
                    Scale.FAHRENHEIT,
                    ListColumn.POUND);
        }

        static Words german() {
            EnumMap<Quantity, String> quantities = new EnumMap<>(Quantity.class);
            quantities.put(Quantity.BEAN_TEMPERATURE, "Bohnentemperatur (°C)");
            quantities.put(Quantity.values()[1], "Ablufttemperatur (°C)");
            quantities.put(Quantity.GAS, "Gas (%)");
            quantities.put(Quantity.AIRFLOW, "Luft (%)");
            return new Words(
                    "Zeit seit Füllen (s)",
                    quantities,
                    List.of(
                            "Röstung",
                            "Datum",
                            "Uhrzeit",
                            "Sorte",
                            "Rohkaffee (g)",
                            "Röstkaffee (g)",
                            "Gelb",
                            "Erster Crack",
                            "Erster Crack Ende",
                            "Ende"),
                    List.of("Datum", "Röstung", "Tasse", "Eigenschaft"),
                    Scale.CELSIUS,
                    ListColumn.GRAM);
        }

        Object mass(double kilograms) {
            return Cells.rounded(kilograms / massUnit, massUnit == ListColumn.GRAM ? 0 : 3);
        }

        Object written(Curve curve, double value) {
            boolean fahrenheit = scale == Scale.FAHRENHEIT
                    && curve.name().toLowerCase(Locale.ROOT).contains("temperature");
            return Cells.rounded(fahrenheit ? value * 9 / 5 + 32 : value, 2);
        }
    }
}
