package parchment.drift;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** The signs of a week and which of them a cause accounts for already, so that each is told once: a cause takes its signs from here. */
final class WeekSigns {
    private final List<Usual> batches;
    private final List<WeekSign> odd;
    private final List<WatchedShift> shifts;
    private final Set<WeekSign> explained = new HashSet<>();
    private final Set<String> onAnotherProbe = new HashSet<>();

    WeekSigns(List<Usual> batches, List<WatchedShift> shifts) {
        this.batches = List.copyOf(batches);
        this.odd =
                batches.stream().flatMap(usual -> WeekSign.of(usual).stream()).toList();
        this.shifts = new ArrayList<>(shifts);
    }

    List<Usual> batches() {
        return batches;
    }

    /** Returns all numbers of batches that lie outside of the usual, accounted for or not. */
    List<WeekSign> odd() {
        return odd;
    }

    /** Returns those that nothing accounts for yet. */
    List<WeekSign> open() {
        return odd.stream().filter(sign -> !explained.contains(sign)).toList();
    }

    /** Returns the numbers that moved and that no probe accounts for. */
    List<WatchedShift> shifts() {
        return List.copyOf(shifts);
    }

    /** Takes a sign; returns whether nothing accounted for it before. */
    boolean take(WeekSign sign) {
        return explained.add(sign);
    }

    /** Returns the names of the numbers of a batch that a cause accounts for. */
    Set<String> explainedOf(Usual usual) {
        return odd.stream()
                .filter(sign -> sign.usual() == usual && explained.contains(sign))
                .map(sign -> sign.feature().name())
                .collect(Collectors.toSet());
    }

    /** Tells whether the curve of a batch was perhaps read by a probe that the others were not read by. */
    boolean mayBeOfAnotherProbe(Usual usual) {
        return onAnotherProbe.contains(usual.batch().name());
    }

    /**
     * Takes the readings of a machine that lie to one side since a day, for a change of its probe accounts for them; returns them in words. Of
     * what moved most must have been roasted since: a sum may begin to grow with a batch before.
     */
    List<String> takenByProbe(String machine, int side, LocalDate since) {
        List<String> words = new ArrayList<>();
        for (WeekSign sign : odd) {
            if (sign.isReading()
                    && sign.side() == side
                    && sign.machine().equals(machine)
                    && !sign.day().isBefore(since)
                    && explained.add(sign)) {
                words.add(sign.words());
            }
        }
        for (WatchedShift shift : List.copyOf(shifts)) {
            if (WeekSign.isReading(shift.watch().feature())
                    && shift.side() == side
                    && shift.from().machine().orElse("").equals(machine)
                    && shift.isMostlySince(since)) {
                shifts.remove(shift);
                words.add(shift.words());
            }
        }
        return words;
    }

    /** Remembers that what a machine roasted since a day was perhaps read by a probe that the others were not read by. */
    void isPerhapsOnAnotherProbe(String machine, LocalDate since) {
        batches.stream()
                .map(Usual::batch)
                .filter(batch -> batch.machine().orElse("").equals(machine))
                .filter(batch -> !batch.roastDay().orElseThrow().isBefore(since))
                .forEach(batch -> onAnotherProbe.add(batch.name()));
    }
}
