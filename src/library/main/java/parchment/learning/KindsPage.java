package parchment.learning;

import java.util.List;
import java.util.Locale;
import parchment.display.Table;
import parchment.display.answer.InShort;
import parchment.display.answer.Report;
import parchment.display.answer.Sentence;
import parchment.learning.KindsOfRoast.Kind;
import parchment.sheet.Words;
import parchment.stats.Interval;

/** Lays out the page on which kinds of roast there are. */
final class KindsPage {
    private KindsPage() {}

    static InShort inShort(KindsOfRoast found) {
        int size = found.paths().batches().size();
        if (!found.enough()) {
            return new InShort(
                    "Whether there are kinds of roast cannot be told.",
                    "That takes " + KindsOfRoast.fewest() + " on one machine; there " + (size == 1 ? "is " : "are ")
                            + size + " of " + found.roastDays() + ".",
                    "Ask again when more are roasted.");
        }
        if (found.kinds().isEmpty()) {
            return new InShort(
                    "Cannot tell: the " + size + " batches may all be of one kind.",
                    "No split of them held when roast days were drawn anew, or lay further apart than chance.",
                    "Compare groups that you know instead, such as two lots or two halves of the year.");
        }
        Kind first = found.kinds().get(0);
        Kind second = found.kinds().get(1);
        double weakest =
                found.kinds().stream().mapToDouble(Kind::stability).min().orElse(Double.NaN);
        return new InShort(
                "There are " + number(found.kinds().size()) + " kinds of roast: " + briefly(found, first) + " ("
                        + first.batches().size() + "), " + briefly(found, second) + " ("
                        + second.batches().size() + ")"
                        + (found.kinds().size() > 2 ? " and more." : "."),
                weakest > 0.995
                        ? "When roast days are drawn anew, each kind comes again whole."
                        : String.format(
                                Locale.ROOT,
                                "When roast days are drawn anew, at least %.0f %% of each kind comes again.",
                                100 * weakest),
                "Was it meant? Cup one of each side by side before you prefer a kind.");
    }

    /** The first part of a kind's name, or all of it where another kind's begins so too. */
    static String briefly(KindsOfRoast found, Kind kind) {
        String brief = kind.name().split(", ")[0];
        long alike = found.kinds().stream()
                .filter(other -> other.name().split(", ")[0].equals(brief))
                .count();
        return alike == 1 ? brief : kind.name();
    }

    private static String number(int kinds) {
        return switch (kinds) {
            case 2 -> "two";
            case 3 -> "three";
            default -> "four";
        };
    }

    static Report of(KindsOfRoast found) {
        Report page =
                Report.titled("Kinds of roast in " + found.logbook().name()).add(found.inShort());
        if (!found.enough()) {
            return whatWasLeftOut(page, found);
        }
        page = page.add(found.plot());
        if (!found.kinds().isEmpty()) {
            List<Kind> kinds = found.kinds();
            Table table = Table.titled("The kinds")
                    .withText("kind", kinds, Kind::name)
                    .withNumber("batches", "", 0, kinds, kind ->
                            (double) kind.batches().size())
                    .withText("against the others", kinds, Kind::differs)
                    .withText("lots", kinds, Kind::lots);
            if (kinds.stream().anyMatch(kind -> kind.scored() > 0)) {
                table = table.withNumber("scored", "", 0, kinds, kind -> (double) kind.scored())
                        .withText(found.attribute() + " above the others", kinds, KindsPage::score);
            }
            page = page.add(found.notCompared().isEmpty() ? table : table.withNote(found.notCompared()));
            if (kinds.stream().anyMatch(kind -> kind.scored() > 0)) {
                page = page.say(
                        "Nobody drew the kinds by chance: lot, season and purpose may differ as well, so the kind need not be"
                                + " what the cup shows.");
            }
        }
        return page.fold(workedOut(found));
    }

    private static String score(Kind kind) {
        if (Double.isNaN(kind.score().estimate())) {
            return "not scored";
        }
        String points = String.format(Locale.ROOT, "%+.2f points", kind.score().estimate() + 0.0);
        if (Double.isNaN(kind.score().standardError())) {
            return points + ", too few roast days to say how sure";
        }
        Interval ninety = kind.score().interval(0.9);
        return String.format(Locale.ROOT, "%s (90 %%: %+.2f to %+.2f)", points, ninety.lower(), ninety.upper());
    }

    private static Report workedOut(KindsOfRoast found) {
        Report page = Report.titled("How this was worked out").say(Sentence.of(found.toString()));
        if (!found.search().tried().isEmpty()) {
            List<StableSplit> tried = found.search().tried();
            page = page.add(Table.titled("Splits that were tried")
                    .withNumber("kinds", "", 0, tried, split ->
                            (double) split.split().kinds().size())
                    .withText(
                            "batches in each",
                            tried,
                            split -> String.join(
                                    ", ",
                                    split.split().kinds().stream()
                                            .map(kind -> Integer.toString(kind.cardinality()))
                                            .toList()))
                    .withText(
                            "comes again",
                            tried,
                            split -> String.join(
                                    ", ",
                                    split.stability().stream()
                                            .map(overlap -> String.format(Locale.ROOT, "%.0f %%", 100 * overlap))
                                            .toList()))
                    .withNumber("apart", "", 2, tried, StableSplit::apart)
                    .withNumber("as far in one kind", "%", 0, tried, split -> 100 * split.chance())
                    .withNote("A split holds if at least " + Math.round(100 * StableSplit.STABLE)
                            + " % of each kind come again, and one kind of the same spread splits as far apart in at most 5 of 100"
                            + " draws."));
        }
        page = page.say(
                "Two batches are as far apart as their rates of rise from 1:30 to the drop, on average, up to half a minute of early"
                        + " or late forgiven. A rate is the same on a probe that reads some degrees off, so all probe periods are taken"
                        + " together. Roast days were drawn anew " + StableSplit.DRAWS + " times, seed "
                        + KindsOfRoast.seed() + ".");
        page = whatWasLeftOut(page, found);
        List<String> alone = found.inNoKind();
        if (!found.kinds().isEmpty() && !alone.isEmpty()) {
            page = page.say("Near no kind: " + Words.some(alone) + ".");
        }
        for (Kind kind : found.kinds()) {
            page = page.say(Sentence.of(kind.name() + ": " + String.join(", ", kind.batches()) + "."));
        }
        return page;
    }

    private static Report whatWasLeftOut(Report before, KindsOfRoast found) {
        Report page = before;
        if (found.paths().withoutRate() > 0) {
            page = page.say(Words.count(found.paths().withoutRate(), "batch has", "batches have")
                    + " no rate of rise over the whole way and "
                    + (found.paths().withoutRate() == 1 ? "is" : "are")
                    + " left out.");
        }
        if (found.paths().ofOtherMachines() > 0) {
            page = page.say(Words.count(found.paths().ofOtherMachines(), "batch is", "batches are")
                    + " of other machines and left out; ask for those with logbook.only(...).");
        }
        return page;
    }
}
