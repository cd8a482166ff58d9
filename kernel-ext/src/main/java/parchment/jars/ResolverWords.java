package parchment.jars;

import java.net.NoRouteToHostException;
import java.net.SocketException;
import java.net.SocketTimeoutException;
import java.net.URI;
import java.net.UnknownHostException;
import java.security.cert.CertPathBuilderException;
import java.security.cert.CertificateException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import javax.net.ssl.SSLPeerUnverifiedException;
import org.eclipse.aether.RepositoryException;
import org.eclipse.aether.RepositorySystem;
import org.eclipse.aether.RepositorySystemSession;
import org.eclipse.aether.artifact.DefaultArtifact;
import org.eclipse.aether.repository.RemoteRepository;
import org.eclipse.aether.resolution.ArtifactResolutionException;
import org.eclipse.aether.resolution.VersionRangeRequest;
import org.eclipse.aether.resolution.VersionRangeResolutionException;
import org.eclipse.aether.transfer.ArtifactNotFoundException;
import org.eclipse.aether.transfer.ArtifactTransferException;
import org.eclipse.aether.transfer.ChecksumFailureException;
import org.eclipse.aether.version.Version;
import org.jspecify.annotations.Nullable;
import parchment.jars.HttpsTransporter.UnencryptedRedirectException;

/** Explains why a library is not to be had, and what to do. */
final class ResolverWords {
    /** As a repository answers that knows nobody without a password; a proxy with 407. */
    private static final Pattern REFUSED = Pattern.compile("status code: 40[137]\\b|Proxy returns \"HTTP/1\\.\\d 407");

    private static final int VERSIONS = 6;
    private static final int DEEPEST = 12;

    private final RepositorySystem system;
    private final RepositorySystemSession session;
    private final List<RemoteRepository> remotes;

    ResolverWords(RepositorySystem system, RepositorySystemSession session, List<RemoteRepository> remotes) {
        this.system = system;
        this.session = session;
        this.remotes = remotes;
    }

    /** Says that a library is not in the local repository, and that nothing may be fetched here. */
    static IllegalArgumentException notFetched(List<Coordinate> wanted, MavenSettings settings) {
        return new IllegalArgumentException(
                Jars.row(wanted) + " is not, or not with all that it needs, in the local repository '"
                        + settings.localRepository() + "', and nothing is fetched here"
                        + (settings.network() == Network.NEVER
                                ? ": the settings of Maven (settings.xml) say to work offline."
                                : ". To allow it: ./parchment run --fetch-jars; a cell in an open notebook fetches what it asks for."));
    }

    /** Says which repositories a reader's settings refuse: a sentence that can go on after an "and". */
    static String blocked(List<RemoteRepository> remotes) {
        return "the settings of Maven (settings.xml) forbid to ask "
                + remotes.stream()
                        .filter(RemoteRepository::isBlocked)
                        .flatMap(mirror -> mirror.getMirroredRepositories().stream()
                                .map(place -> place.getId() + " (blocked by the mirror " + mirror.getId() + ")"))
                        .collect(Collectors.joining(", "))
                + ".";
    }

    /** Returns the repositories as a sentence names them. */
    static String names(List<RemoteRepository> remotes) {
        return remotes.stream()
                .map(remote -> remote.getId() + " (" + place(remote.getUrl()) + ")")
                .collect(Collectors.joining(", "));
    }

    private static String place(String url) {
        return Optional.ofNullable(URI.create(url).getHost()).orElse(url);
    }

    /** The resolver's own words are left out where ours say everything. */
    IllegalArgumentException of(List<Coordinate> wanted, RepositoryException failure) {
        List<Throwable> all = causes(failure);
        Optional<String> known = sentence(wanted, all);
        String own = String.valueOf(all.get(all.size() - 1).getMessage()).replaceAll("\\s+", " ");
        return new IllegalArgumentException(
                known.orElse(Jars.row(wanted) + " could not be fetched from " + where(all) + ": " + own + ".")
                        + " Nothing was loaded.");
    }

    private Optional<String> sentence(List<Coordinate> wanted, List<Throwable> all) {
        Optional<ChecksumFailureException> checksum = first(all, ChecksumFailureException.class);
        String what = missing(all).orElse(Jars.row(wanted));
        if (checksum.isPresent()) {
            return Optional.of(
                    checksum.get().getExpected().isEmpty()
                            ? what + " cannot be trusted: " + where(all, ChecksumFailureException.class::isInstance)
                                    + " has no checksum to hold it against."
                            : what + " came from " + where(all, ChecksumFailureException.class::isInstance)
                                    + " otherwise than its makers published it: its checksum is "
                                    + checksum.get().getActual() + ", and should be "
                                    + checksum.get().getExpected()
                                    + ". Try again; if it stays so, tell whoever keeps the repository.");
        }
        if (all.stream().anyMatch(ResolverWords::isUnreachable)) {
            return Optional.of(what + " is not in the local repository, and " + where(all, ResolverWords::isUnreachable)
                    + " cannot be reached. Is this machine on the network? If it reaches it through a proxy or a mirror, name that in"
                    + " the settings of Maven (~/.m2/settings.xml).");
        }
        Optional<UnencryptedRedirectException> plain = first(all, UnencryptedRedirectException.class);
        if (plain.isPresent()) {
            return Optional.of(what + " could not be fetched: " + where(all) + " sends on to "
                    + plain.get().address()
                    + ", which is not encrypted. What comes from there can be changed on its way.");
        }
        if (all.stream()
                .anyMatch(each -> each instanceof CertificateException
                        || each instanceof CertPathBuilderException
                        || each instanceof SSLPeerUnverifiedException)) {
            return Optional.of(what + " could not be fetched: Java does not trust who answers for " + where(all)
                    + ". Is there a proxy between that shows a certificate of its own? Whoever looks after this machine can make"
                    + " Java know it.");
        }
        if (all.stream()
                .anyMatch(each ->
                        REFUSED.matcher(String.valueOf(each.getMessage())).find())) {
            return Optional.of(what + " could not be fetched: " + where(all)
                    + " asks for a name and a password, and those are not read from the settings of Maven. Fetch it once with Maven"
                    + " itself; from then on it is in the local repository.");
        }
        return first(all, ArtifactNotFoundException.class).isPresent()
                ? Optional.of(notThere(wanted, what))
                : Optional.empty();
    }

    private static boolean isUnreachable(Throwable each) {
        return each instanceof UnknownHostException
                || each instanceof NoRouteToHostException
                || each instanceof SocketTimeoutException
                || each instanceof SocketException;
    }

    /** Returns the repositories that failed, or all that were asked. */
    private String where(List<Throwable> all) {
        return where(all, each -> true);
    }

    /** Returns the repositories that failed in one way, or all that were asked. */
    private String where(List<Throwable> all, Predicate<Throwable> way) {
        List<RemoteRepository> failed = all.stream()
                .filter(ArtifactTransferException.class::isInstance)
                .filter(each -> causes(each).stream().anyMatch(way))
                .map(each -> ((ArtifactTransferException) each).getRepository())
                .filter(Objects::nonNull)
                .distinct()
                .toList();
        return names(failed.isEmpty() ? remotes : failed);
    }

    private String notThere(List<Coordinate> wanted, String what) {
        for (Coordinate each : wanted) {
            if (what.equals(each.toString())) {
                List<String> versions = versions(each);
                return versions.isEmpty()
                        ? "Nothing is named " + each.library() + " in " + names(remotes)
                                + ". Is it spelled as its makers write it?"
                        : names(remotes) + " has " + each.library() + ", but no version " + each.version()
                                + ". The newest there: " + String.join(", ", versions) + ".";
            }
        }
        return what + ", which " + Jars.row(wanted) + " needs, is not in " + names(remotes)
                + ". If it is in another repository, name that first: Jars.repository(\"its name\", \"https://...\").";
    }

    /** Returns the newest versions there, the newest first. */
    private List<String> versions(Coordinate coordinate) {
        try {
            DefaultArtifact any = new DefaultArtifact(
                    coordinate.group(), coordinate.artifact(), coordinate.classifier(), coordinate.extension(), "[0,)");
            List<Version> found =
                    new ArrayList<>(system.resolveVersionRange(session, new VersionRangeRequest(any, remotes, null))
                            .getVersions());
            Collections.reverse(found);
            return found.stream().limit(VERSIONS).map(Version::toString).toList();
        } catch (VersionRangeResolutionException e) {
            return List.of();
        }
    }

    private static Optional<String> missing(List<Throwable> all) {
        for (Throwable each : all) {
            if (each instanceof ArtifactTransferException transfer) {
                var artifact = transfer.getArtifact();
                if (artifact != null) {
                    return Optional.of(artifact.getGroupId() + ":" + artifact.getArtifactId()
                            + (artifact.getClassifier().isEmpty() ? "" : ":" + artifact.getClassifier()) + ":"
                            + artifact.getVersion());
                }
            }
        }
        return Optional.empty();
    }

    /** Returns the failure with all that caused it, as far as the resolver keeps it: also the failures of single files. */
    private static List<Throwable> causes(Throwable failure) {
        List<Throwable> all = new ArrayList<>();
        collect(failure, all);
        return all;
    }

    private static void collect(@Nullable Throwable failure, List<Throwable> all) {
        if (failure == null || all.contains(failure) || all.size() > DEEPEST) {
            return;
        }
        all.add(failure);
        if (failure instanceof ArtifactResolutionException resolution) {
            resolution.getResults().forEach(result -> result.getExceptions().forEach(each -> collect(each, all)));
        }
        collect(failure.getCause(), all);
    }

    private static <T> Optional<T> first(List<Throwable> all, Class<T> kind) {
        return all.stream().filter(kind::isInstance).map(kind::cast).findFirst();
    }
}
