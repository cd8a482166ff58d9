package parchment.align;

import java.util.Locale;
import parchment.stats.Interval;

/**
 * Puts a share of a variance into words. A part that made up for others has a share below nothing, and then another has more than the
 * whole: such a number is right as a covariance and impossible as a percentage, so it is told as what it means.
 */
final class ShareWords {
    private ShareWords() {}

    /** Returns "63 %", "made up for others" below 0, "all, and more" above 1, "cannot tell" where it is missing. */
    static String of(double share) {
        if (Double.isNaN(share)) {
            return "cannot tell";
        }
        long percent = Math.round(100 * share);
        return percent < 0 ? "made up for others" : percent > 100 ? "all, and more" : percent + " %";
    }

    /** Returns "12 to 63 %", with "none" for a lower end below 0 and "all" for an upper end above 1; "cannot tell" if missing. */
    static String of(Interval interval) {
        if (Double.isNaN(interval.lower()) || Double.isNaN(interval.upper())) {
            return "cannot tell";
        }
        long low = Math.round(100 * interval.lower());
        long high = Math.round(100 * interval.upper());
        if (high < 0 || low > 100) {
            return of(high < 0 ? interval.upper() : interval.lower());
        }
        return low < 0 || high > 100
                ? (low < 0 ? "none" : low + " %") + " to " + (high > 100 ? "all" : high + " %")
                : String.format(Locale.ROOT, "%d to %d %%", low, high);
    }

    /** Says how the spread of a mark's time splits into pace and the mark's own temperature. */
    static String ofDrop(double paceShare, String usual) {
        long pace = Math.round(100 * paceShare);
        if (pace > 100) {
            return "All of its variance is pace (how long they took to " + usual
                    + "), and more: slower batches were dropped colder or faster ones hotter than that, which made up for a part";
        }
        if (pace < 0) {
            return "All of its variance is that they were dropped hotter or colder than " + usual
                    + ", and more: their pace (how long they took there) made up for a part";
        }
        return pace + " % of its variance is pace (how long they took to " + usual + "), " + (100 - pace)
                + " % is that they were dropped hotter or colder than that";
    }
}
