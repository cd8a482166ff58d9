package parchment.logbook;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import parchment.display.Display;
import parchment.display.Showable;
import parchment.logbook.contents.Cautions;
import parchment.logbook.contents.EmptyLogbook;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.contents.LogbookException;
import parchment.logbook.written.CupScores;
import parchment.logbook.written.Cupping;
import parchment.logbook.written.Machine;
import parchment.logbook.written.Problem;
import parchment.logbook.written.Upkeep;
import parchment.quantity.MassUnit;
import parchment.quantity.TemperatureUnit;
import parchment.sheet.Words;

/**
 * An opened collection of batches, lots and cuppings: where every question begins.
 *
 * <pre>{@code
 * var mine = Logbook.open();          // the logbook that the session was started with
 * mine.ofLot(mine.lots().get(0).name())
 * }</pre>
 *
 * <p>Batches are in the order they were roasted; those without a date come last, by name. A filtered logbook keeps its lots,
 * machines and upkeep, and drops the scores of the batches that were left out.
 */
public final class Logbook implements Showable {
    private final LogbookContents contents;
    private final Map<String, Batch> byName;
    private final Optional<Logbook> whole;
    private final Remembered remembered = new Remembered();

    /**
     * Holds the range of an attribute's scores.
     *
     * @param low the lowest score that can be given
     * @param high the highest score that can be given
     */
    public record Scale(double low, double high) {}

    /** Says what the roaster writes down as the start of first crack. */
    public enum CrackHabit {
        /** The first pop that is heard. */
        FIRST_POP,
        /** The moment the popping becomes steady. */
        STEADY_POPPING,
        /** The logbook does not say. */
        NOT_WRITTEN
    }

    /** Says where the batches come from. */
    public enum Provenance {
        /** Roasted by somebody, as far as the logbook says. */
        ROASTED,
        /** Made up by a virtual roastery: nothing of it may be carried over to a machine. */
        INVENTED
    }

    private Logbook(LogbookContents contents, Optional<Logbook> whole) {
        this.contents = contents;
        this.whole = whole;
        Map<String, Batch> index = new LinkedHashMap<>();
        contents.batches().forEach(batch -> index.putIfAbsent(batch.name(), batch));
        this.byName = Collections.unmodifiableMap(index);
    }

    /** Returns a logbook of the given contents, for tests and for logbooks that are not in a folder. */
    public static Logbook of(LogbookContents contents) {
        if (contents.provenance() == Provenance.INVENTED) {
            Display.holdsForPage(Cautions.INVENTED_PAGE);
        }
        return new Logbook(contents, Optional.empty());
    }

    /**
     * Opens the logbook that this session was started with.
     *
     * <p>It is named by the system property {@code parchment.logbook}, or else by the environment variable {@code PARCHMENT_LOGBOOK}.
     *
     * @throws LogbookException if neither names a folder, or the folder holds no logbook
     */
    public static Logbook open() {
        return OpenedWith.session(System.getProperty(OpenedWith.PROPERTY), System.getenv(OpenedWith.VARIABLE));
    }

    /**
     * Opens a logbook folder. What cannot be read as written is listed in {@link #problems()}; nothing in the folder is ever changed.
     *
     * @param folder the folder's path; "~" stands for the home folder
     * @throws LogbookException if there is no such folder, or it holds no logbook
     */
    public static Logbook open(String folder) {
        return open(OpenedWith.path(folder));
    }

    /**
     * Opens a logbook folder. What cannot be read as written is listed in {@link #problems()}; nothing in the folder is ever changed.
     *
     * @throws LogbookException if there is no such folder, or it holds no logbook
     */
    public static Logbook open(Path folder) {
        return FolderReader.open(folder, Optional.empty());
    }

    /**
     * Opens a logbook folder whose curve files have a layout of their own.
     *
     * @throws LogbookException if there is no such folder, or it holds no logbook
     */
    public static Logbook open(Path folder, CurveLayout layout) {
        return FolderReader.open(folder, Optional.of(layout));
    }

    /**
     * Opens a logbook folder in which everything must be as the format says.
     *
     * @throws LogbookException with the words of the first problem, if there is one
     */
    public static Logbook openStrictly(Path folder) {
        Logbook logbook = open(folder);
        for (Problem problem : logbook.problems()) {
            throw new LogbookException(problem.toString());
        }
        return logbook;
    }

    /** Returns the logbook's name. */
    public String name() {
        return contents.name();
    }

    /** Returns everything the logbook was made of. */
    public LogbookContents contents() {
        return contents;
    }

    /** Returns the batches in the order they were roasted. */
    public List<Batch> batches() {
        return contents.batches();
    }

    /**
     * Returns one batch.
     *
     * @throws LogbookException if the logbook has no batch of that name
     */
    public Batch batch(String batchName) {
        Batch found = byName.get(batchName);
        if (found == null && EmptyLogbook.isName(batchName) && whole().batches().isEmpty()) {
            return EmptyLogbook.batch(readerUnit());
        }
        if (found == null) {
            throw new LogbookException(String.format(
                    Locale.ROOT,
                    "The logbook '%s' has no batch %s.%s It has %s%s.",
                    name(),
                    Words.quote(batchName),
                    Words.didYouMean(batchName, byName.keySet()),
                    Words.count(byName.size(), "batch", "batches"),
                    byName.isEmpty()
                            ? ""
                            : ", such as "
                                    + Words.quote(byName.keySet().iterator().next())));
        }
        return found;
    }

    /** Returns one batch, or nothing if there is none of that name. */
    public Optional<Batch> find(String batchName) {
        return Optional.ofNullable(byName.get(batchName));
    }

    /**
     * Returns the newest batch that has a bean-temperature curve; the newest of all if none has one. A logbook that holds no batch yet
     * answers with one of which nothing is known, so that whatever is asked about it says what is missing.
     *
     * @throws LogbookException if the batches were chosen and none was left
     */
    public Batch lastWithCurve() {
        return batches().stream()
                .filter(batch -> batch.beanTemperature().isPresent())
                .reduce((earlier, later) -> later)
                .or(() -> batches().stream().reduce((earlier, later) -> later))
                .orElseGet(() -> {
                    if (!whole().batches().isEmpty()) {
                        throw new LogbookException("Of the "
                                + Words.count(whole().batches().size(), "batch", "batches") + " of "
                                + Words.quote(name()) + " none was chosen, so there is no newest. Choose others.");
                    }
                    return EmptyLogbook.batch(readerUnit());
                });
    }

    /** Returns the lots. */
    public List<Lot> lots() {
        return contents.lots();
    }

    /** Returns the machines. */
    public List<Machine> machines() {
        return contents.machines();
    }

    /** Returns every cupper's scores of every cup. */
    public List<CupScores> cups() {
        return contents.cups();
    }

    /** Returns the work that was done on the machines, oldest first. */
    public List<Upkeep> upkeep() {
        return contents.upkeep();
    }

    /** Returns how one cupping was held, if it was written. */
    public Optional<Cupping> cupping(String cuppingName) {
        return contents.cuppings().stream()
                .filter(c -> c.name().equals(cuppingName))
                .findFirst();
    }

    /** Returns the attributes that this roastery scores, in the order of the columns. */
    public Set<String> attributes() {
        Set<String> attributes = new LinkedHashSet<>();
        cups().forEach(cup -> attributes.addAll(cup.scores().keySet()));
        return Collections.unmodifiableSet(attributes);
    }

    /**
     * Returns the first of the wished attributes that this roastery scores; if it scores none of them, the first attribute that it
     * does score; if nothing was ever scored, the first wish. So a question can be asked of any logbook, and its answer says which
     * attribute it is about.
     */
    public String scored(String wished, String... orElse) {
        Set<String> attributes = attributes();
        List<String> wishes = new ArrayList<>();
        wishes.add(wished);
        wishes.addAll(List.of(orElse));
        return wishes.stream()
                .filter(attributes::contains)
                .findFirst()
                .orElse(attributes.stream().findFirst().orElse(wished));
    }

    /** Returns where the batches come from; a logbook that does not say counts as roasted. */
    public Provenance provenance() {
        return contents.provenance();
    }

    /** Returns what could not be read as written. */
    public Problems problems() {
        return contents.problems();
    }

    /**
     * Returns what tells this logbook from every other, whatever their names: the folder that it was read from, or, for one that is in no folder, what
     * its cups hold. A filter and the reader's scale of temperature make no other logbook.
     */
    public String identity() {
        return contents.folder()
                .map(Path::toString)
                .orElseGet(() -> "cups " + Integer.toHexString(new LinkedHashSet<>(whole().cups()).hashCode()));
    }

    /** Returns the temperature scale that results are shown in. */
    public TemperatureUnit readerUnit() {
        return contents.readerUnit();
    }

    /** Returns the unit that masses are shown in: the one that the green masses are written in. */
    public MassUnit massUnit() {
        return contents.massUnit();
    }

    /** Returns the same logbook with results shown on another temperature scale. */
    public Logbook in(TemperatureUnit unit) {
        Map<String, Batch> changed = new LinkedHashMap<>();
        whole().batches()
                .forEach(batch -> changed.putIfAbsent(
                        batch.name(), batch.toBuilder().readerUnit(unit).build()));
        Logbook all = new Logbook(
                whole().contents.toBuilder()
                        .readerUnit(unit)
                        .batches(List.copyOf(changed.values()))
                        .build(),
                Optional.empty());
        return whole.isEmpty() ? all : all.only(batch -> byName.containsKey(batch.name()));
    }

    /** Returns the logbook of those batches for which a condition holds. */
    public Logbook only(Predicate<Batch> condition) {
        return with(batches().stream().filter(condition).toList());
    }

    /**
     * Returns the logbook of the named batches, as in {@code logbook.only("H012", "H031")}.
     *
     * @throws LogbookException if the logbook has no batch of one of the names
     */
    public Logbook only(String batchName, String... more) {
        Set<String> wanted = new LinkedHashSet<>();
        wanted.add(batch(batchName).name());
        for (String name : more) {
            wanted.add(batch(name).name());
        }
        return only(batch -> wanted.contains(batch.name()));
    }

    /**
     * Returns the logbook of one lot's batches.
     *
     * @throws LogbookException if no batch and no row of lots.csv or blends.csv has a lot of that name
     */
    public Logbook ofLot(String lot) {
        Set<String> known = new LinkedHashSet<>();
        lots().forEach(l -> known.add(l.name()));
        contents.blends().forEach(part -> known.add(part.blend()));
        whole().batches().forEach(batch -> batch.lot().ifPresent(known::add));
        if (!known.contains(lot)) {
            throw new LogbookException("The logbook " + Words.quote(name()) + " has no lot " + Words.quote(lot) + "."
                    + Words.didYouMean(lot, known)
                    + (known.isEmpty()
                            ? whole().problems()
                                    .batchesLeftOut()
                                    .map(why -> " The reason: " + why + ".")
                                    .orElse(" No batch names a lot.")
                            : " Lots: " + Words.some(known) + "."));
        }
        return only(batch -> batch.lot().filter(lot::equals).isPresent());
    }

    /** Returns the logbook of the batches roasted from one day to another, both included; undated batches are left out. */
    public Logbook between(LocalDate first, LocalDate last) {
        return only(batch -> batch.roastDay()
                .filter(day -> !day.isBefore(first) && !day.isAfter(last))
                .isPresent());
    }

    private Logbook with(List<Batch> batches) {
        Set<String> names = new LinkedHashSet<>();
        batches.forEach(batch -> names.add(batch.name()));
        List<CupScores> cups = new ArrayList<>();
        for (CupScores cup : contents.cups()) {
            if (names.contains(cup.batch())) {
                cups.add(cup);
            }
        }
        return new Logbook(contents.toBuilder().batches(batches).cups(cups).build(), Optional.of(whole()));
    }

    /**
     * Returns what was worked out of this logbook before, or works it out now and keeps it: a logbook never changes, so neither does
     * what follows from it. It is let go with the logbook, and before memory runs out. For rooms that measure every batch; not needed
     * in a notebook.
     *
     * @param what the kind of result, one per kind
     * @param work must depend on the logbook alone
     */
    public <T> T remembered(Class<T> what, Function<Logbook, T> work) {
        return remembered.of(what, () -> work.apply(this));
    }

    /**
     * Returns the logbook before any filter. What is a fact of a day or a machine is worked out over all of it: a batch that a filter left out
     * heated the machine all the same.
     */
    public Logbook whole() {
        return whole.orElse(this);
    }

    @Override
    public String text() {
        return LogbookSummary.of(this).text();
    }

    @Override
    public Optional<String> html() {
        return LogbookSummary.of(this).html();
    }

    @Override
    public String toString() {
        long curves = batches().stream()
                .filter(b -> b.logged().contains(Quantity.BEAN_TEMPERATURE))
                .count();
        long cuppings = cups().stream().map(CupScores::cupping).distinct().count();
        // A batch names its blend where others name their lot.
        long roasted = batches().stream()
                .flatMap(batch -> batch.lot().stream())
                .filter(lot -> contents.blends().stream()
                        .noneMatch(part -> part.blend().equals(lot)))
                .distinct()
                .count();
        return String.format(
                Locale.ROOT,
                "%s: %s (%d with a curve), %s, %s scored in %s, %s in reading",
                name(),
                Words.count(batches().size(), "batch", "batches"),
                curves,
                Words.count(roasted, "lot", "lots"),
                Words.count(cups().size(), "cup", "cups"),
                Words.count(cuppings, "cupping", "cuppings"),
                Words.count(problems().size(), "problem", "problems"));
    }
}
