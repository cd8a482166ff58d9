package parchment.kernel.protocol;

import com.google.gson.JsonObject;
import java.io.IOException;
import java.net.InetAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.dflib.jjava.jupyter.kernel.KernelConnectionProperties;
import org.dflib.jjava.jupyter.messages.HMACGenerator;
import org.dflib.jjava.jupyter.messages.Message;
import org.dflib.jjava.jupyter.messages.MessageContext;
import org.dflib.jjava.jupyter.messages.MessageType;
import org.dflib.jjava.jupyter.messages.reply.InputReply;
import org.dflib.jjava.jupyter.messages.request.InputRequest;
import org.jspecify.annotations.Nullable;
import org.zeromq.SocketType;
import org.zeromq.ZMQ;
import org.zeromq.ZMQException;
import parchment.kernel.stop.CellGuard;
import parchment.kernel.stop.WholeMessages;

/** A kernel's sockets, bound as a connection file says; on this machine alone and with signed messages. */
public final class Connection implements AutoCloseable {
    /** How long a wait for the person's answer goes without looking whether the cell was interrupted. */
    private static final long INPUT_POLL_MS = 100;

    /** How many late answers are taken away before a question is asked. */
    private static final int MOST_LATE = 1_000;

    /**
     * A client tries to connect each tenth of a second. Where it hears nothing published with its first answer, it waits for a fifth of a second
     * and then asks again.
     */
    private static final long UNTIL_HEARD_MS = 150;

    /** Between the greeting of whoever listens and its word what it listens to. */
    private static final long UNTIL_SUBSCRIBED_MS = 3;

    private final CountDownLatch heard = new CountDownLatch(1);
    private final ZMQ.Context context = ZMQ.context(1);
    private final Channel shell;
    private final Channel control;
    private final Channel stdin;
    private final Channel heartbeat;
    private final Channel publish;

    private Connection(KernelConnectionProperties properties) throws GeneralSecurityException {
        HMACGenerator signer = properties.createHMACGenerator();
        shell = new Channel(context, SocketType.ROUTER, signer, KernelConnectionProperties::getShellPort);
        control = new Channel(context, SocketType.ROUTER, signer, KernelConnectionProperties::getControlPort);
        stdin = new Channel(context, SocketType.ROUTER, signer, KernelConnectionProperties::getStdinPort);
        heartbeat = new Channel(context, SocketType.REP, signer, KernelConnectionProperties::getHbPort);
        publish = new Channel(context, SocketType.PUB, signer, KernelConnectionProperties::getIopubPort);
        publish.setEventHook(greeted -> heard.countDown(), ZMQ.EVENT_HANDSHAKE_PROTOCOL);
        for (Channel channel : new Channel[] {shell, control, stdin, heartbeat, publish}) {
            channel.bind(properties);
        }
    }

    /**
     * Binds the sockets that a connection file names.
     *
     * @throws IllegalArgumentException if they would be open to other machines, or messages would not be signed
     */
    public static Connection bind(Path connectionFile) throws IOException, GeneralSecurityException {
        KernelConnectionProperties properties = KernelConnectionProperties.parse(Files.readString(connectionFile));
        boolean local = properties.getTransport().equals("ipc")
                || InetAddress.getByName(properties.getIp()).isLoopbackAddress();
        if (!local) {
            throw new IllegalArgumentException("The connection file asks for the address " + properties.getIp()
                    + ", which other machines can reach. A kernel runs any code it is sent, so only addresses of this machine"
                    + " (127.0.0.1) are used.");
        }
        if (properties.getKey() == null || properties.getKey().isEmpty()) {
            throw new IllegalArgumentException(
                    "The connection file has no key, so anybody on this machine could send code to the kernel. It was not"
                            + " started.");
        }
        return new Connection(properties);
    }

    /** Waits a moment until somebody has connected to what is published; what is published before is lost. */
    public void awaitListener() {
        try {
            if (heard.await(UNTIL_HEARD_MS, TimeUnit.MILLISECONDS)) {
                Thread.sleep(UNTIL_SUBSCRIBED_MS);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Returns the next request of the kind that waits its turn; null once the connection is closed. */
    @Nullable
    public Message<?> nextShell() {
        return next(shell);
    }

    /** Returns the next request that goes before the others: interrupt, shutdown. */
    @Nullable
    public Message<?> nextControl() {
        return next(control);
    }

    /** Returns a request that already waits, or null. */
    @Nullable
    public Message<?> waitingShell() {
        try {
            while (shell.waitForMessage(0)) {
                Optional<Message<?>> readable = read(shell);
                if (readable.isPresent()) {
                    return readable.get();
                }
            }
            return null;
        } catch (ZMQException e) {
            return null; // Closed.
        }
    }

    private static @Nullable Message<?> next(Channel channel) {
        try {
            while (true) {
                Optional<Message<?>> readable = read(channel);
                if (readable.isPresent()) {
                    return readable.get();
                }
            }
        } catch (ZMQException e) {
            return null; // Closed.
        }
    }

    /** Waits for a message and returns it; nothing if it is not for this kernel, or not to be read. */
    private static Optional<Message<?>> read(Channel channel) {
        try {
            return Optional.of(channel.readMessage());
        } catch (ZMQException e) {
            throw e;
        } catch (SecurityException e) {
            System.err.println("A message with a wrong signature was left aside.");
        } catch (RuntimeException | StackOverflowError | OutOfMemoryError e) {
            System.err.println("A message that cannot be read was left aside.");
        }
        return Optional.empty();
    }

    public void replyOnShell(MessageContext request, MessageType<?> type, JsonObject content) {
        send(shell, request, type, content);
    }

    public void replyOnControl(MessageContext request, MessageType<?> type, JsonObject content) {
        send(control, request, type, content);
    }

    public void publish(@Nullable MessageContext request, MessageType<?> type, JsonObject content) {
        publish(request, type, content, Map.of());
    }

    public void publish(
            @Nullable MessageContext request, MessageType<?> type, JsonObject content, Map<String, Object> metadata) {
        send(publish, request, type, content, metadata);
    }

    public void publishStatus(@Nullable MessageContext request, String state) {
        JsonObject content = new JsonObject();
        content.addProperty("execution_state", state);
        publish(request, MessageType.PUBLISH_STATUS, content);
    }

    private static void send(
            Channel channel, @Nullable MessageContext request, MessageType<?> type, JsonObject content) {
        send(channel, request, type, content, Map.of());
    }

    @SuppressWarnings({"rawtypes", "unchecked"})
    private static void send(
            Channel channel,
            @Nullable MessageContext request,
            MessageType<?> type,
            JsonObject content,
            Map<String, Object> metadata) {
        try {
            // An empty list of bytes to follow would leave the message without an end.
            Message message = metadata.isEmpty()
                    ? new Message(request, type, content)
                    : new Message(request, type, content, null, metadata);
            WholeMessages.send(() -> channel.sendMessage(message));
        } catch (ZMQException e) {
            if (e.getErrorCode() != ZMQ.Error.ETERM.getCode()) {
                throw e;
            }
            // Closed meanwhile, so nobody is left to hear it.
        }
    }

    /**
     * Asks the person for a line and waits for it. What arrives meanwhile without the kernel's signature, or is no answer, is left
     * aside without a word: it comes from somebody else, and the cell goes on waiting.
     *
     * @throws InterruptedException if the cell is interrupted meanwhile
     */
    public String ask(MessageContext request) throws InterruptedException {
        JsonObject content = new JsonObject();
        content.addProperty("prompt", "");
        content.addProperty("password", false);
        for (int i = 0; i < MOST_LATE && stdin.waitForMessage(0); i++) {
            answer(); // An answer to a question that was given up.
        }
        send(stdin, request, InputRequest.MESSAGE_TYPE, content);
        while (true) {
            boolean arrived = stdin.waitForMessage(INPUT_POLL_MS);
            CellGuard.check();
            if (Thread.interrupted()) {
                throw new InterruptedException();
            }
            Optional<String> answer = arrived ? answer() : Optional.empty();
            if (answer.isPresent()) {
                return answer.get();
            }
        }
    }

    private Optional<String> answer() {
        try {
            return stdin.readMessage().getContent() instanceof InputReply reply
                    ? Optional.ofNullable(reply.getValue())
                    : Optional.empty();
        } catch (ZMQException e) {
            throw e; // Closed.
        } catch (RuntimeException | StackOverflowError | OutOfMemoryError e) {
            return Optional.empty();
        }
    }

    /** Sends back whatever arrives, until closed: the sign of life that clients look for. */
    public void beat() {
        try {
            while (true) {
                // All of it is taken before the answer: this kind of socket gives none while a part waits, and takes
                // none before it.
                List<byte[]> sign = heartbeat.readParts();
                for (int i = 0; i < sign.size() - 1; i++) {
                    heartbeat.send(sign.get(i), ZMQ.SNDMORE);
                }
                heartbeat.send(sign.isEmpty() ? new byte[0] : sign.get(sign.size() - 1));
            }
        } catch (ZMQException e) {
            return; // Closed.
        }
    }

    @Override
    public void close() {
        // Each socket is closed by ending the process: closing one that another thread waits on is not allowed.
        publish.close();
    }
}
