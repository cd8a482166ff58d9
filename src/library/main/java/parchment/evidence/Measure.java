package parchment.evidence;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import parchment.evidence.finding.Wording;
import parchment.feature.kind.Role;
import parchment.feature.path.OnProbe;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.sheet.Words;

/**
 * The feature that a question is about, as an answer needs it: its name, its unit, what each batch read, and its numbers in words.
 *
 * @param name in full words, as in "drop temperature"
 * @param unit what its numbers are measured in
 * @param reader the scale on which the reader wants temperatures
 * @param readings the value of each batch by the batch's name; a batch without one is absent or NaN
 * @param planned the value planned for a batch before charge, by the batch's name; empty for a feature of which no plan is written
 * @param onProbe whether another bean probe gives another number
 * @param role whether somebody sets it, the calendar brings it, or it comes of what was set
 * @param howToHave what to log and write so that more batches have it, as in "write the drop"; empty where that is not known
 */
record Measure(
        String name,
        Unit unit,
        TemperatureUnit reader,
        Map<String, ModelFrames.Reading> readings,
        Map<String, Double> planned,
        OnProbe onProbe,
        Role role,
        String howToHave) {

    Measure {
        readings = new LinkedHashMap<>(readings);
        planned = new LinkedHashMap<>(planned);
    }

    /** Holds a feature of which no plan is written. */
    Measure(String name, Unit unit, TemperatureUnit reader, Map<String, ModelFrames.Reading> readings) {
        this(name, unit, reader, readings, Map.of());
    }

    /** Holds a reading of the bean probe. */
    Measure(
            String name,
            Unit unit,
            TemperatureUnit reader,
            Map<String, ModelFrames.Reading> readings,
            Map<String, Double> planned) {
        this(name, unit, reader, readings, planned, OnProbe.READING);
    }

    /** Says after a title or an axis which probe its places belong to; empty where another probe would change nothing. */
    String onTodaysProbe() {
        return switch (onProbe) {
            case READING -> ", as read on today's probe";
            case HANGS_ON_IT -> ", of batches roasted with today's probe";
            case FREE_OF_IT -> "";
        };
    }

    /** Says the same in a sentence of its own. */
    String placesOnTodaysProbe() {
        return switch (onProbe) {
            case READING -> " Places are readings as on today's probe.";
            case HANGS_ON_IT ->
                " Another probe would give other numbers of it, by how much is not known, so only batches roasted with today's probe"
                        + " count for a place.";
            case FREE_OF_IT -> "";
        };
    }

    /**
     * Returns the step in which a slope is told, as the library keeps numbers: one step of the reader's own scale, so that a slope
     * over degrees Fahrenheit is told per 1 °F.
     */
    double step() {
        double celsius = unit.shownStep(unit.naturalStep(), TemperatureUnit.CELSIUS);
        return unit.naturalStep() * celsius / unit.shownStep(unit.naturalStep(), reader);
    }

    /** Prints the step, as in "1 °C", "10 s" or "1 percentage point". */
    String stepWords() {
        double shown = unit.shownStep(step(), reader);
        String number = shown == Math.rint(shown)
                ? String.format(Locale.ROOT, "%.0f", shown)
                : String.format(Locale.ROOT, "%.2g", shown);
        String symbol = unit.symbol(reader);
        if (symbol.equals("%")) {
            return number + (shown == 1 ? " percentage point" : " percentage points");
        }
        return symbol.isEmpty() ? number : number + " " + (shown == 1 && symbol.equals("days") ? "day" : symbol);
    }

    /** Holds a feature that comes of what was set. */
    Measure(
            String name,
            Unit unit,
            TemperatureUnit reader,
            Map<String, ModelFrames.Reading> readings,
            Map<String, Double> planned,
            OnProbe onProbe) {
        this(name, unit, reader, readings, planned, onProbe, Role.FOLLOWS, "");
    }

    /** Names the feature at one or more readings, as in "a drop temperature of 388 °F or 402 °F" or "4 or 8 rest days". */
    String at(String readings) {
        return countsDays()
                ? afterName(readings) + " " + name
                : ("aeiou".indexOf(name.charAt(0)) >= 0 ? "an " : "a ") + name + " of " + readings;
    }

    /** Prints a reading where the feature was named before: without its unit if the name holds that already. */
    String afterName(String reading) {
        return countsDays() ? reading.replace(" days", "") : reading;
    }

    /** Says whether its name says what is counted, so that a verb beside it is in the plural. */
    boolean countsDays() {
        return unit.symbol(reader).equals("days") && name.matches("(.* )?days( .*)?");
    }

    /** Prints a value with its unit. */
    String value(double kept) {
        return withoutMinusZero(unit.format(kept, reader));
    }

    /** A number that rounds to 0 has no sign. */
    static String withoutMinusZero(String text) {
        return text.replaceFirst("^-(0([.]0+)?)(?![0-9.])", "$1");
    }

    /** Prints a difference with its unit, with one decimal more where it would round to nothing. */
    String difference(double kept) {
        double shown = Math.abs(unit.shownStep(kept, reader));
        boolean tiny = shown > 0 && shown < 0.5 * Math.pow(10, -unit.digits());
        return (tiny ? unit.withDigits(unit.digits() + 1) : unit).formatStep(kept, reader);
    }

    /** Prints two values as a range, with the unit once. */
    String range(double from, double to) {
        String symbol = unit.symbol(reader);
        String numbers = Wording.plain(unit.shown(from, reader), unit.digits()) + " to "
                + Wording.plain(unit.shown(to, reader), unit.digits());
        return symbol.isEmpty() ? numbers : numbers + " " + symbol;
    }

    @Override
    public String toString() {
        return name + " of " + Words.count(readings.size(), "batch", "batches");
    }
}
