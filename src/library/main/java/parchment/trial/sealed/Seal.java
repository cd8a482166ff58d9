package parchment.trial.sealed;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * Binds whoever gives its 64 digits away to a plan and to every drawn line, none of which it shows.
 *
 * <p>The plan's seal is the SHA-256 of the plan's text; a line's seal is that of its text in UTF-8 without the end of the line. The seal is the
 * SHA-256 of this text: {@value #HEADER}, the plan's seal, and each line's seal, every one with an end of line. So {@code sha256sum} says the
 * same of the files.
 *
 * @see <a href="https://doi.org/10.6028/NIST.FIPS.180-4">FIPS 180-4, Secure Hash Standard</a>
 */
public record Seal(String planSeal, List<String> lineSeals) {
    static final String HEADER = "parchment-seal-1";

    /** How many digits are printed together, to be read aloud. */
    private static final int TOGETHER = 4;

    private static final Pattern DIGITS = Pattern.compile("[0-9a-f]{64}");

    public Seal {
        lineSeals = List.copyOf(lineSeals);
    }

    /** Seals a plan and its lines. */
    public static Seal of(String plan, List<String> lines) {
        return new Seal(sha256(plan), lines.stream().map(Seal::sha256).toList());
    }

    /**
     * Reads the text of a seal.
     *
     * @throws IllegalArgumentException if it is none; the message says in which line
     */
    public static Seal read(String text) {
        List<String> lines = new ArrayList<>(List.of(text.split("\n", -1)));
        if (!lines.get(0).equals(HEADER)) {
            throw new IllegalArgumentException("line 1 is not '" + HEADER + "'");
        }
        if (!lines.remove(lines.size() - 1).isEmpty()) {
            throw new IllegalArgumentException("its last line has no end");
        }
        for (int i = 1; i < lines.size(); i++) {
            if (!DIGITS.matcher(lines.get(i)).matches()) {
                throw new IllegalArgumentException("line " + (i + 1) + " is not 64 digits");
            }
        }
        if (lines.size() < 3) {
            throw new IllegalArgumentException("it ends after line " + lines.size());
        }
        return new Seal(lines.get(1), lines.subList(2, lines.size()));
    }

    /** Returns the text of which the seal is the SHA-256. */
    public String text() {
        return HEADER + "\n" + planSeal + "\n" + String.join("\n", lineSeals) + "\n";
    }

    /** Returns the 64 digits. */
    public String digits() {
        return sha256(text());
    }

    /** Prints 64 digits in fours. */
    public static String inFours(String digits) {
        return String.join(" ", digits.split("(?<=\\G.{" + TOGETHER + "})"));
    }

    /**
     * Returns 64 digits as they were typed, in fours or not.
     *
     * @param what whose digits they are, as in "A seal"
     * @throws IllegalArgumentException if they are not 64 digits from 0 to f
     */
    public static String typed(String what, String digits) {
        String plain = digits.replaceAll("\\s", "").toLowerCase(Locale.ROOT);
        if (!DIGITS.matcher(plain).matches()) {
            throw new IllegalArgumentException(
                    what + " is 64 digits from 0 to f, with or without blanks, but this one has "
                            + plain.length() + (plain.length() == 64 ? ", and others among them" : "")
                            + ". Type it as it was printed.");
        }
        return plain;
    }

    /** Returns the SHA-256 of a text in UTF-8, as 64 digits. */
    public static String sha256(String text) {
        return sha256(text.getBytes(StandardCharsets.UTF_8));
    }

    /** Returns the SHA-256 of bytes, as 64 digits. */
    public static String sha256(byte[] bytes) {
        return HexFormat.of().formatHex(digest(bytes));
    }

    /** Returns the SHA-256 of bytes, as 32 bytes. */
    public static byte[] digest(byte[] bytes) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(bytes);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every Java has SHA-256.", e);
        }
    }

    @Override
    public String toString() {
        return "seal " + inFours(digits());
    }
}
