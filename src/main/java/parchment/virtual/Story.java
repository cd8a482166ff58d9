package parchment.virtual;

import java.time.LocalDate;
import java.util.List;
import parchment.quantity.TemperatureUnit;

/**
 * Describes a roastery and its year: everything that does not come from chance.
 *
 * @param name the roastery's name
 * @param prefix first letter of its batches' names
 * @param start first day
 * @param machineName the machine's name in the logbook
 * @param machine the machine
 * @param probes how the probes were fitted, oldest first
 * @param upkeep work on the machine, oldest first
 * @param lots lots of green coffee
 * @param recipes what is roasted for
 * @param operators who roasts
 * @param logger the logger
 * @param surfaces true flavour
 * @param cuppers names of the cuppers
 * @param cuppings how cuppings are held
 * @param chanceFrom first day on which drops are drawn by chance
 * @param chanceTo last day on which they are
 * @param writing how the logbook is written
 * @param smallestDay fewest batches on a roast day
 * @param largestDay most batches on a roast day
 */
record Story(
        String name,
        String prefix,
        LocalDate start,
        String machineName,
        DrumMachine machine,
        List<ProbePeriod> probes,
        List<Work> upkeep,
        List<VirtualLot> lots,
        List<Recipe> recipes,
        List<Operator> operators,
        Logger logger,
        List<FlavourSurface> surfaces,
        List<String> cuppers,
        Cuppings cuppings,
        LocalDate chanceFrom,
        LocalDate chanceTo,
        Writing writing,
        int smallestDay,
        int largestDay) {
    /** A stretch of calendar with one fitting of the probes. */
    record ProbePeriod(LocalDate from, Probes probes) {}

    /** Work on the machine; a burner or duct that was cleaned is as new. */
    record Work(LocalDate day, String what, String note) {}

    /** A recipe: a name, a drop reading that is usually meant, and how far it is varied on purpose, °C. */
    record Recipe(String name, double drop, double spread) {}

    /** A person with a habit, and how often this person roasts. */
    record Operator(String name, Habit habit, double share) {}

    /**
     * How cuppings are held.
     *
     * @param share share of batches that are cupped
     * @param cups cups of each batch
     * @param fewest fewest cuppers at a table
     * @param mostBatches most batches at a table
     * @param openRate how often codes are left out
     * @param talkRate how often people speak before scoring
     */
    record Cuppings(double share, int cups, int fewest, int mostBatches, double openRate, double talkRate) {}

    /**
     * How a logbook is written.
     *
     * @param temperature the unit of temperatures
     * @param times how times on curves are written
     * @param environment whether there is an environment probe
     * @param lotForgotten probability that a batch's lot is left blank
     * @param planWritten probability that a meant drop is written down
     */
    record Writing(
            TemperatureUnit temperature,
            Times times,
            Environment environment,
            double lotForgotten,
            double planWritten) {
        /** How times on curves are written. */
        enum Times {
            SECONDS,
            MINUTES_AND_SECONDS
        }

        /** Whether there is an environment probe. */
        enum Environment {
            MEASURED,
            NOT_MEASURED
        }
    }

    Story startingOn(LocalDate day) {
        return new Story(
                name,
                prefix,
                day,
                machineName,
                machine,
                probes,
                upkeep,
                lots,
                recipes,
                operators,
                logger,
                surfaces,
                cuppers,
                cuppings,
                chanceFrom,
                chanceTo,
                writing,
                smallestDay,
                largestDay);
    }

    Story withSurfaces(List<FlavourSurface> others) {
        return new Story(
                name,
                prefix,
                start,
                machineName,
                machine,
                probes,
                upkeep,
                lots,
                recipes,
                operators,
                logger,
                List.copyOf(others),
                cuppers,
                cuppings,
                chanceFrom,
                chanceTo,
                writing,
                smallestDay,
                largestDay);
    }

    List<String> attributes() {
        return surfaces.stream().map(FlavourSurface::attribute).toList();
    }

    int probePeriod(LocalDate day) {
        int period = 1;
        for (int i = 1; i < probes.size(); i++) {
            if (!day.isBefore(probes.get(i).from())) {
                period = i + 1;
            }
        }
        return period;
    }

    /** Returns the days since the work was last done, or since half a year before the first day. */
    long daysSince(String what, LocalDate day) {
        LocalDate last = start.minusDays(180);
        for (Work work : upkeep) {
            if (work.what().equals(what) && !work.day().isAfter(day)) {
                last = work.day();
            }
        }
        return last.until(day, java.time.temporal.ChronoUnit.DAYS);
    }
}
