package parchment.gather.corpus;

import java.text.Normalizer;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.StrangeKind.Fact;

/**
 * Reads a gathering's report for what it says it could not do.
 *
 * <p>A line names an item if it says that something was left out, is missing or is doubted, and says where: the batch's number, or a column whose
 * heading is a word for the fact, or a file that is not one of another batch. A line that is about another kind of fact names nothing of this one.
 */
final class NamedLosses {
    private static final Pattern LOSS =
            Pattern.compile("left out|leave out|leaves open|left open|set aside|skipped|not looked at|not joined"
                    + "|not one of|not answered|not used|not known|not read|not taken|not gathered|not put together|not counted|cannot|could not|doubt"
                    + "|joins nothing|no row|no curve|no batch|without a|missing|twice|second is|unknown|unclear|no table|expected|kept as|extra"
                    + "|no match|matches no|\\bdiffer from|only in|in no list|a list\\? \\(yes or no\\) no|the second");

    /** Facts that stand in readings. */
    private static final Set<Fact> CURVES = EnumSet.of(Fact.BEAN_CURVES, Fact.AIR_CURVES, Fact.GAS);

    /** Words for one fact and no other, in the languages of the corpus. */
    private static final Map<Fact, List<String>> WORDS = new EnumMap<>(Map.ofEntries(
            Map.entry(Fact.BEAN_CURVES, List.of("bean temp", "beans", "bohne", "grains", "grano", "chicchi", "grão")),
            Map.entry(Fact.AIR_CURVES, List.of("air temp", "environment", "exhaust", "abluft", "aire", "aria", "ar (")),
            Map.entry(Fact.GAS, List.of("gas", "gaz", "gás", "burner", "power")),
            Map.entry(Fact.BATCHES, List.of("batch column", "names of batches")),
            Map.entry(Fact.DAYS, List.of("date", "datum", "fecha", "data ", "jour", "día", "when", "roasted at")),
            Map.entry(
                    Fact.TIMES,
                    List.of("time of day", "clock", "uhrzeit", "hora", "heure", "ora ", "roasted at", "date", "when")),
            Map.entry(Fact.LOTS, List.of("lot", "coffee", "sorte", "rohkaffee", "café", "caffè", "origin", "origen")),
            Map.entry(
                    Fact.GREEN_MASSES,
                    List.of(
                            "green",
                            "rohkaffee",
                            "verde",
                            "vert",
                            "crudo",
                            "einwaage",
                            "raw",
                            "load",
                            "mass",
                            "weight")),
            Map.entry(
                    Fact.ROASTED_MASSES,
                    List.of(
                            "roasted mass",
                            "roasted w",
                            "röstkaffee",
                            "tostado",
                            "torréfié",
                            "tostato",
                            "torrado",
                            "auswaage",
                            "yield",
                            "brown",
                            "mass",
                            "weight")),
            Map.entry(Fact.YELLOWING, List.of("yellow", "gelb", "vergilb", "amar", "jaun", "giall", "mark")),
            Map.entry(Fact.FIRST_CRACK, List.of("crack", "pop", "knack", "mark")),
            Map.entry(
                    Fact.DROP,
                    List.of("drop", "ende", "auswurf", "salida", "sortie", "scarico", "descarga", "dump", "mark")),
            Map.entry(Fact.CHARGE_TEMPERATURES, List.of("charge temp", "charge t", "°c or °f")),
            Map.entry(Fact.SCORES, List.of("score", "cupping", "cupper", "attribute", "tasted")),
            Map.entry(Fact.MEAN_SCORES, List.of("score", "cupping", "attribute", "mean", "tasted"))));

    private static final Pattern READINGS = Pattern.compile("curve|recording|reading");
    private static final Pattern COLUMN = Pattern.compile("(?i)column [^\"“']*[\"“']([^\"”']*)[\"”']");
    private static final Pattern NUMBER = Pattern.compile("(?<![0-9])[0-9]{2,4}(?![0-9])");

    private final List<String> lines;

    private final List<String> files;

    /** Holds a report about files of these names. */
    NamedLosses(String report, List<String> names) {
        files = names.stream()
                .map(name -> composed(name).toLowerCase(Locale.ROOT))
                .toList();
        lines = Arrays.stream(report.split("\n"))
                .filter(line -> LOSS.matcher(line.toLowerCase(Locale.ROOT)).find())
                .distinct()
                .toList();
    }

    /** Returns a text without blanks at its ends and with accented letters as one sign. */
    static String composed(String text) {
        return Normalizer.normalize(text, Normalizer.Form.NFC).strip();
    }

    /** Returns whether a line is a question that nobody has answered: what stands in its place is said to be in doubt, for all that it decides. */
    private static boolean asks(String line, Roast roast, Fact fact) {
        return line.contains("until then, in doubt:")
                && (says(line, fact)
                        || fact == Fact.LOTS
                                && line.contains("'" + composed(roast.lot()).toLowerCase(Locale.ROOT) + "'"));
    }

    /** Returns whether a line of loss or doubt says a name. */
    boolean names(String name) {
        return lines.stream().anyMatch(line -> line.contains(name));
    }

    /** Returns whether a line of loss or doubt says that this was not taken in. */
    boolean names(Roast roast, Fact fact) {
        return line(roast, fact).isPresent();
    }

    /** Returns the first line of loss or doubt that says that this was not taken in. */
    Optional<String> line(Roast roast, Fact fact) {
        return lines.stream().filter(line -> names(line, roast, fact)).findFirst();
    }

    private boolean names(String line, Roast roast, Fact fact) {
        String lower = composed(line).toLowerCase(Locale.ROOT);
        var column = COLUMN.matcher(lower);
        if (column.find()) {
            return says(column.group(1) + " ", fact);
        }
        if (asks(lower, roast, fact)) {
            return true;
        }
        if (BatchMatch.holds(lower, roast.number())) {
            return about(lower, fact);
        }
        for (String file : files) {
            // A shared file's name may hold a day, but no number that another batch has.
            boolean ofOne = NUMBER.matcher(file.replaceAll("20[0-9]{2}[-_.]?[0-9]{2}[-_.]?[0-9]{2}", ""))
                    .find();
            if (!ofOne && lower.contains(file) && about(lower.replace(file, ""), fact)) {
                return true;
            }
        }
        return false;
    }

    private static boolean about(String line, Fact fact) {
        if (says(line, fact)) {
            return true;
        }
        if (READINGS.matcher(line).find()) {
            return CURVES.contains(fact);
        }
        return WORDS.keySet().stream().noneMatch(other -> says(line, other));
    }

    private static boolean says(String line, Fact fact) {
        return WORDS.get(fact).stream().anyMatch(line::contains);
    }
}
