package parchment.kernel;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.ArrayDeque;
import java.util.Deque;
import org.dflib.jjava.jupyter.messages.Message;
import org.dflib.jjava.jupyter.messages.comm.CommMsgCommand;
import org.dflib.jjava.jupyter.messages.request.ExecuteRequest;
import org.jspecify.annotations.Nullable;
import parchment.kernel.protocol.Comms;
import parchment.kernel.protocol.Connection;

/**
 * The requests that wait their turn, in order. It can look ahead: of many quick moves of a control only the last is worth its callback.
 *
 * <p>For the one thread that serves them.
 */
final class ShellQueue {
    /** How far ahead is looked. */
    private static final int MOST = 1_000;

    private final Connection connection;
    private final Deque<Message<?>> ahead = new ArrayDeque<>();

    ShellQueue(Connection connection) {
        this.connection = connection;
    }

    /** Returns the next request and waits for it if need be; null once the connection is closed. */
    @Nullable
    Message<?> next() {
        Message<?> first = ahead.poll();
        return first != null ? first : connection.nextShell();
    }

    /** Returns the next request if one waits already, or null. */
    @Nullable
    Message<?> waiting() {
        Message<?> first = ahead.poll();
        return first != null ? first : connection.waitingShell();
    }

    /** Tells whether a newer state of what a message sets waits, with no cell to be run in between. */
    Comms.Haste haste(CommMsgCommand message) {
        JsonObject state = update(message);
        if (state == null) {
            return Comms.Haste.NEWEST;
        }
        for (Message<?> next = null; ahead.size() < MOST; ahead.add(next)) {
            next = connection.waitingShell();
            if (next == null) {
                break;
            }
        }
        for (Message<?> later : ahead) {
            if (later.getContent() instanceof ExecuteRequest) {
                return Comms.Haste.NEWEST;
            }
            if (later.getContent() instanceof CommMsgCommand newer
                    && message.getCommID().equals(newer.getCommID())) {
                JsonObject newerState = update(newer);
                if (newerState == null) {
                    return Comms.Haste.NEWEST; // A press, say, which is to find what was set before it.
                }
                if (newerState.keySet().containsAll(state.keySet())) {
                    return Comms.Haste.NEWER_WAITS;
                }
            }
        }
        return Comms.Haste.NEWEST;
    }

    private static @Nullable JsonObject update(CommMsgCommand message) {
        JsonObject data = message.getData();
        if (data == null || message.getCommID() == null) {
            return null;
        }
        JsonElement method = data.get("method");
        JsonElement state = data.get("state");
        boolean updates = method != null
                && method.isJsonPrimitive()
                && method.getAsString().equals("update");
        return updates && state != null && state.isJsonObject() ? state.getAsJsonObject() : null;
    }
}
