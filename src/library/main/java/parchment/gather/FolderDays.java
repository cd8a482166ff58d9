package parchment.gather;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import parchment.sheet.Words;

/**
 * Takes the day of a recording that has none of its own from the name of a folder that it lies in: "2031-03-04/1.csv", or "2031/03/04/1.csv".
 *
 * @param root the folder that is gathered, whose own name says nothing of a day; empty where no folder's name is read
 */
record FolderDays(Optional<Path> root) {
    static final FolderDays NONE = new FolderDays(Optional.empty());
    static final String KEY = "date.folders";

    /** A day has as many roasts at most (common practice, no source): a folder with more may be named after the day of a copy. */
    private static final int MOST_A_DAY = 60;

    /** Tells that folders' names are read as days; asks it where a folder has more recordings than a day has roasts. */
    static FolderDays decide(List<FoundTable> recordings, Path root, GatherQuestions questions) {
        FolderDays days = new FolderDays(Optional.of(root));
        Map<Path, Integer> without = new LinkedHashMap<>();
        for (FoundTable recording : recordings) {
            Path folder = recording.sheet().file().getParent();
            if (folder != null
                    && !RecordingZero.hasDay(recording)
                    && days.of(recording.sheet().file()).isPresent()) {
                without.merge(folder, 1, Integer::sum);
            }
        }
        if (without.isEmpty()) {
            return NONE;
        }
        int all = without.values().stream().mapToInt(Integer::intValue).sum();
        Path first = without.keySet().iterator().next();
        String statement = Words.count(all, "recording without a date lies", "recordings without a date lie")
                + " in " + Words.count(without.size(), "folder", "folders")
                + " with a day for a name, such as "
                + Words.quote(String.valueOf(root.relativize(first)).replace('\\', '/'));
        boolean many = without.values().stream().anyMatch(count -> count > MOST_A_DAY);
        boolean taken = many
                ? questions.askYes(
                        KEY,
                        statement + ", and one of them holds more than " + MOST_A_DAY
                                + ". Were they roasted on the day that their folder names?",
                        "no",
                        all)
                : questions.tellYes(KEY, statement + ": they are of that day", "yes");
        return taken ? days : NONE;
    }

    /** Returns the day that the nearest folder around a file names, as it is written. */
    Optional<WrittenDay> of(Path file) {
        List<String> names = names(file);
        for (int i = names.size() - 1; i >= 0; i--) {
            String name = names.get(i);
            Optional<WrittenDay> whole = WrittenDay.ofCell(name).flatMap(day -> WrittenDay.inName(name));
            if (whole.isPresent()) {
                return whole;
            }
        }
        int last = names.size();
        return last >= 3
                        && names.get(last - 3).matches("(19|20)\\d{2}")
                        && names.get(last - 2).matches("\\d{1,2}")
                        && names.get(last - 1).matches("\\d{1,2}")
                ? WrittenDay.inName(String.join("-", names.subList(last - 3, last)))
                : Optional.empty();
    }

    private List<String> names(Path file) {
        List<String> names = new ArrayList<>();
        Path parent = file.getParent();
        if (root.isPresent() && parent != null && parent.startsWith(root.get()) && !parent.equals(root.get())) {
            root.get().relativize(parent).forEach(name -> names.add(name.toString()));
        }
        return names;
    }
}
