package parchment.gather;

import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import parchment.sheet.Words;

/**
 * Knows which recordings have their time from a stamp that shows minutes and no seconds, as the name {@code 20310601_0800} does. Such a stamp is known to a
 * minute only, and it may be that of the charge as well as that of the recording's start: a list that has the charge to the second, or in the very minute of the
 * stamp, knows it better.
 */
final class MinuteStamps {
    /** The clocks of one kind of recordings show seconds if one of their stamps does. */
    private final Set<List<Object>> toTheSecond = new HashSet<>();

    private final Set<FoundTable> listsToTheSecond = Collections.newSetFromMap(new IdentityHashMap<>());
    private final Map<String, String> taken = new LinkedHashMap<>(); // The list of each batch whose time was taken.

    MinuteStamps(List<GatheredBatch> curves, List<ListedRoast> roasts) {
        for (GatheredBatch curve : curves) {
            stamp(curve).filter(at -> at.getSecond() != 0).ifPresent(at -> toTheSecond.add(kind(curve)));
        }
        for (ListedRoast roast : roasts) {
            for (ListedBatch row : roast.rows()) {
                row.roastedAt().filter(at -> at.getSecond() != 0).ifPresent(at -> listsToTheSecond.add(row.table()));
            }
        }
    }

    /** Recordings of one kind are written by one program: they have the same headings, which mean the same. */
    private static List<Object> kind(GatheredBatch curve) {
        List<Object> kind = new ArrayList<>();
        curve.recording().ifPresent(recording -> {
            kind.add(recording.meanings());
            kind.add(recording.file().headings());
        });
        return kind;
    }

    /** Returns the time that a recording's name or first lines state; empty if its time is another's, or that of a clock beside its readings. */
    private static Optional<LocalDateTime> stamp(GatheredBatch curve) {
        boolean stamped = curve.recording()
                .filter(recording -> recording.timeOfDayAt(0).isEmpty())
                .isPresent();
        return curve.roastedAt().filter(at -> stamped).map(at -> at.minusSeconds(Math.round(curve.zero())));
    }

    /** Returns the batch with the time of the charge that its row has, where that one is known better; else as it is. */
    GatheredBatch of(GatheredBatch batch, ListedRoast roast) {
        Optional<ListedBatch> row = roast.rows().stream()
                .filter(each -> each.roastedAt().isPresent())
                .findFirst();
        Optional<LocalDateTime> stamp = stamp(batch);
        if (row.isEmpty() || stamp.isEmpty() || toTheSecond.contains(kind(batch))) {
            return batch;
        }
        LocalDateTime listed = row.get().roastedAt().orElseThrow();
        boolean exact = listsToTheSecond.contains(row.get().table());
        boolean ofTheCharge = listed.truncatedTo(ChronoUnit.MINUTES).equals(stamp.get());
        if (!exact && !ofTheCharge || !GatherLosses.isSame(batch.roastedAt().orElseThrow(), listed)) {
            return batch;
        }
        taken.put(batch.name(), TablePlace.of(row.get().table()).shown());
        return batch.chargedAt(listed);
    }

    /** Says of how many batches the list's time was taken. */
    void say(GatherQuestions questions) {
        if (!taken.isEmpty()) {
            questions.say("  The time in the name or first lines of "
                    + Words.count(taken.size(), "recording", "recordings")
                    + " shows minutes and no seconds: the charge is taken to be when the list says, "
                    + String.join(", ", new TreeSet<>(taken.values())) + ".");
        }
    }
}
