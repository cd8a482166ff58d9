package parchment.kernel;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.util.Map;
import org.dflib.jjava.jupyter.messages.MessageType;
import org.jspecify.annotations.Nullable;

/**
 * The replies to requests that have no answer, because they cannot be read or the answer failed. A client waits for as long as nothing
 * comes back.
 *
 * @see <a href="https://jupyter-client.readthedocs.io/en/stable/messaging.html#request-reply">Request-reply</a>
 */
final class Refusals {
    private static final Map<MessageType<?>, MessageType<?>> REPLIES = Map.of(
            MessageType.EXECUTE_REQUEST, MessageType.EXECUTE_REPLY,
            MessageType.INSPECT_REQUEST, MessageType.INSPECT_REPLY,
            MessageType.COMPLETE_REQUEST, MessageType.COMPLETE_REPLY,
            MessageType.IS_COMPLETE_REQUEST, MessageType.IS_COMPLETE_REPLY,
            MessageType.HISTORY_REQUEST, MessageType.HISTORY_REPLY,
            MessageType.KERNEL_INFO_REQUEST, MessageType.KERNEL_INFO_REPLY,
            MessageType.COMM_INFO_REQUEST, MessageType.COMM_INFO_REPLY,
            MessageType.INTERRUPT_REQUEST, MessageType.INTERRUPT_REPLY,
            MessageType.SHUTDOWN_REQUEST, MessageType.SHUTDOWN_REPLY);

    private Refusals() {}

    /** Returns the type of the reply to a request; null if nothing waits for a reply to such a message. */
    static @Nullable MessageType<?> replyTo(MessageType<?> request) {
        return REPLIES.get(request);
    }

    static JsonObject unreadable(MessageType<?> request) {
        return refusal(
                "Request not read",
                "The content of the " + request.getName()
                        + " is not what the messaging protocol says, so it was left aside.");
    }

    static JsonObject failed(MessageType<?> request) {
        return refusal(
                "No answer",
                "The answer to the " + request.getName()
                        + " failed; where Jupyter was started, the kernel has written why.");
    }

    private static JsonObject refusal(String name, String text) {
        JsonArray lines = new JsonArray();
        lines.add(text);
        JsonObject json = new JsonObject();
        json.addProperty("status", "error");
        json.addProperty("ename", name);
        json.addProperty("evalue", text);
        json.add("traceback", lines);
        return json;
    }
}
