package parchment.jars;

import java.net.URI;
import java.util.Locale;

/**
 * A place on the network or, for tests, on the disk, that libraries are fetched from.
 *
 * @param id its short name, by which settings may put a mirror in its place
 * @param url where it is
 */
record Repository(String id, String url) {
    /** The one that nearly all open libraries are in. */
    static final Repository CENTRAL = new Repository("central", "https://repo.maven.apache.org/maven2");

    /** @throws IllegalArgumentException if what comes from there could be changed on its way */
    static Repository encrypted(String id, String url) {
        check(id, url);
        return new Repository(id, url);
    }

    /** @throws IllegalArgumentException if the address is none that begins with https */
    static void check(String id, String url) {
        String scheme;
        try {
            scheme = String.valueOf(URI.create(url).getScheme()).toLowerCase(Locale.ROOT);
        } catch (IllegalArgumentException e) {
            scheme = "";
        }
        if (scheme.equals("http")) {
            throw new IllegalArgumentException("The repository '" + id + "' (" + url
                    + ") is not encrypted: what comes from there can be changed on its way, so nothing is fetched. Use its"
                    + " address that begins with https.");
        }
        if (!scheme.equals("https")) {
            throw new IllegalArgumentException("A repository has an address that begins with https; '" + id + "' has '"
                    + url + "'. A jar on this machine is added by its path: Jars.add(Path.of(\"tools.jar\")).");
        }
    }
}
