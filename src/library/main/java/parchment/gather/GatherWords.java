package parchment.gather;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;
import parchment.display.answer.Report;
import parchment.logbook.LogbookFiles;
import parchment.sheet.Words;

/** Tells a gathering to a person before anything is written: the joins, doubtful ones first; what is open; what was taken for what; what was left out. */
final class GatherWords {
    private static final int DOUBTFUL_SHOWN = 12;
    private static final int LIKELY_SHOWN = 4;
    private static final int CERTAIN_SHOWN = 2;

    private GatherWords() {}

    static String summary(StrangeFolder folder, int recordings, int styles, int sheets) {
        return "Looked at " + Words.count(folder.files().size(), "file", "files") + " in "
                + Words.quote(folder.path().toString()) + ": " + Words.count(recordings, "recording", "recordings")
                + " in " + Words.count(styles, "style", "styles") + ", "
                + Words.count(sheets, "other table", "other tables") + "."
                + (isLogbook(folder.path())
                        ? " It is a logbook already, and needs no gathering: Logbook.open(\"" + folder.path()
                                + "\") reads it as it stands."
                        : "");
    }

    private static boolean isLogbook(Path folder) {
        return Files.isRegularFile(folder.resolve(LogbookFiles.BATCHES))
                && Files.isDirectory(folder.resolve(LogbookFiles.CURVES));
    }

    /** Returns what a gathering would write, in a sentence. */
    static String wouldMake(Gathering gathering) {
        long curves = gathering.batches().stream()
                .filter(batch -> batch.recording().isPresent())
                .count();
        return "This would make " + Words.count(gathering.batches().size(), "batch", "batches") + ", " + curves
                + " with a curve"
                + (gathering.scored().written() == 0
                        ? ""
                        : ", and " + Words.count(gathering.scored().written(), "scored cup", "scored cups"))
                + ".";
    }

    /** Returns the joins in lines. */
    static List<String> joins(Gathering gathering) {
        List<String> lines = new ArrayList<>();
        if (gathering.curves().isEmpty() || gathering.roasts().isEmpty()) {
            return lines;
        }
        some(gathering, Join.Sure.DOUBTFUL, DOUBTFUL_SHOWN, lines);
        some(gathering, Join.Sure.LIKELY, LIKELY_SHOWN, lines);
        some(gathering, Join.Sure.CERTAIN, CERTAIN_SHOWN, lines);
        if (gathering.joins().size()
                > lines.stream().filter(line -> line.startsWith("  ")).count()) {
            lines.add("All joins are in " + GatherWriter.REPORT
                    + " of the new logbook, each with how sure it is and why.");
        }
        without("recording is in no list", "recordings are in no list", withoutRow(gathering), lines);
        without(
                "row of the lists has no recording",
                "rows of the lists have no recording",
                withoutRecording(gathering),
                lines);
        return lines;
    }

    private static void some(Gathering gathering, Join.Sure sure, int shown, List<String> lines) {
        List<Join> all =
                gathering.joins().stream().filter(join -> join.sure() == sure).toList();
        if (all.isEmpty()) {
            return;
        }
        String kind = kind(sure) + (sure == Join.Sure.DOUBTFUL ? ": please look" : "");
        lines.add(Words.count(all.size(), "recording", "recordings") + " joined to a row of the lists, " + kind
                + (all.size() > shown ? ", such as" : "") + ":");
        all.stream()
                .limit(shown)
                .forEach(join -> lines.add("  " + line(join, gathering.apart().contains(join))));
    }

    private static String line(Join join, boolean apart) {
        return Words.quote(join.curve().name()) + (apart ? " may be row " : " is row ")
                + Words.quote(join.roast().shown())
                + ", because " + join.because() + (join.but().isEmpty() ? "" : "; but " + join.but())
                + (apart ? "; kept apart" : "")
                + (join.sure() == Join.Sure.DOUBTFUL ? " (" + join.key() + ")" : "") + ".";
    }

    /** Returns every join in a line of its own, with how sure it is and why, then each recording and each row that stays alone. */
    static List<String> allJoins(Gathering gathering) {
        List<String> lines = new ArrayList<>();
        gathering
                .joins()
                .forEach(join -> lines.add(
                        kind(join.sure()) + ": " + line(join, gathering.apart().contains(join))));
        if (!gathering.curves().isEmpty() && !gathering.roasts().isEmpty()) {
            withoutRow(gathering).forEach(name -> lines.add("The recording " + Words.quote(name) + " is in no list."));
            withoutRecording(gathering)
                    .forEach(name -> lines.add("The row " + Words.quote(name) + " of the lists has no recording."));
        }
        return lines;
    }

    private static List<String> withoutRow(Gathering gathering) {
        List<Join> joined = joined(gathering);
        return gathering.curves().stream()
                .filter(curve -> joined.stream().noneMatch(join -> join.curve() == curve))
                .map(GatheredBatch::name)
                .toList();
    }

    private static List<String> withoutRecording(Gathering gathering) {
        List<Join> joined = joined(gathering);
        return gathering.roasts().stream()
                .filter(roast -> joined.stream().noneMatch(join -> join.roast() == roast))
                .map(ListedRoast::shown)
                .toList();
    }

    private static List<Join> joined(Gathering gathering) {
        return gathering.joins().stream()
                .filter(join -> !gathering.apart().contains(join))
                .toList();
    }

    private static String kind(Join.Sure sure) {
        return sure.name().toLowerCase(Locale.ROOT);
    }

    private static void without(String one, String many, List<String> all, List<String> lines) {
        if (!all.isEmpty()) {
            lines.add(Words.count(all.size(), one, many) + ": " + Words.all(all) + ".");
        }
    }

    /** Returns what was left unanswered, a line; nothing if all was answered. */
    static List<String> notAnswered(Gathering gathering) {
        List<String> keys = gathering.questions().open().stream()
                .map(GatherQuestions.Open::key)
                .toList();
        return keys.isEmpty()
                ? List.of()
                : List.of("Not answered yet, so what stands for it is in doubt: " + Words.some(keys)
                        + ". Each is a line in " + GatherWriter.ANSWERS
                        + ": write your answer there, and run the same command again.");
    }

    /** Returns the page of a gathering for a screen: what is alike is folded. */
    static Report page(Gathering gathering) {
        return page(gathering, GatherFold::lists, GatherFold::of);
    }

    /** Returns the page of a gathering as it is kept: every line, and every name. */
    static Report whole(Gathering gathering) {
        return page(gathering, UnaryOperator.identity(), UnaryOperator.identity());
    }

    private static Report page(
            Gathering gathering, UnaryOperator<List<String>> lists, UnaryOperator<List<String>> fold) {
        Report page = Report.titled(gathering.summary()).say(wouldMake(gathering));
        List<String> joins = joins(gathering);
        if (!joins.isEmpty()) {
            page = page.heading("Which recording is which row").add(new GatherLines(lists.apply(joins)));
        }
        List<GatherQuestions.Open> open = gathering.questions().open();
        page = page.heading("Open questions");
        page = open.isEmpty()
                ? page.say("None: what was decided is below, and each line's key in brackets takes another answer.")
                : page.add(new GatherLines(
                        open.stream().map(GatherQuestions.Open::listed).toList()));
        page = page.heading("What was taken for what")
                .add(new GatherLines(gathering.questions().taken()));
        List<String> leftOut = gathering.questions().leftOut();
        return leftOut.isEmpty() ? page : page.heading("Left out").add(new GatherLines(fold.apply(leftOut)));
    }
}
