package parchment.trial.sealed;

import java.util.Optional;
import parchment.display.Showable;
import parchment.display.answer.Report;
import parchment.logbook.contents.Cautions;
import parchment.quantity.TemperatureUnit;
import parchment.trial.SetListing;

/** Shows what chance drew for the batch that is charged next, and what is to be written down of it. */
public final class DrawnTarget implements Showable {
    /** What stands on everything that is roasted by. */
    public static final String ABORT =
            "To abort a batch is always right: safety comes before the draw. An aborted batch stays in the trial as lost,"
                    + " and no other takes its place.";

    private final TrialPlan plan;
    private final DrawnLine line;
    private final SetListing listing;
    private final String record;

    public DrawnTarget(TrialPlan plan, DrawnLine line, SetListing listing, String record) {
        this.plan = plan;
        this.line = line;
        this.listing = listing;
        this.record = record;
    }

    /** Returns the batch that it was drawn for. */
    public String batch() {
        return weighed().batch();
    }

    /** Returns the target as the control's unit keeps it: temperatures in degrees Celsius. */
    public double target() {
        return line.value();
    }

    /** Returns the number of the set, from 1. */
    public int set() {
        return line.set();
    }

    /** Returns the place in the set, from 1. */
    public int place() {
        return line.place();
    }

    private SetListing.Weighed weighed() {
        return listing.batches().get(line.place() - 1);
    }

    /** Returns the target with its unit, as its reader knows it. */
    public static String told(TrialPlan plan, double target) {
        return plan.terms().control() == TrialControl.FIRST_GAS
                ? (DrawnLine.target(target) + " " + plan.unit()).strip()
                : parchment.quantity.Temperature.celsius(target)
                        .format(plan.terms().reader());
    }

    /** Returns the heading of the column that a target is written in. */
    public static String column(TrialPlan plan) {
        String unit = plan.terms().control() == TrialControl.FIRST_GAS
                ? plan.unit()
                : plan.terms().reader() == TemperatureUnit.CELSIUS
                        ? "°C"
                        : plan.terms().reader().symbol();
        return "planned " + plan.terms().control().words() + (unit.isEmpty() ? "" : " [" + unit + "]");
    }

    /** Returns the first sentence of it: which batch, and its target. */
    String sentence() {
        return "Set " + line.set() + " of " + plan.sets() + ", batch " + line.place() + " of " + plan.size() + ": "
                + batch() + ", " + listing.lot() + ", " + weighed().mass() + ". Chance drew a "
                + plan.terms().control().words() + " of " + told(plan, line.value()) + ".";
    }

    private String toWrite() {
        String number = told(plan, line.value()).replaceFirst("^(\\S+).*", "$1");
        return "Write into batches.csv for " + batch() + ": " + column(plan) + " " + number
                + ", planned by chance, trial " + plan.terms().trial() + ", set " + line.set() + ".";
    }

    private String toKeep() {
        return "The record's digits are now " + Seal.inFours(record)
                + ". Give them away at the end of the set, as you gave the seal.";
    }

    @Override
    public String text() {
        return (plan.isInvented() ? Cautions.INVENTED_MACHINE + "\n" : "") + sentence() + "\n" + toWrite() + "\n"
                + ABORT + "\n" + Cautions.BESIDE_A_READING + "\n" + toKeep();
    }

    @Override
    public Optional<String> html() {
        Report report = Report.titled("Trial " + plan.terms().trial() + ": " + batch());
        if (plan.isInvented()) {
            report = report.caution(Cautions.INVENTED_MACHINE);
        }
        return report.say(sentence())
                .say(toWrite())
                .caution(ABORT)
                .caution(Cautions.BESIDE_A_READING)
                .say(toKeep())
                .html();
    }

    @Override
    public String toString() {
        return sentence();
    }
}
