package parchment.otherroastery;

import java.time.LocalDateTime;
import java.util.Map;
import java.util.OptionalDouble;

/** Holds one batch as it was roasted and as it was written down; temperatures in °C. */
record RoastedBatch(
        String name,
        int day,
        int machine,
        LocalDateTime roastedAt,
        OtherLot lot,
        Roaster.Person person,
        Course course,
        Conditions conditions,
        OptionalDouble planned,
        Written written,
        double massLoss,
        Map<String, Double> points,
        double mood) {
    /** What was around it. */
    record Conditions(double mass, double charge, double green, double room, double humidity, double readsHigh) {}

    /** What was written by hand; seconds, NaN where forgotten. */
    record Written(double charge, double yellowing, double firstCrack, double drop, double roastedMass) {}

    /** Returns the reading of the probe as it was on the day, at the true drop. */
    double dropReading() {
        return course.reading(course.drop()) + conditions.readsHigh();
    }

    double development() {
        return course.drop() - course.cracked(FIRST_POP);
    }

    /** Share of beans at which the first pop is heard. */
    static final double FIRST_POP = 0.02;
}
