package parchment.gather;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Knows the words that roasters head their columns with, in English, German, Spanish, Portuguese, French and Italian: the table
 * {@code trade-words.txt} (common practice, no source).
 *
 * <p>A word can have several meanings ("charge" is a batch, a mass, a temperature): values decide between them, see {@link ListColumns}.
 */
final class TradeWords {
    private static final String TABLE = "trade-words.txt";
    private static final Pattern NUMBER_SIGN = Pattern.compile("№|#|\\bn[°º]|\\b(nr|nro|num|nbr|nº|n°)\\b\\.?");
    private static final Pattern DIGITS = Pattern.compile("\\d+");
    private static final Pattern ACCENTS = Pattern.compile("\\p{M}+");
    private static final Pattern ORDINAL = Pattern.compile("(?<=\\d)(st|nd|er|ere|eme|do|ro|º|ª|°)(?![a-z])");
    private static final Pattern SIGNS = Pattern.compile("[^\\p{L}\\p{N}]+");
    private static final String CRACK = "(?= (crack|pop|crac|knack|craquement|estalo|scoppio|crujido))";
    private static final Pattern FIRST = Pattern.compile("\\b(1|i)" + CRACK);
    private static final Pattern SECOND = Pattern.compile("\\b(2|ii)" + CRACK);
    private static final Pattern BRACKETS = Pattern.compile("[\\[(][^\\])]*[\\])]");
    private static final Pattern UNIT_AT_END = Pattern.compile(
            " (kg|kgs|g|gr|gram|grams|lb|lbs|oz|c|f|k|percent|s|sec|secs|min|mins|min s|mm ss|m s|h|hh mm|hpa|mbar|celsius|fahrenheit)$");
    private static final Pattern MASS_FIRST = Pattern.compile(
            "^(kg|kilo|kilogram|g|gr|gram|gramm|gramo|grama|gramme|grammi|lb|pound|oz|ounce) (?=\\p{L})");
    private static final Set<String> GENERAL =
            Set.of("time", "zeit", "tiempo", "tempo", "temp", "hora", "heure", "minute", "minuten", "start");
    private static final Set<String> TEMPERATURES = Set.of("temperature", "temperatur", "temperatura");
    private static final String NUMBER = "no";

    /** What is longer than a few lines is no heading, in letters (common practice, no source). */
    private static final int LONGEST_HEADING = 400;

    private static final String ENGLISH = "en";
    private static final Map<String, Set<ListMeaning>> WORDS = read(language -> true);
    private static final Set<String> ENGLISH_WORDS =
            read(language -> language.equals(ENGLISH)).keySet();
    private static final int LONGEST_PHRASE = WORDS.keySet().stream()
            .mapToInt(words -> words.split(" ").length)
            .max()
            .orElse(1);

    /** Holds what a heading can mean by its words, whole headings first. */
    record Named(Set<ListMeaning> whole, Set<ListMeaning> part) {
        /** Returns whether any trade word stands in it. */
        boolean isKnown() {
            return !whole.isEmpty() || !part.isEmpty();
        }

        /** Returns 2 where the whole heading says the meaning, 1 where a part does, 0 where nothing does. */
        int strength(ListMeaning meaning) {
            return whole.contains(meaning) ? 2 : part.contains(meaning) ? 1 : 0;
        }
    }

    private TradeWords() {}

    /** Returns what a heading can mean. */
    static Named of(String heading) {
        if (heading.length() > LONGEST_HEADING) {
            return new Named(Set.of(), Set.of());
        }
        String plain = bare(heading);
        Set<ListMeaning> whole = WORDS.getOrDefault(plain, Set.of());
        if (!whole.isEmpty() || plain.isEmpty()) {
            return new Named(whole, Set.of());
        }
        Set<ListMeaning> part = new LinkedHashSet<>();
        Set<ListMeaning> general = new LinkedHashSet<>();
        String[] tokens = plain.split(" ");
        for (int length = Math.min(LONGEST_PHRASE, tokens.length); length > 0 && part.isEmpty(); length--) {
            for (int from = 0; from + length <= tokens.length; from++) {
                String phrase = String.join(" ", List.of(tokens).subList(from, from + length));
                // Short words such as "in", "by", "no" say something only where they stand alone.
                if (phrase.length() > 3 || length > 1 || phrase.matches("\\dc")) {
                    (GENERAL.contains(phrase) ? general : part).addAll(WORDS.getOrDefault(phrase, Set.of()));
                }
            }
        }
        // "Time of first crack" is a first crack before it is a time.
        part.addAll(part.isEmpty() ? general : Set.of());
        return new Named(Set.of(), part);
    }

    /** Returns whether a heading is a word of the trade in one of the other languages, and none in English. */
    static boolean isForeign(String heading) {
        String plain = bare(heading);
        return WORDS.containsKey(plain) && !ENGLISH_WORDS.contains(plain);
    }

    /** Returns the unit of mass that a heading begins with where the rest says which mass it is, as in "grams in". */
    static Optional<String> massFirst(String heading) {
        Matcher first = MASS_FIRST.matcher(stemmed(plain(heading)));
        return first.find() && of(heading).whole().stream().anyMatch(meaning -> meaning.kind() == ListMeaning.Kind.MASS)
                ? Optional.of(first.group(1))
                : Optional.empty();
    }

    /** Returns the words of the table by their plain form, with what each can mean. */
    static Map<String, Set<ListMeaning>> all() {
        return WORDS;
    }

    private static String bare(String heading) {
        String plain = stemmed(plain(BRACKETS.matcher(heading).replaceAll(" ")));
        String without = UNIT_AT_END.matcher(plain).replaceFirst("");
        if (WORDS.containsKey(plain) || WORDS.containsKey(without)) {
            return WORDS.containsKey(plain) ? plain : without;
        }
        // "Grams in" is what goes in, in grams.
        String behind = MASS_FIRST.matcher(plain).replaceFirst("");
        return WORDS.getOrDefault(behind, Set.of()).stream().anyMatch(m -> m.kind() == ListMeaning.Kind.MASS)
                ? behind
                : without;
    }

    /** Returns words as they are compared: small letters without accents, one blank for all signs, "no" for every sign of a number. */
    static String plain(String written) {
        if (DIGITS.matcher(written).matches()) {
            return written;
        }
        String small = Normalizer.normalize(
                NUMBER_SIGN.matcher(written.toLowerCase(Locale.ROOT)).replaceAll(" no "), Normalizer.Form.NFD);
        String bare = ACCENTS.matcher(small)
                .replaceAll("")
                .replace("ß", "ss")
                .replace("%", " percent ")
                .replace("color", "colour");
        String words = SIGNS.matcher(ORDINAL.matcher(bare).replaceAll(" ")).replaceAll(" ");
        return SECOND.matcher(FIRST.matcher(words).replaceAll("first"))
                .replaceAll("second")
                .strip();
    }

    // "Röst" and "Roest" are one word, and so are "lot" and "lots".
    private static String stemmed(String plain) {
        List<String> tokens = new ArrayList<>();
        for (String token : plain.split(" ")) {
            String one = token.length() > 3 && token.endsWith("s") && !token.endsWith("ss")
                    ? token.substring(0, token.length() - (token.endsWith("ches") ? 2 : 1))
                    : token;
            String plainer = one.replace("oe", "o").replace("ae", "a").replace("ue", "u");
            tokens.add(TEMPERATURES.contains(plainer) ? "temp" : plainer);
        }
        if (tokens.get(tokens.size() - 1).equals("n")) {
            tokens.set(tokens.size() - 1, NUMBER);
        }
        // "No. batch" is "Batch no.".
        if (tokens.size() == 2 && tokens.get(0).equals(NUMBER)) {
            tokens.add(tokens.remove(0));
        }
        return String.join(" ", tokens);
    }

    private static Map<String, Set<ListMeaning>> read(Predicate<String> languages) {
        Map<String, Set<ListMeaning>> words = new LinkedHashMap<>();
        try (InputStream in = Objects.requireNonNull(TradeWords.class.getResourceAsStream(TABLE), TABLE);
                BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                if (!line.startsWith("#") && !line.isBlank()) {
                    String[] parts = line.split("\\|");
                    if (!languages.test(parts[1].strip())) {
                        continue;
                    }
                    ListMeaning meaning = ListMeaning.of(parts[0].strip()).orElseThrow();
                    for (String phrase : parts[2].split(";")) {
                        words.computeIfAbsent(stemmed(plain(phrase)), p -> new LinkedHashSet<>())
                                .add(meaning);
                    }
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return words;
    }
}
