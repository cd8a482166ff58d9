package parchment.drift;

import java.util.List;
import java.util.Optional;
import parchment.display.InShort;

/** Puts a week into three sentences. */
final class WeekInShort {
    private WeekInShort() {}

    static InShort of(Week week) {
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
        Optional<WeekCause> first = week.causes().stream()
                .filter(cause -> cause.kind() != WeekCause.Kind.BATCH)
                .filter(cause -> !cause.size().isEmpty()
                        && (cause.sure() == WeekCause.Sure.CLEAR || cause.kind() == WeekCause.Kind.PROBE))
                .findFirst();
        if (first.isPresent()) {
            return new InShort(
                    begin + first.get().what() + ".",
                    first.get().howSure(),
                    first.get().next());
        }
        if (odd > 0) {
            return new InShort(
                    begin + (odd == 1 ? "batch " + week.odd().get(0).batch().name() + " was" : odd + " were")
                            + " unlike the others of " + (odd == 1 ? "its lot." : "their lots."),
                    held(known, all) + (known == 0 ? "" : " Of 100 ordinary ones about five look so."),
                    odd == 1 && week.causes().size() == 1
                            ? week.causes().get(0).next()
                            : "Cup them beside usual batches before you decide: unlike is not bad.");
        }
        return known == 0 ? notYet(week, begin) : asUsual(week, begin, known, all);
    }

    private static InShort asUsual(Week week, String begin, int known, int all) {
        Optional<WeekCause> perhaps = week.causes().stream().findFirst();
        return new InShort(
                begin + (all == 1 ? "it was as usual for its lot." : "none was unlike the others of its lot."),
                held(known, all)
                        + perhaps.map(cause -> " But " + cause.what() + ".").orElse(""),
                perhaps.map(WeekCause::next)
                        .orElse(
                                week.worthCupping().isEmpty()
                                        ? "Nothing to do; the cup decides."
                                        : "Cup what was drawn by chance; nothing else calls for it."));
    }

    private static InShort notYet(Week week, String begin) {
        List<String> fresh = week.newLots();
        boolean noLot =
                week.batches().stream().noneMatch(usual -> usual.batch().lot().isPresent());
        return new InShort(
                begin + "too early to say what is usual.",
                noLot
                        ? "No lot was written for " + (week.batches().size() == 1 ? "it." : "any of them.")
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
