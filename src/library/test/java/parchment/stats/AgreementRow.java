package parchment.stats;

import java.util.Locale;

/**
 * One line of the agreement table: one or several numbers beside those of an outside source, told by the worst of them.
 *
 * @param what which numbers
 * @param source where theirs come from
 * @param count how many numbers
 * @param ours our number that agrees worst
 * @param theirs its counterpart
 * @param digits digits in common of that number, 15 at most
 * @param least digits that the tests hold
 */
public record AgreementRow(
        String what, String source, int count, double ours, double theirs, double digits, double least) {

    /** Collects pairs and keeps the worst. */
    public static final class Collector {
        private final String what;
        private final String source;
        private final double least;
        private final double scale;
        private int count;
        private double ours = Double.NaN;
        private double theirs = Double.NaN;
        private double digits = Double.POSITIVE_INFINITY;

        private Collector(String what, String source, double least, double scale) {
            this.what = what;
            this.source = source;
            this.least = least;
            this.scale = scale;
        }

        public Collector add(double our, double their) {
            double error = Math.abs(our - their) / Math.max(Math.abs(their), scale);
            double found = Double.isNaN(error) ? -1 : error == 0 ? 15 : Math.min(15, -Math.log10(error));
            if (found < digits) {
                digits = found;
                ours = our;
                theirs = their;
            }
            count++;
            return this;
        }

        public AgreementRow row() {
            return new AgreementRow(what, source, count, ours, theirs, count == 0 ? -1 : digits, least);
        }
    }

    /** Starts a line whose digits are counted relative to each number, or to the scale where the number is smaller than that. */
    public static Collector collect(String what, String source, double least, double scale) {
        return new Collector(what, source, least, scale);
    }

    public static AgreementRow of(String what, String source, double least, double ours, double theirs) {
        return collect(what, source, least, 0).add(ours, theirs).row();
    }

    String markdown() {
        return String.format(
                Locale.ROOT,
                "| %s | %s | %d | %s | %s | %s |",
                what,
                source,
                count,
                number(ours),
                number(theirs),
                digits >= 15 ? "15" : String.format(Locale.ROOT, "%.1f", digits));
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.10g", value);
    }

    @Override
    public String toString() {
        return what + " beside " + source;
    }
}
