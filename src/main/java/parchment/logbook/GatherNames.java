package parchment.logbook;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import parchment.file.NameForms;

/**
 * Names the batches of a gathering so that a logbook can hold them side by side on any computer: each name once, without blanks at its
 * ends, accented letters as one sign (Unicode form NFC). Names that differ in Unicode form only look alike, but are two: the second
 * gets a number, in words.
 */
final class GatherNames {
    private static final String UNNAMED = "unnamed";

    private final GatherQuestions questions;

    /** Recordings by the names that their files gave them. */
    private final Map<String, String> recordings = new HashMap<>();

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

    /** Returns the batches of recordings, each under a name of its own. */
    List<GatheredBatch> ofRecordings(List<GatheredBatch> batches) {
        List<GatheredBatch> named = new ArrayList<>();
        for (GatheredBatch batch : batches) {
            String name = free(batch.name());
            if (!name.equals(plain(batch.name()))) {
                questions.say("Two recordings are called " + Words.quote(plain(batch.name())) + "; the second becomes "
                        + Words.quote(name) + ".");
            }
            recordings.putIfAbsent(batch.name(), name);
            named.add(batch.named(name));
        }
        // A file system may change the form of a name by itself, so a row may claim a recording in another form.
        taken.clear();
        return named;
    }

    /** Returns the batch that a row of a list is about, by the name written in it. */
    String ofRow(String written) {
        String recording = recordings.get(written);
        if (recording != null) {
            return recording;
        }
        String plain = plain(written);
        String before = taken.putIfAbsent(plain, written);
        if (before == null || before.equals(written)) {
            return plain;
        }
        String name = numbered(plain, written);
        if (taken.putIfAbsent(name, written) == null) {
            questions.say("  Two batches look as if both were called " + Words.quote(plain)
                    + " but are written with other signs; the second becomes " + Words.quote(name)
                    + ". If they are one, write them alike and gather again.");
        }
        return name;
    }

    private String free(String written) {
        String plain = plain(written);
        String name = taken.containsKey(plain) ? numbered(plain, "") : plain;
        taken.put(name, written);
        return name;
    }

    /** Returns the name with the first number after it that nobody has but whoever wrote this. */
    private String numbered(String plain, String written) {
        int number = 2;
        String name = plain + " (2)";
        while (taken.containsKey(name) && !taken.get(name).equals(written) || recordings.containsValue(name)) {
            number++;
            name = plain + " (" + number + ")";
        }
        return name;
    }
}
