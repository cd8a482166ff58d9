package parchment.virtual;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import parchment.virtual.chance.Chance;
import parchment.virtual.chance.Seed;
import parchment.virtual.people.Cupper;
import parchment.virtual.written.PlannedBatch;
import parchment.virtual.written.VirtualBatch;
import parchment.virtual.written.VirtualCupping;

/** Settles which batches are cupped, when, by whom and how. */
final class CuppingCalendar {
    private final Story story;
    private final Panel panel;
    private final Seed seed;

    CuppingCalendar(Story story, Panel panel, Seed seed) {
        this.story = story;
        this.panel = panel;
        this.seed = seed;
    }

    /** Cups some days after each roast day; a batch that has stayed away waits for the next table, some are cupped twice. */
    List<VirtualCupping> hold(List<VirtualBatch> batches) {
        List<VirtualCupping> cuppings = new ArrayList<>();
        List<VirtualBatch> waiting = new ArrayList<>();
        for (int i = 0; i < batches.size(); i++) {
            VirtualBatch batch = batches.get(i);
            if (isCupped(batch)) {
                waiting.add(batch);
            }
            boolean last = i == batches.size() - 1;
            boolean dayEnds = last || !day(batches.get(i + 1)).equals(day(batch));
            if (dayEnds && (last || waiting.size() >= 3)) {
                hold(day(batch), waiting, last, cuppings);
            }
        }
        return cuppings;
    }

    /** Cups every batch, blind and before anybody speaks, with every cupper at the table and batches mixed among the tables. */
    List<VirtualCupping> holdAll(List<VirtualBatch> batches) {
        List<VirtualBatch> order = seed.stream("planned tables").shuffled(batches);
        LocalDate last = day(batches.get(batches.size() - 1));
        List<VirtualCupping> cuppings = new ArrayList<>();
        int most = story.cuppings().mostBatches();
        for (int from = 0; from < order.size(); from += most) {
            String name = String.format(java.util.Locale.ROOT, "P%02d", cuppings.size() + 1);
            cuppings.add(panel.cup(
                    name,
                    last.plusDays(4 + cuppings.size() / 2),
                    order.subList(from, StrictMath.min(order.size(), from + most)),
                    story.cuppings().cups(),
                    panel.cuppers(),
                    VirtualCupping.Blind.YES,
                    VirtualCupping.Talk.SCORED_BEFORE));
        }
        return cuppings;
    }

    private void hold(LocalDate roastDay, List<VirtualBatch> waiting, boolean last, List<VirtualCupping> cuppings) {
        Chance chance = seed.stream("table " + roastDay);
        do {
            int most = story.cuppings().mostBatches();
            List<VirtualBatch> table = new ArrayList<>(waiting.subList(0, StrictMath.min(most, waiting.size())));
            waiting.subList(0, table.size()).clear();
            // Now and then a batch comes back, so that two tables share one.
            if (story.cuppings().cups() > 1 && !table.isEmpty() && chance.happens(0.3)) {
                waiting.add(chance.pick(table));
            }
            if (!table.isEmpty()) {
                String name = String.format(java.util.Locale.ROOT, "C%02d", cuppings.size() + 1);
                cuppings.add(panel.cup(
                        name,
                        roastDay.plusDays(3 + chance.below(4)),
                        table,
                        story.cuppings().cups(),
                        present(chance),
                        chance.happens(story.cuppings().openRate())
                                ? VirtualCupping.Blind.NO
                                : VirtualCupping.Blind.YES,
                        chance.happens(story.cuppings().talkRate())
                                ? VirtualCupping.Talk.SCORED_AFTER
                                : VirtualCupping.Talk.SCORED_BEFORE));
            }
        } while (last && !waiting.isEmpty());
    }

    private List<Cupper> present(Chance chance) {
        List<Cupper> all = panel.cuppers();
        int fewest = StrictMath.min(story.cuppings().fewest(), all.size());
        int number = fewest + chance.below(all.size() - fewest + 1);
        return chance.shuffled(all).subList(0, number);
    }

    /** Batches far from the usual drop are cupped a little more often: they raise questions. */
    private boolean isCupped(VirtualBatch batch) {
        double share = story.cuppings().share();
        double unusual = StrictMath.min(1, StrictMath.abs(batch.dropReading() - 204) / 6);
        boolean drawn = batch.plan().plan() == PlannedBatch.Plan.CHANCE;
        double probability = share >= 1 || drawn ? StrictMath.max(share, 0.9) : share - 0.1 + 0.2 * unusual;
        return seed.stream("cupped " + batch.name()).happens(probability);
    }

    private static LocalDate day(VirtualBatch batch) {
        return batch.plan().roastedAt().toLocalDate();
    }
}
