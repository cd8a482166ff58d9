package parchment.drift;

import java.util.List;
import java.util.Locale;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.display.answer.InShort;
import parchment.display.answer.Report;
import parchment.display.answer.Sentence;
import parchment.logbook.contents.EmptyLogbook;
import parchment.quantity.Unit;
import parchment.stats.Interval;

/** Lays out what a batch is like beside its lot's others. */
final class UsualPage {
    private static final int MOST_MORE_DIGITS = 4;

    private UsualPage() {}

    static Showable of(Usual usual) {
        Report page = Report.titled("Is " + name(usual) + " like the others?").add(inShort(usual));
        Report workedOut = Report.titled("How this was worked out").say(Sentence.of(usual.toString()) + ".");
        if (usual.verdict() == Usual.Verdict.CANNOT_TELL) {
            return page.fold(workedOut);
        }
        page = page.add(byFeature(usual));
        if (usual.twins().isPresent()) {
            workedOut = workedOut.say(usual.twins().get());
        }
        return page.fold(workedOut.say("Unlike is not bad: the cup decides."));
    }

    static Table byFeature(Usual usual) {
        List<Usual.Compared> compared =
                usual.compared().stream().filter(UsualPage::saysSomething).toList();
        List<String> left = usual.compared().stream()
                .filter(one -> !saysSomething(one))
                .map(one -> one.feature().name())
                .toList();
        Table table = Table.titled("Feature by feature")
                .withText("feature", compared, c -> c.feature().name())
                .withText("this batch", compared, c -> shown(usual, c, c.value()))
                .withText("usual", compared, c -> shown(usual, c, c.usual()))
                .withText("as usual within", compared, c -> range(usual, c, c.narrower()))
                .withText("unlike outside", compared, c -> range(usual, c, c.range()))
                .withText("", compared, one -> word(usual, one))
                .withNumber("others", "", 0, compared, Usual.Compared::others)
                .withDashForMissing("cannot be told")
                .withNote(ranges());
        return left.isEmpty()
                ? table
                : table.withNote("Not measured in this batch and in too few others: " + String.join(", ", left) + ".");
    }

    /** Says what the ranges hold: all rows of a batch at once, so each row by itself nearly all batches. */
    private static String ranges() {
        int rows = Usual.LOOKED_AT.size();
        return String.format(
                Locale.ROOT,
                "As usual is what lies within the first range, a little unlike what lies between it and the second. A batch has %d such numbers,"
                        + " so each range is wide: it is meant to hold %.1f and %.1f of 100 batches in its own row, and all rows of a batch at once"
                        + " in 80 and 95 of 100. Times are in minutes and seconds.",
                rows,
                100 * (1 - Usual.LITTLE / rows),
                100 * (1 - Usual.ALARM / rows));
    }

    /** Tells whether the batch or its lot's others have the number. */
    private static boolean saysSomething(Usual.Compared one) {
        return Double.isFinite(one.value()) || Double.isFinite(one.usual());
    }

    private static String range(Usual usual, Usual.Compared one, Interval range) {
        return Double.isFinite(one.usual()) ? WeekOddBatch.range(unit(usual, one), range, usual.reader()) : "";
    }

    /** Returns the word for one feature, or why there is none. */
    private static String word(Usual usual, Usual.Compared one) {
        return switch (one.verdict()) {
            case UNLIKE_THE_OTHERS -> "unlike";
            case A_LITTLE_UNLIKE_THE_OTHERS -> "a little unlike";
            case LIKE_THE_OTHERS -> "as usual";
            case CANNOT_TELL -> Double.isFinite(one.value()) ? tooFew(usual, one) : "not measured";
        };
    }

    private static String tooFew(Usual usual, Usual.Compared one) {
        return usual.oddCharge().isPresent() && !OddCharge.canHold(one.feature())
                ? "too few others of its charge"
                : Usual.ofOneProbeOnly(one.feature()) ? "too few others on its probe" : "too few others have it";
    }

    /** Returns the feature's unit, with as many digits more as it takes until a number beyond its range does not print as an end of it. */
    static Unit unit(Usual usual, Usual.Compared one) {
        Unit unit = one.feature().unit();
        double end =
                one.value() < one.usual() ? one.range().lower() : one.range().upper();
        for (int more = 0; more < MOST_MORE_DIGITS && one.unlike() && alike(one.value(), end, unit, usual); more++) {
            unit = unit.withDigits(unit.digits() + 1);
        }
        return unit;
    }

    private static boolean alike(double value, double end, Unit unit, Usual usual) {
        return unit.format(value, usual.reader()).equals(unit.format(end, usual.reader()));
    }

    private static String shown(Usual usual, Usual.Compared one, double value) {
        return Double.isFinite(value) ? unit(usual, one).formatOnClock(value, usual.reader()) : "";
    }

    private static String name(Usual usual) {
        return EmptyLogbook.isStandIn(usual.batch())
                ? "the newest batch"
                : "batch " + usual.batch().name();
    }

    static InShort inShort(Usual usual) {
        String name = name(usual);
        boolean noLot = usual.batch().lot().isEmpty();
        if (usual.verdict() == Usual.Verdict.CANNOT_TELL && usual.lacksTemperatures()) {
            return new InShort(
                    Sentence.of(name) + " " + usual.lackingWords() + ".",
                    "So whether it is like the others of its lot cannot be told.",
                    "Look at its file in the folder 'curves' and at what the logbook's problems say of it.");
        }
        if (usual.verdict() == Usual.Verdict.CANNOT_TELL
                && noLot
                && usual.leftOut().isPresent()) {
            return new InShort(
                    "The list " + usual.leftOut().get() + ".",
                    "So whether " + name + " is like the others cannot be told.",
                    "Mend the first line of batches.csv and ask again.");
        }
        if (usual.verdict() == Usual.Verdict.UNLIKE_THE_OTHERS && usual.lacksTemperatures()) {
            return new InShort(
                    Sentence.of(name) + " " + usual.lackingWords() + ".",
                    "Still it is unlike the others: " + shortReason(usual) + ".",
                    "Look at its file in the folder 'curves', and cup it beside a usual batch.");
        }
        if (EmptyLogbook.isStandIn(usual.batch())) {
            return new InShort(
                    "The logbook has no batch yet.",
                    "So there is none to hold against others.",
                    "Write a line for each batch into batches.csv and open the logbook again.");
        }
        if (usual.massNotRead().isPresent()) {
            return MassNotRead.inShort(
                    usual, usual.massNotRead().get(), usual.reasons().isEmpty() ? "" : shortReason(usual));
        }
        if (usual.oddCharge().isPresent()) {
            return ofOddCharge(usual, usual.oddCharge().get());
        }
        return switch (usual.verdict()) {
            case CANNOT_TELL ->
                new InShort(
                        "Whether " + name + " is like the others cannot be told.",
                        noLot ? "No lot was written for it." : Sentence.of(usual.tooFew()) + ".",
                        noLot
                                ? "Write its lot into the list of batches and ask again."
                                : "Ask again when more of the lot are roasted.");
            case LIKE_THE_OTHERS ->
                new InShort(
                        Sentence.of(name) + " is like " + usual.comparedWith() + ".",
                        held(usual),
                        "Nothing to do; the cup decides.");
            case A_LITTLE_UNLIKE_THE_OTHERS ->
                new InShort(
                        Sentence.of(name) + " is a little unlike the others: " + shortReason(usual) + ".",
                        aLittle(usual.reasons().size() - 1),
                        "Nothing to do yet; keep it in mind when you taste it.");
            case UNLIKE_THE_OTHERS ->
                new InShort(
                        Sentence.of(name) + " is unlike the others: " + shortReason(usual) + ".",
                        besides(usual),
                        "Cup it beside a usual batch before you decide: unlike is not bad.");
        };
    }

    private static String held(Usual usual) {
        long not = usual.compared().size() - usual.held();
        return (usual.held() == 1
                        ? "The one number that can be held against theirs lies"
                        : "All " + usual.held() + " numbers that can be held against theirs lie")
                + " where 80 of 100 batches have all theirs"
                + (not == 0 ? "." : "; of " + not + " more it cannot be told.");
    }

    private static InShort ofOddCharge(Usual usual, OddCharge charge) {
        String was = "Batch " + usual.batch().name() + " was " + charge.words();
        String held = UsualReasons.heldWords(usual);
        return switch (usual.verdict()) {
            case CANNOT_TELL ->
                new InShort(
                        was + ".",
                        "Too few are like it to say anything.",
                        "Ask again when " + (Usual.ENOUGH + 1) + " of that charge are roasted.");
            case LIKE_THE_OTHERS ->
                new InShort(
                        was + ".",
                        "Too few are like it to say more than this: " + held + (usual.held() == 1 ? " is" : " are")
                                + " as usual.",
                        "Nothing to do; the cup decides.");
            case A_LITTLE_UNLIKE_THE_OTHERS ->
                new InShort(
                        was + " and is a little unlike the others.",
                        "Too few are like it to say more than this: " + shortReason(usual) + ".",
                        "Nothing to do yet; keep it in mind when you taste it.");
            case UNLIKE_THE_OTHERS ->
                new InShort(
                        was + " and is unlike the others.",
                        "Too few are like it to say more than this: " + shortReason(usual) + ".",
                        "Cup it beside a usual batch before you decide: unlike is not bad.");
        };
    }

    /** Says what else there is beside the first reason. */
    private static String besides(Usual usual) {
        int more = usual.reasons().size() - 1;
        String others = more == 0
                ? ""
                : (more == 1 ? "One more thing was unlike the others" : more + " more things were unlike the others");
        if (usual.held() == 0) {
            return (more == 0 ? "Only its curve" : others + ", and only its curve") + " could be held against others.";
        }
        return more > 0
                ? others + ", told under \"How this was worked out\"."
                : usual.held() == 1
                        ? "No other number of it could be held against the others."
                        : "All else that was looked at lies where 95 of 100 batches have all theirs.";
    }

    /** Says how often that happens, and how many further reasons there are; the share is measured: docs/measurements/drift.md. */
    private static String aLittle(int more) {
        String share = "about 10 of 100 ordinary batches are called a little unlike";
        return more == 0
                ? Sentence.of(share) + ", so it may be chance."
                : (more == 1 ? "One more thing is so" : more + " more things are so") + "; " + share + ".";
    }

    /** The first reason without its remark in brackets. */
    private static String shortReason(Usual usual) {
        return usual.reasons().get(0).replaceFirst(" \\(.*", "").replace(", which is ", ", ");
    }
}
