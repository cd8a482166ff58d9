package parchment.gather;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import parchment.file.FileName;
import parchment.file.NameForms;
import parchment.logbook.LogbookFiles;
import parchment.sheet.Words;

/**
 * Names the batches of a gathering so that a logbook can hold them side by side on any computer: each name once, without blanks at its
 * ends, accented letters as one sign (Unicode form NFC). Names that differ in Unicode form only look alike, but are two: the second
 * gets a number, in words. So does one that differs from another in upper and lower case only, where both name a curve file; a name too long
 * for a file is shortened, in words.
 */
final class GatherNames {
    private static final String UNNAMED = "unnamed";

    private final GatherQuestions questions;

    /** The recordings, by the names of their curve files as a system that tells least apart sees them. */
    private final Map<String, String> files = new HashMap<>();

    /** Who has a name: what was written, by the name it became. */
    private final Map<String, String> taken = new LinkedHashMap<>();

    GatherNames(GatherQuestions questions) {
        this.questions = questions;
    }

    /** Returns a name as it stands in the new logbook, if no other has it. */
    static String plain(String written) {
        String name = NameForms.composed(written).strip();
        return name.isEmpty() ? UNNAMED : name;
    }

    /** Returns the name of a recording, which wants the given one. */
    String ofRecording(String wanted) {
        return free(wanted);
    }

    /** Returns the name of a batch that stands in lists alone, by the name written in them. */
    String ofRow(String written) {
        String plain = plain(written);
        String before = taken.get(plain);
        if (before == null) {
            taken.put(plain, written);
            return plain;
        }
        String name = numbered(plain);
        taken.put(name, written);
        questions.leaveOut("Two batches look as if both were called " + Words.quote(plain)
                + (NameForms.composed(before).equals(NameForms.composed(written)) && !before.equals(written)
                        ? " but are written with other signs"
                        : "")
                + "; the second becomes " + Words.quote(name)
                + ". If they are one, write them alike and gather again.");
        return name;
    }

    private String free(String written) {
        String plain = plain(written);
        String ending = "";
        String name = shortened(plain, ending);
        String other = files.get(file(name));
        for (int number = 2; files.containsKey(file(name)); number++) {
            ending = " (" + number + ")";
            name = shortened(plain, ending);
        }
        files.put(file(name), plain);
        taken.put(name, written);
        String cut = name.equals(plain + ending)
                ? ""
                : ", the first " + Words.count(letters(name) - letters(ending), "letter", "letters") + " of "
                        + letters(plain) + (ending.isEmpty() ? "" : " with" + ending)
                        + ": no file can have a longer name";
        if (other != null) {
            questions.leaveOut("Two recordings are called " + Words.quote(other)
                    + (other.equals(plain)
                            ? ""
                            : " and " + Words.quote(plain) + ", which not every computer tells apart in names of files")
                    + "; the second becomes " + Words.quote(name) + cut + ".");
        } else if (!cut.isEmpty()) {
            questions.leaveOut("The recording " + Words.quote(plain) + " becomes " + Words.quote(name) + cut + ".");
        }
        return name;
    }

    private static String file(String name) {
        return FileName.alike(LogbookFiles.curve(name));
    }

    private static int letters(String text) {
        return text.codePointCount(0, text.length());
    }

    /** Returns as much of a name, with an ending, as a curve file can be named after. */
    private static String shortened(String plain, String ending) {
        String begin = plain;
        while (!FileName.fits(LogbookFiles.curve(begin + ending))) {
            begin = begin.substring(0, begin.offsetByCodePoints(begin.length(), -1))
                    .stripTrailing();
        }
        return begin + ending;
    }

    /** Returns the name with the first number after it that nobody has. */
    private String numbered(String plain) {
        int number = 2;
        while (taken.containsKey(plain + " (" + number + ")")) {
            number++;
        }
        return plain + " (" + number + ")";
    }
}
