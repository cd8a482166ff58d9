package parchment.kernel;

import com.google.gson.JsonObject;
import java.io.IOException;
import java.time.Duration;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import org.dflib.jjava.jupyter.messages.MessageContext;
import org.dflib.jjava.jupyter.messages.MessageType;
import parchment.display.live.Live;
import parchment.kernel.page.CellPage;
import parchment.kernel.page.Shown;
import parchment.kernel.protocol.Connection;
import parchment.kernel.widget.LiveControls;

/**
 * The page of a Jupyter client for one cell. What is printed in small pieces is sent in larger ones, and of what changes in place faster
 * than anybody can see, the last is sent: the client may read slower than the cell writes.
 */
final class ClientPage implements CellPage, AutoCloseable {
    private static final int PIECE = 8_192;
    private static final long PATIENCE_MS = 40;
    private static final int MOST_UPDATES = 100;

    private final Connection connection;
    private final MessageContext request;
    private final int number;
    private final boolean mayAsk;
    private final LiveControls controls;
    private final Set<String> places = new HashSet<>();
    private final PrintedPieces printed = new PrintedPieces();
    private final Map<String, Shown> updates = new LinkedHashMap<>();
    private final Thread flusher = new Thread(this::flushFromTimeToTime, "printed text");
    private boolean started;
    private String resultText = "";

    ClientPage(Connection connection, MessageContext request, int number, boolean mayAsk, LiveControls controls) {
        this.connection = connection;
        this.request = request;
        this.number = number;
        this.mayAsk = mayAsk;
        this.controls = controls;
        flusher.setDaemon(true);
    }

    @Override
    public synchronized void print(Stream stream, String text) {
        printed.add(stream, text);
        if (printed.length() >= PIECE) {
            sendPrinted();
        } else {
            sendSoon();
        }
    }

    @Override
    public synchronized void show(Shown shown) {
        flush();
        connection.publish(request, MessageType.PUBLISH_DISPLAY_DATA, shown.content());
    }

    @Override
    public synchronized void show(String id, Shown shown) {
        if (places.add(id)) {
            showNamed(id, shown);
        } else {
            update(id, shown);
        }
    }

    @Override
    public synchronized void showNamed(String name, Shown shown) {
        flush();
        publishUnder(name, shown, MessageType.PUBLISH_DISPLAY_DATA);
    }

    @Override
    public void update(String name, Shown shown) {
        updateOutputs(name, shown);
        controls.update(name, shown);
    }

    private synchronized void updateOutputs(String name, Shown shown) {
        updates.put(name, shown);
        if (updates.size() >= MOST_UPDATES) {
            sendUpdates();
        } else {
            sendSoon();
        }
    }

    private void publishUnder(String id, Shown shown, MessageType<?> type) {
        connection.publish(request, type, shown.contentUnder(id));
    }

    @Override
    public synchronized void result(Shown shown) {
        flush();
        resultText = shown.text();
        JsonObject content = shown.content();
        content.addProperty("execution_count", number);
        connection.publish(request, MessageType.PUBLISH_EXECUTION_RESULT, content);
    }

    @Override
    public void ran(Duration time) {
        RunningTime.shown(time).ifPresent(this::foot);
    }

    @Override
    public synchronized void clear() {
        flush();
        JsonObject content = new JsonObject();
        content.addProperty("wait", true);
        connection.publish(request, MessageType.PUBLISH_CLEAR_OUTPUT, content);
    }

    @Override
    public Map<String, String> live(Live value) {
        return controls.open(value, this);
    }

    @Override
    public String readLine() throws IOException {
        if (!mayAsk) {
            throw new IOException("This client cannot answer questions, so a cell cannot read input here.");
        }
        flushNow();
        try {
            return connection.ask(request);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("Interrupted while waiting for an answer.", e);
        }
    }

    /** Returns the text of the cell's value, empty if it had none. */
    synchronized String resultText() {
        return resultText;
    }

    @Override
    public synchronized void close() {
        flush();
        flusher.interrupt();
    }

    private synchronized void flushNow() {
        flush();
    }

    private void sendSoon() {
        if (!started) {
            started = true;
            flusher.start();
        }
    }

    private void flush() {
        sendPrinted();
        sendUpdates();
    }

    private void sendPrinted() {
        printed.take((stream, text) -> {
            JsonObject content = new JsonObject();
            content.addProperty("name", stream == Stream.STDERR ? "stderr" : "stdout");
            content.addProperty("text", text);
            connection.publish(request, MessageType.PUBLISH_STREAM, content);
        });
    }

    private void sendUpdates() {
        Map<String, Shown> last = new LinkedHashMap<>(updates);
        updates.clear();
        last.forEach((id, shown) -> publishUnder(id, shown, MessageType.PUBLISH_UPDATE_DISPLAY_DATA));
    }

    private void flushFromTimeToTime() {
        try {
            while (true) {
                Thread.sleep(PATIENCE_MS);
                flushNow();
            }
        } catch (InterruptedException e) {
            return; // The cell has ended.
        }
    }
}
