package parchment.virtual;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import parchment.display.Progress;
import parchment.file.WholeFolder;
import parchment.virtual.chance.Seed;
import parchment.virtual.people.FlavourSurface;
import parchment.virtual.physics.VirtualChecks;
import parchment.virtual.written.VirtualBatch;
import parchment.virtual.written.VirtualLot;

/**
 * Runs an invented roastery for a year or so and returns its logbook together with the truth behind it.
 *
 * <p>{@code VirtualRoastery.harbour().withSeed(7).withBatches(80).run()} is a logbook of 80 batches. Equal settings give equal
 * logbooks, on every machine and with any number of processors. The first batches do not change when more are asked for.
 */
public final class VirtualRoastery {
    /** Seed of the committed demo logbooks. */
    public static final long DEMO_SEED = 20240109;

    /** Batches that {@link #write} holds whole at a time; each takes about 0.1 MB. */
    private static final int BLOCK = 256;

    private final Story story;
    private final Seed seed;
    private final int batches;

    private VirtualRoastery(Story story, Seed seed, int batches) {
        this.story = story;
        this.seed = seed;
        this.batches = batches;
    }

    /** Returns the roastery of a scenario, with the seed of the demo logbooks and as many batches as the scenario says. */
    public static VirtualRoastery of(Scenario scenario) {
        return new VirtualRoastery(
                scenario.story(),
                Seed.of(DEMO_SEED),
                scenario.story().calendar().batches());
    }

    /** Returns the harbour-town roastery with 240 batches: the demo logbook. */
    public static VirtualRoastery harbour() {
        return of(Scenario.named("harbour"));
    }

    /** Returns the hillside roastery with 40 batches, awkward on purpose: °F, blanks, one cupper, no air probe. */
    public static VirtualRoastery hillside() {
        return of(Scenario.named("hillside"));
    }

    /** Returns the same roastery with another seed: the same people and lots, other days. */
    public VirtualRoastery withSeed(long other) {
        return withSeed(Seed.of(other));
    }

    /** Returns the same roastery with another seed: the same people and lots, other days. */
    public VirtualRoastery withSeed(Seed other) {
        return new VirtualRoastery(story, other, batches);
    }

    /** Returns the same roastery with another number of batches; the calendar grows with it. */
    public VirtualRoastery withBatches(int number) {
        VirtualChecks.positive("number of batches", number);
        return new VirtualRoastery(story, seed, number);
    }

    /** Returns how many batches it roasts. */
    public int batches() {
        return batches;
    }

    /** Returns the same roastery opened on another day: the calendar of lots, upkeep and seasons stays where it is. */
    public VirtualRoastery startingOn(LocalDate day) {
        return new VirtualRoastery(story.startingOn(day), seed, batches);
    }

    /**
     * Returns the same roastery with another true flavour.
     *
     * @throws IllegalArgumentException if the surfaces are not of the same attributes in the same order
     */
    public VirtualRoastery withSurfaces(List<FlavourSurface> surfaces) {
        List<String> attributes =
                surfaces.stream().map(FlavourSurface::attribute).toList();
        if (!attributes.equals(story.attributes())) {
            throw new IllegalArgumentException("The roastery scores " + String.join(", ", story.attributes())
                    + ", but the surfaces given are of " + String.join(", ", attributes)
                    + ". Give one surface of each, in that order.");
        }
        return new VirtualRoastery(story.withSurfaces(surfaces), seed, batches);
    }

    /** Returns the true flavour of each attribute; what the scenario leaves to the seed is drawn from this one. */
    public List<FlavourSurface> surfaces() {
        return story.drawn(seed).surfaces();
    }

    /**
     * Roasts and cups everything, and keeps every second of it in memory: about 0.1 MB for each batch.
     *
     * @throws IllegalArgumentException if a day comes on which no lot is in store
     */
    public VirtualLogbook run() {
        try (Progress progress = Progress.of(batches, "roasting invented batches")) {
            return cupped(settled().roasted(turns(), progress));
        }
    }

    /**
     * Roasts and cups everything and writes the logbook into a folder that is empty or does not exist yet: the same files as
     * {@code run().writeTo(folder)}, but most of what happened is forgotten once its curve is written, so that it can be many batches.
     *
     * @return the logbook, without curves and without what happened between charge and drop
     * @throws IOException if the folder holds something already, or cannot be written
     * @throws IllegalArgumentException if a day comes on which no lot is in store
     */
    public VirtualLogbook write(Path folder) throws IOException {
        return write(folder, BLOCK);
    }

    VirtualLogbook write(Path folder, int blockSize) throws IOException {
        LogbookFolder.checkEmpty(folder);
        return WholeFolder.at(folder).fill(aside -> writeAside(aside, blockSize));
    }

    private VirtualLogbook writeAside(Path folder, int blockSize) throws IOException {
        List<SeasonPlan.Turn> turns = turns();
        VirtualRoastery settled = settled();
        List<VirtualBatch> kept = new ArrayList<>();
        try (Progress progress = Progress.of(batches, "roasting invented batches")) {
            for (int from = 0; from < turns.size(); from += blockSize) {
                List<VirtualBatch> block =
                        settled.roasted(turns.subList(from, Math.min(turns.size(), from + blockSize)), progress);
                LogbookFolder.add(
                        new VirtualLogbook(settled.story, seed, block, List.of(), List.of()).curves(), folder);
                block.forEach(batch -> kept.add(batch.withoutCourse()));
            }
        }
        VirtualLogbook logbook = cupped(kept);
        LogbookFolder.add(logbook.filesBesideCurves(), folder);
        return logbook;
    }

    /**
     * Roasts what somebody has planned, on the days after the roastery's last batch, and cups it blind with every cupper at the
     * table. The drop follows the plan and not smell. Equal plans give equal batches.
     *
     * @throws IllegalArgumentException if a lot is not in store on the day; the message names the plan's line
     */
    public VirtualLogbook roast(RoastPlan plan) {
        VirtualRoastery settled = settled();
        List<SeasonPlan.Turn> past = turns();
        LocalDate last = past.get(past.size() - 1).plan().roastedAt().toLocalDate();
        List<SeasonPlan.Turn> turns = new SeasonPlan(settled.story, seed).turns(plan, last);
        try (Progress progress = Progress.of(turns.size(), "roasting planned batches")) {
            List<VirtualBatch> roasted = settled.roasted(turns, progress);
            Panel panel = Panel.of(settled.story, seed);
            return new VirtualLogbook(
                    settled.story,
                    seed,
                    roasted,
                    panel.cuppers(),
                    new CuppingCalendar(settled.story, panel, seed).holdAll(roasted));
        }
    }

    /** Returns the lots in store after the roastery's last batch, from which a plan may choose. */
    public List<String> lotsInStore() {
        List<SeasonPlan.Turn> past = turns();
        SeasonPlan calendar = new SeasonPlan(story, seed);
        LocalDate day =
                calendar.nextDay(past.get(past.size() - 1).plan().roastedAt().toLocalDate());
        return story.lots().stream()
                .filter(lot -> lot.isThere(day))
                .map(VirtualLot::name)
                .toList();
    }

    private List<SeasonPlan.Turn> turns() {
        return new SeasonPlan(story, seed).turns(batches);
    }

    /** Returns the roastery with everything drawn that its scenario leaves to the seed. */
    private VirtualRoastery settled() {
        return new VirtualRoastery(story.drawn(seed), seed, batches);
    }

    /** Each batch draws from streams of its own, so that it does not matter which processor roasts it, and when. */
    private List<VirtualBatch> roasted(List<SeasonPlan.Turn> turns, Progress progress) {
        BatchMaker maker = new BatchMaker(story, seed);
        return IntStream.range(0, turns.size())
                .parallel()
                .mapToObj(i -> {
                    VirtualBatch batch =
                            maker.make(turns.get(i).plan(), turns.get(i).operator());
                    progress.step();
                    return batch;
                })
                .toList();
    }

    private VirtualLogbook cupped(List<VirtualBatch> roasted) {
        Story drawn = story.drawn(seed);
        LocalDate end = roasted.get(roasted.size() - 1).plan().roastedAt().toLocalDate();
        Story told = drawn.withLots(drawn.lots().stream()
                .filter(lot -> lot.isFirstCrop() || !lot.arrivedOn().isAfter(end))
                .toList());
        Panel panel = Panel.of(told, seed);
        return new VirtualLogbook(
                told, seed, roasted, panel.cuppers(), new CuppingCalendar(told, panel, seed).hold(roasted));
    }
}
