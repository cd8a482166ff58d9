package parchment.trial;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import parchment.trial.sealed.ClosedDraw;
import parchment.trial.sealed.DrawnLine;
import parchment.trial.sealed.Seal;
import parchment.trial.sealed.TrialPlan;

/**
 * Holds what the four files of a trial's folder say, and each place where one of them is not as it was sealed or written.
 *
 * @param plan what {@value #PLAN} says; empty if it cannot be read
 * @param seal what {@value #SEAL} says; empty if it cannot be read
 * @param record what {@value #RECORD} tells; empty if its chain is broken
 * @param closed the texts of all drawn lines by their order; empty if {@value #CLOSED} is not there, because somebody else keeps it
 * @param findings what is not as it was, a sentence each
 */
record TrialFiles(
        Optional<TrialPlan> plan,
        Optional<Seal> seal,
        Optional<TrialRecord> record,
        List<String> closed,
        List<String> findings) {
    /** The plan, whose SHA-256 is the plan's seal. */
    static final String PLAN = "plan.txt";

    /** The seal's text, whose SHA-256 is the seal. */
    static final String SEAL = "seal.txt";

    /** The drawn lines, covered. */
    static final String CLOSED = "draw.closed";

    /** What was done since, chained. */
    static final String RECORD = "record.txt";

    TrialFiles {
        closed = List.copyOf(closed);
        findings = List.copyOf(findings);
    }

    /**
     * Reads a trial's folder.
     *
     * @param draw where the covered lines are kept
     * @throws IOException if a file that must be there is not, or cannot be read
     */
    static TrialFiles read(Path folder, Path draw) throws IOException {
        List<String> findings = new ArrayList<>();
        byte[] planBytes = bytes(folder, PLAN);
        byte[] sealBytes = bytes(folder, SEAL);
        byte[] recordBytes = bytes(folder, RECORD);
        Optional<TrialPlan> plan = read(PLAN, findings, () -> TrialPlan.read(text(planBytes)));
        Optional<Seal> seal = read(SEAL, findings, () -> Seal.read(text(sealBytes)));
        Optional<TrialRecord> record = read(RECORD, findings, () -> TrialRecord.read(text(recordBytes)));
        String covered = Files.exists(draw) ? text(Files.readAllBytes(draw)) : "";
        List<String> closed = covered.isEmpty() && !Files.exists(draw)
                ? List.of()
                : read(CLOSED, findings, () -> ClosedDraw.uncover(covered)).orElse(List.of());
        TrialFiles files = new TrialFiles(plan, seal, record, closed, List.of());
        files.seal().ifPresent(held -> {
            String digits = Seal.sha256(sealBytes);
            record.filter(told -> !told.seal().equals(digits))
                    .ifPresent(told -> findings.add(SEAL + " was changed: its SHA-256 is " + digits + ", but " + RECORD
                            + " tells that " + told.seal() + " was sealed."));
            String found = Seal.sha256(planBytes);
            if (!found.equals(held.planSeal())) {
                findings.add(PLAN + " was changed, or line 2 of " + SEAL + ": its SHA-256 is " + found + ", but "
                        + held.planSeal() + " was sealed.");
            }
            findings.addAll(files.brokenLines(held, covered));
        });
        return new TrialFiles(plan, seal, record, closed, findings);
    }

    private static byte[] bytes(Path folder, String name) throws IOException {
        try {
            return Files.readAllBytes(folder.resolve(name));
        } catch (NoSuchFileException e) {
            throw new IllegalArgumentException(
                    "'" + folder + "' is no whole trial: it has no file " + name
                            + ". Name the folder that was made when the trial was sealed.",
                    e);
        }
    }

    /** Letters that are not UTF-8 become others here, and the seals, which are of bytes, do not fit. */
    private static String text(byte[] bytes) {
        return new String(bytes, StandardCharsets.UTF_8);
    }

    private interface Reading<T> {
        T now();
    }

    private static <T> Optional<T> read(String file, List<String> findings, Reading<T> reading) {
        try {
            return Optional.of(reading.now());
        } catch (IllegalArgumentException e) {
            findings.add(file + " was changed: " + e.getMessage() + ".");
            return Optional.empty();
        }
    }

    private List<String> brokenLines(Seal held, String covered) {
        List<String> broken = new ArrayList<>();
        int size = plan.map(TrialPlan::size).orElse(1);
        int all = plan.map(said -> said.sets() * said.size())
                .orElse(held.lineSeals().size());
        if (held.lineSeals().size() != all) {
            broken.add(SEAL + " was changed, or the plan: it seals "
                    + held.lineSeals().size() + " lines, but the plan has " + all + " places.");
            return broken;
        }
        if (!closed.isEmpty() && closed.size() != all) {
            broken.add(CLOSED + " was changed: it holds " + closed.size() + " lines, but " + all + " were sealed.");
        } else {
            for (int i = 0; i < closed.size(); i++) {
                if (!Seal.sha256(closed.get(i)).equals(held.lineSeals().get(i))) {
                    broken.add("The closed line of " + place(i / size + 1, i % size + 1)
                            + " is not the one that was sealed: line " + (i + 2) + " of " + CLOSED
                            + " was changed, or line "
                            + (i + 3) + " of " + SEAL + ".");
                }
            }
            if (broken.isEmpty() && !closed.isEmpty() && !covered.equals(ClosedDraw.again(closed))) {
                broken.add(CLOSED + " was changed: it holds the lines that were sealed, and not as they were written.");
            }
        }
        broken.addAll(brokenRecord(held, size));
        return broken;
    }

    private List<String> brokenRecord(Seal held, int size) {
        List<String> broken = new ArrayList<>();
        Set<Integer> listed = new LinkedHashSet<>();
        int opened = 0;
        for (TrialRecord.Entry entry : record.map(TrialRecord::entries).orElse(List.of())) {
            if (entry.is(TrialRecord.Kind.LISTED)) {
                SetListing.read(entry.rest()).ifPresent(kept -> listed.add(kept.set()));
            }
            if (!entry.is(TrialRecord.Kind.OPENED)) {
                continue;
            }
            int set = opened / size + 1;
            int place = opened % size + 1;
            boolean isNext = opened < held.lineSeals().size()
                    && Seal.sha256(entry.rest()).equals(held.lineSeals().get(opened));
            if (!isNext) {
                broken.add("The opened line of " + place(set, place) + " in " + RECORD
                        + " is not the one that was sealed: it was changed, or it changed places with another.");
            } else if (!listed.contains(set)) {
                broken.add("The line of " + place(set, place) + " was opened before its set was listed: " + RECORD
                        + " was changed.");
            }
            opened++;
        }
        return broken;
    }

    static String place(int set, int place) {
        return "set " + set + ", place " + place;
    }

    /** Returns the sets that were listed, by their number. */
    Map<Integer, SetListing> listed() {
        Map<Integer, SetListing> listed = new LinkedHashMap<>();
        record.map(told -> told.of(TrialRecord.Kind.LISTED)).orElse(List.of()).stream()
                .flatMap(entry -> SetListing.read(entry.rest()).stream())
                .forEach(kept -> listed.putIfAbsent(kept.set(), kept.listing()));
        return listed;
    }

    /** Returns the listing of a set that was listed. */
    SetListing listing(int set) {
        return Optional.ofNullable(listed().get(set)).orElseThrow();
    }

    /** Returns the lines that were opened, in the order of the draw. */
    List<DrawnLine> opened() {
        return record.map(told -> told.of(TrialRecord.Kind.OPENED)).orElse(List.of()).stream()
                .map(entry -> DrawnLine.read(entry.rest()))
                .toList();
    }
}
