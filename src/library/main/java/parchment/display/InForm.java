package parchment.display;

import java.util.Base64;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/** A value in one media type, and a text for pages that do not know it. */
record InForm(String mediaType, String content, String text) implements Showable {
    private static final String HTML = "text/html";
    private static final String SVG = "image/svg+xml";

    private static final Pattern MEDIA_TYPE = Pattern.compile("[a-z]+/[A-Za-z0-9][A-Za-z0-9!#$&^_.+-]*");
    private static final Pattern BASE64 = Pattern.compile("[A-Za-z0-9+/\\s]*=?\\s*=?\\s*");

    /** Short names of what is asked for most, and the type that each means. */
    private static final Map<String, String> MEANT = Map.of(
            "html", HTML,
            "svg", SVG,
            "png", "image/png",
            "jpg", "image/jpeg",
            "jpeg", "image/jpeg",
            "markdown", "text/markdown",
            "latex", "text/latex",
            "json", "application/json",
            "text", "text/plain");

    /** Types that hold text and that nobody reads as text. */
    private static final Set<String> UNREADABLE = Set.of("application/javascript", "text/javascript");

    static InForm of(String mediaType, String text) {
        check(mediaType);
        boolean bytes = isBytes(mediaType);
        if (bytes && text.isBlank()) {
            throw new IllegalArgumentException(
                    "A value in " + mediaType
                            + " is made of bytes, but Display.as was given an empty text. Give it the bytes (byte[]), or their text in Base64.");
        }
        if (bytes && !BASE64.matcher(text).matches()) {
            throw new IllegalArgumentException(
                    "A value in " + mediaType
                            + " is made of bytes, but Display.as was given a text. Give it the bytes (byte[]), or their text in Base64.");
        }
        String plain = bytes || mediaType.equals(SVG)
                ? "A picture (" + mediaType + ")"
                : mediaType.equals(HTML)
                        ? words(text)
                        : UNREADABLE.contains(mediaType) ? "A value in " + mediaType : text;
        return new InForm(mediaType, text, plain);
    }

    private static String words(String html) {
        String words = Html.words(html);
        return words.isEmpty() ? "A value in " + HTML : words;
    }

    static InForm of(String mediaType, byte[] bytes) {
        check(mediaType);
        if (!isBytes(mediaType)) {
            throw new IllegalArgumentException(
                    "A value in " + mediaType
                            + " is a text, but Display.as was given bytes. Give it the text: new String(bytes, StandardCharsets.UTF_8).");
        }
        if (bytes.length == 0) {
            throw new IllegalArgumentException(
                    "A value in " + mediaType
                            + " is made of bytes, but Display.as was given none. Look where they come from: the file or the picture may be empty.");
        }
        return of(mediaType, Base64.getEncoder().encodeToString(bytes));
    }

    /** Returns text alone. */
    static InForm plain(String text) {
        return new InForm("text/plain", text, text);
    }

    private static void check(String mediaType) {
        if (!MEDIA_TYPE.matcher(mediaType).matches()) {
            String meant = MEANT.get(mediaType.strip().toLowerCase(java.util.Locale.ROOT));
            throw new IllegalArgumentException(
                    "Display.as needs a media type, such as text/html or image/png, but was given '" + mediaType + "'."
                            + (meant == null ? "" : " Did you mean '" + meant + "'?"));
        }
    }

    /** Clients take these in Base64. */
    private static boolean isBytes(String mediaType) {
        return mediaType.equals("application/pdf")
                || (mediaType.startsWith("image/") || mediaType.startsWith("audio/") || mediaType.startsWith("video/"))
                        && !mediaType.equals(SVG);
    }

    @Override
    public Optional<String> html() {
        return mediaType.equals(HTML) ? Optional.of(content) : Optional.empty();
    }

    @Override
    public Optional<String> svg() {
        return mediaType.equals(SVG) ? Optional.of(content) : Optional.empty();
    }

    @Override
    public Map<String, String> otherForms() {
        return mediaType.equals(HTML) || mediaType.equals(SVG) || mediaType.equals("text/plain")
                ? Map.of()
                : Map.of(mediaType, content);
    }

    @Override
    public String toString() {
        return "A value in " + mediaType;
    }
}
