package parchment.gather;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Folds what a gathering says for a screen: five of what is alike, and how many more there are. {@code gathered.txt} has every line as it is. */
final class GatherFold {
    /** How many of what is alike a screen shows. */
    static final int SHOWN = 5;

    private static final Pattern NAMES = Pattern.compile("'[^'\\n]*'(?:, '[^'\\n]*'){" + SHOWN + ",}");
    private static final Pattern NAME = Pattern.compile("'[^'\\n]*'");

    private GatherFold() {}

    /** Returns the lines with long lists of names cut short, and lines that differ in names and numbers only counted from the sixth on. */
    static List<String> of(List<String> lines) {
        Map<String, List<String>> alike = new LinkedHashMap<>();
        for (String line : lines) {
            alike.computeIfAbsent(line.replaceAll("'[^']*'|\\d+", "#"), key -> new ArrayList<>())
                    .add(line);
        }
        List<String> folded = new ArrayList<>();
        for (List<String> some : alike.values()) {
            some.stream().limit(SHOWN).map(GatherFold::names).forEach(folded::add);
            if (some.size() > SHOWN) {
                folded.add("So " + (some.size() - SHOWN) + " more; each is in " + GatherWriter.REPORT
                        + " of the new logbook.");
            }
        }
        return folded;
    }

    /** Returns the lines with long lists of names cut short. */
    static List<String> lists(List<String> lines) {
        return lines.stream().map(GatherFold::names).toList();
    }

    private static String names(String line) {
        Matcher matcher = NAMES.matcher(line);
        return matcher.replaceAll(found -> {
            List<String> names = NAME.matcher(found.group())
                    .results()
                    .map(result -> result.group())
                    .toList();
            return Matcher.quoteReplacement(
                    String.join(", ", names.subList(0, SHOWN)) + " and " + (names.size() - SHOWN) + " more");
        });
    }
}
