package parchment.jars;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import com.sun.net.httpserver.HttpsConfigurator;
import com.sun.net.httpserver.HttpsServer;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.KeyStore;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import javax.net.ssl.KeyManagerFactory;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManagerFactory;

/** A server on this machine, with a certificate that nobody vouches for until it is trusted. */
final class MadeServer implements AutoCloseable {
    private static final char[] WORD = "invented".toCharArray();

    private final HttpServer server;
    private final String scheme;
    private final KeyStore keys;
    private final SSLContext usual;
    private final AtomicInteger asked = new AtomicInteger();

    private MadeServer(HttpServer server, String scheme, KeyStore keys) throws Exception {
        this.server = server;
        this.scheme = scheme;
        this.keys = keys;
        usual = SSLContext.getDefault();
        server.start();
    }

    static MadeServer http() throws Exception {
        HttpServer server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        return new MadeServer(server, "http", KeyStore.getInstance(KeyStore.getDefaultType()));
    }

    /** Makes a server with a key of its own, kept in the folder. */
    static MadeServer https(Path folder) throws Exception {
        Path store = folder.resolve("own.p12");
        Path keytool = Path.of(System.getProperty("java.home"), "bin", "keytool");
        List<String> command = new ArrayList<>(List.of(keytool.toString()));
        command.addAll(List.of(
                "-genkeypair -alias own -keyalg EC -dname CN=localhost -storetype PKCS12 -storepass invented -keystore"
                        .split(" ")));
        command.add(store.toString());
        new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("said").toFile())
                .start()
                .waitFor();
        KeyStore keys = KeyStore.getInstance("PKCS12");
        try (InputStream in = Files.newInputStream(store)) {
            keys.load(in, WORD);
        }
        KeyManagerFactory managers = KeyManagerFactory.getInstance(KeyManagerFactory.getDefaultAlgorithm());
        managers.init(keys, WORD);
        SSLContext context = SSLContext.getInstance("TLS");
        context.init(managers.getKeyManagers(), null, null);
        HttpsServer server = HttpsServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.setHttpsConfigurator(new HttpsConfigurator(context));
        return new MadeServer(server, "https", keys);
    }

    /** Lets this Java trust the server until it is closed. */
    void trusted() throws Exception {
        KeyStore trusted = KeyStore.getInstance(KeyStore.getDefaultType());
        trusted.load(null, null);
        trusted.setCertificateEntry("own", keys.getCertificate("own"));
        TrustManagerFactory managers = TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
        managers.init(trusted);
        SSLContext context = SSLContext.getInstance("TLS");
        context.init(null, managers.getTrustManagers(), null);
        SSLContext.setDefault(context);
    }

    String address() {
        return scheme + "://localhost:" + server.getAddress().getPort() + "/";
    }

    /** Returns how many requests came. */
    int asked() {
        return asked.get();
    }

    void answers(int status) {
        server.createContext("/", exchange -> reply(exchange, status));
    }

    /** Answers whatever is below the path with a redirect to the same name below another address. */
    void sendsOn(String path, int status, String to) {
        server.createContext(path, exchange -> {
            String name = exchange.getRequestURI().getPath().substring(path.length());
            exchange.getResponseHeaders().set("Location", to + name);
            reply(exchange, status);
        });
    }

    /** Answers whatever is below the path with the files of a folder. */
    void serves(String path, Path folder) {
        server.createContext(path, exchange -> {
            Path file = folder.resolve(exchange.getRequestURI().getPath().substring(path.length()));
            if (!Files.isRegularFile(file)) {
                reply(exchange, 404);
                return;
            }
            asked.incrementAndGet();
            exchange.sendResponseHeaders(200, Files.size(file));
            Files.copy(file, exchange.getResponseBody());
            exchange.close();
        });
    }

    private void reply(HttpExchange exchange, int status) throws IOException {
        asked.incrementAndGet();
        exchange.sendResponseHeaders(status, -1);
        exchange.close();
    }

    @Override
    public void close() {
        SSLContext.setDefault(usual);
        server.stop(0);
    }
}
