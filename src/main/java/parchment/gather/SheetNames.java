package parchment.gather;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Finds the recording that a row of a list means: the same number at the end of its name, zeros in front aside, and the same day. */
final class SheetNames {
    private static final Pattern LAST_NUMBER = Pattern.compile("(\\d+)\\D*$");

    private final Map<String, List<GatheredBatch>> byNumber = new HashMap<>();

    SheetNames(Iterable<GatheredBatch> batches) {
        for (GatheredBatch batch : batches) {
            boolean whole = batch.recording()
                    .filter(recording ->
                            GatherNames.plain(recording.file().stem()).equals(batch.name()))
                    .isPresent();
            if (whole) {
                byNumber.computeIfAbsent(number(batch.name()), n -> new ArrayList<>())
                        .add(batch);
            }
        }
    }

    /** Returns the recording's name; empty if there is none, or two that could be meant. */
    Optional<String> recordingOf(String name, Optional<LocalDate> day) {
        if (!name.matches("\\d+")) {
            return Optional.empty();
        }
        List<GatheredBatch> candidates = byNumber.getOrDefault(number(name), List.of());
        List<GatheredBatch> sameDay = candidates.stream()
                .filter(batch -> day.isPresent() && dayOf(batch).equals(day))
                .toList();
        List<GatheredBatch> left = !sameDay.isEmpty()
                ? sameDay
                : candidates.stream()
                        .filter(batch -> day.isEmpty() || dayOf(batch).isEmpty())
                        .toList();
        return left.size() == 1 ? Optional.of(left.get(0).name()) : Optional.empty();
    }

    private static Optional<LocalDate> dayOf(GatheredBatch batch) {
        return batch.roastedAt().map(at -> at.toLocalDate()).or(batch::day);
    }

    private static String number(String name) {
        Matcher last = LAST_NUMBER.matcher(name);
        return last.find() ? last.group(1).replaceFirst("^0+(?=\\d)", "") : name;
    }
}
