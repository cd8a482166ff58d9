package parchment.virtual.written;

import java.util.List;
import parchment.virtual.physics.SimulatedRoast;
import parchment.virtual.physics.SimulatedRoast.Trace;

/**
 * One batch of the virtual roastery: what was planned, what really happened, and what was written down.
 *
 * @param plan what was settled before the charge
 * @param operator who roasted
 * @param conditions the day's conditions
 * @param roast what really happened
 * @param curve what the logger wrote
 * @param marks what the person wrote
 * @param hidden the beans' hidden state, standard deviations: it moves the drop and the cup, and no reading shows it
 * @param flavour true points of each attribute, in the order of the surfaces, before cups and cuppers
 * @param cooledMass roasted mass as weighed, kg
 */
public record VirtualBatch(
        PlannedBatch plan,
        String operator,
        Conditions conditions,
        SimulatedRoast roast,
        LoggedCurve curve,
        WrittenMarks marks,
        double hidden,
        List<Double> flavour,
        double cooledMass) {
    /** Copies the list. */
    public VirtualBatch {
        flavour = List.copyOf(flavour);
    }

    /** Returns the same batch with its curve and what happened between charge and drop forgotten. */
    public VirtualBatch withoutCourse() {
        return new VirtualBatch(
                plan,
                operator,
                conditions,
                roast.endOnly(),
                new LoggedCurve(List.of()),
                marks,
                hidden,
                flavour,
                cooledMass);
    }

    /** Returns the batch's name. */
    public String name() {
        return plan.name();
    }

    /** Returns the true temperature of the beans at the drop, °C. */
    public double endTemperature() {
        return roast.at(Trace.BEAN, roast.drop());
    }

    /** Returns the bean probe's reading at the drop, without noise, °C. */
    public double dropReading() {
        return roast.at(Trace.BEAN_READING, roast.drop());
    }

    /** Returns the true time from yellowing to the first pop (or the drop, if none popped), s. */
    public double browningTime() {
        return firstPop() - (Double.isNaN(roast.yellowing()) ? firstPop() : roast.yellowing());
    }

    /** Returns the true time from the first pop to the drop, s; 0 if none popped. */
    public double developmentTime() {
        return roast.drop() - firstPop();
    }

    private double firstPop() {
        return Double.isNaN(roast.firstCrackStart()) ? roast.drop() : roast.firstCrackStart();
    }
}
