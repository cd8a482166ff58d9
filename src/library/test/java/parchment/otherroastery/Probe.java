package parchment.otherroastery;

/**
 * Holds a bean probe as it is fitted: it sees beans and some air, adds an offset of its own, and lags twice.
 *
 * @param offset added to what it sees, °C
 * @param seesBeans share of beans in what it sees with five kilograms in the drum; the rest is air
 * @param sheath first lag, s
 * @param core second lag, s
 */
public record Probe(double offset, double seesBeans, double sheath, double core) {
    public static Probe ordinary() {
        return new Probe(-1.1, 0.95, 15, 8);
    }

    /** Returns the probe moved so that it reads otherwise by so many degrees, with other lags. */
    public Probe moved(double by, double lagFactor) {
        return new Probe(offset + by, seesBeans, sheath * lagFactor, core * lagFactor);
    }

    double sees(double bean, double air, double mass) {
        double share = seesBeans - 0.012 * (TwoNodeDrum.USUAL_MASS - mass);
        return share * bean + (1 - share) * air + offset;
    }
}
