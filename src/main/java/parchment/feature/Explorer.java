package parchment.feature;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import parchment.align.Clock;
import parchment.display.LinkedViews;
import parchment.display.Showable;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.LogbookContents;
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

    private Explorer(Logbook logbook, Clock clock, List<Feature> features, Optional<String> attribute) {
        this.logbook = logbook;
        this.clock = clock;
        this.features = features;
        this.attribute = attribute;
    }

    /** Returns the explorer of a logbook's batches. */
    public static Explorer of(Logbook logbook) {
        return new Explorer(logbook, Clock.SINCE_CHARGE, Features.all().list(), Optional.empty());
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
        return new Explorer(logbook, other, features, attribute);
    }

    /** Returns the same explorer with the given features to choose from; the first two are the scatter picture's at the start. */
    public Explorer withFeatures(Feature... chosen) {
        return new Explorer(logbook, clock, Arrays.asList(chosen.clone()), attribute);
    }

    /** Returns the same explorer that starts with the scores of another attribute. */
    public Explorer withAttribute(String other) {
        return new Explorer(logbook, clock, features, Optional.of(other));
    }

    /** Returns the same explorer with temperatures on another scale. */
    public Explorer in(TemperatureUnit unit) {
        return new Explorer(logbook.in(unit), clock, features, attribute);
    }

    @Override
    public Optional<String> html() {
        return page().html();
    }

    /** Returns the page. */
    public LinkedViews page() {
        return ExplorerPage.of(logbook, clock, features, attribute);
    }

    @Override
    public String toString() {
        return "Explorer of " + logbook;
    }
}
