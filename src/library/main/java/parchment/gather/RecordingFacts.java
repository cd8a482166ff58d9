package parchment.gather;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import parchment.sheet.Words;

/**
 * Reads what a recording says of its batch beside its readings, where no list does: the lot in a line above them, such as "coffee: Salt Meadow", and the mass in
 * its file's name, such as "5.2 kg", which is the green mass, for it is known before the roast. What a list says stands.
 */
final class RecordingFacts {
    private static final String LOT = ListMeaning.LOT.words();
    private static final String GREEN_MASS = ListMeaning.GREEN_MASS.words();
    private static final String IN_KILOGRAMS = GREEN_MASS + " [kg]";
    private static final int LONGEST_NAME = 60;

    /** A mass with its unit; a number such as "1,250" can be two, and is none. */
    private static final Pattern MASS =
            Pattern.compile("(?iu)(?<![\\d.,])(\\d{1,5}(?:[.,]\\d{1,2})?)\\s?(kg|g|lbs?|oz)(?![\\p{L}\\d])");

    /** What looks like a mass, whether it can be read or not. */
    private static final Pattern LIKE_A_MASS = Pattern.compile("(?iu)\\d[\\d.,]*\\s?(?:kg|g|lbs?|oz)(?![\\p{L}\\d])");

    /** Kilograms of each unit; the pound is the international one. */
    private static final Map<String, BigDecimal> KILOGRAMS = Map.of(
            "kg", BigDecimal.ONE,
            "g", new BigDecimal("0.001"),
            "lb", new BigDecimal("0.45359237"),
            "lbs", new BigDecimal("0.45359237"),
            "oz", new BigDecimal("0.028349523125"));

    private RecordingFacts() {}

    /** Returns the batches with what their recordings say and no list does. */
    static List<GatheredBatch> added(List<GatheredBatch> batches, GatherQuestions questions) {
        return masses(lots(batches, questions), questions);
    }

    private static List<GatheredBatch> lots(List<GatheredBatch> batches, GatherQuestions questions) {
        List<GatheredBatch> all = new ArrayList<>();
        List<String> taken = new ArrayList<>();
        for (GatheredBatch batch : batches) {
            Optional<String> lot = batch.written().getOrDefault(LOT, "").isBlank() ? lot(batch) : Optional.empty();
            all.add(lot.map(name -> batch.withWritten(LOT, name)).orElse(batch));
            lot.ifPresent(taken::add);
        }
        if (!taken.isEmpty()) {
            questions.say("  The " + (taken.size() == 1 ? "lot" : "lots") + " of "
                    + Words.count(taken.size(), "batch", "batches") + ", such as " + Words.quote(taken.get(0))
                    + ", stand in lines above their readings.");
        }
        return all;
    }

    private static Optional<String> lot(GatheredBatch batch) {
        Set<String> names = new LinkedHashSet<>();
        for (List<String> row :
                batch.recording().map(recording -> recording.file().above()).orElse(List.of())) {
            List<String> cells = row.stream()
                    .map(String::strip)
                    .filter(cell -> !cell.isEmpty())
                    .toList();
            int colon = cells.isEmpty() ? -1 : cells.get(0).indexOf(':');
            if (cells.size() == 1 && colon > 0) {
                put(names, cells.get(0).substring(0, colon), cells.get(0).substring(colon + 1));
            } else if (cells.size() == 2) {
                put(names, cells.get(0), cells.get(1));
            }
        }
        return names.size() == 1 ? names.stream().findFirst() : Optional.empty();
    }

    private static void put(Set<String> names, String label, String name) {
        boolean isLot = TradeWords.of(label).whole().equals(Set.of(ListMeaning.LOT));
        boolean isName = name.length() <= LONGEST_NAME && name.codePoints().anyMatch(Character::isLetter);
        if (isLot && isName && !TradeWords.of(name).isKnown()) {
            names.add(name.strip());
        }
    }

    private static List<GatheredBatch> masses(List<GatheredBatch> batches, GatherQuestions questions) {
        List<GatheredBatch> open = batches.stream()
                .filter(batch -> LIKE_A_MASS.matcher(stem(batch)).find())
                .filter(batch -> batch.written().keySet().stream().noneMatch(RecordingFacts::isGreen))
                .toList();
        // One table of batches has one unit: beside a list in pounds no kilograms are written.
        boolean fits = batches.stream()
                .flatMap(batch -> batch.written().keySet().stream())
                .allMatch(heading -> !isGreen(heading) || heading.equals(IN_KILOGRAMS));
        List<GatheredBatch> read = open.stream()
                .filter(batch ->
                        fits && batch.part() == 0 && kilograms(stem(batch)).isPresent())
                .toList();
        boolean takes = !read.isEmpty()
                && questions.tellYes(
                        "names.green-mass",
                        "The " + (read.size() == 1 ? "name of 1 file holds" : "names of " + read.size() + " files hold")
                                + " a mass, such as " + Words.quote(stem(read.get(0)))
                                + ", and no list has one: taken as the green mass",
                        "yes");
        List<GatheredBatch> left =
                open.stream().filter(batch -> !takes || !read.contains(batch)).toList();
        if (!left.isEmpty()) {
            questions.leaveOut("The mass in the "
                    + (left.size() == 1 ? "name of 1 file" : "names of " + left.size() + " files") + ", such as "
                    + Words.quote(stem(left.get(0))) + ", is not used.");
        }
        return batches.stream()
                .map(batch -> takes && read.contains(batch)
                        ? batch.withWritten(IN_KILOGRAMS, kilograms(stem(batch)).orElseThrow())
                        : batch)
                .toList();
    }

    private static boolean isGreen(String heading) {
        return heading.equals(GREEN_MASS) || heading.startsWith(GREEN_MASS + " [");
    }

    private static String stem(GatheredBatch batch) {
        return batch.recording()
                .map(recording -> TablePlace.of(recording.file()).stem())
                .orElse("");
    }

    /** Returns the one mass of a name; nothing if there is none, or several. */
    static Optional<String> kilograms(String name) {
        Matcher mass = MASS.matcher(name);
        if (!mass.find()) {
            return Optional.empty();
        }
        BigDecimal kilograms = new BigDecimal(mass.group(1).replace(',', '.'))
                .multiply(KILOGRAMS.get(mass.group(2).toLowerCase(Locale.ROOT)));
        Matcher like = LIKE_A_MASS.matcher(name);
        return kilograms.signum() == 0 || like.results().count() > 1
                ? Optional.empty()
                : Optional.of(kilograms.stripTrailingZeros().toPlainString());
    }
}
