package parchment.gather;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import parchment.sheet.DateOrder;

/**
 * Holds what a folder would become under certain answers: nothing is asked or written while it is worked out, so it can be worked out again when an answer is
 * added.
 *
 * @param batches the batches as they would be written
 * @param joins which recording was taken for which row, doubtful ones first, whether put together or not
 * @param apart the joins that were not put together
 * @param curves the recordings
 * @param roasts the rows of lists
 * @param odd numbers that mean "no reading"
 * @param zone the time zone
 * @param questions what was decided, left open, left out
 * @param summary what was found, in one sentence
 */
record Gathering(
        List<GatheredBatch> batches,
        List<Join> joins,
        List<Join> apart,
        List<GatheredBatch> curves,
        List<ListedRoast> roasts,
        Set<Double> odd,
        String zone,
        GatherQuestions questions,
        String summary) {

    /** Works it out. */
    static Gathering of(StrangeFolder folder, Map<String, String> answers, Map<String, String> earlierNames) {
        GatherQuestions questions = new GatherQuestions(answers);
        folder.told().forEach(questions::leaveOut);
        List<StrangeFolder.Found> recordings =
                folder.tables().stream().filter(StrangeFolder.Found::isRecording).toList();
        List<Table> sheets = folder.tables().stream()
                .filter(found -> !found.isRecording())
                .map(StrangeFolder.Found::table)
                .toList();
        List<GatherStyle> styles = GatherStyles.of(recordings, questions);
        Map<String, Table> lettered = GatherStyles.letters(sheets, questions, folder.path());
        DateOrder dates = GatherDates.decide(styles, sheets, questions);
        Set<Double> odd = new TreeSet<>();
        List<GatheredBatch> curves = new ArrayList<>();
        for (GatherStyle style : styles) {
            odd.addAll(style.odd().keySet());
            curves.addAll(new GatherRecordings(questions, style).gather(dates));
        }
        List<ListedBatch> listed = new ArrayList<>();
        lettered.forEach((letter, sheet) -> listed.addAll(new GatherSheets(questions, dates).rows(sheet, letter)));
        List<ListedRoast> roasts = JoinedBatches.roasts(listed);
        JoinAnswers joined = JoinAnswers.of(curves, roasts, questions);
        List<GatheredBatch> batches = new JoinedBatches(questions).of(curves, roasts, joined.joined(), earlierNames);
        String zone = questions.tell(
                "time.zone",
                "The times are taken to be of this time zone",
                ZoneId.systemDefault().getId(),
                Gather::isZone,
                "a time zone such as Europe/Berlin");
        String summary = GatherWords.summary(folder, recordings.size(), styles.size(), sheets.size());
        return new Gathering(
                batches, joined.all(), joined.apart(), curves, roasts, odd, zone, questions, summary);
    }

    /** Returns what each recording's batch is called, by where the recording stands. */
    Map<String, String> names() {
        Map<String, String> names = new LinkedHashMap<>();
        batches.stream()
                .filter(batch -> batch.recording().isPresent())
                .forEach(batch -> names.put(batch.origin(), batch.name()));
        return names;
    }
}
