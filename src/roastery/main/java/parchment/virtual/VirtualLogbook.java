package parchment.virtual;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import parchment.display.Html;
import parchment.display.Showable;
import parchment.logbook.Logbook;
import parchment.logbook.contents.Cautions;
import parchment.virtual.chance.Seed;
import parchment.virtual.people.Cupper;
import parchment.virtual.people.FlavourSurface;
import parchment.virtual.written.Overprint;
import parchment.virtual.written.VirtualBatch;
import parchment.virtual.written.VirtualCupping;
import parchment.virtual.written.VirtualLot;

/** What a run of the virtual roastery made: every batch and cupping, with the truth behind them. */
public final class VirtualLogbook implements Showable {
    /** What every sheet of the virtual roastery says. */
    public static final String WARNING = Cautions.INVENTED_MACHINE;

    private final Story story;
    private final Seed seed;
    private final List<VirtualBatch> batches;
    private final List<Cupper> cuppers;
    private final List<VirtualCupping> cuppings;

    VirtualLogbook(
            Story story, Seed seed, List<VirtualBatch> batches, List<Cupper> cuppers, List<VirtualCupping> cuppings) {
        this.story = story;
        this.seed = seed;
        this.batches = List.copyOf(batches);
        this.cuppers = List.copyOf(cuppers);
        this.cuppings = List.copyOf(cuppings);
    }

    /** Returns the roastery's name. */
    public String name() {
        return story.name();
    }

    /** Returns the seed. */
    public Seed seed() {
        return seed;
    }

    /** Returns the batches, oldest first. */
    public List<VirtualBatch> batches() {
        return batches;
    }

    /** Returns the cuppings, oldest first. */
    public List<VirtualCupping> cuppings() {
        return cuppings;
    }

    /** Returns the attributes, in the order of every list of points. */
    public List<String> attributes() {
        return story.attributes();
    }

    /** Returns the true surface of each attribute. */
    public List<FlavourSurface> surfaces() {
        return story.surfaces();
    }

    /** Returns the cuppers with their true habits. */
    public List<Cupper> cuppers() {
        return cuppers;
    }

    /** Returns the lots with the truth about them. */
    public List<VirtualLot> lots() {
        return story.lots();
    }

    /** Returns the work on the machine that is written down: nobody writes what comes after the last roast. */
    List<Story.Work> upkeep() {
        return batches.isEmpty()
                ? story.upkeep()
                : story.upkeep().stream()
                        .filter(work -> !work.day().isAfter(lastDay()))
                        .toList();
    }

    private LocalDate lastDay() {
        return batches.get(batches.size() - 1).plan().roastedAt().toLocalDate();
    }

    Story story() {
        return story;
    }

    /** Returns the logbook's files by their paths within its folder, as text; the truth is not among them. */
    public Map<String, String> files() {
        Map<String, String> files = filesBesideCurves();
        files.putAll(curves());
        return files;
    }

    /** Returns the files of the curves. */
    Map<String, String> curves() {
        LogbookTables tables = new LogbookTables(this);
        Map<String, String> files = new TreeMap<>();
        for (VirtualBatch batch : batches) {
            WrittenTable table = tables.curve(batch);
            files.put(table.path(), table.text());
        }
        return files;
    }

    /** Returns all other files; they take nothing from the curves' readings. */
    Map<String, String> filesBesideCurves() {
        Map<String, String> files = new TreeMap<>();
        List<WrittenTable> tables = new LogbookTables(this).all();
        for (WrittenTable table : tables) {
            if (!LogbookTables.isCurve(table)) {
                files.put(table.path(), table.text());
            }
        }
        files.put("logbook.properties", LogbookTables.properties(this));
        files.put("README.md", LogbookTables.readme(this));
        files.put("datapackage.json", new DataPackage(this, tables).text());
        files.put(DataPackage.CURVE_SCHEMA, new DataPackage(this, tables).curveSchema());
        return files;
    }

    /**
     * Writes the logbook into a folder that is empty or does not exist yet.
     *
     * @throws IOException if the folder holds something already, or cannot be written
     */
    public void writeTo(Path folder) throws IOException {
        LogbookFolder.write(files(), folder);
    }

    /** Opens the logbook in memory, with the numbers that its files would hold; quicker than writing and reading a folder. */
    public Logbook opened() {
        return new OpenedLogbook(this).open();
    }

    /** Returns the truth, to be sealed. */
    public SealedTruth truth() {
        return SealedTruth.of(this);
    }

    @Override
    public String toString() {
        long scores =
                cuppings.stream().mapToLong(cupping -> cupping.scores().size()).sum();
        return String.format(
                Locale.ROOT,
                "%s, %s: %s, %s, %s. %s",
                name(),
                seed.isSecret() ? "from a secret seed" : "seed " + seed,
                count(batches.size(), "batch", "batches"),
                count(cuppings.size(), "cupping", "cuppings"),
                count(scores, "scored cup", "scored cups"),
                WARNING);
    }

    private static String count(long number, String one, String more) {
        return number + " " + (number == 1 ? one : more);
    }

    @Override
    public java.util.Optional<String> html() {
        return java.util.Optional.of(Overprint.over("<p>" + Html.escape(toString()) + "</p>"));
    }
}
