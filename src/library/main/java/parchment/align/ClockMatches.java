package parchment.align;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import parchment.logbook.MarkKind;
import parchment.phase.Phases;
import parchment.phase.found.Mark;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.linear.Robust;
import parchment.stats.warp.Warp;

/** Matches the clock of each of some batches, seconds since charge, with one reference clock. */
final class ClockMatches {
    /** The marks between charge and drop that set the common clock, if half of the batches have them. */
    private static final List<MarkKind> BETWEEN =
            List.of(MarkKind.TURNING_POINT, MarkKind.YELLOWING, MarkKind.FIRST_CRACK_START);

    private static final double STEP_CELSIUS = 2;

    private final List<Optional<Warp>> warps;
    private final List<String> notes;

    private ClockMatches(List<Optional<Warp>> warps, List<String> notes) {
        this.warps = warps;
        this.notes = List.copyOf(notes);
    }

    /** Matches the clocks of batches. */
    static ClockMatches of(List<Phases> all, Clock clock) {
        return switch (clock) {
            case SINCE_CHARGE, SINCE_YELLOWING, SINCE_FIRST_CRACK_START -> since(all, clock.needed());
            case BY_ALL_MARKS -> byMarks(all);
            case BY_BEAN_TEMPERATURE -> byTemperature(all);
            case BY_RATE_OF_RISE -> {
                ElasticClock elastic = ElasticClock.of(all);
                yield new ClockMatches(elastic.warps(), elastic.notes());
            }
        };
    }

    /** Returns a batch's warp from seconds since charge to the reference clock; nothing if it cannot be laid on it. */
    Optional<Warp> warp(int batch) {
        return warps.get(batch);
    }

    /** Returns what the clock was set by, in sentences. */
    List<String> notes() {
        return notes;
    }

    private static double end(Phases phases) {
        double last = phases.bean()
                .filter(bean -> !bean.clean().kept().isEmpty())
                .map(bean -> bean.clean().kept().secondsAt(bean.clean().kept().size() - 1))
                .orElse(Double.NaN);
        return phases.mark(MarkKind.DROP).map(Mark::seconds).orElse(last);
    }

    private static ClockMatches since(List<Phases> all, MarkKind kind) {
        List<Optional<Warp>> warps = new ArrayList<>();
        for (Phases phases : all) {
            double zero = phases.mark(kind).map(Mark::seconds).orElse(Double.NaN);
            double end = end(phases);
            warps.add(
                    end > 0 && Double.isFinite(zero)
                            ? Optional.of(Warp.linear(new double[] {0, end}, new double[] {-zero, end - zero}))
                            : Optional.empty());
        }
        double[] errors = errors(all, kind);
        return new ClockMatches(
                warps,
                kind == MarkKind.CHARGE || errors.length == 0
                        ? List.of()
                        : List.of(String.format(
                                Locale.ROOT,
                                "The %s itself is known to%s in the middle batch.",
                                kind.words(),
                                within(Robust.median(errors)))));
    }

    private static double[] errors(List<Phases> all, MarkKind kind) {
        return all.stream()
                .flatMap(phases -> phases.mark(kind).stream())
                .mapToDouble(Mark::standardError)
                .toArray();
    }

    private static String within(double seconds) {
        return Unit.SECONDS.formatError(seconds, TemperatureUnit.CELSIUS);
    }

    private static ClockMatches byMarks(List<Phases> all) {
        List<MarkKind> kinds = new ArrayList<>();
        for (MarkKind kind : BETWEEN) {
            long have =
                    all.stream().filter(phases -> phases.mark(kind).isPresent()).count();
            if (2 * have >= all.size() && have > 0) {
                kinds.add(kind);
            }
        }
        kinds.add(MarkKind.DROP);
        List<double[]> own = all.stream().map(phases -> times(phases, kinds)).toList();
        double[] reference = new double[kinds.size() + 1];
        for (int k = 1; k < reference.length; k++) {
            int mark = k;
            reference[k] = Robust.median(own.stream()
                    .filter(times -> times.length > 0)
                    .mapToDouble(times -> times[mark])
                    .toArray());
        }
        List<Optional<Warp>> warps = own.stream()
                .map(times ->
                        times.length == 0 ? Optional.<Warp>empty() : Optional.of(Warp.monotoneCubic(times, reference)))
                .toList();
        List<String> parts = new ArrayList<>();
        parts.add("charge");
        for (MarkKind kind : kinds) {
            String within = within(Robust.median(errors(all, kind))).strip();
            parts.add(within.isEmpty() ? kind.words() : kind.words() + " (" + within + ")");
        }
        return new ClockMatches(
                warps,
                warps.stream().allMatch(Optional::isEmpty)
                        ? List.of()
                        : List.of("The clock is set by " + String.join(", ", parts)
                                + ": between them it runs smoothly. What is written in brackets is the middle batch's"
                                + " uncertainty of the mark; a clock cannot be truer than the marks it is set by."));
    }

    /** Returns charge and the marks in order, or nothing if one is missing or they do not follow each other. */
    private static double[] times(Phases phases, List<MarkKind> kinds) {
        double[] times = new double[kinds.size() + 1];
        for (int k = 0; k < kinds.size(); k++) {
            times[k + 1] = phases.mark(kinds.get(k)).map(Mark::seconds).orElse(Double.NaN);
            if (!(times[k + 1] > times[k])) {
                return new double[0];
            }
        }
        return phases.bean().isEmpty() ? new double[0] : times;
    }

    /** Carries each batch to the clock on which the middle batch passes the same temperatures. */
    private static ClockMatches byTemperature(List<Phases> all) {
        List<Optional<FirstPassages>> climbs =
                all.stream().map(FirstPassages::of).toList();
        List<FirstPassages> known = climbs.stream().flatMap(Optional::stream).toList();
        double[] grid = known.isEmpty()
                ? new double[0]
                : SharedStretch.of(
                        known.stream().mapToDouble(FirstPassages::from).toArray(),
                        known.stream().mapToDouble(FirstPassages::to).toArray(),
                        STEP_CELSIUS);
        List<double[]> passages = climbs.stream()
                .map(climb -> climb.map(c -> c.passages(grid)).orElse(new double[0]))
                .toList();
        double[] middle = IntStream.range(0, grid.length)
                .mapToDouble(k -> Robust.median(passages.stream()
                        .filter(SharedStretch::whole)
                        .mapToDouble(p -> p[k])
                        .toArray()))
                .toArray();
        List<Optional<Warp>> warps = passages.stream()
                .map(p -> SharedStretch.whole(p) && p.length > 1 && rises(middle)
                        ? Optional.of(Warp.linear(p, middle))
                        : Optional.<Warp>empty())
                .toList();
        return new ClockMatches(warps, List.of());
    }

    private static boolean rises(double[] values) {
        return IntStream.range(1, values.length).allMatch(k -> values[k] > values[k - 1])
                && Arrays.stream(values).allMatch(Double::isFinite);
    }
}
