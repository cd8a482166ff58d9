package parchment.jars;

import java.io.IOException;
import java.io.InputStream;
import java.net.InetSocketAddress;
import java.net.Proxy;
import java.net.URI;
import java.net.URL;
import java.security.NoSuchAlgorithmException;
import java.util.Set;
import javax.net.ssl.HttpsURLConnection;
import javax.net.ssl.SSLContext;
import org.eclipse.aether.RepositorySystemSession;
import org.eclipse.aether.repository.RemoteRepository;
import org.eclipse.aether.spi.connector.transport.AbstractTransporter;
import org.eclipse.aether.spi.connector.transport.GetTask;
import org.eclipse.aether.spi.connector.transport.PeekTask;
import org.eclipse.aether.spi.connector.transport.PutTask;
import org.eclipse.aether.spi.connector.transport.Transporter;
import org.eclipse.aether.spi.connector.transport.TransporterFactory;
import org.eclipse.aether.transfer.NoTransporterException;
import org.jspecify.annotations.Nullable;

/**
 * Fetches over https, and over nothing else: a repository may send on to another address, but only to one that is encrypted too. The
 * resolver's own way follows wherever it is sent, also to plain http, where both a jar and its checksum could be changed on their way.
 */
final class HttpsTransporter extends AbstractTransporter {
    /** RFC 9110, section 15.4: those that name one other address for the same file. */
    private static final Set<Integer> REDIRECTS = Set.of(301, 302, 303, 307, 308);

    private static final int MOST_REDIRECTS = 5;

    /** A repository's answer that is no file. */
    static final class AnswerException extends IOException {
        private static final long serialVersionUID = 1L;
        private final int status;

        AnswerException(int status, URI asked) {
            super("status code: " + status + " of " + asked);
            this.status = status;
        }
    }

    /** A repository sends on to an address without encryption. */
    static final class UnencryptedRedirectException extends IOException {
        private static final long serialVersionUID = 1L;
        private final String address;

        UnencryptedRedirectException(String address) {
            super("sent on to " + address);
            this.address = address;
        }

        String address() {
            return address;
        }
    }

    /** Makes one for each repository whose address begins with https. */
    static final class Factory implements TransporterFactory {
        @Override
        public Transporter newInstance(RepositorySystemSession session, RemoteRepository repository)
                throws NoTransporterException {
            if (!"https".equalsIgnoreCase(repository.getProtocol())) {
                throw new NoTransporterException(repository);
            }
            return new HttpsTransporter(repository);
        }

        @Override
        public float getPriority() {
            return 0;
        }
    }

    private final URI place;
    private final @Nullable Proxy proxy;

    private HttpsTransporter(RemoteRepository repository) {
        String url = repository.getUrl();
        place = URI.create(url.endsWith("/") ? url : url + "/");
        var between = repository.getProxy();
        proxy = between == null
                ? null
                : new Proxy(Proxy.Type.HTTP, new InetSocketAddress(between.getHost(), between.getPort()));
    }

    /** Asks, and goes where it is sent on as long as that is encrypted. */
    private HttpsURLConnection ask(String method, URI location) throws IOException {
        URI asked = place.resolve(location);
        for (int sent = 0; sent <= MOST_REDIRECTS; sent++) {
            HttpsURLConnection connection = open(method, asked);
            int status = connection.getResponseCode();
            if (status == HttpsURLConnection.HTTP_OK) {
                return connection;
            }
            String to = connection.getHeaderField("Location");
            if (!REDIRECTS.contains(status) || to == null) {
                throw new AnswerException(status, asked);
            }
            asked = encrypted(asked, to);
        }
        throw new IOException(place + " sends on more than " + MOST_REDIRECTS + " times");
    }

    private static URI encrypted(URI asked, String to) throws IOException {
        try {
            URI next = asked.resolve(to);
            if (!"https".equalsIgnoreCase(next.getScheme())) {
                throw new UnencryptedRedirectException(to);
            }
            return next;
        } catch (IllegalArgumentException e) {
            throw new IOException(asked + " sends on to '" + to + "', which is no address", e);
        }
    }

    private HttpsURLConnection open(String method, URI address) throws IOException {
        URL url = address.toURL();
        HttpsURLConnection connection =
                (HttpsURLConnection) (proxy == null ? url.openConnection() : url.openConnection(proxy));
        try {
            connection.setSSLSocketFactory(SSLContext.getDefault().getSocketFactory());
        } catch (NoSuchAlgorithmException e) {
            throw new IOException(e);
        }
        connection.setConnectTimeout(ResolverSession.CONNECT_MS);
        connection.setReadTimeout(ResolverSession.ANSWER_MS);
        connection.setUseCaches(false);
        connection.setInstanceFollowRedirects(false);
        connection.setRequestProperty("User-Agent", "Parchment");
        connection.setRequestMethod(method);
        return connection;
    }

    @Override
    protected void implPeek(PeekTask task) throws IOException {
        ask("HEAD", task.getLocation());
    }

    @Override
    protected void implGet(GetTask task) throws Exception {
        HttpsURLConnection connection = ask("GET", task.getLocation());
        try (InputStream bytes = connection.getInputStream()) {
            utilGet(task, bytes, false, connection.getContentLengthLong(), false);
        }
    }

    @Override
    protected void implPut(PutTask task) {
        throw new UnsupportedOperationException("Libraries are fetched, never sent.");
    }

    @Override
    protected void implClose() {}

    @Override
    public int classify(Throwable failure) {
        return failure instanceof AnswerException answer && answer.status == HttpsURLConnection.HTTP_NOT_FOUND
                ? ERROR_NOT_FOUND
                : ERROR_OTHER;
    }
}
