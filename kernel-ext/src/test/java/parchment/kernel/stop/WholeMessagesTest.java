package parchment.kernel.stop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import java.nio.file.Path;
import java.util.AbstractMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.dflib.jjava.jupyter.messages.MessageType;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.kernel.protocol.Connection;
import parchment.kernel.protocol.MadeConnection;

class WholeMessagesTest {
    private final List<String> done = new ArrayList<>();

    @Test
    void aThreadIsNotEndedWhileItSends() {
        Thread here = Thread.currentThread();
        WholeMessages.send(() -> {
            WholeMessages.send(() -> done.add("within"));
            assertFalse(WholeMessages.endUnlessSending(here, () -> done.add("ended")));
        });
        WholeMessages.send(() -> done.add("after"));
        assertEquals(List.of("within", "after"), done);
    }

    @Test
    void aThreadThatIsBeingEndedBeginsNoMessage() throws InterruptedException {
        Thread other = new Thread(() -> {
            assertTrue(WholeMessages.endUnlessSending(Thread.currentThread(), () -> done.add("ended")));
            assertThrows(CellStop.class, () -> WholeMessages.send(() -> done.add("sent")));
            done.add("told");
        });
        other.start();
        other.join();
        assertEquals(List.of("ended", "told"), done);
    }

    @Test
    void whatAConnectionSendsIsSentWhole(@TempDir Path folder) throws Exception {
        Map<String, Object> metadata = new AbstractMap<>() {
            @Override
            public Set<Entry<String, Object>> entrySet() {
                assertFalse(WholeMessages.endUnlessSending(Thread.currentThread(), () -> done.add("ended")));
                done.add("written");
                return Set.of(Map.entry("a", "b"));
            }

            @Override
            public boolean isEmpty() {
                return false;
            }
        };
        try (Connection connection = MadeConnection.in(folder)) {
            connection.publish(null, MessageType.COMM_MSG_COMMAND, new JsonObject(), metadata);
        }
        assertTrue(done.contains("written") && !done.contains("ended"));
    }
}
