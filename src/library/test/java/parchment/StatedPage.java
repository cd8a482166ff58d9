package parchment;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A page of docs whose numbers are held against those of the code. */
public final class StatedPage {
    private final String name;
    private final String words;

    private StatedPage(String name, String words) {
        this.name = name;
        this.words = words;
    }

    /** Reads a page by its file's name, line ends as blanks. */
    public static StatedPage of(String name) {
        try {
            return new StatedPage(
                    name, Files.readString(Path.of("..", "docs", name)).replaceAll("\\s+", " "));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Finds a sentence with one number in it, written #, and returns the number. */
    public double number(String sentence) {
        Matcher matcher = Pattern.compile(Pattern.quote(sentence).replace("#", "\\E([0-9.,]*[0-9])\\Q"))
                .matcher(words);
        assertTrue(matcher.find(), "docs/" + name + " does not say: " + sentence);
        return Double.parseDouble(matcher.group(1).replace(",", ""));
    }

    /** Says whether the page has these words. */
    public boolean says(String sentence) {
        return words.contains(sentence);
    }
}
