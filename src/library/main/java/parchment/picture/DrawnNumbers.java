package parchment.picture;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.period.ProbePeriods;
import parchment.quantity.Elapsed;
import parchment.quantity.Unit;
import parchment.sheet.Words;

/**
 * Numbers as they are drawn, one per row, with what they are called.
 *
 * @param name in full words
 * @param symbol the unit as it is shown, empty for a bare number
 * @param printed how a number is printed, without its unit
 * @param values as shown, a time in minutes; NaN is missing
 * @param rows what there is one number for
 * @param clock whether these are times, printed as a roast clock shows them
 * @param note what has to be known of the readings, or empty
 */
record DrawnNumbers(String name, String symbol, Unit printed, Numbers values, Named rows, Clock clock, String note) {
    /** Of the largest number: what lies closer together is the same as far as an axis can tell. */
    private static final double LEAST_SPREAD = 1e-12;

    /** What a row is called. */
    record Named(String one, String many) {
        static final Named BATCHES = new Named("batch", "batches");
        static final Named ROWS = new Named("row", "rows");

        String counted(long number) {
            return Words.count(number, one, many);
        }
    }

    enum Clock {
        MINUTES_AND_SECONDS,
        NO_TIME
    }

    /** An array as a value. */
    static final class Numbers {
        private final double[] all;

        Numbers(double[] all) {
            this.all = all.clone();
        }

        double get(int row) {
            return all[row];
        }

        int size() {
            return all.length;
        }

        double[] present() {
            return Arrays.stream(all).filter(Double::isFinite).toArray();
        }
    }

    private static final double SECONDS_IN_A_MINUTE = 60;
    private static final Pattern WITH_UNIT = Pattern.compile("(.+?)\\s*\\[([^\\[\\]]+)]\\s*");

    static DrawnNumbers of(Feature feature, Logbook logbook) {
        BatchTable table = BatchTable.of(logbook, feature);
        Feature shown = table.features().get(0);
        Unit unit = shown.unit();
        double[] kept = table.values(shown);
        boolean time = unit.isTime();
        double[] drawn = Arrays.stream(kept)
                .map(value -> time ? value / SECONDS_IN_A_MINUTE : unit.shown(value, logbook.readerUnit()))
                .toArray();
        return new DrawnNumbers(
                shown.name(),
                time ? "min:s" : unit.symbol(logbook.readerUnit()),
                unit,
                new Numbers(drawn),
                Named.BATCHES,
                time ? Clock.MINUTES_AND_SECONDS : Clock.NO_TIME,
                shown.readsBeanProbe() ? earlierProbe(logbook, drawn) : "");
    }

    /** Makes a measure of numbers of the reader's own; the name may end with its unit in square brackets. */
    static DrawnNumbers of(String name, Iterable<? extends Number> numbers) {
        double[] values = new double[16];
        int size = 0;
        for (Number number : numbers) {
            if (size == values.length) {
                values = Arrays.copyOf(values, 2 * size);
            }
            values[size++] = number == null ? Double.NaN : number.doubleValue();
        }
        Matcher parts = WITH_UNIT.matcher(name);
        boolean withUnit = parts.matches();
        return new DrawnNumbers(
                withUnit ? parts.group(1) : name.strip(),
                withUnit ? parts.group(2).strip() : "",
                Unit.labelled(""),
                new Numbers(Arrays.copyOf(values, size)),
                Named.ROWS,
                Clock.NO_TIME,
                "");
    }

    private static String earlierProbe(Logbook logbook, double[] drawn) {
        ProbePeriods periods = ProbePeriods.of(logbook);
        List<Batch> earlier = IntStream.range(0, drawn.length)
                .filter(i -> Double.isFinite(drawn[i]))
                .mapToObj(i -> logbook.batches().get(i))
                .filter(batch -> !periods.isTodays(batch))
                .toList();
        int inferred = (int) earlier.stream().filter(periods::isInferredEarlier).count();
        int undated = (int) earlier.stream()
                .filter(batch -> periods.number(batch).isEmpty())
                .count();
        return earlierProbe(earlier.size() - inferred - undated, inferred, undated);
    }

    /**
     * Says which readings are not of today's probe.
     *
     * @param written how many were read before a change that the upkeep names
     * @param inferred how many were read before a change that only the readings speak of
     * @param undated how many have no date, on a machine whose probe was changed
     */
    static String earlierProbe(int written, int inferred, int undated) {
        List<String> said = new ArrayList<>();
        if (written > 0) {
            said.add(Named.BATCHES.counted(written) + (written == 1 ? " was" : " were")
                    + " read by an earlier probe, which may read otherwise");
        }
        if (inferred > 0) {
            said.add(
                    Named.BATCHES.counted(inferred) + (inferred == 1 ? " was" : " were")
                            + " read before the probe seems to have changed: that is inferred from the readings, for no upkeep names it");
        }
        if (undated > 0) {
            said.add(Named.BATCHES.counted(undated) + (undated == 1 ? " has" : " have")
                    + " no date, so which probe read " + (undated == 1 ? "it" : "them") + " is not known");
        }
        return said.isEmpty() ? "" : String.join(". ", said) + "; all are drawn as they were logged.";
    }

    /** Returns the words of an axis, as on all our pictures. */
    String label() {
        return symbol.isEmpty() ? name : name + " (" + symbol + ")";
    }

    /** Prints a number as drawn, without its unit. */
    String print(double drawn) {
        return clock == Clock.MINUTES_AND_SECONDS
                ? Elapsed.seconds(Math.rint(drawn * SECONDS_IN_A_MINUTE)).toString()
                : printed.number(drawn);
    }

    /** Prints a number as drawn with its unit, as in "203.1 °C" or "2:05". */
    String printWithUnit(double drawn) {
        return clock == Clock.MINUTES_AND_SECONDS || symbol.isEmpty() ? print(drawn) : print(drawn) + " " + symbol;
    }

    /** Returns the measure of some of its rows. */
    DrawnNumbers only(List<Integer> kept) {
        return new DrawnNumbers(
                name,
                symbol,
                printed,
                new Numbers(kept.stream().mapToDouble(values::get).toArray()),
                rows,
                clock,
                note);
    }

    boolean isAllTheSame() {
        double[] present = values.present();
        double lowest = Arrays.stream(present).min().orElse(0);
        double highest = Arrays.stream(present).max().orElse(0);
        return highest - lowest <= LEAST_SPREAD * Math.max(Math.abs(lowest), Math.abs(highest));
    }

    int counted() {
        return values.present().length;
    }

    /** Says how many rows have no number; empty if all have. */
    String missing() {
        int lacking = values.size() - counted();
        return lacking == 0
                ? ""
                : String.format(
                        java.util.Locale.ROOT,
                        "%d of %s %s no %s and %s not counted.",
                        lacking,
                        rows.counted(values.size()),
                        lacking == 1 ? "has" : "have",
                        name,
                        lacking == 1 ? "is" : "are");
    }
}
