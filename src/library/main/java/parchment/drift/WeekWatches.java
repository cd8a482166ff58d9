package parchment.drift;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.logbook.Logbook;

/**
 * Watches the numbers of each lot that a week roasted.
 *
 * @param shifts which of them moved and still lie where they moved to
 * @param charts how many numbers of lots were watched
 * @param notWatched which could not be, in sentences
 */
record WeekWatches(List<WatchedShift> shifts, int charts, List<String> notWatched) {
    static final List<Feature> WATCHED = List.of(
            Features.dryingTime(),
            Features.browningTime(),
            Features.developmentTime(),
            Features.firstCrackTemperature(),
            Features.massLoss());

    /** Copies the lists. */
    WeekWatches {
        shifts = List.copyOf(shifts);
        notWatched = List.copyOf(notWatched);
    }

    /** Watches what can be watched of the lots of some batches; a shift is told if one of them signals it and it is still there. */
    static WeekWatches of(Logbook logbook, List<Usual> batches) {
        List<WatchedShift> shifts = new ArrayList<>();
        List<String> notWatched = new ArrayList<>();
        int charts = 0;
        Set<String> names = batches.stream().map(u -> u.batch().name()).collect(Collectors.toSet());
        Set<String> lots = new TreeSet<>();
        batches.forEach(u -> u.batch().lot().ifPresent(lots::add));
        Map<String, List<String>> unwatched = new LinkedHashMap<>();
        for (String lot : lots) {
            List<String> without = new ArrayList<>();
            Logbook own = logbook.ofLot(lot);
            WatchDesigns designs = new WatchDesigns();
            for (Feature feature : WATCHED) {
                Watch watch = Watch.of(own, feature, designs);
                if (watch.hasLimits()) {
                    charts++;
                    WatchedShift.of(watch, names).ifPresent(shifts::add);
                } else {
                    without.add(feature.name());
                }
            }
            if (!without.isEmpty()) {
                unwatched
                        .computeIfAbsent(String.join(", ", without), numbers -> new ArrayList<>())
                        .add(lot);
            }
        }
        unwatched.forEach((numbers, of) -> notWatched.add("Not watched for " + (of.size() == 1 ? "lot " : "lots ")
                + String.join(", ", of) + ": " + numbers + " (that needs 10 batches on this probe that differ)."));
        return new WeekWatches(shifts, charts, notWatched);
    }
}
