package parchment.trial;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import parchment.display.Showable;
import parchment.display.answer.Report;
import parchment.file.FolderLock;
import parchment.file.WholeFile;
import parchment.file.WholeFolder;
import parchment.logbook.Logbook;
import parchment.sheet.Words;
import parchment.trial.sealed.AnsweredTrial;
import parchment.trial.sealed.BatchSheets;
import parchment.trial.sealed.ClosedDraw;
import parchment.trial.sealed.DrawnLine;
import parchment.trial.sealed.DrawnTarget;
import parchment.trial.sealed.Seal;
import parchment.trial.sealed.SealCheck;
import parchment.trial.sealed.SealedSlips;
import parchment.trial.sealed.TrialPlan;

/**
 * Keeps a sealed trial: opens its lines batch by batch, tells whether anything was changed, and answers it.
 *
 * <pre>{@code
 * var trial = TrialFolder.open(Path.of("flip-1"));
 * trial.next(SetListing.of("Stone Bridge").with("B101", Mass.kilograms(2.5)).with("B102", Mass.kilograms(2.5)).with("B103", Mass.kilograms(2.5)));
 * trial.next();
 * trial.verify("844d 5e80 e420 4d17 ...");
 * trial.answer(logbook);
 * }</pre>
 *
 * <p>Whatever is done is one whole write of the record: killed at any moment, a line was opened or it was not, and an opened one is told again by
 * {@link #again()}. Two commands never open at once.
 */
public final class TrialFolder implements Showable {
    private final Path folder;
    private final Path draw;
    private final Clock clock;
    private final Steps steps;

    /** Is told what will be done next, so that a test can stop it there. */
    interface Steps {
        void before(String step);
    }

    private TrialFolder(Path folder, Path draw, Clock clock, Steps steps) {
        this.folder = folder;
        this.draw = draw;
        this.clock = clock;
        this.steps = steps;
    }

    /**
     * Opens a trial's folder.
     *
     * @throws IllegalArgumentException if it is not the folder of a trial
     */
    public static TrialFolder open(Path folder) {
        return open(folder, Clock.systemUTC(), step -> {});
    }

    static TrialFolder open(Path folder, Clock clock, Steps steps) {
        for (String name : List.of(TrialFiles.PLAN, TrialFiles.SEAL, TrialFiles.RECORD)) {
            if (!Files.exists(folder.resolve(name))) {
                throw new IllegalArgumentException("'" + folder + "' is no whole trial: it has no file " + name
                        + ". Name the folder that was made when the trial was sealed.");
            }
        }
        return new TrialFolder(folder, folder.resolve(TrialFiles.CLOSED), clock, steps);
    }

    /** Writes a sealed trial into a new folder, whole or not at all. */
    static TrialFolder seal(Path folder, TrialPlan plan, List<DrawnLine> lines) {
        Seal seal = Seal.of(plan.text(), lines.stream().map(DrawnLine::text).toList());
        try {
            WholeFolder.at(folder).fill(aside -> {
                WholeFile.at(aside.resolve(TrialFiles.PLAN)).write(plan.text());
                WholeFile.at(aside.resolve(TrialFiles.SEAL)).write(seal.text());
                WholeFile.at(aside.resolve(TrialFiles.CLOSED)).write(ClosedDraw.cover(lines));
                return WholeFile.at(aside.resolve(TrialFiles.RECORD))
                        .write(TrialRecord.begin(seal.digits(), plan.written()).text());
            });
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return open(folder);
    }

    /** Returns the same trial with its covered lines read from elsewhere: a file that somebody else kept meanwhile. */
    public TrialFolder withDraw(Path file) {
        return new TrialFolder(folder, file, clock, steps);
    }

    /** Returns the seal, 64 digits in fours. */
    public String seal() {
        return Seal.inFours(sound(read()).seal().orElseThrow().digits());
    }

    /** Returns the digits of the record, in fours: whoever gives them away can change nothing that was done so far. */
    public String recordDigits() {
        return Seal.inFours(sound(read()).record().orElseThrow().last());
    }

    /** Returns the plan as it was sealed. */
    public String plan() {
        return sound(read()).plan().orElseThrow().text();
    }

    private TrialFiles read() {
        try {
            return TrialFiles.read(folder, draw);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Goes on only with a folder that is as it was sealed. */
    private TrialFiles sound(TrialFiles files) {
        if (!files.findings().isEmpty()) {
            throw new IllegalStateException("The trial '" + folder
                    + "' is not as it was sealed, and nothing was done with it. "
                    + String.join(
                            " ",
                            files.findings()
                                    .subList(0, Math.min(3, files.findings().size()))));
        }
        return files;
    }

    private interface Work<T> {
        T with(TrialFiles files) throws IOException;
    }

    /** Does something while nobody else writes here. */
    private <T> T alone(Work<T> work) {
        try {
            steps.before("lock");
            Optional<FolderLock> lock = FolderLock.of(folder);
            if (lock.isEmpty()) {
                throw new IllegalStateException("Another command is at work in the trial '" + folder
                        + "'. Wait until it has ended, and run this again; nothing was opened.");
            }
            try (FolderLock held = lock.get()) {
                return work.with(sound(TrialFiles.read(folder, draw)));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void write(TrialRecord record) throws IOException {
        steps.before("write");
        WholeFile.at(folder.resolve(TrialFiles.RECORD)).write(record.text());
        steps.before("show");
    }

    private String now() {
        return clock.instant().truncatedTo(ChronoUnit.SECONDS).toString();
    }

    /**
     * Lists the next set and opens the line of its first batch.
     *
     * @throws IllegalArgumentException if the set cannot be this one; the message says why, and nothing was listed or opened
     * @throws IllegalStateException if the set before is not at its end, or all are; the message says what to do
     */
    public DrawnTarget next(SetListing listing) {
        return alone(files -> {
            TrialPlan plan = files.plan().orElseThrow();
            int opened = files.opened().size();
            Map<Integer, SetListing> listed = files.listed();
            if (listed.size() * plan.size() > opened) {
                throw new IllegalStateException("Set " + listed.size() + " is listed and not at its end: it was "
                        + files.listing(listed.size()) + ", and "
                        + named(files.listing(listed.size()), opened % plan.size())
                        + " is next. Open that without a listing: nothing joins a set that is listed, or leaves it.");
            }
            checkLeft(plan, opened);
            check(listing, plan, listed);
            int set = listed.size() + 1;
            TrialRecord record = files.record().orElseThrow().with(now(), TrialRecord.Kind.LISTED, listing.text(set));
            return opened(files, plan, record, listing, opened);
        });
    }

    /**
     * Opens the line of the next batch of the set that is listed.
     *
     * @throws IllegalStateException if no set is listed, or all lines are open; the message says what to do
     */
    public DrawnTarget next() {
        return alone(files -> {
            TrialPlan plan = files.plan().orElseThrow();
            int opened = files.opened().size();
            Map<Integer, SetListing> listed = files.listed();
            checkLeft(plan, opened);
            if (listed.size() * plan.size() <= opened) {
                throw new IllegalStateException(
                        "Set " + (listed.size() + 1) + " is not listed yet. List its " + plan.size()
                                + " batches first, of one lot and for one day, each weighed: no target is opened before.");
            }
            return opened(files, plan, files.record().orElseThrow(), files.listing(listed.size()), opened);
        });
    }

    private DrawnTarget opened(TrialFiles files, TrialPlan plan, TrialRecord record, SetListing listing, int opened)
            throws IOException {
        if (files.closed().isEmpty()) {
            throw new IllegalStateException("The covered lines of the trial are not at '" + draw
                    + "'. Whoever keeps the file " + TrialFiles.CLOSED + " brings it back, or you name where it is.");
        }
        DrawnLine line = DrawnLine.read(files.closed().get(opened));
        TrialRecord longer = record.with(now(), TrialRecord.Kind.OPENED, line.text());
        write(longer);
        return new DrawnTarget(plan, line, listing, longer.last());
    }

    /**
     * Tells the newest opened line once more, and opens none: for a command that was stopped before it could be read.
     *
     * @throws IllegalStateException if no line is open yet
     */
    public DrawnTarget again() {
        TrialFiles files = sound(read());
        List<DrawnLine> opened = files.opened();
        if (opened.isEmpty()) {
            throw new IllegalStateException("No line of the trial '" + folder + "' is open yet.");
        }
        DrawnLine line = opened.get(opened.size() - 1);
        return new DrawnTarget(
                files.plan().orElseThrow(),
                line,
                files.listing(line.set()),
                files.record().orElseThrow().last());
    }

    private static String named(SetListing listing, int place) {
        return Words.quote(listing.batches().get(place).batch());
    }

    private void checkLeft(TrialPlan plan, int opened) {
        if (opened == plan.sets() * plan.size()) {
            throw new IllegalStateException("All " + opened + " lines of the trial '" + folder
                    + "' are open. A trial has no more batches than were sealed; look at its answer.");
        }
    }

    private static void check(SetListing listing, TrialPlan plan, Map<Integer, SetListing> before) {
        if (listing.batches().size() != plan.size()) {
            throw new IllegalArgumentException("A set of this trial has " + plan.size() + " batches, but "
                    + listing.batches().size()
                    + " were listed. List all of the set, weighed, before its first target is opened.");
        }
        before.forEach((set, earlier) -> {
            Set<String> both = new HashSet<>();
            earlier.batches().forEach(each -> both.add(each.batch()));
            List<String> again = listing.batches().stream()
                    .map(SetListing.Weighed::batch)
                    .filter(both::contains)
                    .toList();
            if (!again.isEmpty()) {
                throw new IllegalArgumentException("The batch " + Words.quote(again.get(0)) + " is in set " + set
                        + " already. A batch is in one set, in the place where it was listed.");
            }
            if (listing.day().isBefore(earlier.day())) {
                throw new IllegalArgumentException("Set " + set + " was listed for " + earlier.day()
                        + ", and this one is for " + listing.day() + ". Sets are listed in the order of their days.");
            }
        });
    }

    /**
     * Holds the folder against the digits that were given away when it was sealed.
     *
     * @param seal the 64 digits, in fours or not
     * @param recordDigits digits of the record that were given away since, each at the end of a set
     * @throws IllegalArgumentException if they are not 64 digits
     */
    public SealCheck verify(String seal, String... recordDigits) {
        return TrialVerification.of(read(), draw, seal, recordDigits);
    }

    /**
     * Looks at the scores: the answer of the trial by its own rules. A look is written down before its answer is shown; the same scores
     * again are the same look.
     *
     * @throws IllegalStateException if no line is open yet, or all looks of the plan were taken; the message says so
     */
    public AnsweredTrial answer(Logbook logbook) {
        return alone(files -> {
            TrialPlan plan = files.plan().orElseThrow();
            if (files.opened().isEmpty()) {
                throw new IllegalStateException(
                        "No line of the trial '" + folder + "' is open yet, so there is nothing to look at.");
            }
            AssignedCells cells = AssignedCells.of(plan, files.opened(), files.listed(), logbook);
            List<AssignedBatch> batches = TrialScores.of(plan.terms(), cells.batches(), logbook);
            String seen = AssignedCells.digits(batches);
            TrialRecord record = files.record().orElseThrow();
            List<TrialRecord.Entry> looks = record.of(TrialRecord.Kind.LOOKED);
            int look = looks.size();
            if (looks.isEmpty() || !looks.get(look - 1).rest().endsWith(" " + seen)) {
                look++;
                write(record.with(now(), TrialRecord.Kind.LOOKED, look + " at " + seen));
            }
            return new AnsweredTrial(
                    plan,
                    TrialAnswer.atLook(
                            look,
                            plan.terms(),
                            batches,
                            files.seal().orElseThrow().digits()),
                    cells.problems(),
                    look);
        });
    }

    /** Returns a page with a sheet for each batch of the sets that are listed: what to do, what to write down, when to abort. */
    public BatchSheets sheets() {
        TrialFiles files = sound(read());
        return new BatchSheets(files.plan().orElseThrow(), files.listed(), files.opened());
    }

    /**
     * Returns a page of slips with every target, to cut, fold and seal in envelopes, for a place without a computer. Whoever makes them can read
     * them: let it be somebody who neither roasts nor cups. That they were made is written down first.
     */
    public SealedSlips slips() {
        return alone(files -> {
            if (files.closed().isEmpty()) {
                throw new IllegalStateException(
                        "The covered lines of the trial are not at '" + draw + "'. Whoever keeps the file "
                                + TrialFiles.CLOSED + " brings it back, or you name where it is.");
            }
            TrialPlan plan = files.plan().orElseThrow();
            write(files.record().orElseThrow().with(now(), TrialRecord.Kind.SLIPS, "all"));
            return new SealedSlips(
                    plan, files.closed().stream().map(DrawnLine::read).toList());
        });
    }

    private Report report() {
        TrialFiles files = sound(read());
        TrialPlan plan = files.plan().orElseThrow();
        Report stated = Report.titled("What was stated before the draw");
        for (String line : plan.text().lines().skip(1).toList()) {
            stated = stated.say(line);
        }
        return Report.titled("Trial " + plan.terms().trial())
                .say(sentence(files))
                .say("Seal: " + Seal.inFours(files.seal().orElseThrow().digits()))
                .fold(stated);
    }

    private static String sentence(TrialFiles files) {
        TrialPlan plan = files.plan().orElseThrow();
        int all = plan.sets() * plan.size();
        return "Trial " + plan.terms().trial() + " asks what "
                + plan.terms().control().words() + " does to "
                + plan.terms().score() + ": " + files.opened().size() + " of " + all + " lines are open, in "
                + Words.count(files.listed().size(), "set", "sets") + " of " + plan.sets() + ".";
    }

    @Override
    public String text() {
        return report().text();
    }

    @Override
    public Optional<String> html() {
        return report().html();
    }

    @Override
    public String toString() {
        return sentence(sound(read()));
    }
}
