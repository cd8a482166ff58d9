package parchment.kernel;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;

/** Puts the page in place of standard output, error and input for as long as a cell runs, and ends a cell that prints without end. */
final class CellStreams implements AutoCloseable {
    /** A page with more than this is of no use to a reader and makes a browser stand still. */
    static final int MOST_CHARACTERS = 1_000_000;

    static final int MOST_LINES = 20_000;

    private final PrintStream out = System.out;
    private final PrintStream err = System.err;
    private final InputStream in = System.in;
    private final CellPage page;
    private final PrintStream cellOut;
    private final PrintStream cellErr;
    private int characters;
    private int lines;

    CellStreams(CellPage page) {
        this.page = page;
        cellOut = printer(CellPage.Stream.STDOUT);
        cellErr = printer(CellPage.Stream.STDERR);
        System.setOut(cellOut);
        System.setErr(cellErr);
        System.setIn(new Asking(page));
    }

    @Override
    public void close() {
        cellOut.flush();
        cellErr.flush();
        System.setOut(out);
        System.setErr(err);
        System.setIn(in);
    }

    private PrintStream printer(CellPage.Stream stream) {
        return new PrintStream(new Decoding(stream), true, StandardCharsets.UTF_8);
    }

    private synchronized void print(CellPage.Stream stream, String text) {
        characters += text.length();
        lines += (int) text.chars().filter(c -> c == '\n').count();
        if (characters > MOST_CHARACTERS || lines > MOST_LINES) {
            CellGuard.stop(CellStop.Reason.TOO_MUCH_OUTPUT);
            throw new CellStop(CellStop.Reason.TOO_MUCH_OUTPUT);
        }
        page.print(stream, text);
    }

    /** Turns bytes into text; a letter whose bytes arrive in two pieces stays whole. */
    private final class Decoding extends OutputStream {
        private final CellPage.Stream stream;
        private final CharsetDecoder decoder = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPLACE)
                .onUnmappableCharacter(CodingErrorAction.REPLACE);
        private byte[] left = new byte[0];

        Decoding(CellPage.Stream stream) {
            this.stream = stream;
        }

        @Override
        public void write(int b) {
            write(new byte[] {(byte) b}, 0, 1);
        }

        @Override
        public synchronized void write(byte[] bytes, int from, int length) {
            ByteBuffer input = ByteBuffer.allocate(left.length + length);
            input.put(left).put(bytes, from, length).flip();
            CharBuffer text = CharBuffer.allocate(input.remaining() + 1);
            decoder.decode(input, text, false);
            left = new byte[input.remaining()];
            input.get(left);
            text.flip();
            if (text.hasRemaining()) {
                print(stream, text.toString());
            }
        }
    }

    /** Asks the person at the page for a line whenever the cell reads past what they typed. */
    private static final class Asking extends InputStream {
        private final CellPage page;
        private byte[] line = new byte[0];
        private int next;

        Asking(CellPage page) {
            this.page = page;
        }

        @Override
        public int read() throws IOException {
            if (next == line.length) {
                line = (page.readLine() + "\n").getBytes(StandardCharsets.UTF_8);
                next = 0;
            }
            return line[next++] & 0xff;
        }

        @Override
        public int read(byte[] bytes, int from, int length) throws IOException {
            if (length == 0) {
                return 0;
            }
            int first = read();
            bytes[from] = (byte) first;
            int more = Math.min(length - 1, line.length - next);
            System.arraycopy(line, next, bytes, from + 1, more);
            next += more;
            return more + 1;
        }

        @Override
        public int available() {
            return line.length - next;
        }
    }
}
