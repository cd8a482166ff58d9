package parchment.kernel;

import java.util.function.ToIntFunction;
import org.dflib.jjava.jupyter.channels.JupyterSocket;
import org.dflib.jjava.jupyter.kernel.KernelConnectionProperties;
import org.dflib.jjava.jupyter.messages.HMACGenerator;
import org.slf4j.LoggerFactory;
import org.zeromq.SocketType;
import org.zeromq.ZMQ;

/**
 * One of a kernel's five sockets. Reading, signing and checking of messages are the base library's; its own loop, which looks for
 * messages every 50 ms, is replaced by threads that wait in {@link #readMessage}.
 */
final class Channel extends JupyterSocket {
    private final ToIntFunction<KernelConnectionProperties> port;

    Channel(
            ZMQ.Context context,
            SocketType type,
            HMACGenerator signer,
            ToIntFunction<KernelConnectionProperties> port) {
        super(context, type, signer, LoggerFactory.getLogger(Channel.class));
        this.port = port;
    }

    @Override
    public void bind(KernelConnectionProperties connection) {
        setLinger(1000);
        bind(formatAddress(connection.getTransport(), connection.getIp(), port.applyAsInt(connection)));
    }

    /** Waits for a message; returns whether there is one. */
    boolean waitForMessage(long milliseconds) {
        try (ZMQ.Poller poller = ctx.poller(1)) {
            poller.register(this, ZMQ.Poller.POLLIN);
            return poller.poll(milliseconds) > 0;
        }
    }
}
