package parchment.kernel.protocol;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.dflib.jjava.jupyter.messages.MessageContext;
import org.dflib.jjava.jupyter.messages.MessageType;
import org.dflib.jjava.jupyter.messages.comm.CommCloseCommand;
import org.dflib.jjava.jupyter.messages.comm.CommMsgCommand;
import org.dflib.jjava.jupyter.messages.comm.CommOpenCommand;
import org.jspecify.annotations.Nullable;

/**
 * The lines between things of the kernel and things of its clients, over which both sides may speak at any time.
 *
 * @see <a href="https://jupyter-client.readthedocs.io/en/stable/messaging.html#custom-messages">Messaging in Jupyter, custom messages</a>
 */
public final class Comms {
    /** One end of a line. */
    public interface Line {
        /**
         * Takes what the other end says.
         *
         * @param haste whether the same end has said something newer, which waits already
         */
        public void said(JsonObject data, Haste haste);

        /** Is told once a line that a client has opened is open. */
        public default void opened() {}

        /** Takes note that the other end has closed the line, or knows nothing of it. */
        public default void closed() {}
    }

    /** Whether something newer waits. */
    public enum Haste {
        NEWEST,
        NEWER_WAITS
    }

    /** Makes the kernel's end of a line that a client opens. */
    @FunctionalInterface
    public interface Target {
        public Line open(String id);
    }

    /** Lines that clients have opened and left open; of more, the oldest are closed. */
    private static final int MOST_OF_CLIENTS = 100;

    private record Open(String target, Line line) {}

    private final Connection connection;
    private final Map<String, Open> lines = new LinkedHashMap<>();
    private final Map<String, Target> targets = new LinkedHashMap<>();
    private volatile @Nullable MessageContext request;

    public Comms(Connection connection) {
        this.connection = connection;
    }

    /** Names what is being answered: what is said meanwhile is said in answer to it. */
    public void answering(MessageContext answered) {
        request = answered;
    }

    /** Lets clients open lines to a target. */
    public void accept(String target, Target maker) {
        targets.put(target, maker);
    }

    /** Opens a line to the clients. */
    public void open(String id, String target, JsonObject data, Map<String, Object> metadata, Line line) {
        synchronized (this) {
            lines.put(id, new Open(target, line));
        }
        JsonObject content = content(id, data);
        content.addProperty("target_name", target);
        connection.publish(request, MessageType.COMM_OPEN_COMMAND, content, metadata);
    }

    /** Says something on a line; nothing where it is not open. */
    public void say(String id, JsonObject data) {
        if (isOpen(id)) {
            connection.publish(request, MessageType.COMM_MSG_COMMAND, content(id, data));
        }
    }

    /** Says something to all clients, on no line. */
    public void publish(MessageType<?> type, JsonObject content) {
        connection.publish(request, type, content);
    }

    /** Closes a line, and tells the clients. */
    public void close(String id) {
        if (forget(id)) {
            connection.publish(request, MessageType.COMM_CLOSE_COMMAND, content(id, new JsonObject()));
        }
    }

    /** Forgets a line that the other end has closed; returns whether it was open. */
    public synchronized boolean forget(String id) {
        return lines.remove(id) != null;
    }

    private synchronized boolean isOpen(String id) {
        return lines.containsKey(id);
    }

    private synchronized Optional<Open> line(@Nullable String id) {
        return Optional.ofNullable(id == null ? null : lines.get(id));
    }

    /** Tells whether a message opens or closes a line, or is said on one. */
    public static boolean isOfLine(Object content) {
        return content instanceof CommOpenCommand
                || content instanceof CommMsgCommand
                || content instanceof CommCloseCommand;
    }

    /** Answers a client that opens a line. One to a target that is not known is closed at once, as the protocol asks. */
    public void opened(CommOpenCommand open) {
        String id = open.getCommID();
        String target = open.getTargetName();
        Target maker = target == null ? null : targets.get(target);
        if (id == null) {
            return;
        }
        if (maker == null || line(id).isPresent()) {
            connection.publish(request, MessageType.COMM_CLOSE_COMMAND, content(id, new JsonObject()));
            return;
        }
        Line line = maker.open(id);
        synchronized (this) {
            lines.put(id, new Open(target, line));
        }
        closeOldestOf(target);
        line.opened();
    }

    private void closeOldestOf(String target) {
        Optional<String> oldest;
        synchronized (this) {
            var ofTarget = lines.entrySet().stream()
                    .filter(line -> line.getValue().target().equals(target))
                    .map(Map.Entry::getKey)
                    .toList();
            oldest = ofTarget.size() > MOST_OF_CLIENTS ? Optional.of(ofTarget.get(0)) : Optional.empty();
        }
        oldest.ifPresent(this::close);
    }

    /** Hands on what a client says; what it says on a line that is not open is left aside. */
    public void said(CommMsgCommand message, Haste haste) {
        JsonObject data = message.getData();
        line(message.getCommID()).ifPresent(open -> open.line().said(data == null ? new JsonObject() : data, haste));
    }

    /** Takes note of a line that a client has closed. */
    public void closed(@Nullable String id) {
        Optional<Open> closed = line(id);
        if (id != null && closed.isPresent()) {
            forget(id);
            closed.get().line().closed();
        }
    }

    /** Returns the open lines, all or those of one target, as the answer to a client that asks. */
    public synchronized JsonObject info(@Nullable String target) {
        JsonObject open = new JsonObject();
        lines.forEach((id, line) -> {
            if (target == null || target.isEmpty() || target.equals(line.target())) {
                JsonObject named = new JsonObject();
                named.addProperty("target_name", line.target());
                open.add(id, named);
            }
        });
        JsonObject reply = new JsonObject();
        reply.addProperty("status", "ok");
        reply.add("comms", open);
        return reply;
    }

    private static JsonObject content(String id, JsonObject data) {
        JsonObject content = new JsonObject();
        content.addProperty("comm_id", id);
        content.add("data", data);
        return content;
    }

    /** Returns what is said of a state: the method, the state, and that no bytes go with it. */
    public static JsonObject state(String method, JsonElement state) {
        JsonObject data = new JsonObject();
        data.addProperty("method", method);
        data.add("state", state);
        data.add("buffer_paths", new JsonArray());
        return data;
    }
}
