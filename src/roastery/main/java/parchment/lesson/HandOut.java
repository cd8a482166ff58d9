package parchment.lesson;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.stream.Stream;
import parchment.file.NotWrittenException;
import parchment.file.WholeFile;
import parchment.file.WholeFolder;
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
        if (isThere(folder)) {
            return;
        }
        boolean begun = Files.exists(folder);
        if (begun && !isHalfDone(folder, folder.resolve(LessonSource.LOGBOOK), roasted.files())) {
            throw new IOException("The folder " + folder
                    + " is there already and holds something else. Take it away, or name another folder.");
        }
        WholeFolder.Filling<Path> filling = aside -> {
            roasted.writeTo(aside.resolve(LessonSource.LOGBOOK));
            return WholeFile.at(aside.resolve(LessonSource.FACTS)).write(facts());
        };
        try {
            if (begun) {
                WholeFolder.at(folder).replace(filling);
            } else {
                WholeFolder.at(folder).fill(filling);
            }
        } catch (NotWrittenException e) {
            if (!isThere(folder)) { // Another hand-out has been quicker.
                throw e;
            }
        }
    }

    /** Tells whether the folder is there, whole, and refuses one that is somebody else's. */
    private boolean isThere(Path folder) throws IOException {
        Path facts = folder.resolve(LessonSource.FACTS);
        if (!Files.exists(facts)) {
            return false;
        }
        if (Files.readString(facts, StandardCharsets.UTF_8).equals(facts())) {
            return true;
        }
        throw new IOException(
                "The folder " + folder + " is there already, and it is not what this class hands out: it comes"
                        + " from another class, another student or an older version. Take it away, or name another folder.");
    }

    /** Tells whether a folder holds nothing but a part of what is to be in it, the last file perhaps torn: what is deleted comes again. */
    static boolean isHalfDone(Path folder, Path logbook, Map<String, String> whole) throws IOException {
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
}
