package parchment.jars;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Consumer;
import org.eclipse.aether.RepositoryException;
import org.eclipse.aether.RepositorySystem;
import org.eclipse.aether.RepositorySystemSession;
import org.eclipse.aether.artifact.Artifact;
import org.eclipse.aether.artifact.DefaultArtifact;
import org.eclipse.aether.collection.CollectRequest;
import org.eclipse.aether.graph.Dependency;
import org.eclipse.aether.graph.DependencyNode;
import org.eclipse.aether.repository.RemoteRepository;
import org.eclipse.aether.repository.RepositoryPolicy;
import org.eclipse.aether.resolution.ArtifactDescriptorException;
import org.eclipse.aether.resolution.ArtifactDescriptorRequest;
import org.eclipse.aether.resolution.ArtifactResult;
import org.eclipse.aether.resolution.DependencyRequest;
import org.eclipse.aether.util.artifact.JavaScopes;
import org.eclipse.aether.util.filter.DependencyFilterUtils;
import org.eclipse.aether.util.graph.visitor.PreorderNodeListGenerator;

/**
 * Finds a library with all that it needs: in the local repository if everything is there, and only otherwise, where that is allowed,
 * from the repositories named. Only this class and those it uses know the resolver of Maven, so that a session which never asks for a library
 * never loads it.
 */
final class Resolver {
    private static final String LICENCE = "license.0.name";

    private final MavenSettings settings;
    private final Network network;
    private final Consumer<String> says;

    /**
     * @param network whether anything may be fetched
     * @param says is told in a line what is about to be fetched
     */
    Resolver(MavenSettings settings, Network network, Consumer<String> says) {
        this.settings = settings;
        this.network = network;
        this.says = says;
    }

    /**
     * Returns the libraries and all that they need to run, those asked for first.
     *
     * @throws IllegalArgumentException if one is not to be had; the message says why, and what to do
     */
    List<Library> find(List<Coordinate> wanted, List<Repository> repositories) {
        RepositorySystem system = ResolverSession.system();
        try {
            RepositorySystemSession local = ResolverSession.local(system, settings);
            return find(wanted, List.of(), system, local);
        } catch (RepositoryException notAllHere) {
            if (network == Network.NEVER || settings.network() == Network.NEVER) {
                throw ResolverWords.notFetched(wanted, settings);
            }
            return fetch(wanted, repositories, system);
        } finally {
            system.shutdown();
        }
    }

    private List<Library> fetch(List<Coordinate> wanted, List<Repository> repositories, RepositorySystem system) {
        RepositorySystemSession session = ResolverSession.online(system, settings);
        List<RemoteRepository> remotes = system.newResolutionRepositories(
                session, repositories.stream().map(Resolver::remote).toList());
        List<RemoteRepository> asked =
                remotes.stream().filter(remote -> !remote.isBlocked()).toList();
        if (asked.size() < remotes.size()) {
            String refused = ResolverWords.blocked(remotes);
            if (asked.isEmpty()) {
                throw new IllegalArgumentException(
                        Jars.row(wanted) + " is not in the local repository, and " + refused + " Nothing was loaded.");
            }
            says.accept(refused.substring(0, 1).toUpperCase(Locale.ROOT) + refused.substring(1));
        }
        // A mirror may have taken the place of one that was checked before.
        asked.stream()
                .filter(remote -> !repositories.contains(new Repository(remote.getId(), remote.getUrl())))
                .forEach(remote -> Repository.check(remote.getId(), remote.getUrl()));
        try {
            return find(wanted, asked, system, session);
        } catch (RepositoryException e) {
            throw new ResolverWords(system, session, asked).of(wanted, e);
        }
    }

    private static RemoteRepository remote(Repository repository) {
        RepositoryPolicy policy =
                new RepositoryPolicy(true, RepositoryPolicy.UPDATE_POLICY_DAILY, RepositoryPolicy.CHECKSUM_POLICY_FAIL);
        return new RemoteRepository.Builder(repository.id(), "default", repository.url())
                .setPolicy(policy)
                .build();
    }

    private List<Library> find(
            List<Coordinate> wanted,
            List<RemoteRepository> remotes,
            RepositorySystem system,
            RepositorySystemSession session)
            throws RepositoryException {
        List<Dependency> dependencies = wanted.stream()
                .map(each -> new Dependency(artifact(each), JavaScopes.COMPILE))
                .toList();
        DependencyNode root = system.collectDependencies(session, new CollectRequest(dependencies, List.of(), remotes))
                .getRoot();
        tellWhatIsFetched(root, remotes, session);
        List<ArtifactResult> found = system.resolveDependencies(
                        session, new DependencyRequest(root, DependencyFilterUtils.classpathFilter(JavaScopes.RUNTIME)))
                .getArtifactResults();
        List<Library> libraries = new ArrayList<>();
        for (ArtifactResult each : found) {
            Artifact artifact = each.getArtifact();
            libraries.add(new Library(
                    coordinate(artifact), artifact.getFile().toPath(), licence(artifact, remotes, system, session)));
        }
        return libraries;
    }

    private void tellWhatIsFetched(
            DependencyNode root, List<RemoteRepository> remotes, RepositorySystemSession session) {
        PreorderNodeListGenerator nodes = new PreorderNodeListGenerator();
        root.accept(nodes);
        File folder = session.getLocalRepository().getBasedir();
        List<String> missing = nodes.getDependencies(true).stream()
                .map(Dependency::getArtifact)
                .filter(artifact -> !Files.exists(Path.of(
                        folder.getPath(), session.getLocalRepositoryManager().getPathForLocalArtifact(artifact))))
                .map(artifact -> coordinate(artifact).toString())
                .toList();
        if (!missing.isEmpty()) {
            says.accept("Fetching " + String.join(", ", missing) + " from " + ResolverWords.names(remotes) + " ...");
        }
    }

    /** What a library says of itself is there by now: it was read to find what it needs. */
    private static String licence(
            Artifact artifact,
            List<RemoteRepository> remotes,
            RepositorySystem system,
            RepositorySystemSession session) {
        try {
            Map<String, Object> properties = system.readArtifactDescriptor(
                            session, new ArtifactDescriptorRequest(artifact, remotes, null))
                    .getProperties();
            return String.valueOf(properties.getOrDefault(LICENCE, ""));
        } catch (ArtifactDescriptorException e) {
            return ""; // It runs without; the list then says nothing of the licence.
        }
    }

    private static Artifact artifact(Coordinate coordinate) {
        return new DefaultArtifact(
                coordinate.group(),
                coordinate.artifact(),
                coordinate.classifier(),
                coordinate.extension(),
                coordinate.version());
    }

    private static Coordinate coordinate(Artifact artifact) {
        return new Coordinate(
                artifact.getGroupId(),
                artifact.getArtifactId(),
                artifact.getExtension(),
                artifact.getClassifier(),
                artifact.getVersion());
    }
}
