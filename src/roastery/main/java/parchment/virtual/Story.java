package parchment.virtual;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import parchment.logbook.written.Upkeep;
import parchment.logbook.written.UpkeepKind;
import parchment.quantity.TemperatureUnit;
import parchment.virtual.chance.Seed;
import parchment.virtual.people.Cupper;
import parchment.virtual.people.FlavourSurface;
import parchment.virtual.people.Habit;
import parchment.virtual.physics.DrumMachine;
import parchment.virtual.physics.Probes;
import parchment.virtual.written.VirtualLot;

/**
 * Describes a roastery and its year: everything that does not come from chance.
 *
 * @param text the scenario's text
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
 * @param shapes the shape of those surfaces that are drawn from the seed, by attribute
 * @param cuppers the cuppers
 * @param cuppings how cuppings are held
 * @param chanceFrom first day on which drops are drawn by chance
 * @param chanceTo last day on which they are
 * @param writing how the logbook is written
 * @param calendar when and how much is roasted
 * @param weather seasons and weather
 * @param wear how ducts and burner tire
 * @param taste what moves the cup beside the surfaces
 * @param mislabellings lots that were written down as others
 */
record Story(
        String text,
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
        Map<String, String> shapes,
        List<CupperGiven> cuppers,
        Cuppings cuppings,
        LocalDate chanceFrom,
        LocalDate chanceTo,
        Writing writing,
        Calendar calendar,
        Weather weather,
        Wear wear,
        Taste taste,
        List<Mislabelling> mislabellings) {
    /**
     * Says when and how much is roasted.
     *
     * @param batches how many batches, unless the call says otherwise
     * @param rhythm the days
     * @param dayOff how often a week (or weekday) is left out
     * @param extraDay how often a Friday is added
     * @param smallestDay fewest batches on a roast day
     * @param largestDay most batches on a roast day
     * @param smallMass kg, a tenth of batches
     * @param usualMass kg
     * @param largeMass kg, about a third of batches
     */
    record Calendar(
            int batches,
            Rhythm rhythm,
            double dayOff,
            double extraDay,
            int smallestDay,
            int largestDay,
            double smallMass,
            double usualMass,
            double largeMass) {
        /** The days on which it roasts. */
        enum Rhythm {
            TUESDAYS,
            WEEKDAYS
        }
    }

    /**
     * Describes seasons and weather; temperatures in °C, pressure in hPa, the rest as shares.
     *
     * @param supply standard deviation of the flame from day to day
     * @param chimney standard deviation of the draught from day to day
     */
    record Weather(
            double temperature,
            double season,
            int warmestDay,
            double dayToDay,
            double humidity,
            double humiditySeason,
            double pressure,
            double supply,
            double chimney) {}

    /** Losses of draught and flame per day since the cleaning, as shares, and the days since it at the start. */
    record Wear(double draughtPerDay, double flamePerDay, int daysAtStart) {}

    /** What moves the cup beside the surfaces, in points: see the section [flavour]. */
    record Taste(double ageing, double batch, double hidden, double cup, double rest) {}

    /** A stretch of days in which one lot was written down as another. */
    record Mislabelling(LocalDate from, LocalDate to, String lot, String writtenAs) {}

    /** A cupper's name and those traits that were given; the others are drawn. */
    record CupperGiven(String name, UnaryOperator<Cupper> given) {}

    /** A stretch of calendar with one fitting of the probes. */
    record ProbePeriod(LocalDate from, Probes probes) {}

    /** Work on the machine; a burner or duct that was cleaned is as new. */
    record Work(LocalDate day, String what, String note) {
        /** Returns the kind as a careful roaster of the scenario writes it. */
        UpkeepKind kind() {
            return new Upkeep("", day, what, Optional.empty()).kind();
        }
    }

    /**
     * A recipe: a name, a drop reading that is usually meant, how far it is varied on purpose, °C, and the only lot from which it is
     * roasted, blank if from any.
     */
    record Recipe(String name, double drop, double spread, String lot) {
        boolean takes(VirtualLot other) {
            return lot.isEmpty()
                    || other.name().equals(lot)
                    || other.name().matches(java.util.regex.Pattern.quote(lot) + " [0-9]+");
        }
    }

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
     * @param tableShift standard deviation of a table's shift of an attribute, points
     * @param cupperShift standard deviation of a cupper's shift at a table, points
     * @param agreement how far scores move to the table's mean when people spoke first, share
     * @param hope points per °C that cuppers add who see which batch it is
     * @param step step to which points are rounded
     */
    record Cuppings(
            double share,
            int cups,
            int fewest,
            int mostBatches,
            double openRate,
            double talkRate,
            double tableShift,
            double cupperShift,
            double agreement,
            double hope,
            double step) {}

    /**
     * How a logbook is written.
     *
     * @param temperature the unit of temperatures
     * @param times how times on curves are written
     * @param airProbe whether there is an air probe
     * @param lotForgotten probability that a batch's lot is left blank
     * @param planWritten probability that a meant drop is written down
     */
    record Writing(
            TemperatureUnit temperature, Times times, AirProbe airProbe, double lotForgotten, double planWritten) {
        /** How times on curves are written. */
        enum Times {
            SECONDS,
            MINUTES_AND_SECONDS
        }

        /** Whether there is an air probe. */
        enum AirProbe {
            MEASURED,
            NOT_MEASURED
        }
    }

    /** Returns the story with those surfaces drawn that come from the seed. */
    Story drawn(Seed seed) {
        List<FlavourSurface> settled = surfaces.stream()
                .map(surface -> shapes.containsKey(surface.attribute())
                        ? FlavourSurface.drawn(
                                surface.attribute(),
                                shapes.get(surface.attribute()),
                                seed.stream("surface " + surface.attribute()))
                        : surface)
                .toList();
        return with(start, settled, Map.of(), lots);
    }

    /** Returns the story with other lots. */
    Story withLots(List<VirtualLot> others) {
        return with(start, surfaces, shapes, others);
    }

    Story startingOn(LocalDate day) {
        return with(day, surfaces, shapes, lots);
    }

    Story withSurfaces(List<FlavourSurface> others) {
        return with(start, List.copyOf(others), Map.of(), lots);
    }

    private Story with(
            LocalDate otherStart,
            List<FlavourSurface> otherSurfaces,
            Map<String, String> otherShapes,
            List<VirtualLot> otherLots) {
        return new Story(
                text,
                name,
                prefix,
                otherStart,
                machineName,
                machine,
                probes,
                upkeep,
                otherLots,
                recipes,
                operators,
                logger,
                otherSurfaces,
                otherShapes,
                cuppers,
                cuppings,
                chanceFrom,
                chanceTo,
                writing,
                calendar,
                weather,
                wear,
                taste,
                mislabellings);
    }

    /** Returns the name under which a lot was written down on a day. */
    String writtenLot(VirtualLot lot, LocalDate day) {
        return mislabellings.stream()
                .filter(slip -> slip.lot().equals(lot.name()) && !day.isBefore(slip.from()) && !day.isAfter(slip.to()))
                .map(Mislabelling::writtenAs)
                .findFirst()
                .orElse(lot.name());
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

    /** Returns the days since the work was last done, or since it was before the first day. */
    long daysSince(String what, LocalDate day) {
        LocalDate last = start.minusDays(wear.daysAtStart());
        for (Work work : upkeep) {
            if (work.what().equals(what) && !work.day().isAfter(day)) {
                last = work.day();
            }
        }
        return last.until(day, java.time.temporal.ChronoUnit.DAYS);
    }
}
