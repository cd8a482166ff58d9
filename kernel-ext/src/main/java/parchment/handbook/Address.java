package parchment.handbook;

/**
 * An address as a page writes it, taken apart.
 *
 * @param file the file, as seen from the page; empty for the page itself
 * @param name the heading in it; empty if none is named
 */
record Address(String file, String name) {
    static Address of(String written) {
        int hash = written.indexOf('#');
        return hash < 0
                ? new Address(written, "")
                : new Address(written.substring(0, hash), written.substring(hash + 1));
    }
}
