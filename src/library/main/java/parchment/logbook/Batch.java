package parchment.logbook;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import parchment.curve.Curve;
import parchment.logbook.written.BatchConditions;
import parchment.logbook.written.BatchLooks;
import parchment.logbook.written.BatchPlan;
import parchment.quantity.Elapsed;
import parchment.quantity.TemperatureUnit;
import parchment.sheet.Numbers;

/**
 * One roast as it was written down and logged; nearly every answer begins with some of these.
 *
 * <pre>{@code
 * logbook.lastWithCurve().lot()
 * }</pre>
 *
 * <p>Nothing here is computed: what a curve says of the batch is found in the rooms above this one. Curves keep the logger's own
 * clock turned into seconds; {@link #writtenMark} is on the roaster's clock, since charge.
 */
public final class Batch {
    private final String name;
    private final Optional<OffsetDateTime> roastedAt;
    private final Map<Label, String> labels;
    private final BatchConditions conditions;
    private final BatchPlan plan;
    private final BatchLooks looks;
    private final Map<MarkKind, Elapsed> writtenMarks;
    private final Set<Quantity> logged;
    private final Supplier<CurveSet> curves;
    private final Map<String, String> extras;
    private final TemperatureUnit readerUnit;

    /** Names the columns that put batches into groups. */
    public enum Label {
        /** The lot, or the blend. */
        LOT("lot"),
        /** The machine. */
        MACHINE("machine"),
        /** Who roasted. */
        OPERATOR("operator"),
        /** The recipe that was followed. */
        RECIPE("recipe"),
        /** What the batch was for. */
        PURPOSE("purpose"),
        /** Whatever else was written. */
        NOTE("note");

        private final String words;

        Label(String words) {
            this.words = words;
        }

        /** Returns the column's header. */
        public String words() {
            return words;
        }
    }

    private Batch(Builder builder) {
        this.name = builder.name;
        this.roastedAt = builder.roastedAt;
        this.labels = copy(builder.labels);
        this.conditions = builder.conditions;
        this.plan = builder.plan;
        this.looks = builder.looks;
        this.writtenMarks = copy(builder.writtenMarks);
        this.logged = Collections.unmodifiableSet(
                builder.logged.isEmpty() ? EnumSet.noneOf(Quantity.class) : EnumSet.copyOf(builder.logged));
        this.curves = builder.curves();
        this.extras =
                builder.extras.isEmpty() ? Map.of() : Collections.unmodifiableMap(new LinkedHashMap<>(builder.extras));
        this.readerUnit = builder.readerUnit;
    }

    // A folder of a hundred thousand curves has as many batches of which nothing is written: an empty map each would
    // add up.
    private static <K extends Enum<K>, V> Map<K, V> copy(Map<K, V> map) {
        return map.isEmpty() ? Map.of() : Collections.unmodifiableMap(new EnumMap<>(map));
    }

    /** Starts a batch of the given name. */
    public static Builder named(String name) {
        return new Builder(name);
    }

    /** Returns the batch's name, unique in its logbook. */
    public String name() {
        return name;
    }

    /** Returns when the green coffee was charged, in the logbook's time zone, if it was written. */
    public Optional<OffsetDateTime> roastedAt() {
        return roastedAt;
    }

    /**
     * Returns the roast day: the calendar day of the charge in the logbook's time zone; empty if no date was written. This is the one rule
     * for roast days; a batch that belongs to no logbook yet takes the offset that its time was written with.
     */
    public Optional<LocalDate> roastDay() {
        return roastedAt.map(OffsetDateTime::toLocalDate);
    }

    /** Returns the same batch with its time told in a time zone. */
    public Batch in(ZoneId zone) {
        if (roastedAt.isEmpty()) {
            return this;
        }
        OffsetDateTime there = roastedAt.get().atZoneSameInstant(zone).toOffsetDateTime();
        return there.equals(roastedAt.get())
                ? this
                : toBuilder().roastedAt(there).build();
    }

    /** Returns what was written in one of the grouping columns. */
    public Optional<String> label(Label label) {
        return Optional.ofNullable(labels.get(label));
    }

    /** Returns the name of the lot, or of the blend. */
    public Optional<String> lot() {
        return label(Label.LOT);
    }

    /** Returns the name of the machine. */
    public Optional<String> machine() {
        return label(Label.MACHINE);
    }

    /** Returns who roasted. */
    public Optional<String> operator() {
        return label(Label.OPERATOR);
    }

    /** Returns what was weighed and read before and after the roast. */
    public BatchConditions conditions() {
        return conditions;
    }

    /** Returns what was decided before charge. */
    public BatchPlan plan() {
        return plan;
    }

    /** Returns how the roasted coffee looked. */
    public BatchLooks looks() {
        return looks;
    }

    /** Returns when the roaster wrote that something happened, since charge; charge itself is never written. */
    public Optional<Elapsed> writtenMark(MarkKind kind) {
        return Optional.ofNullable(writtenMarks.get(kind));
    }

    /** Returns what was logged of one quantity; empty if it was not logged. */
    public Optional<Curve> curve(Quantity quantity) {
        return Optional.ofNullable(curves.get().known().get(quantity));
    }

    /** Returns which quantities were logged. Takes no reading, even where a large logbook keeps its curves on disk. */
    public Set<Quantity> logged() {
        return logged;
    }

    /** Returns every other column of numbers in this batch's curve file, by heading. */
    public Map<String, Curve> otherCurves() {
        return curves.get().others();
    }

    /** Returns the bean-temperature curve, in degrees Celsius; empty if it was not logged. */
    public Optional<Curve> beanTemperature() {
        return curve(Quantity.BEAN_TEMPERATURE);
    }

    /** Returns the air-temperature curve, in degrees Celsius; empty if it was not logged. */
    public Optional<Curve> airTemperature() {
        return curve(Quantity.AIR_TEMPERATURE);
    }

    /** Returns every other column that was filled in for this batch, by header. */
    public Map<String, String> extras() {
        return extras;
    }

    /** Returns what stands in such a column as a number, or NaN if it is blank, no number, or one of more than 15 digits before the decimal point. */
    public double extraNumber(String header) {
        String written = extras.get(header);
        double number = written == null ? Double.NaN : Numbers.parse(written, Numbers.Decimal.POINT);
        return Bounds.NUMBER.holds(number) ? number : Double.NaN;
    }

    /** Returns the temperature scale that results about this batch are shown in: the one its logbook is written in. */
    public TemperatureUnit readerUnit() {
        return readerUnit;
    }

    /** Returns a builder that starts as this batch. */
    public Builder toBuilder() {
        Builder builder = new Builder(name);
        builder.roastedAt = roastedAt;
        builder.labels.putAll(labels);
        builder.conditions = conditions;
        builder.plan = plan;
        builder.looks = looks;
        builder.writtenMarks.putAll(writtenMarks);
        builder.logged.addAll(logged);
        builder.read = curves;
        builder.extras.putAll(extras);
        builder.readerUnit = readerUnit;
        return builder;
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder("batch ").append(name);
        lot().ifPresent(lot -> text.append(", lot ").append(lot));
        roastDay().ifPresent(day -> text.append(", roasted ").append(day));
        text.append(beanTemperature()
                .map(bean -> String.format(Locale.ROOT, ", %d bean temperature readings", bean.size()))
                .orElse(", no curve"));
        return text.toString();
    }

    /** Collects what is known of a batch. */
    public static final class Builder {
        private final String name;
        private Optional<OffsetDateTime> roastedAt = Optional.empty();
        private final Map<Label, String> labels = new EnumMap<>(Label.class);
        private BatchConditions conditions = BatchConditions.NOT_WRITTEN;
        private BatchPlan plan = BatchPlan.NOT_WRITTEN;
        private BatchLooks looks = BatchLooks.NOT_WRITTEN;
        private final Map<MarkKind, Elapsed> writtenMarks = new EnumMap<>(MarkKind.class);
        private final Set<Quantity> logged = EnumSet.noneOf(Quantity.class);
        private Supplier<CurveSet> read = () -> CurveSet.NONE;
        private final Map<Quantity, Curve> set = new EnumMap<>(Quantity.class);
        private final Map<String, String> extras = new LinkedHashMap<>();
        private TemperatureUnit readerUnit = TemperatureUnit.CELSIUS;

        private Builder(String name) {
            this.name = name;
        }

        /** Sets when the green coffee was charged. */
        public Builder roastedAt(OffsetDateTime at) {
            roastedAt = Optional.of(at);
            return this;
        }

        /** Sets what was written in one of the grouping columns. */
        public Builder label(Label label, String written) {
            labels.put(label, written);
            return this;
        }

        /** Sets the lot. */
        public Builder lot(String lot) {
            return label(Label.LOT, lot);
        }

        /** Sets the machine. */
        public Builder machine(String machine) {
            return label(Label.MACHINE, machine);
        }

        /** Sets what was weighed and read before and after the roast. */
        public Builder conditions(BatchConditions written) {
            conditions = written;
            return this;
        }

        /** Sets what was decided before charge. */
        public Builder plan(BatchPlan written) {
            plan = written;
            return this;
        }

        /** Sets how the roasted coffee looked. */
        public Builder looks(BatchLooks written) {
            looks = written;
            return this;
        }

        /** Sets a mark that the roaster wrote, since charge. */
        public Builder writtenMark(MarkKind kind, Elapsed sinceCharge) {
            writtenMarks.put(kind, sinceCharge);
            return this;
        }

        /** Sets what was logged of one quantity. */
        public Builder curve(Quantity quantity, Curve curve) {
            logged.add(quantity);
            set.put(quantity, curve);
            return this;
        }

        /** Sets where all curves of the batch come from; they may be read again each time. */
        Builder curves(Set<Quantity> quantities, Supplier<CurveSet> source) {
            logged.addAll(quantities);
            read = source;
            return this;
        }

        private Supplier<CurveSet> curves() {
            if (set.isEmpty()) {
                return read;
            }
            Supplier<CurveSet> source = read;
            Map<Quantity, Curve> over = new EnumMap<>(set);
            return () -> {
                CurveSet before = source.get();
                Map<Quantity, Curve> known = new EnumMap<>(Quantity.class);
                known.putAll(before.known());
                known.putAll(over);
                return new CurveSet(known, before.others());
            };
        }

        /** Sets what stood in a column that has no meaning of its own. */
        public Builder extra(String header, String written) {
            extras.put(header, written);
            return this;
        }

        /** Sets the temperature scale that results about this batch are shown in. */
        public Builder readerUnit(TemperatureUnit unit) {
            readerUnit = unit;
            return this;
        }

        /** Returns the batch. */
        public Batch build() {
            return new Batch(this);
        }
    }
}
