package parchment.jars;

import java.util.List;
import java.util.regex.Pattern;

/**
 * The name of a library in a Maven repository, as its makers publish it.
 *
 * @param group whose it is, such as {@code org.apache.commons}
 * @param artifact which of theirs, such as {@code commons-math3}
 * @param extension the kind of file, {@code jar} for nearly all
 * @param classifier which of several files of one version; empty for nearly all
 * @param version one version, such as {@code 3.6.1}
 * @see <a href="https://maven.apache.org/pom.html#Maven_Coordinates">Maven coordinates</a>
 */
record Coordinate(String group, String artifact, String extension, String classifier, String version) {
    private static final String FORM =
            "A library is named group:artifact:version, as in \"org.apache.commons:commons-math3:3.6.1\"";

    private static final Pattern PART = Pattern.compile("[\\w.\\-]+");
    private static final Pattern NO_ONE_VERSION = Pattern.compile("LATEST|RELEASE|.*[\\[(,)\\]*+].*");

    /**
     * Reads a name of three to five parts: group:artifact, the kind of file if it is no jar, its classifier, the version.
     *
     * @throws IllegalArgumentException if it is not of that form, or names no one version
     */
    static Coordinate parse(String written) {
        String name = written.strip();
        List<String> parts = List.of(name.split(":", -1));
        if (parts.size() == 2) {
            throw new IllegalArgumentException(
                    FORM + "; '" + name + "' has no version. Name one, so that the notebook does the same next year.");
        }
        if (parts.size() < 3 || parts.size() > 5) {
            throw new IllegalArgumentException(FORM + "; found '" + name.replaceAll("\\p{Cntrl}", "?") + "'.");
        }
        String version = parts.get(parts.size() - 1);
        if (NO_ONE_VERSION.matcher(version).matches()) {
            throw new IllegalArgumentException("'" + name + "' leaves open which version is meant ('" + version
                    + "'). Name one, so that the notebook does the same next year.");
        }
        String extension = parts.size() > 3 ? parts.get(2) : "jar";
        String classifier = parts.size() > 4 ? parts.get(3) : "";
        for (String part : List.of(parts.get(0), parts.get(1), extension, version)) {
            if (!PART.matcher(part).matches() || part.chars().allMatch(letter -> letter == '.')) {
                throw new IllegalArgumentException(FORM + "; found '" + name + "'"
                        + (part.isEmpty() ? ", where a part is empty." : ", where '" + part + "' cannot be a name."));
            }
        }
        return new Coordinate(parts.get(0), parts.get(1), extension, classifier, version);
    }

    /** Tells whether a text is meant as the name of a library and not as that of a file. */
    static boolean looksLikeOne(String text) {
        return text.matches("[^:/\\\\\\s]{2,}(:[^:/\\\\\\s]*){1,4}");
    }

    /** Returns group and artifact, which a session has in one version only. */
    String library() {
        return group + ":" + artifact + (classifier.isEmpty() ? "" : ":" + classifier);
    }

    @Override
    public String toString() {
        return library() + ":" + version;
    }
}
