package parchment.drift;

import parchment.display.answer.InShort;
import parchment.drift.found.YearPart;
import parchment.stats.Interval;

/** Puts a lot's year into three sentences. */
final class YearInShort {
    private static final double LEVEL = 0.90;

    private YearInShort() {}

    static InShort of(LotYear year) {
        String what = "the " + year.response().name() + " of " + (year.lot().isEmpty() ? "these batches" : year.lot());
        if (year.parts().isEmpty()) {
            return new InShort(
                    "How " + what + " moved through its months cannot be told.",
                    year.rows().size() + (year.rows().size() == 1 ? " batch" : " batches")
                            + " of all lots on its machine "
                            + (year.rows().size() == 1 ? "has" : "have")
                            + " it with a date and what the roaster did; " + LotYear.leastRows() + " are needed.",
                    "Log the gas of more batches, write their dates and charge temperatures, and ask again.");
        }
        YearPart own = year.parts().get(0);
        if (own.verdict() == YearPart.Verdict.CANNOT_TELL) {
            return new InShort(
                    "How " + what + " moved through its months cannot be told.",
                    "Its batches cannot be told apart from what else changed in those months.",
                    "Roast it on more days, over six weeks at least, with other lots beside it.");
        }
        Interval interval = own.estimate().interval(LEVEL);
        boolean clear = interval.lower() > 0 || interval.upper() < 0;
        return new InShort(
                clear
                        ? "In 100 days " + what + " changed by " + own.shown() + "."
                        : "Whether " + what + " changed through its months cannot be told.",
                clear
                        ? (own.verdict() == YearPart.Verdict.SUM_ONLY
                                ? "That is ageing, machine, season and room together, which these batches cannot part."
                                : "That is the lot's own ageing, as far as what was stated holds.")
                        : "Anything from " + year.step(interval.lower()) + " to " + year.step(interval.upper())
                                + " in 100 days agrees with the batches.",
                own.verdict() == YearPart.Verdict.SUM_ONLY
                        ? "Roast a coffee that does not age now and then: it shows what the machine does."
                        : "Roast it now and then as long as it lasts.");
    }
}
