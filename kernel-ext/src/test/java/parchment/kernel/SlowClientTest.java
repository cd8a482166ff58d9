package parchment.kernel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.dflib.jjava.jupyter.messages.Header;
import org.dflib.jjava.jupyter.messages.Message;
import org.dflib.jjava.jupyter.messages.MessageType;
import org.dflib.jjava.jupyter.messages.request.KernelInfoRequest;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.zeromq.SocketType;
import org.zeromq.ZMQ;
import parchment.kernel.page.CellPage;
import parchment.kernel.page.Outcome;
import parchment.kernel.page.Shown;
import parchment.kernel.protocol.Comms;
import parchment.kernel.protocol.Connection;
import parchment.kernel.protocol.MadeConnection;
import parchment.kernel.widget.LiveControls;

/** What a client hears that reads slower than a cell writes. */
@Timeout(120)
class SlowClientTest {
    private static final Message<?> REQUEST =
            new Message<>(new Header<>("me", MessageType.KERNEL_INFO_REQUEST), new KernelInfoRequest());

    @TempDir
    private Path folder;

    private final ZMQ.Context client = ZMQ.context(1);
    private Connection connection;
    private ZMQ.Socket listener;

    @BeforeEach
    void listen() throws Exception {
        JsonObject ports = MadeConnection.onFreePorts();
        connection = MadeConnection.bind(ports, folder);
        listener = client.socket(SocketType.SUB);
        listener.setRcvHWM(1);
        listener.setReceiveBufferSize(4_096);
        listener.setHandshakeIvl(3_000);
        listener.setReceiveTimeOut(100);
        listener.connect("tcp://127.0.0.1:" + ports.get("iopub_port").getAsInt());
        listener.subscribe("");
        JsonObject heard;
        do {
            connection.publishStatus(REQUEST, "starting");
            heard = next();
        } while (heard.size() == 0);
        listener.setReceiveTimeOut(2_000);
        connection.publishStatus(REQUEST, "ready");
        while (!heard.toString().contains("ready")) {
            heard = next();
        }
    }

    @AfterEach
    void end() {
        connection.close();
    }

    /** Returns the content of the next message, with its type; empty if none comes. */
    private JsonObject next() {
        List<String> frames = new ArrayList<>();
        do {
            String frame = listener.recvStr();
            if (frame == null) {
                return new JsonObject();
            }
            frames.add(frame);
        } while (listener.hasReceiveMore());
        int from = frames.indexOf("<IDS|MSG>");
        JsonObject content = JsonParser.parseString(frames.get(from + 5)).getAsJsonObject();
        content.add(
                "type",
                JsonParser.parseString(frames.get(from + 2)).getAsJsonObject().get("msg_type"));
        return content;
    }

    /** Returns what is heard up to the word that the cell has ended. */
    private List<JsonObject> heardToTheEnd() {
        connection.publishStatus(REQUEST, "idle");
        List<JsonObject> heard = new ArrayList<>();
        for (JsonObject next = next(); ; next = next()) {
            assertTrue(next.size() > 0, () -> "the end is missing after " + heard.size() + " messages");
            if (next.has("execution_state")) {
                return heard;
            }
            heard.add(next);
        }
    }

    private ClientPage page() {
        LiveControls none = new LiveControls(new Comms(connection), (page, work) -> Outcome.FINE, Shown::of);
        return new ClientPage(connection, REQUEST, 1, false, none);
    }

    @Test
    void whatWaitsForASlowClientIsNotDropped() {
        JsonObject large = new JsonObject();
        large.addProperty("name", "stdout");
        large.addProperty("text", "x".repeat(4_000));
        for (int i = 0; i < 6_000; i++) {
            connection.publish(REQUEST, MessageType.PUBLISH_STREAM, large);
        }
        assertEquals(6_000, heardToTheEnd().size());
    }

    @Test
    void linesThatTakeTurnsBetweenTheTwoWaysOutAllArriveInFewMessages() {
        try (ClientPage page = page()) {
            for (int i = 0; i < 9_000; i++) {
                page.print(CellPage.Stream.STDOUT, i + "\n");
                page.print(CellPage.Stream.STDERR, i + "\n");
            }
        }
        List<JsonObject> heard = heardToTheEnd();
        StringBuilder all = new StringBuilder();
        for (int i = 0; i < 9_000; i++) {
            all.append(i).append('\n');
        }
        for (String way : List.of("stdout", "stderr")) {
            StringBuilder text = new StringBuilder();
            heard.stream()
                    .filter(message -> message.get("name").getAsString().equals(way))
                    .forEach(message -> text.append(message.get("text").getAsString()));
            assertEquals(all.toString(), text.toString(), way);
        }
        assertTrue(heard.size() < 1_500, () -> heard.size() + " messages");
    }

    @Test
    void aFewTurnsBetweenTheTwoWaysOutStayInOrder() {
        StringBuilder text = new StringBuilder();
        PrintedPieces pieces = new PrintedPieces();
        for (int i = 0; i < PrintedPieces.MOST + 2; i++) {
            pieces.add(i % 2 == 0 ? CellPage.Stream.STDOUT : CellPage.Stream.STDERR, (char) ('a' + i) + "");
        }
        pieces.add(CellPage.Stream.STDERR, "!");
        assertEquals(PrintedPieces.MOST + 3, pieces.length());
        pieces.take((stream, piece) ->
                text.append(stream == CellPage.Stream.STDERR ? " e:" : " o:").append(piece));
        assertEquals(" o:a e:b o:c e:d o:e e:f o:g e:h o:i e:j o:k e:l o:m e:n o:oq e:pr!", text.toString());
        assertEquals(0, pieces.length());
    }

    @Test
    void ofUpdatesThatFollowEachOtherAtOnceTheLastArrivesAndFew() {
        try (ClientPage page = page()) {
            page.showNamed("count", new Shown(Map.of(Shown.TEXT, "begun")));
            for (int i = 0; i < 20_000; i++) {
                page.update("count", new Shown(Map.of(Shown.TEXT, "number " + i)));
                page.update("other", new Shown(Map.of(Shown.TEXT, "other " + i)));
            }
        }
        List<JsonObject> heard = heardToTheEnd();
        assertNotNull(heard.get(0).get("data"));
        assertTrue(heard.get(0).toString().contains("begun"));
        assertTrue(heard.size() < 1_000, () -> heard.size() + " messages");
        // What waits may go out between the two.
        assertTrue(lastOf("number ", heard).contains("number 19999"));
        assertTrue(lastOf("other ", heard).contains("other 19999"));
    }

    private static String lastOf(String words, List<JsonObject> heard) {
        return heard.stream()
                .map(JsonObject::toString)
                .filter(one -> one.contains(words))
                .reduce((earlier, later) -> later)
                .orElseThrow();
    }

    @Test
    void whatIsShownAfterAnUpdateArrivesAfterIt() {
        try (ClientPage page = page()) {
            page.update("a", new Shown(Map.of(Shown.TEXT, "before")));
            page.show(new Shown(Map.of(Shown.TEXT, "after")));
        }
        List<JsonObject> heard = heardToTheEnd();
        assertTrue(heard.get(0).toString().contains("before"));
        assertTrue(heard.get(1).toString().contains("after"));
    }
}
