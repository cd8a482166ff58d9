package parchment.virtual.chance;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Optional;

/**
 * Settles everything that a virtual roastery draws by chance: equal seeds give equal years.
 *
 * <p>A plain seed is a number. Anybody who knows it can make the logbook and its truth anew, so it seals nothing. A secret seed is
 * 32 bytes from the system's source of secrets. Each thing that is drawn has a stream that starts from SHA-256 (FIPS 180-4) of the
 * secret and the thing's name; whoever works out how one stream went on learns nothing about the others or about the secret.
 */
public final class Seed {
    private static final String SECRET = "secret:";
    private static final int BYTES = 32;

    private final long number;
    private final Optional<String> secret;

    private Seed(long number, Optional<String> secret) {
        this.number = number;
        this.secret = secret;
    }

    /** Returns a plain seed. */
    public static Seed of(long number) {
        return new Seed(number, Optional.empty());
    }

    /** Draws a secret seed from the system's source of secrets: the one thing here that differs each time. */
    public static Seed secret() {
        byte[] bytes = new byte[BYTES];
        new SecureRandom().nextBytes(bytes);
        return new Seed(0, Optional.of(HexFormat.of().formatHex(bytes)));
    }

    /**
     * Reads a seed from its text: a whole number, or {@code secret:} and 64 hexadecimal digits.
     *
     * @throws IllegalArgumentException if the text is neither
     */
    public static Seed parse(String text) {
        String given = text.strip().toLowerCase(Locale.ROOT);
        if (given.matches(SECRET + "[0-9a-f]{" + 2 * BYTES + "}")) {
            return new Seed(0, Optional.of(given.substring(SECRET.length())));
        }
        try {
            return of(Long.parseLong(given));
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException("A seed is a whole number such as 7, or '" + SECRET + "' and "
                    + 2 * BYTES + " hexadecimal digits; it was given '" + text.strip() + "'.");
        }
    }

    /** Returns whether the seed seals what is drawn from it. */
    public boolean isSecret() {
        return secret.isPresent();
    }

    /** Returns the stream of the thing with the given name. */
    public Chance stream(String name) {
        if (secret.isEmpty()) {
            return Chance.of(number, name);
        }
        MessageDigest digest = sha256();
        digest.update(HexFormat.of().parseHex(secret.get()));
        return Chance.fromState(ByteBuffer.wrap(digest.digest(name.getBytes(StandardCharsets.UTF_8)))
                .getLong());
    }

    /** Returns the SHA-256 of a text in UTF-8, as 64 hexadecimal digits. */
    public static String sha256(String text) {
        return HexFormat.of().formatHex(sha256().digest(text.getBytes(StandardCharsets.UTF_8)));
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every Java has SHA-256; this one has not.", e);
        }
    }

    /** Returns the text from which {@link #parse} reads the seed again, a secret included. */
    public String text() {
        return secret.map(hex -> SECRET + hex).orElse(Long.toString(number));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Seed seed && seed.text().equals(text());
    }

    @Override
    public int hashCode() {
        return text().hashCode();
    }

    /** Returns the number, or only that there is a secret. */
    @Override
    public String toString() {
        return isSecret() ? "secret" : Long.toString(number);
    }
}
