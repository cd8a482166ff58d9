package parchment.jars;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import parchment.file.FileWords;

/**
 * Does what the percent lines of Java notebooks ask for, as the documents of their kernels say. Called by the Java that the kernel puts in
 * the place of such a line; in a cell of one's own {@link Jars} reads better.
 *
 * @see <a href="https://github.com/SpencerPark/IJava/blob/master/docs/magics.md">Magics of the IJava line of kernels</a>
 */
public final class PercentLine {
    /** The lines known, by name; {@code load} is done by the kernel itself, because it runs cells. */
    public static final List<String> NAMES = List.of(
            "addMavenDependencies",
            "addMavenDependency",
            "addMavenRepo",
            "classpath",
            "jars",
            "load",
            "loadFromPOM",
            "maven",
            "mavenRepo");

    /** Those that may stand, with two percent signs, over a whole cell. */
    public static final List<String> CELL_NAMES = List.of("classpath", "loadFromPOM");

    private static final String CLASSPATH_FORMS =
            "%classpath is followed by paths, by: add jar PATH ..., by: add mvn GROUP ARTIFACT"
                    + " VERSION, or by: config resolver NAME ADDRESS";

    private PercentLine() {}

    /**
     * Does one line.
     *
     * @param name what stands behind the percent sign
     * @param words what follows, cut at blanks
     * @throws IllegalArgumentException if the words do not fit the name
     */
    public static Jars run(String name, String... words) {
        List<String> given = List.of(words);
        return switch (name) {
            case "maven", "addMavenDependency", "addMavenDependencies" -> libraries(given);
            case "mavenRepo", "addMavenRepo" -> repository("%" + name, given);
            case "jars" -> files(needed(given, "%jars is followed by paths of jars"), Folders.JARS_IN_THEM);
            case "classpath" -> classPath(given);
            case "loadFromPOM" -> pom(given);
            default -> throw new IllegalArgumentException("There is no percent line %" + name + ".");
        };
    }

    /**
     * Does what stands over a whole cell.
     *
     * @param name what stands behind the two percent signs
     * @param body the lines below
     * @param words what follows the name, cut at blanks
     * @throws IllegalArgumentException if these do not fit the name
     */
    public static Jars cell(String name, String body, String... words) {
        if (name.equals("loadFromPOM")) {
            return pom(PomText.parse(body, List.of(words)));
        }
        List<String> lines =
                body.lines().map(String::strip).filter(line -> !line.isEmpty()).toList();
        List<Coordinate> libraries = new ArrayList<>();
        List<String> head = List.of(words);
        if (!head.equals(List.of("add", "mvn"))) {
            throw new IllegalArgumentException(
                    "%%classpath is followed by: add mvn, and each line below it names a library.");
        }
        for (String line : lines) {
            libraries.add(coordinate(List.of(line.split("\\s+"))));
        }
        return Jars.session().addLibraries(libraries);
    }

    private static Jars libraries(List<String> names) {
        return Jars.session()
                .addLibraries(needed(names, "%maven is followed by names of libraries, group:artifact:version").stream()
                        .map(Coordinate::parse)
                        .toList());
    }

    private static Jars repository(String line, List<String> words) {
        if (words.size() != 2) {
            throw new IllegalArgumentException(line + " is followed by the name of a repository and its address.");
        }
        Jars.repository(words.get(0), words.get(1));
        return Jars.all();
    }

    private static Jars classPath(List<String> words) {
        if (words.isEmpty()) {
            return Jars.all();
        }
        boolean adds = words.get(0).equals("add") && words.size() > 2;
        if (adds && words.get(1).equals("jar")) {
            return files(words.subList(2, words.size()), Folders.JARS_IN_THEM);
        }
        if (adds && words.get(1).equals("mvn")) {
            return Jars.session().addLibraries(List.of(coordinate(words.subList(2, words.size()))));
        }
        if (words.get(0).equals("config") && words.size() == 4 && words.get(1).equals("resolver")) {
            return repository("%classpath config resolver", words.subList(2, 4));
        }
        if (words.get(0).equals("add") || words.get(0).equals("config")) {
            throw new IllegalArgumentException(CLASSPATH_FORMS + ".");
        }
        return files(words, Folders.AS_CLASSES);
    }

    private static Coordinate coordinate(List<String> words) {
        return words.size() == 1 ? Coordinate.parse(words.get(0)) : Coordinate.parse(String.join(":", words));
    }

    private static Jars pom(List<String> words) {
        Path file = Path.of(needed(words, "%loadFromPOM is followed by the path of a pom.xml")
                .get(0));
        try {
            return pom(PomText.parse(Files.readString(file), words.subList(1, words.size())));
        } catch (IOException e) {
            throw new IllegalArgumentException(FileWords.of(e), e);
        }
    }

    private static Jars pom(PomText pom) {
        SessionJars session = Jars.session();
        pom.repositories().forEach(session::addRepository);
        return session.addLibraries(pom.libraries());
    }

    private enum Folders {
        JARS_IN_THEM,
        AS_CLASSES
    }

    private static Jars files(List<String> paths, Folders folders) {
        List<Path> files = paths.stream()
                .flatMap(path -> JarFiles.matching(path).stream())
                .flatMap(file -> folders == Folders.JARS_IN_THEM && Files.isDirectory(file)
                        ? SessionJars.jarsIn(file).stream()
                        : Stream.of(file))
                .toList();
        return Jars.session().addFiles(files);
    }

    private static List<String> needed(List<String> words, String rule) {
        if (words.isEmpty()) {
            throw new IllegalArgumentException(rule + ", such as: " + example(rule));
        }
        return words;
    }

    private static String example(String rule) {
        return Arrays.asList(rule.split(" ")).contains("%maven")
                ? "%maven org.apache.commons:commons-math3:3.6.1"
                : rule.startsWith("%jars") ? "%jars tools/*.jar" : "%loadFromPOM pom.xml";
    }
}
