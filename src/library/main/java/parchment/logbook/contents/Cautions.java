package parchment.logbook.contents;

import java.util.List;

/** The words of caution that pages carry, in one place; docs/safety.md says them at length. */
public final class Cautions {
    /** What stands on everything that comes from a virtual roastery. */
    public static final String INVENTED_MACHINE = "Invented machine: do not roast.";

    /** The same for a page that shows more than one thing, once. */
    public static final String INVENTED_PAGE = INVENTED_MACHINE
            + " What this page shows of a virtual roastery's logbook was never roasted or tasted: carry no temperature, time or setting of"
            + " it over to a machine.";

    /** What stands beside every reading that a reader may roast by next, once on a page. */
    public static final String BESIDE_A_READING =
            "Seen in this logbook, nothing more: what was found here is no plan, and a model is not a safety device. Stay inside what your"
                    + " machine's maker allows, never leave a roast unattended, and watch the drum, not the screen. Gas trains, flues and"
                    + " safety devices are for licensed people.";

    private static final List<String> FOR_A_PAGE = List.of(
            "What is said here was seen in one logbook; it is no plan, no limit and no promise of safety. Stay within the machine maker's"
                    + " limits. The maker's manual and your local codes come before anything on this page.",
            "Never leave a roast unattended, and watch the drum, not the screen: beans and chaff burn. Keep chaff collector and ducts clean,"
                    + " know the maker's fire procedure, and keep the means to put out a fire within reach.",
            "Roasting, and coffee freshly roasted or ground, give off carbon monoxide: keep the room ventilated, and the place where the"
                    + " coffee lies.",
            "When to stop: cut the heat and follow the maker's manual if there is more smoke than usual, a smell of burning, a spark or a"
                    + " glow in drum, chaff collector or duct; if the drum or the fan stands still, the flame goes out, the temperature"
                    + " climbs without heat or towards the maker's limit, or a probe no longer moves. If it burns on, get everybody out"
                    + " and call the fire service. (Common practice, no source.)");

    private Cautions() {}

    /** Returns the full cautions for a page that is printed or kept, a paragraph each. */
    public static List<String> forAPage() {
        return FOR_A_PAGE;
    }
}
