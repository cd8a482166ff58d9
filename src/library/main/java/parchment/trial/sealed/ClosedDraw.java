package parchment.trial.sealed;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Keeps drawn lines so that a glance tells nothing: each is covered with a stream that its own first bytes begin, so that equal targets do not
 * look alike, and all are of one length.
 *
 * <p>This keeps out accident, not intent: whoever wants to can uncover a line, and no seal shows that somebody did. Who is to roast blind to
 * what comes next gives the file to somebody else.
 */
public final class ClosedDraw {
    static final String HEADER = "parchment-closed-1";

    private static final int FRONT = 16;
    private static final int BLOCK = 32;

    private ClosedDraw() {}

    /** Returns the text of a file that holds the lines. */
    public static String cover(List<DrawnLine> lines) {
        return again(lines.stream().map(DrawnLine::text).toList());
    }

    /** Returns the one text of a file that holds these lines. */
    public static String again(List<String> lines) {
        int longest = lines.stream()
                .mapToInt(line -> line.getBytes(StandardCharsets.UTF_8).length)
                .max()
                .orElse(0);
        return HEADER + "\n"
                + lines.stream().map(line -> cover(line, longest)).collect(Collectors.joining("\n", "", "\n"));
    }

    private static String cover(String text, int length) {
        byte[] plain = (text + " ".repeat(length - text.getBytes(StandardCharsets.UTF_8).length))
                .getBytes(StandardCharsets.UTF_8);
        // The salt is chance already; hashed, the front gives nothing of it away.
        byte[] front = new byte[FRONT];
        System.arraycopy(Seal.digest(("front " + text).getBytes(StandardCharsets.UTF_8)), 0, front, 0, FRONT);
        byte[] all = new byte[FRONT + plain.length];
        System.arraycopy(front, 0, all, 0, FRONT);
        System.arraycopy(covered(plain, front), 0, all, FRONT, plain.length);
        return Base64.getEncoder().encodeToString(all);
    }

    private static byte[] covered(byte[] text, byte[] front) {
        byte[] out = new byte[text.length];
        byte[] stream = new byte[0];
        for (int i = 0; i < text.length; i++) {
            if (i % BLOCK == 0) {
                byte[] next = new byte[FRONT + 1];
                System.arraycopy(front, 0, next, 0, FRONT);
                next[FRONT] = (byte) (i / BLOCK);
                stream = Seal.digest(next);
            }
            out[i] = (byte) (text[i] ^ stream[i % BLOCK]);
        }
        return out;
    }

    /**
     * Returns the texts of the lines that a file holds; one that cannot be uncovered is blank.
     *
     * @throws IllegalArgumentException if it is no such file
     */
    public static List<String> uncover(String file) {
        List<String> rows = file.lines().toList();
        if (rows.isEmpty() || !rows.get(0).equals(HEADER)) {
            throw new IllegalArgumentException("line 1 is not '" + HEADER + "'");
        }
        List<String> lines = new ArrayList<>();
        for (String row : rows.subList(1, rows.size())) {
            lines.add(uncovered(row));
        }
        return List.copyOf(lines);
    }

    private static String uncovered(String row) {
        byte[] all;
        try {
            all = Base64.getDecoder().decode(row);
        } catch (IllegalArgumentException e) {
            return "";
        }
        if (all.length <= FRONT) {
            return "";
        }
        byte[] front = new byte[FRONT];
        System.arraycopy(all, 0, front, 0, FRONT);
        byte[] rest = new byte[all.length - FRONT];
        System.arraycopy(all, FRONT, rest, 0, rest.length);
        return new String(covered(rest, front), StandardCharsets.UTF_8).stripTrailing();
    }
}
