package parchment.notebook;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A page with blanks to fill in, and the look that our pages share: ink and ground on a light screen, a dark one and paper; text, code
 * and tables.
 */
public final class PageForm {
    private static final Pattern BLANK = Pattern.compile("@([A-Z]+)@");

    private PageForm() {}

    /**
     * Returns the form {@code page.html} that lies beside a class, its blanks filled with HTML. The blank STYLE takes the shared look.
     * What is filled in is not looked at for blanks again.
     *
     * @throws IllegalArgumentException if the form has a blank for which there is nothing
     */
    public static String filled(Class<?> beside, Map<String, String> blanks) {
        return BLANK.matcher(text(beside, "page.html")).replaceAll(found -> {
            String name = found.group(1);
            String html = name.equals("STYLE") ? text(PageForm.class, "page.css") : blanks.get(name);
            if (html == null) {
                throw new IllegalArgumentException("Nothing is given for the blank " + name + " of the page.");
            }
            return Matcher.quoteReplacement(html);
        });
    }

    /** Returns a text that lies beside a class. */
    public static String text(Class<?> beside, String name) {
        try (InputStream in = beside.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("The text " + name + " is missing from the jar.");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
