package parchment.align;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import parchment.logbook.MarkKind;
import parchment.phase.Phases;
import parchment.phase.found.Mark;
import parchment.quantity.Mass;
import parchment.quantity.Temperature;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.linear.Robust;
import parchment.stats.warp.FunctionalBoxplot;

/** Finds what sets batches of one kind apart: seconds along the temperature, moves of the controls, charge and drop. */
final class PathOddities {
    /** Least stretch of temperature, in °C, and least time in seconds, worth a word; common practice, no source. */
    private static final double LEAST_STRETCH = 4;

    private static final double LEAST_SECONDS = 8;
    private static final double LEAST_CELSIUS = 3;
    private static final double LEAST_MASS_SHARE = 0.05;
    /** Stretches closer together than this are told as one. */
    private static final double JOIN = 5;

    private final List<Phases> members;
    private final List<Optional<FirstPassages>> climbs;
    private final TemperatureUnit reader;
    private final double[] edges;
    private final WrittenCharges charges;
    private final ProbeOffsets offsets;
    private final Map<String, List<String>> reasons = new LinkedHashMap<>();
    private final Map<String, Double> secondsOff = new LinkedHashMap<>();
    private final Map<String, Double> depths = new LinkedHashMap<>();

    /** A stretch of temperature that one batch passed unusually. */
    private record Slow(int batch, double from, double to) {}

    private PathOddities(Peers peers, TemperatureUnit reader) {
        this.members = peers.members();
        this.reader = reader;
        this.climbs = members.stream().map(FirstPassages::of).toList();
        List<FirstPassages> known = climbs.stream().flatMap(Optional::stream).toList();
        double low =
                Robust.quantile(known.stream().mapToDouble(FirstPassages::from).toArray(), 0.95) + LaidPaths.WARMING;
        double high = known.stream().mapToDouble(FirstPassages::to).max().orElse(Double.NaN);
        this.edges = low < high ? Stretches.edges(low, high) : new double[0];
        this.charges = WrittenCharges.of(members);
        this.offsets = ProbeOffsets.of(members, charges.believed());
    }

    static List<Unusual.Found> of(Peers peers, TemperatureUnit reader) {
        PathOddities odd = new PathOddities(peers, reader);
        odd.paths();
        ControlHabit.oddities(peers.members()).forEach((batch, words) -> words.forEach(w -> odd.say(batch, w)));
        odd.drop();
        odd.readings();
        odd.charge();
        List<Unusual.Found> found = new ArrayList<>();
        for (Phases phases : peers.members()) {
            String name = phases.batch().name();
            List<String> own = odd.reasons.getOrDefault(name, List.of());
            if (!own.isEmpty()) {
                found.add(new Unusual.Found(
                        phases.batch(),
                        peers.members().size() - 1 + " others: " + peers.words(),
                        odd.depths.getOrDefault(name, Double.NaN),
                        odd.secondsOff.getOrDefault(name, 0.0),
                        own));
            }
        }
        return found;
    }

    private void say(String batch, String reason) {
        reasons.computeIfAbsent(batch, k -> new ArrayList<>()).add(reason);
    }

    /** Looks at the paths along the temperature. */
    private void paths() {
        OneClock one = OneClock.of(members, Clock.BY_BEAN_TEMPERATURE, reader, members.size(), List.of());
        List<OneClock.Laid> laid = one.laid();
        double[] positions = one.positions();
        List<Slow> stretches = new ArrayList<>(farOutSteps());
        if (laid.size() >= 3 && positions.length > 1) {
            FunctionalBoxplot plot =
                    FunctionalBoxplot.of(laid.stream().map(one::values).toList());
            for (int i = 0; i < laid.size(); i++) {
                depths.put(laid.get(i).name(), plot.depth().depth(i));
            }
            for (FunctionalBoxplot.Outlying out : plot.outlying()) {
                int member = position(laid.get(out.curve()).name());
                stretches.add(new Slow(member, positions[out.from()], positions[out.to()]));
            }
        }
        for (Slow stretch : joined(stretches)) {
            tell(stretch);
        }
        start();
    }

    private int position(String name) {
        int i = 0;
        while (!members.get(i).batch().name().equals(name)) {
            i++;
        }
        return i;
    }

    /** Returns the steps of temperature in which a batch's seconds lie far out. */
    private List<Slow> farOutSteps() {
        List<Slow> found = new ArrayList<>();
        for (int k = 1; k < edges.length; k++) {
            double from = edges[k - 1];
            double to = edges[k];
            double[] seconds = between(from, to);
            Robust.Fences fences = Robust.Fences.of(seconds);
            for (int i = 0; i < seconds.length; i++) {
                if (fences.farOut(seconds[i], LEAST_SECONDS)) {
                    found.add(new Slow(i, from, to));
                }
            }
        }
        return found;
    }

    private double[] between(double from, double to) {
        return climbs.stream()
                .mapToDouble(
                        climb -> climb.map(c -> c.passage(to) - c.passage(from)).orElse(Double.NaN))
                .toArray();
    }

    private static List<Slow> joined(List<Slow> stretches) {
        List<Slow> sorted = new ArrayList<>(stretches);
        sorted.sort(Comparator.comparingInt(Slow::batch).thenComparingDouble(Slow::from));
        List<Slow> joined = new ArrayList<>();
        for (Slow next : sorted) {
            Slow before = joined.isEmpty() ? null : joined.get(joined.size() - 1);
            if (before != null && before.batch == next.batch && next.from <= before.to + JOIN) {
                joined.set(joined.size() - 1, new Slow(before.batch, before.from, Math.max(before.to, next.to)));
            } else {
                joined.add(next);
            }
        }
        return joined;
    }

    private void tell(Slow stretch) {
        if (stretch.to - stretch.from < LEAST_STRETCH) {
            return;
        }
        double[] seconds = between(stretch.from, stretch.to);
        double off = seconds[stretch.batch] - Robust.median(seconds);
        if (Math.abs(off) >= LEAST_SECONDS) {
            String name = members.get(stretch.batch).batch().name();
            say(
                    name,
                    Stretches.length(off)
                            + (off > 0 ? " slower " : " faster ")
                            + Stretches.between(stretch.from, stretch.to, reader));
            secondsOff.merge(name, Math.abs(off), Math::max);
        }
    }

    /** Looks at the time from charge to where the comparison along the temperature begins. */
    private void start() {
        if (edges.length == 0) {
            return;
        }
        double edge = edges[0];
        double[] seconds = climbs.stream()
                .mapToDouble(climb -> climb.map(c -> c.passage(edge)).orElse(Double.NaN))
                .toArray();
        Robust.Fences fences = Robust.Fences.of(seconds);
        for (int i = 0; i < seconds.length; i++) {
            if (fences.farOut(seconds[i], LEAST_SECONDS)) {
                double off = seconds[i] - fences.median();
                String name = members.get(i).batch().name();
                say(
                        name,
                        Stretches.length(off) + (off > 0 ? " slower" : " faster") + " from charge to "
                                + Stretches.whole(edge, reader));
                secondsOff.merge(name, Math.abs(off), Math::max);
            }
        }
    }

    private void drop() {
        compare(
                phases -> phases.mark(MarkKind.DROP)
                        .flatMap(Mark::beanTemperature)
                        .map(Temperature::celsius)
                        .orElse(Double.NaN),
                LEAST_CELSIUS,
                (batch, value, usual) -> say(batch, degrees("dropped", value, usual)));
    }

    /** Looks for a probe that read off all the way, and for a charge temperature that the curve does not bear out. */
    private void readings() {
        for (int i = 0; i < members.size(); i++) {
            String name = members.get(i).batch().name();
            if (charges.off(i) != 0) {
                say(name, slip(charges.off(i)));
            }
            if (offsets.of(i) != 0) {
                say(name, offset(offsets.of(i), offsets.marks(i)));
            }
        }
    }

    private String slip(double off) {
        return "the charge temperature was written "
                + Unit.TEMPERATURE_STEP.withDigits(0).formatStep(Math.abs(off), reader)
                + (off > 0 ? " hotter" : " colder") + " than the curve bears out: it may be a slip of the pen";
    }

    private String offset(double off, List<String> marks) {
        return "the bean temperature read about "
                + Unit.TEMPERATURE_STEP.withDigits(0).formatStep(Math.abs(off), reader)
                + (off > 0 ? " higher" : " lower") + " than usual all the way ("
                + String.join(", ", marks) + "): the probe may have been off";
    }

    /** Looks at how the batch was charged: a choice, so it explains what else is unusual and is not unusual by itself. */
    private void charge() {
        compare(
                charges.believed(),
                LEAST_CELSIUS,
                (batch, value, usual) -> explain(batch, degrees("charged", value, usual)));
        double mass = Robust.median(
                members.stream().mapToDouble(PathOddities::kilograms).toArray());
        compare(
                PathOddities::kilograms,
                Double.isFinite(mass) ? LEAST_MASS_SHARE * mass : Double.POSITIVE_INFINITY,
                (batch, value, usual) -> explain(
                        batch, String.format(Locale.ROOT, "charged with %.2f kg (usually %.2f kg)", value, usual)));
    }

    private void explain(String batch, String words) {
        if (reasons.containsKey(batch)) {
            say(batch, words);
        }
    }

    private static double kilograms(Phases phases) {
        return phases.batch().conditions().greenMass().map(Mass::kilograms).orElse(Double.NaN);
    }

    private String degrees(String what, double value, double usual) {
        return what + " " + Unit.TEMPERATURE_STEP.withDigits(0).formatStep(Math.abs(value - usual), reader)
                + (value > usual ? " hotter" : " colder") + " than usual";
    }

    private interface Telling {
        void tell(String batch, double value, double usual);
    }

    private void compare(ToDoubleFunction<Phases> read, double least, Telling telling) {
        compare(members.stream().mapToDouble(read).toArray(), least, telling);
    }

    private void compare(double[] values, double least, Telling telling) {
        Robust.Fences fences = Robust.Fences.of(values);
        for (int i = 0; i < values.length; i++) {
            if (fences.farOut(values[i], least)) {
                telling.tell(members.get(i).batch().name(), values[i], fences.median());
            }
        }
    }
}
