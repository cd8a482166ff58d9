package parchment.jars;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Element;
import org.xml.sax.SAXException;

/**
 * The libraries and repositories that a piece of a {@code pom.xml} names: a whole one, or what the page of a library shows to be copied,
 * with or without the tags around it.
 */
final class PomText {
    /** The scopes that count if none is named. */
    private static final List<String> USUAL_SCOPES = List.of("compile", "runtime", "system", "import");

    private static final Pattern PLACEHOLDER = Pattern.compile("\\$\\{([^}]+)}");
    private static final Pattern HEAD = Pattern.compile("^\\s*<\\?xml[^>]*\\?>");

    private final Map<String, String> properties = new HashMap<>();
    private final Map<String, String> managed = new HashMap<>();
    private final List<Coordinate> libraries = new ArrayList<>();
    private final List<Repository> repositories = new ArrayList<>();
    private final Set<String> scopes;

    private PomText(List<String> scopes) {
        this.scopes = Set.copyOf(scopes.isEmpty() ? USUAL_SCOPES : scopes);
    }

    /**
     * Reads the text.
     *
     * @param scopes which dependencies count, such as {@code compile}; the usual ones if there is none
     * @throws IllegalArgumentException if it is not XML, names no library, or leaves a version open
     */
    static PomText parse(String text, List<String> scopes) {
        PomText pom = new PomText(scopes);
        if (text.contains("<!DOCTYPE")) {
            throw new IllegalArgumentException(
                    "A pom.xml has no line that begins with <!DOCTYPE, and nothing that one names is"
                            + " read here. Take it out, and run the cell again.");
        }
        try {
            pom.read(Xml.parse("<all>" + HEAD.matcher(text).replaceFirst("") + "</all>"));
        } catch (SAXException | ParserConfigurationException | IOException e) {
            throw new IllegalArgumentException("This is not whole XML, as a pom.xml is: "
                    + String.valueOf(e.getMessage()).replaceFirst("\\.?$", "."));
        }
        if (pom.libraries.isEmpty()) {
            throw new IllegalArgumentException("No dependency was found here; one looks like <dependency><groupId>..."
                    + "</groupId><artifactId>...</artifactId><version>...</version></dependency>.");
        }
        return pom;
    }

    List<Coordinate> libraries() {
        return List.copyOf(libraries);
    }

    List<Repository> repositories() {
        return List.copyOf(repositories);
    }

    private void read(Element all) {
        List<Element> tops = new ArrayList<>(List.of(all));
        tops.addAll(Xml.children(all, "project"));
        for (Element top : tops) {
            Xml.children(top, "properties", "*")
                    .forEach(each ->
                            properties.put(Xml.name(each), each.getTextContent().strip()));
            for (String own : List.of("groupId", "artifactId", "version")) {
                if (!Xml.text(top, own).isEmpty()) {
                    properties.put("project." + own, Xml.text(top, own));
                }
            }
            for (Element management : Xml.children(top, "dependencyManagement")) {
                Xml.children(management, "dependencies", "dependency")
                        .forEach(each -> managed.put(library(each), value(each, "version")));
            }
        }
        for (Element top : tops) {
            Xml.children(top, "repositories", "repository").forEach(this::addRepository);
            Xml.children(top, "repository").forEach(this::addRepository);
            Xml.children(top, "dependencies", "dependency").forEach(this::addLibrary);
            Xml.children(top, "dependency").forEach(this::addLibrary);
        }
    }

    private void addRepository(Element repository) {
        repositories.add(Repository.encrypted(value(repository, "id"), value(repository, "url")));
    }

    private void addLibrary(Element dependency) {
        String scope = value(dependency, "scope");
        if (!scopes.contains(scope.isEmpty() ? "compile" : scope)
                || value(dependency, "optional").equals("true")) {
            return;
        }
        String library = library(dependency);
        String version = value(dependency, "version");
        version = version.isEmpty() ? managed.getOrDefault(library, "") : version;
        if (version.isEmpty() || version.contains("${")) {
            throw new IllegalArgumentException(
                    "The dependency " + library
                            + " has no version here. What a parent or another file says is not looked up; write the version out.");
        }
        String type = value(dependency, "type");
        String classifier = value(dependency, "classifier");
        libraries.add(Coordinate.parse(library
                + (classifier.isEmpty() ? "" : ":" + (type.isEmpty() ? "jar" : type) + ":" + classifier)
                + ":" + version));
    }

    private String library(Element dependency) {
        return value(dependency, "groupId") + ":" + value(dependency, "artifactId");
    }

    private String value(Element element, String name) {
        String text = Xml.text(element, name);
        Matcher matcher = PLACEHOLDER.matcher(text);
        return matcher.replaceAll(
                match -> Matcher.quoteReplacement(properties.getOrDefault(match.group(1), match.group())));
    }
}
