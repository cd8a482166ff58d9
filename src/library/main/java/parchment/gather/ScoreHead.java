package parchment.gather;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Takes a heading of a score sheet apart: "sweetness / Ana" has two parts.
 *
 * @param written the heading as it stands
 * @param parts the parts, outermost first
 * @param scale the scale, where the heading says it, as in "acidity (0-10)"
 */
record ScoreHead(String written, List<String> parts, Optional<double[]> scale) {
    private static final Pattern SCALE = Pattern.compile(
            "[(\\[]?\\s*(?<!\\d)(\\d{1,2}(?:[.,]\\d+)?)\\s*(?:-|–|to|bis|a|à|\\.\\.)\\s*(\\d{1,3})(?!\\d)\\s*[)\\]]?");
    private static final Pattern TOP = Pattern.compile(
            "(?iu)\\s*[(\\[]?\\s*(?:/|out of|von|de|sur|su|max\\.?)\\s*(5|7|9|10|15|20|100)\\s*[)\\]]?$");
    private static final Pattern CUP = Pattern.compile(
            "(?iu)(.*?)[\\s,(-]*((?:cup|tasse|taza|x[ií]cara|tazza)\\s*(?:no\\.?|nr\\.?)?\\s*\\d{1,2})\\)?(.*)");

    /** Takes a heading apart. */
    static ScoreHead of(String heading) {
        String written = heading.replaceAll("\\s+", " ").strip();
        Optional<double[]> scale = Optional.empty();
        String rest = written;
        Matcher stated = SCALE.matcher(written);
        if (stated.find()
                && (stated.group().strip().matches("[(\\[].*[)\\]]") || stated.end() == written.length())
                && stated.start() > 0
                && number(stated.group(1)) < number(stated.group(2))) {
            scale = Optional.of(new double[] {number(stated.group(1)), number(stated.group(2))});
            rest = (written.substring(0, stated.start()) + " " + written.substring(stated.end())).strip();
        }
        Matcher top = TOP.matcher(rest);
        if (scale.isEmpty()
                && top.find()
                && top.start() > 0
                && ScoreWords.isAttribute(rest.substring(0, top.start()))) {
            scale = Optional.of(new double[] {0, number(top.group(1))});
            rest = rest.substring(0, top.start()).strip();
        }
        List<String> parts = new ArrayList<>();
        for (String part : rest.split("\\s+/\\s+|\\s+[-–|]\\s+|\\s*\\|\\s*|:\\s+|\\n")) {
            Matcher cup = CUP.matcher(part);
            if (cup.matches() && !(cup.group(1) + cup.group(3)).isBlank()) {
                parts.add((cup.group(1) + cup.group(3)).strip());
                parts.add(cup.group(2).strip());
            } else if (!part.isBlank()) {
                parts.add(part.strip());
            }
        }
        boolean oneAttribute = parts.size() > 1 && parts.stream().allMatch(ScoreWords::isAttribute);
        return new ScoreHead(written, oneAttribute ? List.of(rest) : List.copyOf(parts), scale);
    }

    /** Returns the heading with a part that stands over several columns. */
    ScoreHead under(String group) {
        if (group.isBlank() || parts.contains(group.strip())) {
            return this;
        }
        List<String> more = new ArrayList<>(of(group).parts());
        more.addAll(parts);
        return new ScoreHead(written, more, scale.or(() -> of(group).scale()));
    }

    private static double number(String text) {
        return Double.parseDouble(text.replace(',', '.'));
    }
}
