package parchment.drift;

import java.util.List;
import java.util.Optional;
import parchment.display.InShort;

/** Puts a week into three sentences. */
final class WeekInShort {
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
        int all = week.batches().size();
        int odd = week.odd().size();
        int known = week.held();
        String begin = (all == 1 ? "One batch" : all + " batches") + " in the week to "
                + week.lastDay().orElseThrow() + ": ";
        Optional<WeekCause> first = first(week);
        if (first.isPresent()) {
            return new InShort(
                    begin + first.get().what() + ".",
                    first.get().howSure(),
                    first.get().next());
        }
        if (odd > 0) {
            return new InShort(
                    begin + (odd == 1 ? "batch " + week.odd().get(0).batch().name() + " was" : odd + " were")
                            + " unlike the others of " + (odd == 1 ? "its lot" : "their lots")
                            + aLittle(week) + ".",
                    held(known, all) + (known == 0 ? "" : " Of 100 ordinary ones about five look so."),
                    told(week)
                            .map(WeekCause::next)
                            .orElse("Cup them beside usual batches before you decide: unlike is not bad."));
        }
        return known == 0 ? notYet(week, begin) : asUsual(week, begin, known, all);
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

    private static InShort asUsual(Week week, String begin, int known, int all) {
        Optional<WeekCause> told = told(week);
        boolean weak = week.causes().size() > (told.isPresent() ? 1 : 0);
        boolean little = !week.aLittle().isEmpty();
        return new InShort(
                begin
                        + (all == 1
                                ? (little
                                        ? "it was a little unlike the others of its lot"
                                        : "it was as usual for its lot")
                                : "none was unlike the others of its lot" + aLittle(week))
                        + ".",
                held(known, all)
                        + told.map(cause -> " But " + cause.what() + ".").orElse(""),
                told.map(WeekCause::next)
                        .orElse(
                                !week.worthCupping().isEmpty()
                                        ? "Cup what was drawn by chance; nothing else calls for it."
                                        : weak
                                                ? "Nothing to do yet; the page tells of a weak sign."
                                                : little
                                                        ? "Nothing to do yet; keep it in mind when you taste."
                                                        : "Nothing to do; the cup decides."));
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

    private static String held(int known, int all) {
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
