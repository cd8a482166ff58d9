package parchment.lesson;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import parchment.file.WholeFolder;
import parchment.virtual.VirtualLogbook;

/**
 * Is a student's plan, roasted, and what of its folder was there before.
 *
 * @param student whose plan it is, as the class knows the name
 * @param roasted what came of it
 * @param before what of the folder was there
 */
public record RoastedPlan(String student, VirtualLogbook roasted, Before before) {
    /** Says what of a folder was there before it was to be written. */
    public enum Before {
        /** Nothing: it was written. */
        NOTHING,
        /** A part, as a command that was stopped leaves it: it was finished. */
        HALF,
        /** All of it, equal: it stays as it is. */
        WHOLE
    }

    /**
     * Lays the logbook into its folder, unless it is there.
     *
     * @throws IOException if something else is there in its place, or it cannot be written
     */
    static RoastedPlan laid(String student, VirtualLogbook roasted, Path folder) throws IOException {
        Before before = before(folder, roasted.files());
        switch (before) {
            case NOTHING -> roasted.writeTo(folder);
            case HALF ->
                WholeFolder.at(folder).replace(aside -> {
                    roasted.writeTo(aside);
                    return aside;
                });
            case WHOLE -> {
                // What is there may have been given back already.
            }
        }
        return new RoastedPlan(student, roasted, before);
    }

    private static Before before(Path folder, Map<String, String> files) throws IOException {
        if (WholeFolder.at(folder).isFree()) {
            return Before.NOTHING;
        }
        if (isWhole(folder, files)) {
            return Before.WHOLE;
        }
        if (HandOut.isHalfDone(folder, folder, files)) {
            return Before.HALF;
        }
        throw new IOException(
                "The folder " + folder + " is there already and holds something else, such as an earlier plan, roasted."
                        + " Take it away, or name another folder.");
    }

    private static boolean isWhole(Path folder, Map<String, String> files) throws IOException {
        for (Map.Entry<String, String> file : files.entrySet()) {
            Path there = folder.resolve(file.getKey());
            if (!Files.isRegularFile(there)
                    || !Arrays.equals(Files.readAllBytes(there), file.getValue().getBytes(StandardCharsets.UTF_8))) {
                return false;
            }
        }
        return true;
    }

    @Override
    public String toString() {
        return student
                + switch (before) {
                    case NOTHING -> ": " + roasted;
                    case HALF -> ": a part was there already and was finished: " + roasted;
                    case WHOLE -> ": is there already and stays. " + VirtualLogbook.WARNING;
                };
    }
}
