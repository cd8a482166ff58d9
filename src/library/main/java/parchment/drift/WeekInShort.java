package parchment.drift;

import java.util.List;
import java.util.Optional;
import parchment.display.answer.InShort;
import parchment.drift.found.WeekCause;

/** Puts a week into three sentences. */
final class WeekInShort {
    /** A first sentence has no more words. */
    private static final int MOST_WORDS = 25;

    private WeekInShort() {}

    static InShort of(Week week) {
        Optional<String> leftOut = week.logbook().problems().batchesLeftOut();
        if (week.lastDay().isEmpty() && leftOut.isPresent()) {
            return new InShort(
                    "The list " + leftOut.get() + ".",
                    "So there is no week to show: no batch has a date.",
                    "Mend the first line of batches.csv and ask again.");
        }
        if (week.logbook().batches().isEmpty()) {
            return new InShort(
                    "There is no week to show: the logbook has no batches.",
                    "Neither a row of batches.csv nor a curve was found.",
                    "Put a curve file for each roast into the folder 'curves', and a row into batches.csv.");
        }
        if (week.lastDay().isEmpty()) {
            int all = week.logbook().batches().size();
            return new InShort(
                    "There is no week to show: no batch has a date.",
                    all == 1
                            ? "The one batch there is has no day that could be read under 'roasted at' in batches.csv."
                            : "None of the " + all
                                    + " batches has a day that could be read under 'roasted at' in batches.csv.",
                    "Write the day and time of each charge there, as in 2026-03-14 09:30, and ask again.");
        }
        InShort plain = ofBatches(week);
        int ahead = week.batchesAfterToday();
        return ahead == 0
                ? plain
                : new InShort(
                        plain.found(),
                        plain.howSure(),
                        "First check the dates: " + ahead + " of "
                                + week.logbook().batches().size()
                                + (week.logbook().batches().size() == 1 ? " batch is" : " batches are")
                                + " dated after today.");
    }

    private static InShort ofBatches(Week week) {
        int all = week.batches().size();
        int odd = week.odd().size();
        int known = week.held();
        String begin = (all == 1 ? "One batch" : all + " batches") + " in the week to "
                + week.lastDay().orElseThrow() + (week.isStillToCome() ? " (still to come)" : "") + ": ";
        Optional<WeekCause> first = first(week);
        if (first.isPresent()) {
            return new InShort(
                    found(begin, first.get(), week),
                    first.get().howSure(),
                    first.get().next());
        }
        if (odd > 0) {
            return new InShort(
                    begin + (odd == 1 ? "batch " + week.odd().get(0).batch().name() + " was" : odd + " were")
                            + " unlike the others of " + (odd == 1 ? "its lot" : "their lots")
                            + aLittle(week) + ".",
                    held(week) + (known == 0 ? "" : " Of 100 ordinary ones about five look so."),
                    told(week)
                            .map(WeekCause::next)
                            .orElse("Cup them beside usual batches before you decide: unlike is not bad."));
        }
        return known == 0 ? notYet(week, begin) : asUsual(week, begin, all);
    }

    /** Names the cause and the batches that it does not account for; the day of a probe's change from before the week, where there is room. */
    static String found(String begin, WeekCause cause, Week week) {
        List<String> own = week.found().ofBatches().keySet().stream().sorted().toList();
        String besides = own.isEmpty()
                ? ""
                : own.size() == 1
                        ? ", while batch " + own.get(0) + " was unlike"
                        : ", while " + own.size() + " batches were unlike";
        String since =
                cause.kind() == WeekCause.Kind.PROBE && week.isBefore(cause.since()) ? " since " + cause.since() : "";
        String whole = begin + cause.what() + since + besides + ".";
        return whole.split(" ").length <= MOST_WORDS ? whole : begin + cause.what() + besides + ".";
    }

    /** The cause that the first sentence names: what may be nothing is none. */
    private static Optional<WeekCause> first(Week week) {
        return week.causes().stream()
                .filter(cause -> cause.kind() != WeekCause.Kind.BATCH)
                .filter(cause -> !cause.size().isEmpty() && cause.sure() != WeekCause.Sure.WEAK)
                .findFirst();
    }

    /** Returns the cause that the three sentences tell: that of the first sentence, or what the one odd batch is about. */
    static Optional<WeekCause> told(Week week) {
        List<WeekCause> strong = week.causes().stream()
                .filter(cause -> cause.sure() != WeekCause.Sure.WEAK)
                .toList();
        return first(week)
                .or(() -> strong.size() == 1
                                && week.odd().size() == 1
                                && strong.get(0).kind() == WeekCause.Kind.BATCH
                        ? Optional.of(strong.get(0))
                        : Optional.empty())
                .or(() -> week.odd().isEmpty() ? strong.stream().findFirst() : Optional.empty());
    }

    private static InShort asUsual(Week week, String begin, int all) {
        Optional<WeekCause> told = told(week);
        boolean weak = week.causes().size() > (told.isPresent() ? 1 : 0);
        boolean little = !week.aLittle().isEmpty();
        List<String> low = WeekCups.namesOfLow(week);
        List<String> misread = WeekProblems.names(week);
        return new InShort(
                begin
                        + (all == 1
                                ? (little
                                        ? "it was a little unlike the others of its lot"
                                        : "it was as usual for its lot")
                                : "none was unlike the others of its lot" + aLittle(week))
                        + low(low, all) + ".",
                held(week) + told.map(cause -> " But " + cause.what() + ".").orElse(""),
                told.map(WeekCause::next)
                        .orElse(
                                !low.isEmpty()
                                        ? again(low)
                                        : !misread.isEmpty()
                                                ? check(misread)
                                                : !week.worthCupping().isEmpty()
                                                        ? "Cup what was drawn by chance; nothing else calls for it."
                                                        : weak
                                                                ? "Nothing to do yet; the page tells of a weak sign."
                                                                : little
                                                                        ? "Nothing to do yet; keep it in mind when you taste."
                                                                        : "Nothing to do; the cup decides."));
    }

    private static String low(List<String> names, int all) {
        return names.isEmpty()
                ? ""
                : all == 1
                        ? ", yet its cups were low"
                        : names.size() == 1
                                ? ", yet batch " + names.get(0) + "'s cups were low"
                                : ", yet the cups of " + names.size() + " were low";
    }

    private static String again(List<String> low) {
        return low.size() == 1
                ? "Cup batch " + low.get(0) + " again beside a usual one before you decide."
                : "Cup them again beside usual ones before you decide.";
    }

    private static String check(List<String> misread) {
        return misread.size() == 1
                ? "Check batch " + misread.get(0) + " first: not all of it was read as written."
                : "Check the " + misread.size() + " batches under \"To check\" first: not all was read as written.";
    }

    private static String aLittle(Week week) {
        return week.aLittle().isEmpty() ? "" : ", " + week.aLittle().size() + " a little";
    }

    private static InShort notYet(Week week, String begin) {
        List<String> fresh = week.newLots();
        boolean noLot =
                week.batches().stream().noneMatch(usual -> usual.batch().lot().isPresent());
        return new InShort(
                begin + "too early to say what is usual.",
                noLot
                        ? "No lot was written for " + (week.batches().size() == 1 ? "it." : "any of them.")
                        : week.batches().stream().allMatch(Usual::lacksTemperatures)
                                ? "Most of the temperatures that the others of the lot have are missing."
                                : fresh.isEmpty()
                                        ? "Eight other batches of a lot say what is usual, and there are fewer."
                                        : fresh.size() == 1
                                                ? "Lot " + fresh.get(0) + " was roasted for the first time."
                                                : fresh.size() + " lots were roasted for the first time.",
                noLot
                        ? "Write the lot of each batch into batches.csv and ask again."
                        : (week.notCupped().isEmpty() ? "Ask" : "Cup them now; ask")
                                + " again when nine batches of a lot are roasted.");
    }

    private static String held(Week week) {
        int known = week.held();
        int all = week.batches().size();
        int charges = (int)
                WeekCharges.odd(week).stream().filter(usual -> usual.held() > 0).count();
        if (charges > 0) {
            return all == 1
                    ? "It was of another charge than most, so little of it could be held against others."
                    : known - charges + " of " + all + " could be held against at least eight others; "
                            + (charges == 1
                                    ? "1 of another charge only in part."
                                    : charges + " of other charges only in part.");
        }
        return known == 0
                ? (all == 1
                        ? "It has no eight others of its lot to be held against; the curve alone says so."
                        : "None has eight others of its lot to be held against; the curve alone says so.")
                : known == all
                        ? (all == 1 ? "It was" : "Each was") + " held against at least eight others of its lot."
                        : known + " of " + all + " could be held against at least eight others of "
                                + (known == 1 ? "its lot." : "their lot.");
    }
}
