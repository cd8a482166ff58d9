package parchment.jars;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Element;
import org.xml.sax.SAXException;

/**
 * What a reader's settings of Maven say about where libraries are: {@code ~/.m2/settings.xml}. Passwords in it are not read.
 *
 * @param localRepository the folder of libraries that were fetched before, by Maven or from here
 * @param mirrors what is asked in place of other repositories, as in many companies
 * @param proxies what stands between this machine and the network
 * @param network never where the settings say that Maven is to work offline
 * @see <a href="https://maven.apache.org/settings.html">Settings of Maven</a>
 */
record MavenSettings(Path localRepository, List<Mirror> mirrors, List<Proxy> proxies, Network network) {

    /** What a mirror is for. */
    enum Use {
        /** It is asked in place of others. */
        ASKED,

        /** It is never asked, and so neither are those in whose place it stands. */
        BLOCKED
    }

    /** A repository that stands in the place of those whose ids the pattern {@code mirrorOf} names. */
    record Mirror(String id, String url, String mirrorOf, Use use) {
        static Mirror asked(String id, String url, String mirrorOf) {
            return new Mirror(id, url, mirrorOf, Use.ASKED);
        }
    }

    /** A proxy of this machine, and the hosts that are reached without it. */
    record Proxy(String protocol, String host, int port, String nonProxyHosts) {}

    private static final Pattern PLACEHOLDER = Pattern.compile("\\$\\{(env\\.)?([^}]+)}");
    private static final int USUAL_PORT = 8080;

    MavenSettings {
        mirrors = List.copyOf(mirrors);
        proxies = List.copyOf(proxies);
    }

    /** Returns the settings of whoever runs this program; Maven's own defaults where there is no file. */
    static MavenSettings ofReader() {
        return in(Path.of(System.getProperty("user.home"), ".m2"));
    }

    /** @throws IllegalArgumentException if there is a file of settings that cannot be read */
    static MavenSettings in(Path folder) {
        Path file = folder.resolve("settings.xml");
        Path repository = folder.resolve("repository");
        MavenSettings found = Files.isRegularFile(file)
                ? read(file, repository)
                : new MavenSettings(repository, List.of(), List.of(), Network.WHEN_ASKED);
        String named = System.getProperty("maven.repo.local", "");
        return named.isBlank()
                ? found
                : new MavenSettings(Path.of(named), found.mirrors(), found.proxies(), found.network());
    }

    private static MavenSettings read(Path file, Path usual) {
        Element root;
        try {
            root = Xml.parse(Files.readString(file));
        } catch (IOException | SAXException | ParserConfigurationException e) {
            throw new IllegalArgumentException(
                    "The settings of Maven in '" + file
                            + "' cannot be read, so it is not known where libraries are. Mend that file,"
                            + " or move it away.",
                    e);
        }
        List<Mirror> mirrors = new ArrayList<>();
        for (Element mirror : Xml.children(root, "mirrors", "mirror")) {
            Use use = says(mirror, "blocked", "true") ? Use.BLOCKED : Use.ASKED;
            mirrors.add(new Mirror(value(mirror, "id"), value(mirror, "url"), value(mirror, "mirrorOf"), use));
        }
        List<Proxy> proxies = new ArrayList<>();
        for (Element proxy : Xml.children(root, "proxies", "proxy")) {
            if (!says(proxy, "active", "false")) {
                String port = value(proxy, "port");
                String protocol = value(proxy, "protocol");
                proxies.add(new Proxy(
                        protocol.isEmpty() ? "http" : protocol,
                        value(proxy, "host"),
                        port.matches("[0-9]{1,5}") ? Integer.parseInt(port) : USUAL_PORT,
                        value(proxy, "nonProxyHosts")));
            }
        }
        String local = value(root, "localRepository");
        return new MavenSettings(
                local.isEmpty() ? usual : Path.of(local),
                mirrors,
                proxies,
                says(root, "offline", "true") ? Network.NEVER : Network.WHEN_ASKED);
    }

    private static boolean says(Element element, String name, String word) {
        return value(element, name).equalsIgnoreCase(word);
    }

    private static String value(Element element, String name) {
        Matcher matcher = PLACEHOLDER.matcher(Xml.text(element, name));
        return matcher.replaceAll(match -> {
            Optional<String> known = Optional.ofNullable(
                    match.group(1) == null ? System.getProperty(match.group(2)) : System.getenv(match.group(2)));
            return Matcher.quoteReplacement(known.orElse(match.group()));
        });
    }
}
