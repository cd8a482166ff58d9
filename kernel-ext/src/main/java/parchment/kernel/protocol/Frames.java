package parchment.kernel.protocol;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.reflect.TypeToken;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.dflib.jjava.jupyter.messages.HMACGenerator;
import org.dflib.jjava.jupyter.messages.Header;
import org.dflib.jjava.jupyter.messages.KernelTimestamp;
import org.dflib.jjava.jupyter.messages.Message;
import org.dflib.jjava.jupyter.messages.MessageType;
import org.dflib.jjava.jupyter.messages.ReplyType;
import org.dflib.jjava.jupyter.messages.adapters.HeaderAdapter;
import org.dflib.jjava.jupyter.messages.adapters.HistoryRequestAdapter;
import org.dflib.jjava.jupyter.messages.adapters.KernelTimestampAdapter;
import org.dflib.jjava.jupyter.messages.adapters.MessageTypeAdapter;
import org.dflib.jjava.jupyter.messages.adapters.ReplyTypeAdapter;
import org.dflib.jjava.jupyter.messages.request.HistoryRequest;
import org.jspecify.annotations.Nullable;

/**
 * The frames of one message as they came over the wire: identities, a delimiter, a signature, and the four parts that it signs. The base
 * library reads frame by frame, so that a message with too few of them would take those of the next one.
 *
 * @see <a href="https://jupyter-client.readthedocs.io/en/stable/messaging.html#the-wire-protocol">The wire protocol</a>
 */
record Frames(List<byte[]> frames) {
    private static final byte[] DELIMITER = "<IDS|MSG>".getBytes(StandardCharsets.US_ASCII);
    private static final int SIGNATURE = 1;
    private static final int HEADER = 2;
    private static final int PARENT = 3;
    private static final int METADATA = 4;
    private static final int CONTENT = 5;

    private static final Gson GSON = new GsonBuilder()
            .registerTypeAdapter(KernelTimestamp.class, KernelTimestampAdapter.INSTANCE)
            .registerTypeAdapter(Header.class, HeaderAdapter.INSTANCE)
            .registerTypeAdapter(MessageType.class, MessageTypeAdapter.INSTANCE)
            .registerTypeAdapter(HistoryRequest.class, HistoryRequestAdapter.INSTANCE)
            .registerTypeHierarchyAdapter(ReplyType.class, new ReplyTypeAdapter(new Gson()))
            .create();

    /**
     * Returns the message. Its content is null if it cannot be read: who sent it is known and waits for a reply.
     *
     * @throws SecurityException if it is not signed with the kernel's key
     * @throws RuntimeException if it is no message
     */
    @SuppressWarnings({"rawtypes", "unchecked"})
    Message<?> message(HMACGenerator signer) {
        int from = delimiter();
        if (from < 0 || frames.size() <= from + CONTENT) {
            throw new IllegalArgumentException("it has too few parts");
        }
        byte[] header = frames.get(from + HEADER);
        byte[] parent = frames.get(from + PARENT);
        byte[] metadata = frames.get(from + METADATA);
        byte[] content = frames.get(from + CONTENT);
        String right = signer.calculateSignature(header, parent, metadata, content);
        if (!MessageDigest.isEqual(right.getBytes(StandardCharsets.US_ASCII), frames.get(from + SIGNATURE))) {
            throw new SecurityException("The signature is not that of the kernel's key.");
        }
        Header<?> parsed = parsed(header, Header.class);
        @Nullable Header<?> answered = isEmpty(parent) ? null : parsed(parent, Header.class);
        Map<String, Object> told = GSON.fromJson(text(metadata), new TypeToken<Map<String, Object>>() {}.getType());
        return new Message(
                frames.subList(0, from),
                parsed,
                answered,
                told,
                content(content, parsed.getType()),
                frames.subList(from + CONTENT + 1, frames.size()));
    }

    private int delimiter() {
        for (int i = 0; i < frames.size(); i++) {
            if (Arrays.equals(frames.get(i), DELIMITER)) {
                return i;
            }
        }
        return -1;
    }

    private static boolean isEmpty(byte[] json) {
        return text(json).replaceAll("\\s", "").matches("\\{}|null|");
    }

    private static @Nullable Object content(byte[] json, MessageType<?> type) {
        try {
            return GSON.fromJson(text(json), type.getContentType());
        } catch (RuntimeException | StackOverflowError e) {
            return null;
        }
    }

    private static <T> T parsed(byte[] json, Class<T> type) {
        T parsed = GSON.fromJson(text(json), type);
        if (parsed == null) {
            throw new IllegalArgumentException("a part of it is empty");
        }
        return parsed;
    }

    private static String text(byte[] bytes) {
        return new String(bytes, StandardCharsets.UTF_8);
    }
}
