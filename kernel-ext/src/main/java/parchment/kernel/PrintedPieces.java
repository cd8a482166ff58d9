package parchment.kernel;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import parchment.kernel.page.CellPage;

/**
 * What was printed and not yet sent. Text of the two ways out stays in the order in which it came, until they have taken turns so
 * often that each piece would be a message of its own; from then on what is printed goes on with the last piece of its way.
 */
final class PrintedPieces {
    static final int MOST = 16;

    private record Piece(CellPage.Stream stream, StringBuilder text) {}

    private final List<Piece> pieces = new ArrayList<>();
    private int length;

    void add(CellPage.Stream stream, String text) {
        length += text.length();
        for (int i = pieces.size() - 1; i >= 0; i--) {
            if (pieces.get(i).stream() == stream) {
                pieces.get(i).text().append(text);
                return;
            }
            if (pieces.size() < MOST) {
                break;
            }
        }
        pieces.add(new Piece(stream, new StringBuilder(text)));
    }

    /** Returns how many characters wait. */
    int length() {
        return length;
    }

    /** Hands on what waits, and keeps none of it. */
    void take(BiConsumer<CellPage.Stream, String> sink) {
        List<Piece> taken = List.copyOf(pieces);
        pieces.clear();
        length = 0;
        taken.forEach(piece -> sink.accept(piece.stream(), piece.text().toString()));
    }
}
