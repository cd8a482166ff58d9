package parchment.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.EOFException;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.MalformedInputException;
import java.nio.file.AccessDeniedException;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.FileSystemLoopException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.util.stream.Stream;
import java.util.zip.ZipException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class FileWordsTest {
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    No space left on device               | the disk is full
                    There is not enough space on the disk | the disk is full
                    Disk quota exceeded                   | you have used up the room
                    Read-only file system                 | nothing can be written on that disk
                    Permission denied                     | that is not permitted to you
                    Operation not permitted               | that is not permitted to you
                    Access is denied                      | another program has it open
                    The process cannot access the file because it is being used by another process | another program has it open
                    File name too long                    | the name is longer than this disk allows
                    Too many open files                   | too many files open
                    Is a directory                        | a folder of that name stands there
                    Not a directory                       | a part of the path is a file
                    Too many levels of symbolic links     | its links lead in a circle
                    File too large                        | larger than this disk allows
                    Input/output error                    | the disk did not answer as it should
                    Stale file handle                     | the network drive
                    Broken pipe                           | the program that it was written to has ended
                    Invalid argument                      | this disk does not take it
                    No locks available                    | cannot keep two programs apart
                    """)
    void whatSystemsSayBecomesWords(String said, String words) {
        IOException plain = new IOException(said);
        IOException ofFile = new FileSystemException("a file", null, said);
        assertTrue(FileWords.reason(plain).contains(words), FileWords.reason(plain));
        assertTrue(FileWords.reason(ofFile).contains(words), FileWords.reason(ofFile));
        assertTrue(FileWords.of(plain).startsWith("A file could not be read or written: "), FileWords.of(plain));
        assertTrue(FileWords.of(ofFile).startsWith("'a file' could not be read or written: "), FileWords.of(ofFile));
        assertTrue(FileWords.knows(plain));
    }

    static Stream<IOException> failures() {
        return Stream.of(
                new IOException(),
                new IOException("short"),
                new EOFException(),
                new ZipException("invalid END header"),
                new MalformedInputException(3),
                new FileNotFoundException("there (No such file or directory)"),
                new NoSuchFileException("there"),
                new AccessDeniedException("there"),
                new FileAlreadyExistsException("there"),
                new DirectoryNotEmptyException("there"),
                new NotDirectoryException("there"),
                new FileSystemLoopException("there"),
                new FileSystemException("there"),
                new FileSystemException("there", "here", "Invalid cross-device link"),
                new IOException("Cannot run program \"tar\": error=2, No such file or directory"),
                new IOException(new IOException("No space left on device")),
                new IOException("java.lang.IllegalStateException: inside"),
                new IOException(new RuntimeException("disk thing")),
                new IOException(new RuntimeException()),
                new IOException(new java.util.concurrent.ExecutionException(new IllegalStateException("disk thing"))));
    }

    @ParameterizedTest
    @MethodSource("failures")
    void noFailureIsToldWithTheNameOfAClass(IOException failure) {
        for (String told : new String[] {
            FileWords.of(failure), FileWords.of(new UncheckedIOException(failure)), FileWords.reason(failure) + "."
        }) {
            assertFalse(told.contains("IOException"), told);
            assertFalse(told.contains("FileException"), told);
            assertFalse(told.contains("java."), told);
            assertTrue(told.endsWith("."), told);
        }
    }

    @Test
    void saysWhichFileAndWhy() {
        assertEquals("There is no file or folder a b.", FileWords.of(new NoSuchFileException("a b")));
        assertEquals(
                "'a b' could not be read or written: that is not permitted to you.",
                FileWords.of(new AccessDeniedException("a b")));
        assertEquals(
                "A file could not be read or written: it is not text in UTF-8.",
                FileWords.of(new MalformedInputException(1)));
        assertEquals(
                "'a b' could not be read or written: there is no such file or folder.",
                FileWords.of(new FileNotFoundException("a b (No such file or directory)")));
        assertEquals(
                "The program tar is needed, and could not be started: it is not there, or may not be run.",
                FileWords.of(new IOException("Cannot run program \"tar\": error=2, No such file or directory")));
    }

    @Test
    void aClassBeforeTheReasonIsLeftOutAndTheNameOfTheFileIsNoReason() {
        assertEquals(
                "A file could not be read or written: disk thing.",
                FileWords.of(new IOException(new RuntimeException("disk thing"))));
        assertEquals(
                "A file could not be read or written: the disk did not say why.",
                FileWords.of(new IOException(new RuntimeException())));
        assertEquals(
                "'/x/y' could not be read or written: the disk did not say why.",
                FileWords.of(new FileSystemException("/x/y")));
    }

    @Test
    void aSentenceOfOursIsKept() {
        String ours = "The folder has the seeds of a class already.";
        assertEquals(ours, FileWords.of(new IOException(ours)));
        assertEquals(ours, FileWords.of(new UncheckedIOException(new IOException(ours))));
        assertEquals(ours, FileWords.of(new UncheckedIOException(ours, new IOException("No space left on device"))));
    }
}
