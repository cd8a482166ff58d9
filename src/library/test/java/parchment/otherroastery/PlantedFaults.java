package parchment.otherroastery;

/**
 * Says what is wrong in a logbook on purpose.
 *
 * @param probeMoved by how much the probe of the first machine reads otherwise from some day on, °C; 0 if it is not moved
 * @param movedAfter share of the roast days after which it is moved
 * @param lagFactor by which its lags change then
 * @param moveWritten whether upkeep.csv says so
 * @param cracksAfterDrop batches whose first crack is written 1 to 5 s after the drop
 * @param hotProbe batches whose probe reads 7 °C high all along
 * @param wrongCharges batches whose charge temperature is written 45 °C too high
 * @param duplicates batches that stand there twice, with curve and scores
 */
public record PlantedFaults(
        double probeMoved,
        double movedAfter,
        double lagFactor,
        Entry moveWritten,
        int cracksAfterDrop,
        int hotProbe,
        int wrongCharges,
        int duplicates) {
    /** Whether there is an entry in upkeep.csv. */
    public enum Entry {
        WRITTEN,
        NOT_WRITTEN
    }

    static final double HOT = 7;
    static final double WRONG_CHARGE = 45;

    public static PlantedFaults none() {
        return new PlantedFaults(0, 1, 1, Entry.NOT_WRITTEN, 0, 0, 0, 0);
    }

    public PlantedFaults withProbeMoved(double by, double afterShare, double lags, Entry entry) {
        return new PlantedFaults(by, afterShare, lags, entry, cracksAfterDrop, hotProbe, wrongCharges, duplicates);
    }

    public PlantedFaults withCracksAfterDrop(int batches) {
        return new PlantedFaults(
                probeMoved, movedAfter, lagFactor, moveWritten, batches, hotProbe, wrongCharges, duplicates);
    }

    public PlantedFaults withHotProbe(int batches) {
        return new PlantedFaults(
                probeMoved, movedAfter, lagFactor, moveWritten, cracksAfterDrop, batches, wrongCharges, duplicates);
    }

    public PlantedFaults withWrongCharges(int batches) {
        return new PlantedFaults(
                probeMoved, movedAfter, lagFactor, moveWritten, cracksAfterDrop, hotProbe, batches, duplicates);
    }

    public PlantedFaults withDuplicates(int batches) {
        return new PlantedFaults(
                probeMoved, movedAfter, lagFactor, moveWritten, cracksAfterDrop, hotProbe, wrongCharges, batches);
    }
}
