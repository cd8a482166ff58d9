package parchment.feature;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import parchment.align.Clock;
import parchment.align.OverlayChart;
import parchment.align.PaceLines;
import parchment.curve.CleanCurve;
import parchment.curve.Curve;
import parchment.display.page.LinkedNumber;
import parchment.display.page.LinkedPaths;
import parchment.display.page.LinkedViews;
import parchment.feature.path.BatchPath;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.written.CupScores;
import parchment.phase.Phases;
import parchment.phase.found.Mark;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/** Turns a logbook into the page of linked views: batches become names, labels, numbers and paths. */
final class ExplorerPage {
    private final Logbook logbook;
    private final TemperatureUnit reader;
    private final BatchTable table;
    private final List<Phases> phases;

    private ExplorerPage(Logbook logbook, List<Feature> features) {
        this.logbook = logbook;
        this.reader = logbook.readerUnit();
        this.table = BatchTable.of(logbook, withHeadlines(features));
        this.phases = table.paths().stream().map(BatchPath::phases).toList();
    }

    static LinkedViews of(Logbook logbook, Clock clock, List<Feature> features, Optional<String> attribute) {
        ExplorerPage page = new ExplorerPage(logbook, features);
        LinkedViews views = LinkedViews.of(
                        "Explorer of " + logbook.name(),
                        "batch",
                        logbook.batches().stream().map(Batch::name).toList())
                .withGroup("lot", page.labels(Batch.Label.LOT))
                .withGroup("machine", page.labels(Batch.Label.MACHINE))
                .withDates(
                        "roasted on",
                        logbook.batches().stream()
                                .map(batch -> batch.roastDay())
                                .toList());
        for (LinkedNumber number : page.numbers(features)) {
            views = views.withNumber(number);
        }
        for (LinkedNumber number : page.scores(attribute)) {
            views = views.withNumber(number);
        }
        PaceLines pace = PaceLines.of(page.phases);
        return views.withPaths(page.temperatures(clock))
                .withPaths(page.pace(pace))
                .withStill(OverlayChart.of(logbook, clock))
                .withCode("var chosen = logbook.only(", ");")
                .withNote(
                        "A score is the mean of all scores that a batch was given; the table counts them. The roaster chose each"
                                + " roast while watching it, so the pictures show what went together in this logbook, not what made what.")
                .withNote(String.format(
                        Locale.ROOT,
                        "Curves run from charge to drop, thinned for the screen; rates are taken over %.0f s to either side.",
                        pace.bandwidthSeconds()));
    }

    /** The two features that are told beside a batch's name are measured even where others were asked for. */
    private static List<Feature> withHeadlines(List<Feature> features) {
        List<Feature> all = new ArrayList<>(features);
        for (Feature headline : List.of(Features.dropTemperature(), Features.developmentTime())) {
            if (all.stream().noneMatch(f -> f.name().equals(headline.name()))) {
                all.add(headline);
            }
        }
        return all;
    }

    private List<String> labels(Batch.Label label) {
        return logbook.batches().stream()
                .map(batch -> batch.label(label).orElse(""))
                .toList();
    }

    private List<LinkedNumber> numbers(List<Feature> features) {
        List<Feature> chosen = features.equals(Features.all().list())
                ? Stream.concat(Stream.of(Features.dropTemperature(), Features.developmentTime()), features.stream())
                        .distinct()
                        .toList()
                : table.features();
        return chosen.stream()
                .filter(feature -> Arrays.stream(table.values(feature))
                                .filter(Double::isFinite)
                                .distinct()
                                .count()
                        > 1)
                .map(this::number)
                .toList();
    }

    private LinkedNumber number(Feature feature) {
        Unit unit = feature.unit();
        boolean headline = feature.name().equals(Features.dropTemperature().name())
                || feature.name().equals(Features.developmentTime().name());
        double[] shown = Arrays.stream(table.values(feature))
                .map(value -> unit.shown(value, reader))
                .toArray();
        return LinkedNumber.of(feature.name(), unit.symbol(reader), unit.digits(), shown)
                .with(headline ? LinkedNumber.Place.BESIDE_THE_NAME : LinkedNumber.Place.ON_ASKING);
    }

    private List<LinkedNumber> scores(Optional<String> first) {
        Map<String, List<CupScores>> cups = logbook.cups().stream().collect(Collectors.groupingBy(CupScores::batch));
        List<LinkedNumber> scores = new ArrayList<>();
        List<String> attributes = new ArrayList<>(logbook.attributes());
        first.filter(attributes::remove).ifPresent(attribute -> attributes.add(0, attribute));
        for (String attribute : attributes) {
            double[] means = logbook.batches().stream()
                    .mapToDouble(batch -> mean(cups.getOrDefault(batch.name(), List.of()), attribute))
                    .toArray();
            scores.add(LinkedNumber.of(attribute, Unit.POINTS.symbol(reader), 2, means)
                    .with(LinkedNumber.Role.JUDGES)
                    .with(scores.isEmpty() ? LinkedNumber.Place.BESIDE_THE_NAME : LinkedNumber.Place.ON_ASKING));
        }
        if (!attributes.isEmpty()) {
            double[] counts = logbook.batches().stream()
                    .mapToDouble(
                            batch -> cups.getOrDefault(batch.name(), List.of()).size())
                    .toArray();
            scores.add(LinkedNumber.of("scores given", "", 0, counts).with(LinkedNumber.Place.BESIDE_THE_NAME));
        }
        return scores;
    }

    private static double mean(List<CupScores> cups, String attribute) {
        OptionalDouble mean = cups.stream()
                .mapToDouble(cup -> cup.score(attribute))
                .filter(Double::isFinite)
                .average();
        return mean.orElse(Double.NaN);
    }

    private LinkedPaths temperatures(Clock first) {
        LinkedPaths paths = LinkedPaths.titled(
                "Bean temperature",
                new LinkedPaths.Scale(Clock.SINCE_CHARGE.words(), LinkedPaths.Scale.CLOCK, 0),
                new LinkedPaths.Scale("bean temperature", Unit.TEMPERATURE.symbol(reader), Unit.TEMPERATURE.digits()));
        List<Clock> clocks = new ArrayList<>(List.of(Clock.values()));
        clocks.remove(first);
        clocks.add(0, first);
        for (Clock clock : clocks) {
            Optional<MarkKind> zero = clock.zero();
            paths = zero.isEmpty()
                    ? paths.withValueAcross(clock.words())
                    : paths.withZeros(clock.words(), zeros(zero.get()));
        }
        for (Phases batch : phases) {
            double[][] path = temperature(batch);
            paths = paths.withPath(path[0], path[1]);
        }
        return paths;
    }

    private double[] zeros(MarkKind kind) {
        return phases.stream()
                .mapToDouble(batch -> batch.mark(kind).map(Mark::seconds).orElse(Double.NaN))
                .toArray();
    }

    /** Returns the cleaned bean temperature from charge to drop in the reader's unit, with one missing value in each gap. */
    private double[][] temperature(Phases batch) {
        List<Curve> pieces = batch.clean().map(clean -> toDrop(batch, clean)).orElse(List.of());
        int size = pieces.stream().mapToInt(piece -> piece.size() + 1).sum();
        double[][] path = new double[2][Math.max(0, size - 1)];
        int at = 0;
        for (Curve piece : pieces) {
            if (at > 0) {
                path[0][at] = piece.secondsAt(0);
                path[1][at++] = Double.NaN;
            }
            for (int i = 0; i < piece.size(); i++) {
                path[0][at] = piece.secondsAt(i);
                path[1][at++] = reader.fromCelsius(piece.valueAt(i));
            }
        }
        return path;
    }

    private static List<Curve> toDrop(Phases batch, CleanCurve clean) {
        double drop = batch.mark(MarkKind.DROP).map(Mark::seconds).orElse(Double.POSITIVE_INFINITY);
        return clean.between(0, drop).pieces();
    }

    private LinkedPaths pace(PaceLines pace) {
        LinkedPaths paths = LinkedPaths.titled(
                "Pace",
                new LinkedPaths.Scale("bean temperature", Unit.TEMPERATURE.symbol(reader), Unit.TEMPERATURE.digits()),
                new LinkedPaths.Scale("rate of rise", Unit.RATE_OF_RISE.symbol(reader), 1));
        double[] across =
                Arrays.stream(pace.temperatures()).map(reader::fromCelsius).toArray();
        for (int i = 0; i < phases.size(); i++) {
            double[] rates = Arrays.stream(pace.rates(i))
                    .map(rate -> Unit.RATE_OF_RISE.shownStep(rate, reader))
                    .toArray();
            paths = paths.withPath(across, rates);
        }
        return paths;
    }
}
