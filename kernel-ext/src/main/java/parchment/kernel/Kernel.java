package parchment.kernel;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import org.dflib.jjava.jupyter.messages.Message;
import org.dflib.jjava.jupyter.messages.MessageType;
import org.dflib.jjava.jupyter.messages.comm.CommCloseCommand;
import org.dflib.jjava.jupyter.messages.comm.CommMsgCommand;
import org.dflib.jjava.jupyter.messages.comm.CommOpenCommand;
import org.dflib.jjava.jupyter.messages.request.CommInfoRequest;
import org.dflib.jjava.jupyter.messages.request.CompleteRequest;
import org.dflib.jjava.jupyter.messages.request.ExecuteRequest;
import org.dflib.jjava.jupyter.messages.request.HistoryRequest;
import org.dflib.jjava.jupyter.messages.request.InspectRequest;
import org.dflib.jjava.jupyter.messages.request.IsCompleteRequest;
import org.dflib.jjava.jupyter.messages.request.ShutdownRequest;
import org.jspecify.annotations.Nullable;
import parchment.display.live.Live;
import parchment.kernel.cell.Evaluator;
import parchment.kernel.help.Completions;
import parchment.kernel.page.CellPage;
import parchment.kernel.page.Outcome;
import parchment.kernel.page.Shown;
import parchment.kernel.protocol.Comms;
import parchment.kernel.protocol.Connection;
import parchment.kernel.source.Readiness;
import parchment.kernel.widget.LiveControls;
import parchment.kernel.words.CellError;

/**
 * Answers a Jupyter client, after the messaging protocol 5.3.
 *
 * <p>One thread takes requests in turn, one takes those that go before the others (interrupt, shutdown), one beats.
 *
 * @see <a href="https://jupyter-client.readthedocs.io/en/stable/messaging.html">Messaging in Jupyter</a>
 */
final class Kernel {
    private static final String OK = "ok";

    private final Connection connection;
    private final CompletableFuture<Evaluator> evaluator;
    private final Runnable end;
    private final History history = new History();
    private final ShellQueue queue;
    private final Comms comms;
    private final LiveControls controls;
    private int count;

    private final Object stopping = new Object();

    /** Whether a request that runs code has been taken up and not ended yet. */
    private boolean taken;

    /** An interrupt that comes while a cell still waits for the session to get ready is meant for that cell. */
    private volatile boolean stopAsked;

    /**
     * @param evaluator may still be getting ready; what needs it waits
     * @param end is called when a client asks to shut down, after the reply
     */
    Kernel(Connection connection, CompletableFuture<Evaluator> evaluator, Runnable end) {
        this.connection = connection;
        this.evaluator = evaluator;
        this.end = end;
        this.queue = new ShellQueue(connection);
        this.comms = new Comms(connection);
        this.controls = new LiveControls(
                comms,
                (page, work) -> evaluator.join().act(page, work, () -> stopAsked),
                value -> evaluator.join().shown(value));
    }

    /** Starts the threads; returns at once. */
    void start() {
        daemon("heartbeat", connection::beat);
        daemon("control", this::serveControl);
        daemon("shell", this::serveShell);
        connection.publishStatus(null, "starting");
    }

    /** Stops the cell that is being run. One that comes while none is, is forgotten: it must not stop a cell that follows. */
    void interrupt() {
        synchronized (stopping) {
            if (taken) {
                stopAsked = true;
                Evaluator ready = evaluator.getNow(null);
                if (ready != null) {
                    ready.interrupt();
                }
            }
        }
    }

    private void take(Runnable work) {
        synchronized (stopping) {
            taken = true;
            stopAsked = false;
        }
        try {
            work.run();
        } finally {
            synchronized (stopping) {
                taken = false;
            }
        }
    }

    private static void daemon(String name, Runnable work) {
        // The stack is generous because the compiler recurses over a cell's expressions.
        Thread thread = new Thread(null, work, name, 4L << 20);
        thread.setDaemon(true);
        thread.start();
    }

    private void serveShell() {
        boolean first = true;
        for (Message<?> request = queue.next(); request != null; request = queue.next()) {
            if (first) {
                connection.awaitListener();
                first = false;
            }
            comms.answering(request);
            serve(request, Channels.SHELL);
        }
    }

    private void serveControl() {
        for (Message<?> request = connection.nextControl(); request != null; request = connection.nextControl()) {
            serve(request, Channels.CONTROL);
        }
    }

    private enum Channels {
        SHELL,
        CONTROL
    }

    /** A request must never end the thread that serves it, whatever goes wrong in its answer. */
    private void serve(Message<?> request, Channels channel) {
        try {
            connection.publishStatus(request, "busy");
            answer(request, channel);
        } catch (RuntimeException | Error e) {
            System.err.println("The answer to a request failed: " + e);
            e.printStackTrace(System.err);
            refuse(request, channel, Refusals.failed(request.getHeader().getType()));
        } finally {
            connection.publishStatus(request, "idle");
        }
    }

    private void answer(Message<?> request, Channels channel) {
        Object content = request.getContent();
        if (content instanceof ExecuteRequest execute) {
            take(() -> execute(request, execute));
        } else if (content instanceof CompleteRequest complete) {
            reply(request, channel, MessageType.COMPLETE_REPLY, completions(complete));
        } else if (content instanceof InspectRequest inspect) {
            reply(request, channel, MessageType.INSPECT_REPLY, inspection(inspect));
        } else if (content instanceof IsCompleteRequest isComplete) {
            reply(request, channel, MessageType.IS_COMPLETE_REPLY, readiness(isComplete));
        } else if (content instanceof HistoryRequest asked) {
            JsonObject reply = status(OK);
            reply.add("history", history.answer(asked));
            reply(request, channel, MessageType.HISTORY_REPLY, reply);
        } else if (content instanceof ShutdownRequest shutdown) {
            JsonObject reply = status(OK);
            reply.addProperty("restart", shutdown.isRestart());
            interrupt();
            reply(request, channel, MessageType.SHUTDOWN_REPLY, reply);
            connection.publish(request, MessageType.SHUTDOWN_REPLY, reply);
            end.run();
        } else if (Comms.isOfLine(content)) {
            if (channel == Channels.SHELL) { // They wait their turn; what sets a control off must not go before a cell.
                onLine(content);
            }
        } else if (content instanceof CommInfoRequest asked) {
            reply(request, channel, MessageType.COMM_INFO_REPLY, comms.info(asked.getTargetName()));
        } else {
            answerByType(request, channel);
        }
    }

    private void onLine(Object content) {
        if (content instanceof CommOpenCommand open) {
            comms.opened(open);
        } else if (content instanceof CommMsgCommand said) {
            take(() -> comms.said(said, queue.haste(said)));
        } else if (content instanceof CommCloseCommand close) {
            comms.closed(close.getCommID());
        }
    }

    private void answerByType(Message<?> request, Channels channel) {
        MessageType<?> type = request.getHeader().getType();
        if (type == MessageType.KERNEL_INFO_REQUEST) {
            reply(request, channel, MessageType.KERNEL_INFO_REPLY, KernelInfo.json());
        } else if (type == MessageType.INTERRUPT_REQUEST) {
            interrupt();
            reply(request, channel, MessageType.INTERRUPT_REPLY, status(OK));
        } else {
            refuse(request, channel, Refusals.unreadable(type));
        }
    }

    /** Nothing is sent where nobody waits for a reply. */
    private void refuse(Message<?> request, Channels channel, JsonObject refusal) {
        MessageType<?> type = Refusals.replyTo(request.getHeader().getType());
        if (type == MessageType.EXECUTE_REPLY) {
            refusal.addProperty("execution_count", count);
        }
        if (type != null) {
            reply(request, channel, type, refusal);
        }
    }

    private void reply(Message<?> request, Channels channel, MessageType<?> type, JsonObject content) {
        if (channel == Channels.SHELL) {
            connection.replyOnShell(request, type, content);
        } else {
            connection.replyOnControl(request, type, content);
        }
    }

    private void execute(Message<?> request, ExecuteRequest execute) {
        boolean counted = execute.shouldStoreHistory() && !execute.isSilent();
        if (counted) {
            count++;
        }
        if (!execute.isSilent()) {
            JsonObject input = new JsonObject();
            input.addProperty("code", execute.getCode());
            input.addProperty("execution_count", count);
            connection.publish(request, MessageType.PUBLISH_EXECUTE_INPUT, input);
        }
        Outcome outcome;
        String shown;
        try (ClientPage page = new ClientPage(connection, request, count, execute.isStdinEnabled(), controls)) {
            outcome = evaluator
                    .join()
                    .run(count, execute.getCode(), execute.isSilent() ? new SilentPage(page) : page, () -> stopAsked);
            shown = page.resultText();
        }
        if (counted) {
            history.add(count, execute.getCode(), shown);
        }
        JsonObject reply = outcome.error().map(Kernel::error).orElseGet(() -> status(OK));
        outcome.error().ifPresent(error -> {
            JsonObject published = error(error);
            published.remove("status");
            connection.publish(request, MessageType.PUBLISH_ERROR, published);
        });
        reply.addProperty("execution_count", count);
        if (outcome.fine()) {
            reply.add("payload", new JsonArray());
            reply.add("user_expressions", UserExpressions.valuesOf(execute.getUserExpr(), count, evaluator.join()));
        }
        connection.replyOnShell(request, MessageType.EXECUTE_REPLY, reply);
        if (!outcome.fine() && execute.shouldStopOnError()) {
            giveUpOnWhatWaits();
        }
    }

    /** After an error, the cells that "run all" has sent already are not run. */
    private void giveUpOnWhatWaits() {
        for (Message<?> next = queue.waiting(); next != null; next = queue.waiting()) {
            comms.answering(next);
            if (next.getContent() instanceof ExecuteRequest) {
                connection.publishStatus(next, "busy");
                JsonObject aborted = status("aborted");
                aborted.addProperty("execution_count", count);
                connection.replyOnShell(next, MessageType.EXECUTE_REPLY, aborted);
                connection.publishStatus(next, "idle");
            } else {
                serve(next, Channels.SHELL);
            }
        }
    }

    private JsonObject completions(CompleteRequest request) {
        String code = request.getCode();
        Completions found = evaluator.join().complete(code, utf16(code, request.getCursorPos()));
        JsonObject reply = status(OK);
        JsonArray matches = new JsonArray();
        found.matches().forEach(matches::add);
        reply.add("matches", matches);
        reply.addProperty("cursor_start", code.codePointCount(0, found.start()));
        reply.addProperty("cursor_end", code.codePointCount(0, found.end()));
        reply.add("metadata", new JsonObject());
        return reply;
    }

    private JsonObject inspection(InspectRequest request) {
        String code = request.getCode();
        @Nullable Shown found = evaluator.join().inspect(code, utf16(code, request.getCursorPos()));
        JsonObject reply = (found == null ? Shown.NOTHING : found).content();
        reply.addProperty("status", OK);
        reply.addProperty("found", found != null);
        return reply;
    }

    private JsonObject readiness(IsCompleteRequest request) {
        Readiness readiness = evaluator.join().readiness(request.getCode());
        return switch (readiness.state()) {
            case COMPLETE -> status("complete");
            case INVALID -> status("invalid");
            case INCOMPLETE -> {
                JsonObject reply = status("incomplete");
                reply.addProperty("indent", readiness.indent());
                yield reply;
            }
        };
    }

    /** Clients count whole characters, Java counts those beyond the basic plane (emoji) as two. */
    private static int utf16(String code, int cursor) {
        int within = Math.max(0, Math.min(cursor, code.codePointCount(0, code.length())));
        return code.offsetByCodePoints(0, within);
    }

    private static JsonObject status(String status) {
        JsonObject json = new JsonObject();
        json.addProperty("status", status);
        return json;
    }

    /** Returns an error as the protocol writes it. */
    static JsonObject error(CellError error) {
        JsonObject json = status("error");
        json.addProperty("ename", error.name());
        json.addProperty("evalue", error.message());
        JsonArray lines = new JsonArray();
        List<String> text = error.lines();
        text.forEach(lines::add);
        json.add("traceback", lines);
        return json;
    }

    /** A silent request runs without showing its value. */
    private record SilentPage(CellPage page) implements CellPage {
        @Override
        public void print(Stream stream, String text) {
            page.print(stream, text);
        }

        @Override
        public void show(Shown shown) {
            page.show(shown);
        }

        @Override
        public void show(String id, Shown shown) {
            page.show(id, shown);
        }

        @Override
        public void showNamed(String name, Shown shown) {
            page.showNamed(name, shown);
        }

        @Override
        public void update(String name, Shown shown) {
            page.update(name, shown);
        }

        @Override
        public void clear() {
            page.clear();
        }

        @Override
        public void result(Shown shown) {
            // Not wanted.
        }

        @Override
        public void foot(Shown shown) {
            // Not wanted.
        }

        @Override
        public Map<String, String> live(Live value) {
            return page.live(value);
        }

        @Override
        public String readLine() throws java.io.IOException {
            return page.readLine();
        }
    }
}
