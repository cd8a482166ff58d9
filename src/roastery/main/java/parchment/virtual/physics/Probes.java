package parchment.virtual.physics;

/**
 * Describes how a machine's two probes are fitted: what they see, how late, and by how much they are off.
 *
 * <p>The bean probe sits in the moving beans, which cover it the better the fuller the drum; what is not covered sees the air.
 *
 * @param coveringMass green mass that covers all but 37 % of what beans can cover, kg
 * @param fullCover share of the bean probe that a full drum covers
 * @param beanLag time constant of the bean probe and of the beans' mixing around it, s
 * @param airLag time constant of the air probe, s
 * @param beanOffset what the bean probe reads too high, °C
 */
public record Probes(double coveringMass, double fullCover, double beanLag, double airLag, double beanOffset) {

    /** @throws IllegalArgumentException if a number other than the offset is not positive, or the cover is above 1 */
    public Probes {
        VirtualChecks.positive("covering mass", coveringMass);
        VirtualChecks.share("cover of a full drum", fullCover);
        VirtualChecks.positive("lag of the bean probe", beanLag);
        VirtualChecks.positive("lag of the air probe", airLag);
    }

    /** Returns the probes of the fitted machine. */
    public static Probes fitted() {
        return new Probes(0.65, 0.948, 39, 14, 0);
    }

    /** Returns the share of the bean probe that this many kilograms cover. */
    public double cover(double greenMass) {
        return fullCover * (1 - StrictMath.exp(-greenMass / coveringMass));
    }
}
