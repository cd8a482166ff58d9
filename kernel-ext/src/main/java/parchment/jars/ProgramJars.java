package parchment.jars;

import java.io.File;
import java.io.IOException;
import java.net.URL;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.jar.Attributes;
import java.util.jar.JarFile;
import java.util.jar.Manifest;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import parchment.jars.JarContent.Named;

/** What this program itself runs on. Java loads these before anything that a reader adds. */
final class ProgramJars {
    private final Map<String, String> versions;
    private final ClassLoader loader = ProgramJars.class.getClassLoader();

    private ProgramJars(Map<String, String> versions) {
        this.versions = versions;
    }

    /**
     * Tells whether a library that is named is one of these. Group and artifact are written in most jars; where they are not, the very version has to
     * be the same, since an artifact's name may be anybody's.
     */
    boolean isOne(Coordinate name) {
        Optional<String> version = version(name.artifact());
        if (version.isEmpty()
                || !name.classifier().isEmpty()
                || !name.extension().equals("jar")) {
            return false;
        }
        String written = "META-INF/maven/" + name.group() + "/" + name.artifact() + "/pom.properties";
        return loader.getResource(written) != null || version.get().equals(name.version());
    }

    /** Reads the names of the jars on the class path, and of those that the program's own jar names. */
    static ProgramJars ofThisProgram() {
        return of(List.of(System.getProperty("java.class.path").split(Pattern.quote(File.pathSeparator))));
    }

    static ProgramJars of(List<String> classPath) {
        Map<String, String> versions = new LinkedHashMap<>();
        classPath.stream()
                .flatMap(ProgramJars::withThoseItNames)
                .map(entry -> new File(entry).getName())
                .flatMap(name -> JarContent.named(name).stream())
                .forEach(named -> versions.putIfAbsent(named.artifact(), named.version()));
        return new ProgramJars(versions);
    }

    /** Started from one jar, the class path is that jar alone, and what is in it names those that it needs. */
    private static Stream<String> withThoseItNames(String entry) {
        if (!new File(entry).isFile()) {
            return Stream.of(entry);
        }
        try (JarFile jar = new JarFile(entry)) {
            Manifest manifest = jar.getManifest();
            String named =
                    manifest == null ? null : manifest.getMainAttributes().getValue(Attributes.Name.CLASS_PATH);
            return named == null ? Stream.of(entry) : Stream.concat(Stream.of(entry), Stream.of(named.split(" +")));
        } catch (IOException e) {
            return Stream.of(entry); // No jar, which Java passes over too.
        }
    }

    /** Returns which version of a library is there, whoever published it. */
    Optional<String> version(String artifact) {
        return Optional.ofNullable(versions.get(artifact));
    }

    /** Tells whether a class file of that name is there, of this program or of Java. */
    boolean has(String classFile) {
        return ProgramJars.class.getClassLoader().getResource(classFile) != null;
    }

    /** Returns the name of the jar that holds a class file, or "Java" if Java itself has it. */
    String holder(String classFile) {
        URL found = ProgramJars.class.getClassLoader().getResource(classFile);
        String address = String.valueOf(found);
        int end = address.indexOf("!/");
        return end < 0 ? "Java" : address.substring(address.lastIndexOf('/', end) + 1, end);
    }

    /** Returns what a file's name tells, if that library is there. */
    Optional<Named> sameAs(Named named) {
        return version(named.artifact()).map(version -> new Named(named.artifact(), version));
    }
}
