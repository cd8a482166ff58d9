package parchment.gather;

import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import parchment.sheet.DateOrder;
import parchment.sheet.Words;

/**
 * Works out what a folder would become under certain answers: nothing is asked or written meanwhile, so it can be worked out again when an
 * answer is added.
 *
 * @param batches the batches as they would be written
 * @param joins which recording was taken for which row, doubtful ones first, whether put together or not
 * @param apart the joins that were not put together
 * @param curves the recordings
 * @param roasts the rows of lists
 * @param scored the cups
 * @param lots the lots
 * @param work the work on machines
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
        GatherCups.Scored scored,
        GatheredLots lots,
        List<ListedUpkeep> work,
        Set<Double> odd,
        String zone,
        GatherQuestions questions,
        String summary) {

    /** Works it out; where a recording holds several rows of the lists, once more with what they say of charges and drops. */
    static Gathering of(StrangeFolder folder, Map<String, String> answers, Map<String, String> earlierNames) {
        Gathering first = of(folder, answers, earlierNames, AgreedJoins.NONE);
        if (!first.questions().isOpen(GatherDates.KEY) || first.curves().isEmpty()) {
            return first;
        }
        AgreedJoins agreed = AgreedJoins.of(
                of(folder, with(answers, DateOrder.DAY_MONTH_YEAR), earlierNames, AgreedJoins.NONE),
                of(folder, with(answers, DateOrder.MONTH_DAY_YEAR), earlierNames, AgreedJoins.NONE),
                first);
        return agreed.rows().isEmpty() ? first : of(folder, answers, earlierNames, agreed);
    }

    private static Map<String, String> with(Map<String, String> answers, DateOrder order) {
        Map<String, String> all = new LinkedHashMap<>(answers);
        all.put(GatherDates.KEY, order.words());
        return all;
    }

    private static Gathering of(
            StrangeFolder folder, Map<String, String> answers, Map<String, String> earlierNames, AgreedJoins agreed) {
        Gathering first = of(folder, answers, earlierNames, agreed, ListedTimes.NONE);
        ListedTimes listedTimes = ListedTimes.of(first.roasts());
        boolean several = first.curves().stream()
                .flatMap(curve -> curve.recording().stream())
                .anyMatch(listedTimes::speakOfSeveral);
        return several ? of(folder, answers, earlierNames, agreed, listedTimes) : first;
    }

    private static Gathering of(
            StrangeFolder folder,
            Map<String, String> answers,
            Map<String, String> earlierNames,
            AgreedJoins agreed,
            ListedTimes listedTimes) {
        GatherQuestions questions = new GatherQuestions(answers);
        folder.told().forEach(questions::leaveOut);
        folder.taken().forEach(questions::say);
        List<StrangeFolder.Found> recordings = folder.tables().stream()
                .filter(StrangeFolder.Found::isRecording)
                .toList();
        List<FoundTable> tables =
                recordings.stream().map(StrangeFolder.Found::table).toList();
        List<FoundTable> sheets = ShortDays.settled(
                folder.tables().stream()
                        .filter(found -> !found.isRecording())
                        .map(StrangeFolder.Found::table)
                        .toList(),
                tables,
                questions);
        unknownDates(folder, questions);
        FileKeys keys = FileKeys.of(tables, folder.path());
        List<GatherStyle> styles = GatherStyles.of(FolderScales.of(recordings, keys, questions), questions);
        FolderDays days = FolderDays.decide(tables, folder.path(), questions);
        GatherDates dates = GatherDates.decide(styles, sheets, days, questions);
        Set<Double> odd = new TreeSet<>();
        List<GatheredBatch> recorded = new ArrayList<>();
        for (GatherStyle style : styles) {
            odd.addAll(style.odd().keySet());
            recorded.addAll(new GatherRecordings(questions, style, keys, listedTimes).gather(dates));
        }
        List<GatheredBatch> found = TabNames.of(recorded);
        GatherCups cups = new GatherCups(questions, dates);
        Clues clues =
                new Clues(found.stream().map(Gathering::recorded).toList(), ListScale.ofFolder(found, dates.asked()));
        GatherSheets lists = new GatherSheets(questions, dates, clues);
        GatherLots lots = new GatherLots(questions, dates, lists);
        GatherUpkeep upkeep = new GatherUpkeep(questions, dates, lists);
        List<ListedBatch> listed =
                listed(GatherStyles.letters(sheets, questions, folder.path()), found, lists, dates, cups, lots, upkeep);
        JoinClocks clocks = JoinClocks.of(
                found, ListRivals.settled(JoinedBatches.roasts(OneUnit.of(listed, questions)), questions), questions);
        List<GatheredBatch> curves = clocks.curves();
        List<ListedRoast> roasts = clocks.roasts();
        JoinAnswers joined = JoinAnswers.of(curves, roasts, named(curves, earlierNames), agreed, questions);
        JoinedBatches named = new JoinedBatches(questions);
        List<GatheredBatch> joinedUp = named.of(curves, roasts, joined.joined(), named(curves, earlierNames));
        List<GatheredBatch> batches = LossMasses.added(RecordingFacts.added(joinedUp, questions), questions);
        RecordedTwice.tell(batches, questions);
        GatherCups.Scored scored = cups.of(batches, named.otherNames());
        questions.say("");
        GatheredLots ofLots = lots.of(batches);
        List<ListedUpkeep> work = upkeep.of(batches);
        questions.keys("scale.").forEach(key -> questions.keep(key, questions.raw(key)));
        String zone = questions.tell(
                "time.zone",
                "The times are taken to be of this time zone",
                ZoneId.systemDefault().getId(),
                Gather::isZone,
                "a time zone such as Europe/Berlin");
        unused(questions);
        String summary = GatherWords.summary(folder, recordings.size(), styles.size(), sheets.size());
        return new Gathering(
                ofLots.batches(),
                joined.all(),
                joined.apart(),
                curves,
                roasts,
                scored,
                ofLots,
                work,
                odd,
                zone,
                questions,
                summary);
    }

    /** Tells which answers nothing asked for. */
    private static void unused(GatherQuestions questions) {
        Set<String> known = questions.answered().keySet();
        questions
                .unused()
                .forEach(key -> questions.leaveOut("The answer to " + key + " was not needed: nothing asks for it."
                        + Words.didYouMean(key, known)));
    }

    /** Names what looks like a date and is none that is known: the first of each file, and how many files have such. */
    private static void unknownDates(StrangeFolder folder, GatherQuestions questions) {
        List<String> found = folder.tables().stream()
                .map(StrangeFolder.Found::table)
                .flatMap(table -> Stream.concat(table.above().stream(), table.rows().stream())
                        .flatMap(List::stream)
                        .flatMap(cell -> WrittenDay.unknown(cell).stream())
                        .limit(1)
                        .map(text -> Words.quote(text) + " in "
                                + TablePlace.of(table).shown()))
                .toList();
        if (!found.isEmpty()) {
            questions.leaveOut(
                    found.get(0) + " is no date that is known: the word is no month in a language that is read here."
                            + (found.size() == 1
                                    ? ""
                                    : " So " + Words.count(found.size() - 1, "more file", "more files") + "."));
        }
    }

    private static List<ListedBatch> listed(
            Map<String, FoundTable> sheets,
            List<GatheredBatch> curves,
            GatherSheets lists,
            GatherDates dates,
            GatherCups cups,
            GatherLots lots,
            GatherUpkeep upkeep) {
        Set<String> names = new LinkedHashSet<>();
        curves.forEach(curve -> names.addAll(namesOf(curve)));
        Set<String> used = GatherLots.used(sheets.values(), lists);
        List<ListedBatch> listed = new ArrayList<>();
        sheets.forEach((letter, sheet) -> {
            List<TableKind> claims = new ArrayList<>(GatherCups.claims(sheet, dates, names));
            ShortNames.claim(sheet, used).ifPresent(claims::add);
            int from = lists.said();
            TableKind.What kind = lists.kind(sheet, letter, claims);
            switch (kind) {
                case BATCHES -> listed.addAll(lists.rows(sheet, letter));
                case SCORES -> cups.addScores(letter, sheet);
                case KEY -> cups.addKey(letter, sheet);
                case LOTS -> lots.addList(letter, sheet);
                case SHORT_NAMES -> lots.addShortNames(letter, sheet);
                case UPKEEP -> upkeep.add(letter, sheet);
                default -> lists.leaveOut(sheet, letter, from);
            }
        });
        lists.sayLeftOut();
        return listed;
    }

    /** Returns the earlier names of those recordings that alone stand where they do; of several side by side in one table no place tells which it was. */
    private static Map<String, String> named(List<GatheredBatch> curves, Map<String, String> earlier) {
        Set<String> met = new LinkedHashSet<>();
        Map<String, String> names = new LinkedHashMap<>(earlier);
        curves.stream()
                .map(GatheredBatch::origin)
                .filter(origin -> !met.add(origin))
                .forEach(names::remove);
        return names;
    }

    private static Clues.Recorded recorded(GatheredBatch curve) {
        List<String> titles = new ArrayList<>(titles(curve));
        return new Clues.Recorded(
                curve.name(),
                titles.isEmpty() ? "" : titles.get(0),
                curve.roastedAt(),
                curve.roastedAt().map(LocalDateTime::toLocalDate).or(curve::day));
    }

    private static Collection<String> titles(GatheredBatch curve) {
        return curve.recording()
                .map(recording -> BatchNumbers.titles(recording.file().above()))
                .orElse(Set.of());
    }

    /** Returns what a recording is called in its folder. */
    static List<String> namesOf(GatheredBatch curve) {
        Set<String> names = new LinkedHashSet<>(List.of(curve.name()));
        names.addAll(titles(curve));
        BatchNumbers.afterWord(curve.name()).ifPresent(names::add);
        return new ArrayList<>(names);
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
