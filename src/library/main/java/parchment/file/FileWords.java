package parchment.file;

import java.io.EOFException;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.AccessDeniedException;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.FileSystemLoopException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.ZipException;

/** Puts what the system says about a file into words for the person at the keyboard: never the name of a class. */
public final class FileWords {
    private static final Pattern PROGRAM = Pattern.compile("Cannot run program \"([^\"]+)\".*", Pattern.DOTALL);

    private static final Pattern FILE_AND_REASON = Pattern.compile("(.+) \\(([^()]+)\\)", Pattern.DOTALL);

    /** The text of an error that another brought about begins with the other's class. */
    private static final Pattern CLASSES =
            Pattern.compile("^(?:(?:[\\w$]+\\.)*[A-Z][\\w$]*(?:Exception|Error)(?:: |$))+");

    /** What systems write, in small letters, and what that means. The first that is found counts. */
    private static final Map<String, String> MEANINGS = meanings();

    private FileWords() {}

    private static Map<String, String> meanings() {
        Map<String, String> words = new LinkedHashMap<>();
        words.put(
                "no space left on device",
                "the disk is full. Make room on it, or name another folder, and run it again");
        words.put("not enough space on the disk", words.get("no space left on device"));
        words.put(
                "disk quota exceeded",
                "you have used up the room that this machine gives you. Make room, and run it again");
        words.put("read-only file system", "nothing can be written on that disk. Name a folder elsewhere");
        words.put("permission denied", "that is not permitted to you");
        words.put("operation not permitted", "that is not permitted to you");
        words.put("access is denied", "that is not permitted to you, or another program has it open");
        words.put("being used by another process", "another program has it open. Close it there, and run it again");
        words.put("file name too long", "the name is longer than this disk allows");
        words.put("too many open files", "this machine has too many files open. Close some programs, and run it again");
        words.put("is a directory", "a folder of that name stands there");
        words.put("not a directory", "a part of the path is a file, where a folder is needed");
        words.put("too many levels of symbolic links", "its links lead in a circle");
        words.put("no such file or directory", "there is no such file or folder");
        words.put("cannot find the file", "there is no such file or folder");
        words.put("cannot find the path", "there is no such file or folder");
        words.put("file too large", "the file is larger than this disk allows");
        words.put(
                "input/output error",
                "the disk did not answer as it should (a worn memory stick, a lost network drive?)");
        words.put("stale file handle", "the network drive it lies on was lost. Connect it, and run it again");
        words.put("broken pipe", "the program that it was written to has ended");
        words.put(
                "invalid argument",
                "this disk does not take it (a name it does not allow, or a file too large for it)");
        words.put("no locks available", "the disk cannot keep two programs apart (a network drive?)");
        return words;
    }

    /** Returns a sentence about what happened, with the file where it is known. */
    public static String of(IOException failure) {
        if (failure instanceof NotWrittenException && failure.getMessage() != null) {
            return failure.getMessage();
        }
        Optional<String> file =
                failure instanceof FileSystemException f ? Optional.ofNullable(f.getFile()) : Optional.empty();
        if (failure instanceof NoSuchFileException && file.isPresent()) {
            return "There is no file or folder " + file.get() + ".";
        }
        String message = String.valueOf(failure.getMessage());
        Matcher program = PROGRAM.matcher(message);
        if (program.matches()) {
            return "The program " + program.group(1)
                    + " is needed, and could not be started: it is not there, or may not be run.";
        }
        Matcher older = FILE_AND_REASON.matcher(message);
        if (failure instanceof FileNotFoundException && older.matches()) {
            return "'" + older.group(1) + "' could not be read or written: " + reason(failure) + ".";
        }
        if (file.isPresent()) {
            return "'" + file.get() + "' could not be read or written: " + reason(failure) + ".";
        }
        if (!knows(failure) && isSentence(message)) {
            return message;
        }
        return "A file could not be read or written: " + reason(failure) + ".";
    }

    /** Returns whether that is something a disk or a system says, so that {@link #of(IOException)} knows words for it. */
    public static boolean knows(IOException failure) {
        return failure instanceof FileSystemException
                || failure instanceof NotWrittenException
                || failure instanceof CharacterCodingException
                || failure instanceof ZipException
                || failure instanceof EOFException
                || PROGRAM.matcher(String.valueOf(failure.getMessage())).matches()
                || meaning(String.valueOf(failure.getMessage())).isPresent();
    }

    /** Returns the words for what went wrong, wherever it was found; a message of our own is kept. */
    public static String of(UncheckedIOException failure) {
        String message = failure.getMessage();
        IOException cause = Objects.requireNonNull(failure.getCause()); // It cannot be made without one.
        // Without words of its own, such an error carries its cause's text, which begins with the cause's class.
        return message == null || message.equals(cause.toString()) || !isSentence(message) ? of(cause) : message;
    }

    /** Returns why, as the part of a sentence after a colon, without a full stop at its end. */
    public static String reason(IOException failure) {
        if (failure instanceof NotWrittenException && failure.getCause() instanceof IOException cause) {
            return reason(cause);
        }
        if (failure instanceof NoSuchFileException) {
            return "there is no such file or folder";
        }
        if (failure instanceof AccessDeniedException) {
            return "that is not permitted to you";
        }
        if (failure instanceof FileAlreadyExistsException) {
            return "something of that name is there already";
        }
        if (failure instanceof DirectoryNotEmptyException) {
            return "the folder holds something already";
        }
        if (failure instanceof NotDirectoryException) {
            return "it is a file, where a folder is needed";
        }
        if (failure instanceof FileSystemLoopException) {
            return "its links lead in a circle";
        }
        if (failure instanceof CharacterCodingException) {
            return "it is not text in UTF-8";
        }
        if (failure instanceof EOFException || failure instanceof ZipException) {
            return "it breaks off, or is damaged. Copy or fetch it again";
        }
        // Without a reason, the message of an error about a file is the file's name alone.
        String said = failure instanceof FileSystemException f ? f.getReason() : failure.getMessage();
        String words = said == null ? "" : withoutClass(said);
        return words.isEmpty() ? "the disk did not say why" : meaning(words).orElse(words);
    }

    private static String withoutClass(String said) {
        return CLASSES.matcher(said.strip()).replaceFirst("").strip().replaceFirst("\\.$", "");
    }

    private static Optional<String> meaning(String said) {
        String small = said.toLowerCase(Locale.ROOT);
        return MEANINGS.entrySet().stream()
                .filter(known -> small.contains(known.getKey()))
                .map(Map.Entry::getValue)
                .findFirst();
    }

    private static boolean isSentence(String message) {
        return message.indexOf(' ') > 0 && !message.matches("(?s)[\\w.$]+(Exception|Error)\\b.*");
    }
}
