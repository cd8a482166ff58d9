package parchment.gather;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import parchment.sheet.Words;

/** Collects what a sheet says and the new logbook will not, to name it in a line of each kind, with its number. */
final class GatherLosses {
    /** A clock that is read off and written down shows minutes, and not those of the logger (common practice, no source). */
    private static final long SAME_TIME_SECONDS = 300;

    private final Map<String, List<String>> byKind = new LinkedHashMap<>();

    /** Notes a date or time where the recording, or an earlier row or sheet, has another. */
    void otherTime(GatheredBatch known, Optional<LocalDateTime> at, Optional<LocalDate> day) {
        if (at.isPresent() && known.roastedAt().isPresent()) {
            if (!isSame(known.roastedAt().get(), at.get())) {
                otherTime(known.name(), at.get().toString());
            }
        } else if (day.isPresent()) {
            known.roastedAt()
                    .map(LocalDateTime::toLocalDate)
                    .or(known::day)
                    .filter(other -> !other.equals(day.get()))
                    .ifPresent(other -> otherTime(known.name(), day.get().toString()));
        }
    }

    /** Returns whether two clocks may have shown these times at one moment. */
    static boolean isSame(LocalDateTime one, LocalDateTime other) {
        return Duration.between(one, other).abs().toSeconds() <= SAME_TIME_SECONDS;
    }

    private void otherTime(String batch, String written) {
        add("with another date or time than is known already, left out", batch + ": " + written);
    }

    /** Notes values where an earlier row or sheet has others. */
    void otherValues(String batch, Map<String, String> known, Map<String, String> written) {
        written.forEach((heading, value) -> {
            if (!known.getOrDefault(heading, value).equals(value)) {
                add(
                        "with a value where an earlier row or sheet has another, left out",
                        batch + ": " + heading + " " + value);
            }
        });
    }

    private void add(String kind, String which) {
        byKind.computeIfAbsent(kind, k -> new ArrayList<>()).add(which);
    }

    /** Says what was collected. */
    void say(GatherQuestions questions) {
        byKind.forEach((kind, which) -> questions.leaveOut(""
                + Words.count(which.size(), "row or cell", "rows or cells") + " " + kind + ": " + Words.all(which)
                + "."));
    }
}
