package parchment.jars;

import java.io.IOException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.Enumeration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.jar.Attributes;
import java.util.jar.JarFile;
import java.util.jar.Manifest;
import java.util.zip.ZipEntry;
import javax.tools.Diagnostic;
import javax.tools.DiagnosticCollector;
import javax.tools.JavaCompiler;
import javax.tools.JavaFileObject;
import javax.tools.StandardJavaFileManager;
import javax.tools.StandardLocation;
import javax.tools.ToolProvider;

/**
 * Opens a jar as Java's compiler and what loads classes will, with the jars that its manifest leads to. Both read every jar of a session again
 * for each cell, so that one which they cannot open would stop all cells after it, whatever those do.
 */
final class JarReading {
    private static final int LONGEST = 200;

    private JarReading() {}

    /** @throws IllegalArgumentException if the compiler or what loads classes cannot open it; the message says what is wrong with it */
    static void check(Path jar) {
        Optional<String> trouble = ofCompiler(jar).or(() -> ofLoader(jar));
        if (trouble.isPresent()) {
            throw new IllegalArgumentException("'" + jar.getFileName() + "' cannot be used: "
                    + why(jar).orElse("Java cannot open it (" + trouble.get() + ").")
                    + " It was not loaded, because no later cell could run with it. Ask its makers for a whole one.");
        }
    }

    private static Optional<String> ofCompiler(Path jar) {
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        if (compiler == null) {
            return Optional.empty();
        }
        DiagnosticCollector<JavaFileObject> said = new DiagnosticCollector<>();
        try (StandardJavaFileManager files = compiler.getStandardFileManager(said, Locale.ROOT, null)) {
            files.setLocationFromPaths(StandardLocation.CLASS_PATH, List.of(jar));
            // Even where no class is at the top, each jar is opened to see.
            files.list(StandardLocation.CLASS_PATH, "", EnumSet.of(JavaFileObject.Kind.CLASS), false);
        } catch (IOException | RuntimeException | AssertionError e) {
            return Optional.of(String.valueOf(e.getMessage()));
        }
        return said.getDiagnostics().stream()
                .filter(each -> each.getKind() == Diagnostic.Kind.ERROR)
                .map(each -> each.getMessage(Locale.ROOT))
                .findFirst();
    }

    private static Optional<String> ofLoader(Path jar) {
        try (URLClassLoader loader = new URLClassLoader(new URL[] {jar.toUri().toURL()}, null)) {
            loader.findResource("META-INF/none"); // What is nowhere is looked for everywhere.
        } catch (IOException | RuntimeException e) {
            return Optional.of(String.valueOf(e.getMessage()));
        }
        return Optional.empty();
    }

    private static Optional<String> why(Path jar) {
        try (JarFile opened = new JarFile(jar.toFile())) {
            Enumeration<? extends ZipEntry> entries = opened.entries();
            while (entries.hasMoreElements()) {
                String name = entries.nextElement().getName();
                if (Arrays.stream(name.split("/", -1)).anyMatch(part -> part.equals(".") || part.equals(".."))) {
                    return Optional.of("something in it is named '" + cut(name)
                            + "', and Java opens no jar where . or .. is a part of a name.");
                }
            }
            Optional<String> leads = Optional.ofNullable(opened.getManifest())
                    .map(Manifest::getMainAttributes)
                    .map(attributes -> attributes.getValue(Attributes.Name.CLASS_PATH));
            return leads.map(names -> "its manifest leads to other jars (Class-Path: " + cut(names.strip())
                    + "), and Java cannot read one of these names, or one of these jars.");
        } catch (IOException e) {
            return Optional.of("its manifest cannot be read.");
        }
    }

    private static String cut(String text) {
        return text.length() > LONGEST ? text.substring(0, LONGEST) + " ..." : text;
    }
}
