package parchment.gather;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import parchment.gather.ColumnClaim.UnitDoubt;
import parchment.gather.StrangeFolder.Found;
import parchment.logbook.Quantity;
import parchment.quantity.TemperatureUnit;
import parchment.sheet.Words;

/**
 * Decides the scale of recordings without a unit by those that are written alike: a roast that was broken off never comes so high that
 * its values alone tell °F from °C.
 *
 * <p>A recording that shows a whole roast in °C beside some in °F may be of another year or another setting of the logger, and is left
 * as it is where several are so; one alone is asked about.
 */
final class FolderScales {
    /** No drum is charged hotter, in °C (common practice, no source). */
    private static final double HOTTEST_CHARGE = 260;

    /** Beans that are dropped have been as hot, in °C (common practice, no source). */
    private static final double COOLEST_DROP = 185;

    private static final int SEVERAL = 3;

    private final FileKeys keys;
    private final GatherQuestions questions;

    private FolderScales(FileKeys keys, GatherQuestions questions) {
        this.keys = keys;
        this.questions = questions;
    }

    /** Returns the recordings in their order, with the scale that the folder tells. */
    static List<Found> of(List<Found> recordings, FileKeys keys, GatherQuestions questions) {
        Map<String, Integer> fahrenheit = new HashMap<>();
        Map<String, Integer> whole = new HashMap<>();
        for (Found found : recordings) {
            if (isGuessed(found, TemperatureUnit.FAHRENHEIT)) {
                fahrenheit.merge(headings(found), 1, Integer::sum);
            } else if (isGuessed(found, TemperatureUnit.CELSIUS) && isWholeInCelsius(found)) {
                whole.merge(headings(found), 1, Integer::sum);
            }
        }
        FolderScales scales = new FolderScales(keys, questions);
        return recordings.stream()
                .map(found -> scales.of(
                        found, fahrenheit.getOrDefault(headings(found), 0), whole.getOrDefault(headings(found), 0)))
                .toList();
    }

    private static String headings(Found found) {
        return found.table().sheet().delimiter()
                + String.join("\u001F", found.table().headings());
    }

    private Found of(Found found, int fahrenheit, int whole) {
        if (fahrenheit == 0 || !isGuessed(found, TemperatureUnit.CELSIUS)) {
            return found;
        }
        boolean isWhole = isWholeInCelsius(found);
        if (isWhole && whole >= SEVERAL) {
            return found;
        }
        String statement = TablePlace.of(found.table()).shown() + ": its bean temperature goes up to "
                + Math.round(bean(found).map(column -> column.quantile(1)).orElse(Double.NaN))
                + " only, without a unit; " + Words.count(fahrenheit, "recording", "recordings")
                + " with the same headings " + (fahrenheit == 1 ? "is" : "are") + " in °F";
        String key = keys.of(found.table(), "temperature-unit", questions);
        String answer = isWhole
                ? questions.ask(
                        key,
                        statement + ", and it could be a whole roast in °C. Which is it?",
                        "°F",
                        FolderScales::isScale,
                        "°C, °F",
                        1)
                : questions.tell(key, statement + ", and so it is", "°F", FolderScales::isScale, "°C, °F");
        return answer.toLowerCase(Locale.ROOT).endsWith("c") ? found : inFahrenheit(found);
    }

    private static boolean isScale(String text) {
        return text.toLowerCase(Locale.ROOT).strip().matches("°?\\s?[cf]");
    }

    private static Optional<Integer> beanPlace(Found found) {
        for (int i = 0; i < found.proposals().size(); i++) {
            if (found.proposals().get(i).meaning().quantity().equals(Optional.of(Quantity.BEAN_TEMPERATURE))) {
                return Optional.of(i);
            }
        }
        return Optional.empty();
    }

    private static Optional<StrangeColumn> bean(Found found) {
        return beanPlace(found).map(place -> found.columns().get(place));
    }

    /** Returns whether the scale is this one, by the values alone. */
    private static boolean isGuessed(Found found, TemperatureUnit unit) {
        return beanPlace(found)
                .filter(place -> found.proposals().get(place).meaning().unit().equals(unit.symbol()))
                .filter(place -> found.columns().stream()
                        .noneMatch(column ->
                                CurveHeading.of(column).temperatureUnit().isPresent()))
                .isPresent();
    }

    private static boolean isWholeInCelsius(Found found) {
        return bean(found)
                .filter(column -> column.quantile(1) <= HOTTEST_CHARGE && column.quantile(0.9) >= COOLEST_DROP)
                .isPresent();
    }

    private static Found inFahrenheit(Found found) {
        List<MeaningProposal> proposals = found.proposals().stream()
                .map(proposal -> proposal.meaning()
                                .quantity()
                                .filter(quantity -> !quantity.isControl())
                                .isPresent()
                        ? new MeaningProposal(
                                Meaning.of(proposal.meaning().quantity().get(), TemperatureUnit.FAHRENHEIT.symbol()),
                                proposal.reason(),
                                UnitDoubt.KNOWN)
                        : proposal)
                .toList();
        return new Found(found.table(), found.columns(), proposals, found.recording());
    }
}
