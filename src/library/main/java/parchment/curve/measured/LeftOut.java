package parchment.curve.measured;

/**
 * One reading that cleaning left out, so that it can be named.
 *
 * @param seconds when it was read
 * @param value what was read
 * @param reason why it was left out
 */
public record LeftOut(double seconds, double value, Reason reason) {

    /** Says why a reading was left out. */
    public enum Reason {
        /** It lies far off the line through its neighbours, and the curve comes back. */
        SPIKE("spike"),
        /** It repeats the reading before it while the curve must have moved on. */
        STUCK("stuck reading");

        private final String words;

        Reason(String words) {
            this.words = words;
        }

        /** Returns the reason in words, for one reading. */
        public String words() {
            return words;
        }
    }
}
