package parchment.feature;

import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import parchment.feature.kind.Family;
import parchment.feature.kind.Need;
import parchment.feature.kind.Role;
import parchment.feature.path.BatchPath;
import parchment.feature.path.Measured;
import parchment.feature.path.OnProbe;
import parchment.logbook.Batch;
import parchment.logbook.MarkKind;
import parchment.quantity.Unit;

/**
 * A named number that describes a batch's path.
 *
 * <p>{@link Features} holds those that are built in. A reader adds one in a cell:
 *
 * <pre>{@code
 * Feature peak = Feature.of("rate of rise at 150 °C", Unit.RATE_OF_RISE, "the rate when the beans pass 150 °C",
 *         path -> path.rateAtTemperature(150));
 * }</pre>
 */
public interface Feature {

    /** Returns the name in full words, unique among the features of a table. */
    String name();

    /** Returns what it is measured in. */
    Unit unit();

    /** Returns what exactly is measured, in words. */
    String definition();

    /** Returns what it cannot do without. */
    Set<Need> needs();

    /** Returns the family of features it hangs together with by arithmetic. */
    Family family();

    /** Returns whether it was set, was given by the calendar, or came of the roast. */
    default Role role() {
        return family().role();
    }

    /** Returns the marks whose uncertainty it shares with other features. */
    Set<MarkKind> marksUsed();

    /**
     * Measures a batch. The standard error knows the probe's noise and the uncertainty of the marks used.
     */
    Measured measure(BatchPath path);

    /**
     * Measures a batch with the marks taken as exact: the standard error is the feature's own, which it shares with no other. The
     * covariance of features is put together from this and from what moving a mark does.
     */
    default Measured measureWithMarksExact(BatchPath path) {
        return measure(path);
    }

    /** Returns what was planned for it before a batch was charged, as the library keeps numbers; empty if no plan of it can be written. */
    default OptionalDouble planned(Batch batch) {
        return OptionalDouble.empty();
    }

    /** Says whether another bean probe gives another number. */
    default OnProbe onProbe() {
        return OnProbe.HANGS_ON_IT;
    }

    /** Says whether it is a reading of the bean probe, so that another probe, or the same one elsewhere, gives another number. */
    default boolean readsBeanProbe() {
        return onProbe() == OnProbe.READING;
    }

    /** Returns the step in which a slope against this feature is told, as the library keeps numbers. */
    default double naturalStep() {
        return unit().naturalStep();
    }

    /** Returns a feature of the reader's own, of which no marks or needs are declared. */
    static Feature of(String name, Unit unit, String definition, Function<BatchPath, Measured> measure) {
        return NamedFeature.of(name, unit, Family.OTHER, definition, measure).hangingOnTheBeanProbe();
    }
}
