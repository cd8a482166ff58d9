package parchment.logbook;

import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import parchment.file.FileName;
import parchment.file.NameForms;
import parchment.sheet.Words;

/**
 * Matches curve files with batches by name, and names the file of a batch.
 *
 * <p>A sign that a file name cannot hold is written as % and two hexadecimal digits for each byte of its UTF-8 form, as in an address:
 * batch "a/b" has the file a%2Fb.csv. So is the first letter of a word that Windows keeps for itself: batch "CON" has the file %43ON.csv.
 */
final class CurveNames {
    private static final String NOT_IN_A_FILE_NAME = "/\\:*?\"<>|%";

    private final Set<String> batches;
    private final NameForms batchForms;
    private final NameForms stemForms;
    /** Names of digits alone, by the number without leading zeros. */
    private final Map<String, String> batchesByNumber = new HashMap<>();

    private final Settings settings;

    /**
     * Holds the names to match.
     *
     * @param batches the names in batches.csv, as written
     * @param stems the names of the curve files, as written
     */
    CurveNames(Set<String> batches, Collection<String> stems, Settings settings) {
        this.batches = batches;
        this.settings = settings;
        batches.stream()
                .filter(name -> name.matches("\\d+"))
                .forEach(name -> batchesByNumber.putIfAbsent(withoutZeros(name), name));
        batchForms = NameForms.of(batches);
        stemForms = NameForms.of(stems.stream().map(CurveNames::decoded).toList());
    }

    /**
     * Returns the batch that a file is of: the one it is named after, or a name of its own. A name in another Unicode form is the same name where
     * there is one batch and one file of it; of two that look the same, each goes by its own signs only.
     */
    String batchOf(String stem) {
        String padded = settings.batchName(stem);
        return exact(stem)
                .or(() -> exact(decoded(stem)))
                .or(() -> exact(padded))
                .or(() -> byForm(stem))
                .orElseGet(() -> isAlone(stem) ? NameForms.composed(padded) : padded);
    }

    private Optional<String> exact(String name) {
        return batches.contains(name) ? Optional.of(name) : Optional.empty();
    }

    private Optional<String> byForm(String stem) {
        return isAlone(stem) ? batchForms.meant(decoded(stem)) : Optional.empty();
    }

    /** Returns whether no other file's name looks the same, and no two batches' names. */
    private boolean isAlone(String stem) {
        String name = decoded(stem);
        return stemForms.alike(name).size() <= 1 && batchForms.alike(name).size() <= 1;
    }

    private static String decoded(String stem) {
        try {
            // A plus stands for itself in a file name.
            return URLDecoder.decode(stem.replace("+", "%2B"), StandardCharsets.UTF_8);
        } catch (IllegalArgumentException e) {
            return stem;
        }
    }

    /** Asks whether another batch was meant. */
    String question(String name) {
        List<String> alike = batchForms.alike(name);
        if (!alike.isEmpty()) {
            return " " + Words.count(alike.size(), "batch looks", "batches look")
                    + " the same in other signs of Unicode: give the file the very name of its batch";
        }
        String batch = batchesByNumber.get(withoutZeros(name));
        if (batch != null) {
            return " A spreadsheet takes away leading zeros: is it " + Words.quote(batch) + "? If so, put batch.digits="
                    + Math.max(name.length(), batch.length()) + " into " + Settings.FILE;
        }
        // Numbers are all alike; only words have slips.
        return hasDigit(name) ? "" : Words.didYouMean(name, batches);
    }

    private static boolean hasDigit(String name) {
        return name.chars().anyMatch(Character::isDigit);
    }

    private static String withoutZeros(String digits) {
        return digits.replaceFirst("^0+(?=\\d)", "");
    }

    /** Returns the name of a batch's curve file. */
    static String fileName(String batch) {
        return stem(batch) + ".csv";
    }

    private static String stem(String batch) {
        StringBuilder name = new StringBuilder();
        for (int i = 0; i < batch.length(); ) {
            int point = batch.codePointAt(i);
            i += Character.charCount(point);
            boolean first = name.length() == 0 && (point == '.' || FileName.isKeptByWindows(batch));
            if (first || Character.isISOControl(point) || NOT_IN_A_FILE_NAME.indexOf(point) >= 0) {
                for (byte b : Character.toString(point).getBytes(StandardCharsets.UTF_8)) {
                    name.append(String.format(Locale.ROOT, "%%%02X", b));
                }
            } else {
                name.appendCodePoint(point);
            }
        }
        return name.toString();
    }
}
