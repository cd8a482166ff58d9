package parchment.gather;

import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;

/** Finds what an abbreviated heading may mean: each of its words begins a word of the trade, or is left of one when its vowels are taken out. */
final class HeadAbbreviations {
    private static final int LONGEST = 5;
    private static final int FEWEST_LEFT_OUT = 1;

    private HeadAbbreviations() {}

    /** Returns every meaning that a heading may be short for, many or none: only values can choose between them. */
    static Set<ListMeaning> of(String heading) {
        Set<ListMeaning> meanings = new LinkedHashSet<>();
        String[] tokens = TradeWords.plain(heading).split(" ");
        if (tokens[0].isEmpty() || TradeWords.of(heading).isKnown()) {
            return meanings;
        }
        for (Map.Entry<String, Set<ListMeaning>> entry : TradeWords.all().entrySet()) {
            String[] words = entry.getKey().split(" ");
            boolean fits = words.length == tokens.length;
            for (int i = 0; fits && i < tokens.length; i++) {
                fits = tokens[i].equals(words[i]) || isShort(tokens[i], words[i]);
            }
            if (fits) {
                meanings.addAll(entry.getValue());
            }
        }
        return meanings;
    }

    static boolean isShort(String token, String word) {
        if (token.length() < 2 || token.length() > LONGEST || word.length() < token.length() + FEWEST_LEFT_OUT) {
            return false;
        }
        return word.startsWith(token) || token.equals(withoutVowels(word)) || isSkeleton(token, word);
    }

    private static String withoutVowels(String word) {
        return word.charAt(0) + word.substring(1).replaceAll("[aeiou]", "");
    }

    private static boolean isSkeleton(String token, String word) {
        if (token.charAt(0) != word.charAt(0) || token.substring(1).matches(".*[aeiou].*")) {
            return false;
        }
        int at = 0;
        for (int i = 0; i < word.length() && at < token.length(); i++) {
            at += word.charAt(i) == token.charAt(at) ? 1 : 0;
        }
        return at == token.length();
    }
}
