package parchment.gather;

import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import parchment.logbook.MarkKind;

/** Recognises the trade's words for marks in what somebody typed beside a reading. */
final class MarkWords {
    /** Words that deny a mark or wait for it, in six languages (common practice, no source). */
    private static final Pattern NOT_YET = Pattern.compile(
            ".*\\b(before|until|till|wait|waiting|no|not|without|almost|nearly|soon|expect|expected|maybe|vor|bis|warte|warten|kein|keine|noch|fast|bald|vielleicht"
                    + "|avant|pas|presque|bientôt|attente|sans|antes|sin|casi|pronto|quizás|prima|quasi|non|senza|presto|forse|quase|não|nao|sem|talvez)\\b.*",
            Pattern.UNICODE_CHARACTER_CLASS);

    private MarkWords() {}

    /** Returns the mark that the words name; nothing if they name none, could name two, or say that it is still to come. */
    static Optional<MarkKind> of(String written) {
        String words = written.toLowerCase(Locale.ROOT)
                .replaceAll("[^\\p{L}\\p{N}]+", " ")
                .replace("1st", "first")
                .replace("2nd", "second")
                .strip();
        if (NOT_YET.matcher(words).matches()) {
            return Optional.empty();
        }
        boolean end = words.matches(".*\\b(end|ends|ended|over|stop|stops)\\b.*");
        if (words.matches(".*\\bsecond (crack|pop).*")) {
            return end ? Optional.empty() : Optional.of(MarkKind.SECOND_CRACK_START);
        }
        if (words.matches(".*\\bfirst (crack|pop).*")) {
            return Optional.of(end ? MarkKind.FIRST_CRACK_END : MarkKind.FIRST_CRACK_START);
        }
        if (words.matches(".*\\b(yellow|yellowing)\\b.*")) {
            return Optional.of(MarkKind.YELLOWING);
        }
        if (words.matches(".*\\b(turning point)\\b.*")) {
            return Optional.of(MarkKind.TURNING_POINT);
        }
        if (words.matches(
                "(charge|charged|beans in|in the drum|füllen|fuellen|einfüllen|einwurf|carga|carregar|carico|caricamento|charge|chargement"
                        + "|enfournement|bohnen rein)")) {
            return Optional.of(MarkKind.CHARGE);
        }
        if (words.matches("(drop|dropped|beans out|out|end of (the )?roast|roast (end|ended|over))")) {
            return Optional.of(MarkKind.DROP);
        }
        // In other languages, the words that head the columns of lists.
        return TradeWords.all().getOrDefault(TradeWords.plain(written), Set.of()).stream()
                .flatMap(meaning -> meaning.mark().stream())
                .findFirst()
                .or(() -> words.matches(
                                "(ablassen|auswurf|entleeren|descarga|salida|saída|sortie|scarico|uscita|vidange|fin|fine|ende)")
                        ? Optional.of(MarkKind.DROP)
                        : Optional.empty());
    }
}
