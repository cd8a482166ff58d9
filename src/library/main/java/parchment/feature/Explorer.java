package parchment.feature;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import parchment.align.Clock;
import parchment.display.Showable;
import parchment.display.page.ChosenNames;
import parchment.display.page.LinkedViews;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookContents;
import parchment.quantity.TemperatureUnit;

/**
 * Looks over many batches at once, on one page of pictures that hang together: the bean temperature on a clock, the pace along the
 * temperature, one feature against another, and the scores.
 *
 * <p>What is chosen in one picture is set off in all of them and in the table below, and comes out as a line of Java for the next cell.
 * Batches can be filtered by lot, machine, dates and whether they were cupped. The page needs no network. A batch lacks in a picture
 * whose numbers it does not have; the sentence under the picture counts it.
 *
 * <p>Defaults: the clock since charge; every built-in feature that the batches tell apart; the first attribute that was scored.
 *
 * <pre>{@code
 * Explorer.of(logbook)
 * Explorer.of(logbook.ofLot("Cinder Ridge")).withClock(Clock.SINCE_FIRST_CRACK_START)
 * Explorer.of(logbook).withFeatures(dropTemperature(), developmentTime())
 * }</pre>
 */
public final class Explorer implements Showable {
    private final Logbook logbook;
    private final Clock clock;
    private final List<Feature> features;
    private final Optional<String> attribute;
    private final ChosenNames chosen;

    private Explorer(
            Logbook logbook, Clock clock, List<Feature> features, Optional<String> attribute, List<String> first) {
        this.logbook = logbook;
        this.clock = clock;
        this.features = features;
        this.attribute = attribute;
        this.chosen = ChosenNames.among("batch", names(logbook), first, "as a logbook, with chosen()");
    }

    /** Returns the explorer of a logbook's batches. */
    public static Explorer of(Logbook logbook) {
        return new Explorer(logbook, Clock.SINCE_CHARGE, Features.all().list(), Optional.empty(), List.of());
    }

    /** Returns the explorer of some batches; without their logbook they have no scores. */
    public static Explorer of(List<Batch> batches) {
        TemperatureUnit reader =
                batches.isEmpty() ? TemperatureUnit.CELSIUS : batches.get(0).readerUnit();
        return of(Logbook.of(LogbookContents.ofBatches("these batches", batches).toBuilder()
                .readerUnit(reader)
                .build()));
    }

    /** Returns the same explorer that starts on another clock. */
    public Explorer withClock(Clock other) {
        return new Explorer(logbook, other, features, attribute, chosen.names());
    }

    /** Returns the same explorer with the given features to choose from; the first two are the scatter picture's at the start. */
    public Explorer withFeatures(Feature... wanted) {
        return new Explorer(logbook, clock, Arrays.asList(wanted.clone()), attribute, chosen.names());
    }

    /** Returns the same explorer that starts with the scores of another attribute. */
    public Explorer withAttribute(String other) {
        return new Explorer(logbook, clock, features, Optional.of(other), chosen.names());
    }

    /** Returns the same explorer with temperatures on another scale. */
    public Explorer in(TemperatureUnit unit) {
        return new Explorer(logbook.in(unit), clock, features, attribute, chosen.names());
    }

    /**
     * Returns the same explorer that begins with some batches chosen.
     *
     * @throws parchment.logbook.contents.LogbookException if the logbook has no batch of one of the names
     */
    public Explorer withChosen(String batchName, String... more) {
        return new Explorer(logbook, clock, features, attribute, names(logbook.only(batchName, more)));
    }

    /**
     * Returns the logbook of the batches that are chosen in the explorer: in a live notebook those that a person chose in its pictures,
     * on any other page those that it began with.
     *
     * <p>What is chosen comes back where the notebook's client knows Jupyter Widgets. Elsewhere the line of code under the pictures
     * names the chosen batches.
     *
     * <pre>{@code
     * var explorer = Explorer.of(logbook);
     * explorer                                       // look, and choose; then, in the next cell:
     * PaceChart.of(explorer.chosen())
     * }</pre>
     *
     * <p>Of a logbook without batches it is that logbook.
     *
     * @throws IllegalStateException if no batch is chosen; the message says whether the page could have told
     */
    public Logbook chosen() {
        List<String> names = chosen.names();
        if (logbook.batches().isEmpty()) {
            return logbook; // There is nothing to choose from; what takes it says so.
        }
        if (names.isEmpty()) {
            String example = logbook.batches().get(0).name();
            throw new IllegalStateException(switch (chosen.wayBack()) {
                        case OPEN ->
                            "No batch is chosen in the explorer. Choose some in its pictures and run this cell again";
                        case SILENT ->
                            "No choice has come back from the explorer: it has not been shown, or the page it stands"
                                    + " on cannot bring a choice back. Show it, choose in its pictures, and run this cell again";
                        case CLOSED ->
                            "The page that the explorer stands on cannot bring a choice back. Copy the line of code"
                                    + " under its pictures";
                    }
                    + ", or name batches yourself: logbook.only(\"" + example + "\").");
        }
        return logbook.only(names.get(0), names.subList(1, names.size()).toArray(String[]::new));
    }

    private static List<String> names(Logbook of) {
        return of.batches().stream().map(Batch::name).toList();
    }

    @Override
    public Optional<String> html() {
        return page().html();
    }

    /** Returns the page. */
    public LinkedViews page() {
        return ExplorerPage.of(logbook, clock, features, attribute).withChosen(chosen);
    }

    @Override
    public String toString() {
        return "Explorer of " + logbook;
    }
}
