package parchment.kernel.install;

import com.google.gson.JsonObject;
import java.io.IOException;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dflib.jjava.jupyter.kernel.KernelConnectionProperties;
import org.dflib.jjava.jupyter.messages.HMACGenerator;
import org.dflib.jjava.jupyter.messages.Header;
import org.dflib.jjava.jupyter.messages.Message;
import org.dflib.jjava.jupyter.messages.MessageType;
import org.dflib.jjava.jupyter.messages.request.CompleteRequest;
import org.dflib.jjava.jupyter.messages.request.ExecuteRequest;
import org.dflib.jjava.jupyter.messages.request.InspectRequest;
import org.dflib.jjava.jupyter.messages.request.IsCompleteRequest;
import org.dflib.jjava.jupyter.messages.request.KernelInfoRequest;
import org.dflib.jjava.jupyter.messages.request.ShutdownRequest;
import org.zeromq.SocketType;
import org.zeromq.ZMQ;
import parchment.file.WholeFile;
import parchment.kernel.KernelMain;
import parchment.kernel.protocol.Channel;

/**
 * A short session of the kernel with a client in the same process, run once at the install, so that Java knows which classes a
 * session needs and can keep them ready.
 */
final class Rehearsal {
    private static final long PATIENCE_MS = 60_000;

    private Rehearsal() {}

    /** Runs the session; the kernel ends the process as it does after any shutdown. */
    public static void main(String[] arguments) {
        try {
            rehearse();
        } catch (Exception e) {
            System.err.println("The rehearsal failed: " + e);
            System.exit(1);
        }
    }

    private static void rehearse() throws Exception {
        KernelConnectionProperties properties = properties();
        Path file = Files.createTempFile("rehearsal", ".json");
        WholeFile.at(file).write(properties.toJsonString());
        Thread kernel = new Thread(() -> KernelMain.main(new String[] {file.toString()}), "kernel");
        kernel.start();
        HMACGenerator signer = properties.createHMACGenerator();
        ZMQ.Context context = ZMQ.context(1);
        Channel shell = new Channel(context, SocketType.DEALER, signer, KernelConnectionProperties::getShellPort);
        shell.connect("tcp://127.0.0.1:" + properties.getShellPort());
        ask(shell, MessageType.KERNEL_INFO_REQUEST, new KernelInfoRequest());
        Files.delete(file);
        for (String cell : cells()) {
            ask(shell, MessageType.EXECUTE_REQUEST, new ExecuteRequest(cell, false, true, Map.of(), false, false));
        }
        ask(shell, MessageType.COMPLETE_REQUEST, new CompleteRequest("Temperature.", 12));
        ask(shell, MessageType.INSPECT_REQUEST, new InspectRequest("Math.max", 8, 0));
        ask(shell, MessageType.INSPECT_REQUEST, new InspectRequest("Temperature.of", 14, 0));
        ask(shell, MessageType.IS_COMPLETE_REQUEST, new IsCompleteRequest("1 + 1"));
        ask(shell, MessageType.SHUTDOWN_REQUEST, ShutdownRequest.SHUTDOWN);
        kernel.join();
    }

    private static <T> void ask(Channel shell, MessageType<T> type, T content) {
        shell.sendMessage(new Message<>(new Header<>("rehearsal", type), content));
        if (!shell.waitForMessage(PATIENCE_MS)) {
            throw new IllegalStateException("The kernel did not answer.");
        }
        do {
            shell.recv(); // What the answer says does not matter here.
        } while (shell.hasReceiveMore());
    }

    private static List<String> cells() throws IOException {
        try (var in = Rehearsal.class.getResourceAsStream("rehearsal.txt")) {
            if (in == null) {
                throw new IllegalStateException("The rehearsal's cells are missing from the jar.");
            }
            return List.of(new String(in.readAllBytes(), StandardCharsets.UTF_8).split("\n---\n"));
        }
    }

    private static KernelConnectionProperties properties() throws IOException {
        List<ServerSocket> held = new ArrayList<>();
        List<Integer> ports = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            ServerSocket socket = new ServerSocket(0);
            held.add(socket);
            ports.add(socket.getLocalPort());
        }
        for (ServerSocket socket : held) {
            socket.close();
        }
        JsonObject json = new JsonObject();
        json.addProperty("ip", "127.0.0.1");
        json.addProperty("transport", "tcp");
        json.addProperty("shell_port", ports.get(0));
        json.addProperty("control_port", ports.get(1));
        json.addProperty("stdin_port", ports.get(2));
        json.addProperty("hb_port", ports.get(3));
        json.addProperty("iopub_port", ports.get(4));
        json.addProperty("signature_scheme", "hmac-sha256");
        json.addProperty("key", UUID.randomUUID().toString());
        return KernelConnectionProperties.parse(json.toString());
    }
}
