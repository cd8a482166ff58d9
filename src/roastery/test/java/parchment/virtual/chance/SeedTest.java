package parchment.virtual.chance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class SeedTest {
    /** Example of FIPS 180-2, appendix B.1: SHA-256 of "abc". */
    @Test
    void agreesWithThePublishedExampleOfSha256() {
        assertEquals("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", Seed.sha256("abc"));
    }

    @Test
    void aSecretIsReadBackFromItsTextAndNotShown() {
        Seed secret = Seed.secret();
        assertEquals(secret, Seed.parse(secret.text()));
        assertEquals("secret", secret.toString());
        assertNotEquals(secret, Seed.secret());
        assertEquals(
                secret.stream("day").bits(),
                Seed.parse(secret.text()).stream("day").bits());
        assertNotEquals(secret.stream("day").bits(), secret.stream("dax").bits());
    }

    @Test
    void aPlainSeedDrawsWhatItAlwaysDrew() {
        assertEquals(
                Chance.of(7, "batch H001").bits(),
                Seed.parse(" 7 ").stream("batch H001").bits());
        assertFalse(Seed.of(7).isSecret());
        assertEquals("7", Seed.of(7).text());
    }

    @Test
    void saysWhatASeedLooksLike() {
        String message = assertThrows(IllegalArgumentException.class, () -> Seed.parse("secret:12"))
                .getMessage();
        assertTrue(message.startsWith("A seed is a whole number such as 7, or 'secret:' and 64"), message);
    }
}
