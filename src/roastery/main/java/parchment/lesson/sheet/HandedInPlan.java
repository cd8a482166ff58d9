package parchment.lesson.sheet;

import java.nio.file.Path;
import parchment.virtual.classroom.ClassList;

/**
 * Is a student's plan as a file that was handed in beside the answers. It is roasted, not marked.
 *
 * @param student whose plan it is, by the file's name
 * @param file where it lies
 */
public record HandedInPlan(String student, Path file) {
    private static final String BEFORE = "plan-";
    private static final String AFTER = ".csv";

    /** Returns the name of the file that a student's plan is written to. */
    public static String fileName(String student) {
        return BEFORE + ClassList.inFileName(student) + AFTER;
    }

    /** Tells whether a file is a plan, by its name. */
    public static boolean isOne(Path file) {
        String name = file.getFileName().toString();
        return name.startsWith(BEFORE) && name.endsWith(AFTER) && name.length() > BEFORE.length() + AFTER.length();
    }

    public static HandedInPlan of(Path file) {
        return new HandedInPlan(student(file.getFileName().toString()), file);
    }

    private static String student(String fileName) {
        return fileName.substring(BEFORE.length(), fileName.length() - AFTER.length());
    }
}
