package parchment.kernel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.stream.Stream;
import org.dflib.jjava.jupyter.kernel.KernelConnectionProperties;
import org.dflib.jjava.jupyter.messages.HMACGenerator;
import org.dflib.jjava.jupyter.messages.Header;
import org.dflib.jjava.jupyter.messages.Message;
import org.dflib.jjava.jupyter.messages.MessageType;
import org.dflib.jjava.jupyter.messages.comm.CommMsgCommand;
import org.dflib.jjava.jupyter.messages.comm.CommOpenCommand;
import org.dflib.jjava.jupyter.messages.reply.CommInfoReply;
import org.dflib.jjava.jupyter.messages.reply.InputReply;
import org.dflib.jjava.jupyter.messages.request.CommInfoRequest;
import org.dflib.jjava.jupyter.messages.request.KernelInfoRequest;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.zeromq.SocketType;
import org.zeromq.ZMQ;
import parchment.kernel.protocol.Channel;
import parchment.kernel.protocol.Comms;
import parchment.kernel.protocol.Connection;
import parchment.kernel.protocol.MadeConnection;

/** What programs without the key can do to a kernel's sockets: connect, and nothing else. */
@Timeout(120)
class ConnectionTest {
    private static final String KEY = "the key of this kernel";
    private static final List<String> SOCKETS = List.of("shell", "control", "stdin", "hb", "iopub");

    /** The greeting of the wire protocol 3.0 without a mechanism of security, as a client sends it (rfc.zeromq.org/spec/23). */
    private static final int GREETING = 64;

    /** What a stranger sends after the greeting; flags and sizes of frames are those of the wire protocol. */
    private static final List<String> ANNOUNCED = List.of(
            "06 ffffffffffffffff", // A long command of size -1.
            "06 8000000000000000",
            "06 8000000000000005",
            "06 ffffffff80000000",
            "06 0000000000000000",
            "06 0000000000800001", // One byte over the largest request.
            "06 7fffffffffffffff",
            "02 ffffffffffffffff", // The last part of a message.
            "03 ffffffffffffffff", // A part that others follow.
            "00 ff",
            "04 ff", // A short command that never arrives whole.
            "04 00",
            "04 06 055245414459 00 ffffffffffffffff", // Nothing but "READY".
            "04 0c 055245414459 ff 0000000000", // "READY" and a name that is longer than the command.
            "04 0c 055245414459 0141 ffffffff", // "READY" and a value of size -1.
            "04 06 055245414459 04 05 0450494e47 02 ffffffffffffffff"); // "READY", a "PING" without its time, size -1.

    /**
     * When a client gives a handshake up and begins anew. Between two sides of this library one gets stuck now and then, whatever the
     * machine does meanwhile (its run then took 34 s in place of 5); it usually waits 30 s, and two in a row were longer than a test's patience.
     */
    private static final int HANDSHAKE_MS = 3_000;

    @TempDir
    private Path folder;

    private final ZMQ.Context client = ZMQ.context(1);
    private final ExecutorService threads = Executors.newCachedThreadPool();
    private final List<Integer> ports = new ArrayList<>();
    private KernelConnectionProperties properties;
    private HMACGenerator signer;
    private Connection connection;

    @BeforeEach
    void bind() throws Exception {
        JsonObject json = MadeConnection.onFreePorts();
        SOCKETS.forEach(socket -> ports.add(json.get(socket + "_port").getAsInt()));
        json.addProperty("key", KEY);
        properties = KernelConnectionProperties.parse(json.toString());
        signer = properties.createHMACGenerator();
        connection = MadeConnection.bind(json, folder);
    }

    @AfterEach
    void end() {
        threads.shutdownNow();
        connection.close();
    }

    private int port(String socket) {
        return ports.get(SOCKETS.indexOf(socket));
    }

    private Channel withTheKey(String socket) {
        Channel channel = new Channel(client, SocketType.DEALER, signer, KernelConnectionProperties::getShellPort);
        channel.setHandshakeIvl(HANDSHAKE_MS);
        channel.connect("tcp://127.0.0.1:" + port(socket));
        return channel;
    }

    private ZMQ.Socket withoutTheKey(String socket) {
        ZMQ.Socket strange = client.socket(SocketType.DEALER);
        strange.setHandshakeIvl(HANDSHAKE_MS);
        strange.connect("tcp://127.0.0.1:" + port(socket));
        return strange;
    }

    /** Sends frames as they are; the last ends the message. */
    private static void send(ZMQ.Socket socket, String... frames) {
        for (int i = 0; i < frames.length; i++) {
            socket.send(frames[i].getBytes(StandardCharsets.UTF_8), i < frames.length - 1 ? ZMQ.SNDMORE : 0);
        }
    }

    private static Message<?> infoRequest() {
        return new Message<>(new Header<>("me", MessageType.KERNEL_INFO_REQUEST), new KernelInfoRequest());
    }

    private static byte[] bytes(String hexadecimal) {
        return HexFormat.of().parseHex(hexadecimal.replace(" ", ""));
    }

    private static byte[] greeting() {
        byte[] greeting = new byte[GREETING];
        greeting[0] = (byte) 0xFF;
        greeting[9] = 0x7F;
        greeting[10] = 3;
        System.arraycopy("NULL".getBytes(StandardCharsets.US_ASCII), 0, greeting, 12, 4);
        return greeting;
    }

    /** Announces a frame of that many bytes, as any program on this machine can, and returns whether the kernel hangs up. */
    private static boolean hangsUpOn(int port, long announced, String socketType) throws IOException {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
            socket.setSoTimeout(10_000);
            DataOutputStream out = new DataOutputStream(socket.getOutputStream());
            out.write(greeting());
            InputStream in = socket.getInputStream();
            in.readNBytes(GREETING);
            byte[] name = "Socket-Type".getBytes(StandardCharsets.US_ASCII);
            byte[] type = socketType.getBytes(StandardCharsets.US_ASCII);
            out.writeByte(4); // A command, short.
            out.writeByte(6 + 1 + name.length + 4 + type.length);
            out.writeByte(5);
            out.write("READY".getBytes(StandardCharsets.US_ASCII));
            out.writeByte(name.length);
            out.write(name);
            out.writeInt(type.length);
            out.write(type);
            out.writeByte(2); // The last frame of a message, long.
            out.writeLong(announced);
            out.write(new byte[16]);
            out.flush();
            while (true) {
                if (in.read() < 0) {
                    return true;
                }
            }
        } catch (java.net.SocketTimeoutException e) {
            return false;
        } catch (java.net.SocketException e) {
            return true; // Cut.
        }
    }

    private ZMQ.Socket heart() {
        ZMQ.Socket heart = client.socket(SocketType.REQ);
        heart.setReceiveTimeOut(50_000);
        heart.setHandshakeIvl(HANDSHAKE_MS);
        heart.connect("tcp://127.0.0.1:" + port("hb"));
        return heart;
    }

    /** Fails unless a request is heard and the heart beats. */
    private void assertAnswers(Channel shell, ZMQ.Socket heart, String when) throws Exception {
        shell.sendMessage(infoRequest());
        assertNotNull(threads.submit(connection::nextShell).get(50, TimeUnit.SECONDS), when);
        heart.send("alive?");
        assertEquals("alive?", heart.recvStr(), when);
    }

    @Test
    void anAnnouncementOfTwoGigabytesCutsThatConnectionAndNoOther() throws Exception {
        List<String> theirTypes = List.of("DEALER", "DEALER", "DEALER", "REQ", "SUB");
        for (int i = 0; i < SOCKETS.size(); i++) {
            assertTrue(hangsUpOn(ports.get(i), Integer.MAX_VALUE, theirTypes.get(i)), SOCKETS.get(i));
            assertTrue(hangsUpOn(ports.get(i), Long.MAX_VALUE, theirTypes.get(i)), SOCKETS.get(i));
        }
        Future<Message<?>> shell = threads.submit(connection::nextShell);
        Future<Message<?>> control = threads.submit(connection::nextControl);
        withTheKey("shell").sendMessage(infoRequest());
        withTheKey("control").sendMessage(infoRequest());
        assertNotNull(shell.get(50, TimeUnit.SECONDS));
        assertNotNull(control.get(50, TimeUnit.SECONDS));
        threads.submit(connection::beat);
        ZMQ.Socket heart = heart();
        heart.send("alive?");
        assertEquals("alive?", heart.recvStr());
    }

    @Test
    void nothingThatAStrangerAnnouncesMakesTheKernelDeaf() throws Exception {
        threads.submit(connection::beat);
        Channel shell = withTheKey("shell");
        ZMQ.Socket heart = heart();
        byte[] olderGreeting = bytes("ff 0000000000000000 7f 01 05"); // Of the wire protocol 2.0, from a dealer.
        for (byte[] greeting : List.of(greeting(), olderGreeting)) {
            for (String socket : SOCKETS) {
                for (String announced : ANNOUNCED) {
                    try (Socket stranger = new Socket(InetAddress.getLoopbackAddress(), port(socket))) {
                        ByteArrayOutputStream all = new ByteArrayOutputStream();
                        all.write(greeting);
                        all.write(bytes(announced));
                        stranger.getOutputStream().write(all.toByteArray());
                    }
                    assertAnswers(shell, heart, socket + " after " + announced);
                }
            }
        }
        assertAnswers(withTheKey("shell"), heart(), "for those who connect now");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "complete_request | {'code':'log','cursor_pos':1000000000000} | complete_reply",
                "inspect_request | {'code':'log','cursor_pos':1e300,'detail_level':9} | inspect_reply",
                "complete_request | [] | complete_reply",
                "execute_request | null | execute_reply",
                "execute_request | {'code':{}} | execute_reply",
                "is_complete_request | {{{ | is_complete_reply",
                "history_request | {} | history_reply",
                "history_request | 'all' | history_reply",
                "shutdown_request | [] | shutdown_reply"
            },
            quoteCharacter = '"')
    void aSignedRequestThatCannotBeReadGetsAReplyInWords(String type, String content, String reply) throws Exception {
        new Kernel(connection, new CompletableFuture<>(), () -> {}).start();
        String json = content.replace('\'', '"');
        JsonObject refusal = replyTo(type, json, reply);
        assertEquals("error", refusal.get("status").getAsString());
        String words = "The content of the " + type + " is not what the messaging protocol says, so it was left aside.";
        assertEquals(words, refusal.get("evalue").getAsString());
        assertEquals(words, refusal.getAsJsonArray("traceback").get(0).getAsString());
        assertEquals(type.equals("execute_request"), refusal.has("execution_count"));
    }

    @Test
    void anAnswerThatFailsIsAReplyToo() throws Exception {
        IllegalStateException cause = new IllegalStateException("the session of this test never gets ready");
        new Kernel(connection, CompletableFuture.failedFuture(cause), () -> {}).start();
        JsonObject refusal = replyTo("complete_request", "{\"code\":\"log\",\"cursor_pos\":3}", "complete_reply");
        assertEquals("error", refusal.get("status").getAsString());
        assertEquals(
                "The answer to the complete_request failed; where Jupyter was started, the kernel has written why.",
                refusal.get("evalue").getAsString());
    }

    private static Message<?> onLine(String line, String method, String value) {
        JsonObject state = new JsonObject();
        state.addProperty("value", value);
        return new Message<>(
                new Header<>("me", MessageType.COMM_MSG_COMMAND), new CommMsgCommand(line, Comms.state(method, state)));
    }

    @ParameterizedTest
    @CsvSource({"shell,1", "control,0"})
    void whatIsSaidOnLinesIsHeardOnTheChannelThatWaitsItsTurnAlone(String socket, int lines) {
        new Kernel(connection, new CompletableFuture<>(), () -> {}).start();
        Channel asker = withTheKey(socket);
        asker.setReceiveTimeOut(50_000);
        asker.sendMessage(new Message<>(
                new Header<>("me", MessageType.COMM_OPEN_COMMAND),
                new CommOpenCommand("a line", "jupyter.widget.control", new JsonObject())));
        asker.sendMessage(onLine("a line", "request_states", "")); // Nothing that is heard would be answered here.
        asker.sendMessage(new Message<>(new Header<>("me", MessageType.COMM_INFO_REQUEST), new CommInfoRequest(null)));
        assertEquals(
                lines,
                ((CommInfoReply) asker.readMessage().getContent()).getComms().size());
    }

    @ParameterizedTest
    @CsvSource({"update,NEWER_WAITS", "custom,NEWEST"})
    void aPressBetweenTwoMovesFindsTheFirst(String between, Comms.Haste haste) throws Exception {
        ShellQueue queue = new ShellQueue(connection);
        Channel shell = withTheKey("shell");
        shell.sendMessage(onLine("a", "update", "1"));
        shell.sendMessage(onLine("a", between, "2"));
        shell.sendMessage(onLine("a", "update", "3"));
        shell.sendMessage(onLine("last", "update", "4"));
        CommMsgCommand first = (CommMsgCommand) queue.next().getContent();
        CommMsgCommand last = (CommMsgCommand) onLine("last", "update", "0").getContent();
        while (queue.haste(last) == Comms.Haste.NEWEST) {
            TimeUnit.MILLISECONDS.sleep(5); // Until all have come.
        }
        assertEquals(haste, queue.haste(first));
    }

    /** Sends a signed request, its content as written, and returns the content of the first message that comes back. */
    private JsonObject replyTo(String type, String content, String replyType) {
        ZMQ.Socket asker = withoutTheKey("shell");
        asker.setReceiveTimeOut(50_000);
        String header =
                "{\"msg_id\":\"1\",\"session\":\"me\",\"username\":\"me\",\"date\":\"2025-03-04T09:15:00Z\",\"msg_type\":\""
                        + type + "\",\"version\":\"5.3\"}";
        byte[][] parts = Stream.of(header, "{}", "{}", content)
                .map(part -> part.getBytes(StandardCharsets.UTF_8))
                .toArray(byte[][]::new);
        send(
                asker,
                "<IDS|MSG>",
                signer.calculateSignature(parts[0], parts[1], parts[2], parts[3]),
                header,
                "{}",
                "{}",
                content);
        List<String> frames = new ArrayList<>();
        do {
            String frame = asker.recvStr();
            assertNotNull(frame, "no reply");
            frames.add(frame);
        } while (asker.hasReceiveMore());
        int from = frames.indexOf("<IDS|MSG>");
        assertEquals(
                replyType,
                JsonParser.parseString(frames.get(from + 2))
                        .getAsJsonObject()
                        .get("msg_type")
                        .getAsString());
        return JsonParser.parseString(frames.get(from + 5)).getAsJsonObject();
    }

    @Test
    void theHeartBeatsOnWhateverIsSentToIt() {
        threads.submit(connection::beat);
        String[] many = new String[500];
        java.util.Arrays.fill(many, "x");
        ZMQ.Socket strange = withoutTheKey("hb");
        send(strange, "", "two", "parts");
        strange.setReceiveTimeOut(50_000);
        assertEquals("", strange.recvStr());
        assertEquals("two", strange.recvStr());
        assertEquals("parts", strange.recvStr());
        send(strange, many); // No empty part tells where the way back ends.
        send(strange, many.clone());
        String[] tooMany = many.clone();
        tooMany[0] = "";
        send(strange, tooMany);
        send(strange, "");
        send(strange, "", "alive?");
        String last = strange.recvStr();
        while (last != null && !last.equals("alive?")) {
            last = strange.recvStr();
        }
        assertEquals("alive?", last);
    }

    @Test
    void aLargeCellStillArrives() throws Exception {
        Channel channel = withTheKey("shell");
        String code = "// " + "x".repeat(5_000_000);
        channel.sendMessage(new Message<>(
                new Header<>("me", MessageType.EXECUTE_REQUEST),
                new org.dflib.jjava.jupyter.messages.request.ExecuteRequest(
                        code, false, true, java.util.Map.of(), false, false)));
        Message<?> arrived = threads.submit(connection::nextShell).get(50, TimeUnit.SECONDS);
        assertEquals(code, ((org.dflib.jjava.jupyter.messages.request.ExecuteRequest) arrived.getContent()).getCode());
    }

    @Test
    void whatIsTooShortOrTooLongOrUnsignedIsLeftAsideAndTakesNothingOfTheNextMessage() throws Exception {
        Future<Message<?>> next = threads.submit(connection::nextShell);
        ZMQ.Socket strange = withoutTheKey("shell");
        send(strange, "nothing of the kind");
        send(strange, "<IDS|MSG>");
        send(strange, "<IDS|MSG>", "signature");
        send(strange, "<IDS|MSG>", "", "{}", "{}", "{}", "{}");
        send(strange, "<IDS|MSG>", "0".repeat(64), "{}", "{}", "{}", "{}");
        String[] many = new String[500];
        java.util.Arrays.fill(many, "x");
        send(strange, many);
        assertThrows(TimeoutException.class, () -> next.get(1, TimeUnit.SECONDS));
        withTheKey("shell").sendMessage(infoRequest());
        assertEquals(
                MessageType.KERNEL_INFO_REQUEST,
                next.get(50, TimeUnit.SECONDS).getHeader().getType());
    }

    @Test
    void aCellThatWaitsForAnAnswerGoesOnWaitingWhateverOthersSend() throws Exception {
        Channel asker = withTheKey("stdin");
        // The kernel's side knows a client by what it has sent; the request tells it whom to ask.
        Channel shell = withTheKey("shell");
        shell.sendMessage(infoRequest());
        Message<?> request = threads.submit(connection::nextShell).get(50, TimeUnit.SECONDS);
        assertNotNull(request);
        CompletableFuture<String> answer = CompletableFuture.supplyAsync(
                () -> {
                    try {
                        return connection.ask(request);
                    } catch (InterruptedException e) {
                        throw new CompletionException(e);
                    }
                },
                threads);
        ZMQ.Socket strange = withoutTheKey("stdin");
        send(strange, "<IDS|MSG>", "", "{}", "{}", "{}", "{\"value\":\"mine\"}");
        send(strange, "<IDS|MSG>", "0".repeat(64), "{}", "{}", "{}", "{\"value\":\"mine\"}");
        send(strange, "short");
        asker.sendMessage(infoRequest()); // Signed, and no answer.
        Thread.sleep(700);
        assertFalse(answer.isDone(), () -> "the cell was ended by " + answer);
        asker.sendMessage(new Message<>(new Header<>("me", MessageType.INPUT_REPLY), new InputReply("the person's")));
        assertEquals("the person's", answer.get(50, TimeUnit.SECONDS));
    }
}
