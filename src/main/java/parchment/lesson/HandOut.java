package parchment.lesson;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import parchment.file.WholeFile;
import parchment.virtual.VirtualLogbook;

/**
 * Is one student's folder of one lesson. It is made aside and moved into place when it is whole, so that what is there is whole.
 *
 * @param seal the seal of the truth behind it
 * @param code what binds the student's answers to it
 */
record HandOut(int lesson, String student, String seal, String code) {
    String name() {
        return "lesson-" + lesson;
    }

    private String facts() {
        return "lesson=" + lesson + "\nstudent=" + student + "\nseal=" + seal + "\ncode=" + code + "\n";
    }

    /**
     * Makes the folder inside the student's, unless it is there.
     *
     * @throws IOException if something else is there in its place, or it cannot be written
     */
    void make(Path students, VirtualLogbook roasted) throws IOException {
        Path folder = students.resolve(name());
        Path facts = folder.resolve(LessonSource.FACTS);
        if (Files.exists(facts)) {
            if (Files.readString(facts, StandardCharsets.UTF_8).equals(facts())) {
                return;
            }
            throw new IOException(
                    "The folder " + folder + " is there already, and it is not what this class hands out: it comes"
                            + " from another class, another student or an older version. Take it away, or name another folder.");
        }
        if (Files.exists(folder)) {
            if (!isHalfDone(folder, roasted.files())) {
                throw new IOException("The folder " + folder
                        + " is there already and holds something else. Take it away, or name another folder.");
            }
            delete(folder);
        }
        Path aside = students.resolve("." + name() + "-not-finished");
        delete(aside);
        roasted.writeTo(aside.resolve(LessonSource.LOGBOOK));
        WholeFile.at(aside.resolve(LessonSource.FACTS)).write(facts());
        Files.move(aside, folder);
    }

    /** Tells whether a folder holds nothing but a part of what is to be in it, the last file perhaps torn: what is deleted comes again. */
    private static boolean isHalfDone(Path folder, Map<String, String> whole) throws IOException {
        Path logbook = folder.resolve(LessonSource.LOGBOOK);
        try (Stream<Path> inside = Files.walk(folder)) {
            for (Path file : inside.filter(Files::isRegularFile).toList()) {
                String meant = whole.get(logbook.relativize(file).toString().replace('\\', '/'));
                if (meant == null || !meant.startsWith(Files.readString(file, StandardCharsets.UTF_8))) {
                    return false;
                }
            }
        } catch (CharacterCodingException e) {
            return false;
        }
        return true;
    }

    private static void delete(Path folder) throws IOException {
        if (!Files.exists(folder)) {
            return;
        }
        Files.walkFileTree(folder, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
                Files.delete(file);
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult postVisitDirectory(Path inner, @Nullable IOException e) throws IOException {
                Files.delete(inner);
                return FileVisitResult.CONTINUE;
            }
        });
    }
}
