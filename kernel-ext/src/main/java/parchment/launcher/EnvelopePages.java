package parchment.launcher;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import parchment.display.answer.Report;
import parchment.file.Rights;
import parchment.lesson.ClassResults;
import parchment.notebook.OurPage;
import parchment.virtual.classroom.ClassList;

/** Writes opened envelopes as pages, a folder for each student, and nowhere but in the folder that is named for them. */
final class EnvelopePages {
    private EnvelopePages() {}

    static void write(List<ClassResults.Returned> envelopes, Path folder) throws IOException {
        Map<String, String> studentByFolder = new HashMap<>();
        for (ClassResults.Returned each : envelopes) {
            write(each, folder.resolve(folderName(each.student(), studentByFolder)));
        }
    }

    /**
     * Returns the name of a student's folder: the student's own name where that can be one, and otherwise, as for the free names of a
     * class with numbers, its letters and digits. No two students share a folder.
     */
    private static String folderName(String student, Map<String, String> studentByFolder) {
        String plain = ClassList.isName(student) ? student : ClassList.inFileName(student);
        String name = plain;
        for (int next = 2;
                !studentByFolder
                        .computeIfAbsent(name.toLowerCase(Locale.ROOT), free -> student)
                        .equals(student);
                next++) {
            name = plain + "-" + next;
        }
        return name;
    }

    private static void write(ClassResults.Returned returned, Path folder) throws IOException {
        if (Files.exists(folder, LinkOption.NOFOLLOW_LINKS) && !Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)) {
            throw new IllegalArgumentException("Envelopes are written into folders, and " + folder
                    + " is none, or only a link to one. Take it away, or name another folder with --envelopes.");
        }
        String title = "Lesson " + returned.lesson() + ", " + returned.student();
        Rights.USUAL.makeFolder(OutputPlace.outsideLogbooks(folder));
        OurPage.write(
                folder.resolve("envelope-lesson-" + returned.lesson() + ".html"),
                PrintedPage.of(title, Report.titled(title).add(returned.envelope())));
    }
}
