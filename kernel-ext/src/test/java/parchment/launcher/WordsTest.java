package parchment.launcher;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import parchment.logbook.contents.LogbookException;

class WordsTest {
    static Stream<Throwable> failures() {
        return Stream.of(
                new IOException("No space left on device"),
                new UncheckedIOException(new IOException("No space left on device")),
                new NoSuchFileException("there"),
                new AccessDeniedException("there"),
                new InvalidPathException("a\0b", "Nul character not allowed"),
                new LogbookException("The folder 'x' holds no logbook."),
                new IllegalArgumentException(),
                new IllegalStateException("Say what to do."),
                new NullPointerException(),
                new NullPointerException(
                        "Cannot invoke \"parchment.logbook.Batch.name()\" because \"<local1>\" is absent"),
                new ClassCastException("class parchment.logbook.Batch cannot be cast to class Lot"),
                new RuntimeException(new java.util.concurrent.ExecutionException("inside", null)),
                new ArithmeticException("/ by zero"),
                new InterruptedException(),
                new OutOfMemoryError("Java heap space"));
    }

    @ParameterizedTest
    @MethodSource("failures")
    void noErrorIsToldWithTheNameOfAClass(Throwable failure) {
        String told = Words.of(failure);
        assertFalse(told.contains("Exception"), told);
        assertFalse(told.contains("OutOfMemoryError"), told);
        assertFalse(told.contains("java."), told);
        assertFalse(told.contains("parchment."), told);
        assertFalse(told.contains("null"), told);
    }

    @Test
    void tellsWhatIsOursAsItIsAndWhatIsAFaultAsAFault() {
        assertEquals(
                "The folder 'x' holds no logbook.", Words.of(new LogbookException("The folder 'x' holds no logbook.")));
        assertEquals(
                "A file could not be read or written: the disk is full. Make room on it, or name another folder, and run it"
                        + " again.",
                Words.of(new UncheckedIOException(new IOException("No space left on device"))));
        assertTrue(Words.of(new NullPointerException())
                .startsWith("Parchment stopped at a fault of its own, not of yours.\n"));
    }
}
