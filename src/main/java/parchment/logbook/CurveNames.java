package parchment.logbook;

import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.LinkedHashMap;
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

    private final Map<String, String> batches = new LinkedHashMap<>();

    private final Settings settings;

    CurveNames(Set<String> names, Settings settings) {
        this.settings = settings;
        for (String name : names) {
            batches.put(Normalizer.normalize(name, Normalizer.Form.NFC), name);
        }
    }

    /** Returns the batch that a file is of: the one it is named after, or a name of its own. */
    String batchOf(String stem) {
        return match(stem).or(() -> match(settings.batchName(stem))).orElse(settings.batchName(stem));
    }

    private Optional<String> match(String stem) {
        return Optional.ofNullable(batches.get(stem)).or(() -> Optional.ofNullable(batches.get(decoded(stem))));
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
        for (String batch : batches.values()) {
            if (!batch.equals(name)
                    && batch.matches("\\d+")
                    && withoutZeros(batch).equals(withoutZeros(name))) {
                return " A spreadsheet takes away leading zeros: is it " + Words.quote(batch)
                        + "? If so, put batch.digits=" + Math.max(name.length(), batch.length()) + " into "
                        + Settings.FILE;
            }
        }
        // Numbers are all alike; only words have slips.
        return name.matches(".*\\d.*") ? "" : Words.didYouMean(name, batches.values());
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
