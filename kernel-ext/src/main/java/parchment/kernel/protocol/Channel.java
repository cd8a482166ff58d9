package parchment.kernel.protocol;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToIntFunction;
import org.dflib.jjava.jupyter.channels.JupyterSocket;
import org.dflib.jjava.jupyter.kernel.KernelConnectionProperties;
import org.dflib.jjava.jupyter.messages.HMACGenerator;
import org.dflib.jjava.jupyter.messages.Message;
import org.slf4j.LoggerFactory;
import org.zeromq.SocketType;
import org.zeromq.ZMQ;
import zmq.Msg;

/**
 * One of a kernel's five sockets. Writing and signing of messages are the base library's; its own loop, which looks for messages every
 * 50 ms, is replaced by threads that wait in {@link #readMessage}, which takes one whole message at a time, signed or not.
 *
 * <p>Anybody on this machine can connect, with the key or without. So a part of a message has a largest size, over which the connection
 * is cut before any room is made for it, and a message a largest number of parts.
 * Of what goes out nothing is left aside, however slowly a client reads: the library would drop what comes after a thousand messages that
 * wait, and with them the end of the cell. How much a cell may send is bounded where it is made.
 */
public final class Channel extends JupyterSocket {
    /** The largest part of a message that asks for something: a cell of some hundred thousand lines. */
    static final long LARGEST_REQUEST = 8L << 20;

    /** The largest part of a message on the sockets on which only signs of life and subscriptions come in. */
    static final long LARGEST_SIGN = 64L << 10;

    private static final int MOST_PARTS = 64;

    private final ToIntFunction<KernelConnectionProperties> port;
    private final HMACGenerator signer;

    public Channel(
            ZMQ.Context context,
            SocketType type,
            HMACGenerator signer,
            ToIntFunction<KernelConnectionProperties> port) {
        super(context, type, signer, LoggerFactory.getLogger(Channel.class));
        this.port = port;
        this.signer = signer;
        boolean asks = type == SocketType.ROUTER || type == SocketType.DEALER;
        setMaxMsgSize(asks ? LARGEST_REQUEST : LARGEST_SIGN);
        setMsgAllocator(Channel::room);
        setSndHWM(0); // Without end.
    }

    /**
     * Returns the room for a part of a message. It never throws, because that would leave the one thread of all sockets turning in the
     * library's decoder for good. The largest size does not hold back a negative one: what was announced so is a part without bytes.
     */
    static Msg room(int size) {
        try {
            return new Msg(Math.max(0, size));
        } catch (OutOfMemoryError e) {
            return new Msg();
        }
    }

    @Override
    public void bind(KernelConnectionProperties connection) {
        setLinger(1000);
        bind(formatAddress(connection.getTransport(), connection.getIp(), port.applyAsInt(connection)));
    }

    /**
     * Waits for a message and returns it.
     *
     * @throws SecurityException if it is not signed with the kernel's key
     * @throws RuntimeException if it is no message
     */
    @Override
    public Message<?> readMessage() {
        List<byte[]> frames = readParts();
        if (frames.isEmpty()) {
            throw new IllegalArgumentException("it is too large");
        }
        return new Frames(frames).message(signer);
    }

    /** Waits for a message and takes all of it; returns its parts, none if it is too large. */
    public List<byte[]> readParts() {
        List<byte[]> frames = new ArrayList<>();
        long size = 0;
        boolean tooMuch = false;
        do {
            byte[] frame = recv();
            size += frame.length;
            tooMuch |= frames.size() >= MOST_PARTS || size > 2 * LARGEST_REQUEST;
            if (!tooMuch) {
                frames.add(frame);
            }
        } while (hasReceiveMore());
        return tooMuch ? List.of() : frames;
    }

    /** Waits for a message; returns whether there is one. */
    public boolean waitForMessage(long milliseconds) {
        try (ZMQ.Poller poller = ctx.poller(1)) {
            poller.register(this, ZMQ.Poller.POLLIN);
            return poller.poll(milliseconds) > 0;
        }
    }
}
