package parchment.kernel.cell;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import parchment.kernel.page.CellPage;

/**
 * Puts the page in place of standard output, error and input for as long as a cell runs. What is printed past what a page can hold is
 * counted and not shown.
 */
final class CellStreams implements AutoCloseable {
    /** A page with more than this from one of its two ways out is of no use to a reader and makes a browser stand still. */
    static final int MOST_CHARACTERS = 1_000_000;

    static final int MOST_LINES = 20_000;

    private final PrintStream out = System.out;
    private final PrintStream err = System.err;
    private final InputStream in = System.in;
    private final CellPage page;
    private final PrintStream cellOut;
    private final PrintStream cellErr;
    private final Map<CellPage.Stream, Printed> printed = new EnumMap<>(CellPage.Stream.class);

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
        tellWhatIsCut();
        System.setOut(out);
        System.setErr(err);
        System.setIn(in);
    }

    /** Tells how much of what was printed so far is not shown, so that it stands where it was cut and not behind what comes next. */
    static void tellWhatIsCutSoFar() {
        if (System.out instanceof Printer printer) {
            printer.owner.tellWhatIsCut();
        }
    }

    private PrintStream printer(CellPage.Stream stream) {
        return new Printer(this, new Decoding(stream));
    }

    private static final class Printer extends PrintStream {
        private final CellStreams owner;

        Printer(CellStreams owner, OutputStream to) {
            super(to, true, StandardCharsets.UTF_8);
            this.owner = owner;
        }
    }

    private synchronized void print(CellPage.Stream stream, String text) {
        String shown = printed.computeIfAbsent(stream, s -> new Printed()).shownOf(text);
        if (!shown.isEmpty()) {
            page.print(stream, shown);
        }
    }

    private synchronized void tellWhatIsCut() {
        printed.forEach((stream, count) -> count.takeRest().ifPresent(rest -> page.print(stream, rest)));
    }

    /** What went out on one of the two ways: so much is shown, the rest is counted. */
    private static final class Printed {
        private int characters;
        private int lines;
        private boolean full;
        private boolean endsLine = true;
        private long charactersCut;
        private long linesCut;

        /** Returns the beginning of a text that is shown, up to all of it. */
        String shownOf(String text) {
            int end = 0;
            while (!full && end < text.length()) {
                int next = text.offsetByCodePoints(end, 1); // A sign of two characters is not torn.
                full = characters + next - end > MOST_CHARACTERS || lines == MOST_LINES;
                if (!full) {
                    lines += text.charAt(end) == '\n' ? 1 : 0;
                    characters += next - end;
                    end = next;
                }
            }
            charactersCut += text.length() - end;
            linesCut += text.substring(end).chars().filter(c -> c == '\n').count();
            if (end > 0) {
                endsLine = text.charAt(end - 1) == '\n';
            }
            return text.substring(0, end);
        }

        /** Returns what is to be said of the rest, once. */
        Optional<String> takeRest() {
            Optional<String> rest = rest();
            charactersCut = 0;
            linesCut = 0;
            return rest;
        }

        private Optional<String> rest() {
            return charactersCut == 0
                    ? Optional.empty()
                    : Optional.of(String.format(
                            Locale.ROOT,
                            "%s... and %,d more character%s in %,d line%s, not shown\n",
                            endsLine ? "" : "\n",
                            charactersCut,
                            charactersCut == 1 ? "" : "s",
                            Math.max(1, linesCut),
                            linesCut <= 1 ? "" : "s"));
        }
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
