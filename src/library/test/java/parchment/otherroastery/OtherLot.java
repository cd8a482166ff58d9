package parchment.otherroastery;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Holds a lot: its beans, when it was there, how its mass loss ages, and the true course of each attribute.
 *
 * @param name as written
 * @param beans on arrival
 * @param from share of the calendar after which it is roasted
 * @param to share of the calendar up to which it is roasted
 * @param ageingPerHundredDays change of mass loss in 100 days since arrival, as a share (-0.006 is 0.6 points)
 * @param courses by attribute
 */
public record OtherLot(
        String name,
        Beans beans,
        double from,
        double to,
        double ageingPerHundredDays,
        Map<String, TrueCourse> courses) {
    public OtherLot {
        courses = Map.copyOf(courses);
    }

    /** Returns a lot that is there all the time, whose attributes follow nothing. */
    public static OtherLot named(String name, Beans beans) {
        return new OtherLot(
                name,
                beans,
                0,
                1,
                0,
                Map.of(
                        "sweetness", TrueCourse.none(6),
                        "acidity", TrueCourse.none(6),
                        "body", TrueCourse.none(6)));
    }

    public OtherLot with(String attribute, TrueCourse course) {
        Map<String, TrueCourse> changed = new LinkedHashMap<>(courses);
        changed.put(attribute, course);
        return new OtherLot(name, beans, from, to, ageingPerHundredDays, changed);
    }

    public OtherLot there(double shareFrom, double shareTo) {
        return new OtherLot(name, beans, shareFrom, shareTo, ageingPerHundredDays, courses);
    }

    public OtherLot ageing(double perHundredDays) {
        return new OtherLot(name, beans, from, to, perHundredDays, courses);
    }
}
