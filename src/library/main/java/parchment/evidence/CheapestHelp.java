package parchment.evidence;

/**
 * Names the cheapest thing that would help a question whose batches cannot tell: what is only to be written comes before what is to be roasted.
 *
 * @param scored how many scored batches stand behind the answer
 * @param withoutLot how many scored batches were left out only because no lot is written
 * @param withoutDate how many were left out only because no date is written
 * @param blindShare the share of the scores that were given blind, from 0 to 1
 */
record CheapestHelp(long scored, long withoutLot, long withoutDate, double blindShare) {
    private static final String CODES = "Put codes on the cups first: who knows the batch tastes what they expect.";

    /** Says that nothing helps but batches. */
    static final CheapestHelp NOTHING = new CheapestHelp(0, 0, 0, 1);

    /** A missing lot or date is named first from one scored batch in so many on. */
    private static final int ONE_IN = 4;

    /** Under this share of blind scores hardly any cup was blind. */
    private static final double HARDLY_ANY = 0.1;

    static CheapestHelp of(ModelFrame all, ModelFrame judged, Blindness blindness) {
        return new CheapestHelp(
                judged.batches().size(),
                leftOut(all, ModelFrames.NO_LOT),
                leftOut(all, ModelFrames.NO_DATE),
                blindness.blindShare());
    }

    private static long leftOut(ModelFrame material, String reason) {
        return material.leftOut().stream()
                .filter(left ->
                        left.what() == Exclusion.What.BATCHES && left.reason().equals(reason))
                .mapToLong(Exclusion::count)
                .sum();
    }

    /**
     * Returns the sentence to tell what to do next.
     *
     * @param batches the sentence that asks for further batches
     */
    String words(String batches) {
        if (good(withoutLot) && withoutLot >= withoutDate) {
            return write("lot", withoutLot);
        }
        if (good(withoutDate)) {
            return write("date", withoutDate);
        }
        return blindShare < HARDLY_ANY ? CODES : batches;
    }

    /** Returns what would help after that, for a line below the picture; empty where the third sentence says all of it. */
    String afterThat(String batches) {
        String first = words(batches);
        boolean codes = blindShare < HARDLY_ANY && !first.equals(CODES);
        return first.equals(batches)
                ? ""
                : "After that: " + (codes ? "put codes on the cups. " + batches : lower(batches));
    }

    private static String lower(String sentence) {
        return Character.toLowerCase(sentence.charAt(0)) + sentence.substring(1);
    }

    private boolean good(long missing) {
        return missing > 0 && ONE_IN * missing >= scored + withoutLot + withoutDate;
    }

    private static String write(String what, long batches) {
        return batches == 1
                ? "1 more batch has no " + what + " written: add it, then that batch counts too."
                : batches + " more batches have no " + what + " written: add it, then they count too.";
    }
}
