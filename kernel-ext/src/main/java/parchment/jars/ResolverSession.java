package parchment.jars;

import java.nio.file.Path;
import java.util.Map;
import org.apache.maven.repository.internal.MavenRepositorySystemUtils;
import org.eclipse.aether.DefaultRepositoryCache;
import org.eclipse.aether.DefaultRepositorySystemSession;
import org.eclipse.aether.RepositorySystem;
import org.eclipse.aether.RepositorySystemSession;
import org.eclipse.aether.repository.LocalRepository;
import org.eclipse.aether.repository.Proxy;
import org.eclipse.aether.repository.RepositoryPolicy;
import org.eclipse.aether.spi.connector.transport.TransporterFactory;
import org.eclipse.aether.supplier.RepositorySystemSupplier;
import org.eclipse.aether.transport.file.FileTransporterFactory;
import org.eclipse.aether.transport.http.ChecksumExtractor;
import org.eclipse.aether.util.repository.DefaultMirrorSelector;
import org.eclipse.aether.util.repository.DefaultProxySelector;
import org.eclipse.aether.util.repository.JreProxySelector;
import org.eclipse.aether.util.repository.SimpleArtifactDescriptorPolicy;
import org.eclipse.aether.util.repository.SimpleResolutionErrorPolicy;

/** How the resolver of Maven is set for one search. */
final class ResolverSession {
    static final int CONNECT_MS = 10_000;
    static final int ANSWER_MS = 60_000;

    private ResolverSession() {}

    /** Returns the resolver, which fetches over https only; from the disk it reads repositories made for tests. */
    static RepositorySystem system() {
        return new RepositorySystemSupplier() {
            @Override
            protected Map<String, TransporterFactory> getTransporterFactories(
                    Map<String, ChecksumExtractor> extractors) {
                return Map.of("file", new FileTransporterFactory(), "https", new HttpsTransporter.Factory());
            }
        }.get();
    }

    /** Returns a search among what is there already, wherever it once came from; what is incomplete there is an error. */
    static RepositorySystemSession local(RepositorySystem system, MavenSettings settings) {
        DefaultRepositorySystemSession session = session();
        session.setOffline(true);
        // A library without its description would be taken as one that needs nothing.
        session.setArtifactDescriptorPolicy(new SimpleArtifactDescriptorPolicy(false, false));
        return in(new LocalRepository(folder(settings), "simple"), system, session);
    }

    /** Returns a search that asks repositories, and keeps what it fetches as Maven does. */
    static RepositorySystemSession online(RepositorySystem system, MavenSettings settings) {
        DefaultRepositorySystemSession session = session();
        DefaultMirrorSelector mirrors = new DefaultMirrorSelector();
        settings.mirrors()
                .forEach(mirror -> mirrors.add(
                        mirror.id(),
                        mirror.url(),
                        "default",
                        false,
                        mirror.use() == MavenSettings.Use.BLOCKED,
                        mirror.mirrorOf(),
                        "*"));
        session.setMirrorSelector(mirrors);
        if (settings.proxies().isEmpty()) {
            session.setProxySelector(new JreProxySelector());
        } else {
            DefaultProxySelector proxies = new DefaultProxySelector();
            settings.proxies()
                    .forEach(proxy -> proxies.add(
                            new Proxy(proxy.protocol(), proxy.host(), proxy.port()), proxy.nonProxyHosts()));
            session.setProxySelector(proxies);
        }
        return in(new LocalRepository(folder(settings)), system, session);
    }

    private static DefaultRepositorySystemSession session() {
        DefaultRepositorySystemSession session = MavenRepositorySystemUtils.newSession();
        session.setSystemProperties(System.getProperties()); // Parts of a description may hold for some Javas only.
        session.setCache(new DefaultRepositoryCache());
        session.setChecksumPolicy(RepositoryPolicy.CHECKSUM_POLICY_FAIL);
        // Only repositories that the reader names are asked, not those that a library names.
        session.setIgnoreArtifactDescriptorRepositories(true);
        // What was not there an hour ago may be there now.
        session.setResolutionErrorPolicy(new SimpleResolutionErrorPolicy(0));
        return session;
    }

    private static java.io.File folder(MavenSettings settings) {
        Path folder = settings.localRepository();
        return folder.toAbsolutePath().toFile();
    }

    private static RepositorySystemSession in(
            LocalRepository local, RepositorySystem system, DefaultRepositorySystemSession session) {
        session.setLocalRepositoryManager(system.newLocalRepositoryManager(session, local));
        return session;
    }
}
