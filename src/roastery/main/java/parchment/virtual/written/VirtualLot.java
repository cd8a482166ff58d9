package parchment.virtual.written;

import java.time.LocalDate;
import java.util.List;
import parchment.virtual.physics.GreenBeans;

/**
 * Describes an invented lot of green coffee, with the truth about it.
 *
 * @param name the lot's name
 * @param origin invented region
 * @param process how it was processed
 * @param variety invented variety
 * @param harvestedOn day of harvest
 * @param arrivedOn day of arrival
 * @param soldOutOn last day on which it is roasted
 * @param screenSize usual size of the beans, in 64ths of an inch
 * @param beans the beans as they arrived
 * @param flavour points added to each attribute, in the order of the surfaces
 * @param share how often it is roasted while it is there, against other lots
 * @param crop 1 for the lot itself, more for later crops of the same coffee
 */
public record VirtualLot(
        String name,
        String origin,
        String process,
        String variety,
        LocalDate harvestedOn,
        LocalDate arrivedOn,
        LocalDate soldOutOn,
        int screenSize,
        GreenBeans beans,
        List<Double> flavour,
        double share,
        int crop) {
    /** Water per dry matter that stored green coffee tends to in this store, kg/kg (assumption). */
    private static final double STORE_MOISTURE = 0.115;
    /** Time constant of that, days (assumption: jute in a store of steady air). */
    private static final double STORE_DAYS = 240;

    /** Copies the list. */
    public VirtualLot {
        flavour = List.copyOf(flavour);
    }

    /** Returns the days from arrival to the given day. */
    public long age(LocalDate day) {
        return arrivedOn.until(day, java.time.temporal.ChronoUnit.DAYS);
    }

    /** Returns the moisture on a day, water per dry matter, kg/kg: it creeps towards what the store's air keeps. */
    public double moisture(LocalDate day) {
        double left = StrictMath.exp(-StrictMath.max(0, age(day)) / STORE_DAYS);
        return STORE_MOISTURE + (beans.moisture() - STORE_MOISTURE) * left;
    }

    /** Returns a later crop of the same coffee under its name and a number; the first keeps the bare name. */
    public VirtualLot crop(int number, LocalDate arrived, LocalDate soldOut) {
        long toStore = harvestedOn.until(arrivedOn, java.time.temporal.ChronoUnit.DAYS);
        return new VirtualLot(
                number == 1 ? name : name + " " + number,
                origin,
                process,
                variety,
                arrived.minusDays(toStore),
                arrived,
                soldOut.isBefore(soldOutOn) ? soldOut : soldOutOn,
                screenSize,
                beans,
                flavour,
                share,
                number);
    }

    /** Returns whether this is the lot as the scenario names it, rather than a later crop of it. */
    public boolean isFirstCrop() {
        return crop == 1;
    }

    public boolean isThere(LocalDate day) {
        return !day.isBefore(arrivedOn) && !day.isAfter(soldOutOn);
    }
}
