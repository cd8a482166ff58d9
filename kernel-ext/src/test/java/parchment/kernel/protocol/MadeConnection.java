package parchment.kernel.protocol;

import com.google.gson.JsonObject;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** A kernel's sockets on ports that were free, with nobody at the other end. */
public final class MadeConnection {
    private MadeConnection() {}

    public static Connection in(Path folder) throws Exception {
        return bind(onFreePorts(), folder);
    }

    /** Returns what a client and a kernel are told of their sockets. */
    public static JsonObject onFreePorts() throws IOException {
        List<ServerSocket> held = new ArrayList<>();
        JsonObject json = new JsonObject();
        for (String socket : List.of("shell", "control", "stdin", "hb", "iopub")) {
            ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
            held.add(free);
            json.addProperty(socket + "_port", free.getLocalPort());
        }
        for (ServerSocket each : held) {
            each.close();
        }
        json.addProperty("ip", "127.0.0.1");
        json.addProperty("transport", "tcp");
        json.addProperty("signature_scheme", "hmac-sha256");
        json.addProperty("key", "a key");
        return json;
    }

    public static Connection bind(JsonObject ports, Path folder) throws Exception {
        return Connection.bind(Files.writeString(folder.resolve("connection.json"), ports.toString()));
    }
}
