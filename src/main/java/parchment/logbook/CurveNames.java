package parchment.logbook;

import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Matches curve files with batches by name, and names the file of a batch.
 *
 * <p>A sign that a file name cannot hold is written as % and two hexadecimal digits for each byte of its UTF-8 form, as in an address:
 * batch "a/b" has the file a%2Fb.csv.
 */
final class CurveNames {
    private static final String NOT_IN_A_FILE_NAME = "/\\:*?\"<>|%";

    private final Set<String> batches;
    /** Names that Unicode can write in several ways, by the composed one: an é is one sign, or an e and an accent. */
    private final Map<String, List<String>> batchesByForm = new HashMap<>();

    private final Map<String, List<String>> stemsByForm = new HashMap<>();
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
        batches.forEach(name -> batchesByForm
                .computeIfAbsent(composed(name), form -> new ArrayList<>())
                .add(name));
        stems.forEach(stem -> stemsByForm
                .computeIfAbsent(composed(decoded(stem)), form -> new ArrayList<>())
                .add(stem));
    }

    /** Returns a name with each letter and its accents as one sign, where there is one. */
    static String composed(String name) {
        return Normalizer.normalize(name, Normalizer.Form.NFC);
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
                .orElseGet(() -> isAlone(stem) ? composed(padded) : padded);
    }

    private Optional<String> exact(String name) {
        return batches.contains(name) ? Optional.of(name) : Optional.empty();
    }

    private Optional<String> byForm(String stem) {
        List<String> same = looksLike(decoded(stem));
        return same.size() == 1 && isAlone(stem) ? Optional.of(same.get(0)) : Optional.empty();
    }

    /** Returns whether no other file's name looks the same, and no two batches' names. */
    private boolean isAlone(String stem) {
        String form = composed(decoded(stem));
        return stemsByForm.getOrDefault(form, List.of()).size() <= 1
                && looksLike(form).size() <= 1;
    }

    private List<String> looksLike(String name) {
        return batchesByForm.getOrDefault(composed(name), List.of());
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
        if (!looksLike(name).isEmpty()) {
            return " " + Words.count(looksLike(name).size(), "batch looks", "batches look")
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
            boolean leadingDot = name.length() == 0 && point == '.';
            if (leadingDot || Character.isISOControl(point) || NOT_IN_A_FILE_NAME.indexOf(point) >= 0) {
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
