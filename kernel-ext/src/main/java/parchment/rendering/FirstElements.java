package parchment.rendering;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.stream.BaseStream;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import parchment.display.Html;
import parchment.display.Showable;

/** Shows the first elements of what can be read only once, and says that they are gone from it. */
final class FirstElements {
    static final int SHOWN = 20;

    private FirstElements() {}

    /** A stream may be endless, so no more is asked of it than is shown, and one element to know whether there are more. */
    static Showable ofStream(BaseStream<?, ?> stream, Renderers renderers) {
        List<@Nullable Object> taken = new ArrayList<>();
        try (BaseStream<?, ?> closing = stream) {
            elements(closing).limit(SHOWN + 1).forEachOrdered(taken::add);
        } catch (IllegalStateException e) {
            if (taken.isEmpty() && isUsedUp(e)) {
                return new Renderers.Words(
                        "A stream that was read before: a stream gives its elements once. Make it anew, and keep them with .toList().");
            }
            throw e;
        }
        return shown(
                taken,
                "stream",
                "The stream is used up by this: make it anew, or end it with .toList() to keep what is in it.",
                renderers);
    }

    /** Tells whether elements may be taken: a reader of lines would wait for somebody to type, and a row of a table would move on. */
    static boolean mayBeTaken(Iterator<?> iterator) {
        String name = iterator.getClass().getName();
        return !(iterator instanceof AutoCloseable) && (name.startsWith("java.") || name.startsWith("REPL."));
    }

    static Showable ofIterator(Iterator<?> iterator, Renderers renderers) {
        List<@Nullable Object> taken = new ArrayList<>();
        while (taken.size() < SHOWN && iterator.hasNext()) {
            taken.add(iterator.next());
        }
        boolean more = taken.size() == SHOWN && iterator.hasNext();
        if (more) {
            taken.add(null);
        }
        return shown(taken, "iterator", "They are taken out of the iterator: it goes on behind them.", renderers);
    }

    /** Java's streams say no more than this of why they refuse. */
    private static boolean isUsedUp(IllegalStateException e) {
        StackTraceElement[] frames = e.getStackTrace();
        return frames.length > 0 && frames[0].getClassName().startsWith("java.util.stream.");
    }

    private static Stream<?> elements(BaseStream<?, ?> stream) {
        if (stream instanceof Stream<?> objects) {
            return objects.sequential();
        }
        if (stream instanceof IntStream whole) {
            return whole.sequential().boxed();
        }
        if (stream instanceof LongStream whole) {
            return whole.sequential().boxed();
        }
        if (stream instanceof DoubleStream numbers) {
            return numbers.sequential().boxed();
        }
        return Stream.of("a stream of a kind of its own, not read");
    }

    private static Showable shown(List<@Nullable Object> taken, String of, String used, Renderers renderers) {
        boolean more = taken.size() > SHOWN;
        List<@Nullable Object> first = taken.subList(0, Math.min(SHOWN, taken.size()));
        String begin = taken.isEmpty()
                ? "An " + (of.equals("stream") ? "empty stream" : "iterator with nothing left")
                : (more
                                ? "The first " + SHOWN + " elements of a"
                                : taken.size() == 1 ? "The one element of a" : "All " + taken.size() + " elements of a")
                        + (of.equals("stream") ? " stream" : "n iterator");
        if (taken.isEmpty()) {
            return new Renderers.Words(begin + ".");
        }
        Showable inner = renderers.of(java.util.Collections.unmodifiableList(first));
        String text = begin + ":\n" + inner.text() + "\n" + used;
        Optional<String> html = inner.html()
                .map(rich -> "<p>" + Html.escape(begin) + ":</p>\n" + rich + "\n<p>" + Html.escape(used) + "</p>");
        return html.<Showable>map(rich -> new Renderers.Page(text, rich)).orElseGet(() -> new Renderers.Words(text));
    }
}
