package parchment.gather;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Gives each recording the key of what is asked about it alone: its path within the folder, so that a/101.csv and b/101.csv are told
 * apart, with the file's ending or a number where the path does not.
 */
final class FileKeys {
    private static final String FILE = "file.";

    private final Map<FoundTable, String> keys = new IdentityHashMap<>();
    private final Map<String, Integer> stems = new HashMap<>();

    private FileKeys() {}

    /**
     * Returns the keys.
     *
     * @param recordings all recordings of the folder
     */
    static FileKeys of(List<FoundTable> recordings, Path folder) {
        FileKeys all = new FileKeys();
        Map<String, Integer> paths = new HashMap<>();
        recordings.forEach(table -> {
            paths.merge(path(table, folder, ""), 1, Integer::sum);
            all.stems.merge(stem(table), 1, Integer::sum);
        });
        Set<String> used = new HashSet<>();
        for (FoundTable table : recordings) {
            String path = path(table, folder, "");
            String key = paths.getOrDefault(path, 0) == 1 ? path : path(table, folder, ending(table));
            String free = key;
            for (int number = 2; !used.add(free); number++) {
                free = key + "-" + number;
            }
            all.keys.put(table, free);
        }
        return all;
    }

    /**
     * Returns the key of a question about a recording.
     *
     * @param question the last part of the key, such as "split"
     */
    String of(FoundTable recording, String question, GatherQuestions questions) {
        String own = FILE + keys.getOrDefault(recording, stem(recording)) + "." + question;
        // The name alone was the key once; where it says which recording is meant, such answers are still read.
        String before = FILE + stem(recording) + "." + question;
        boolean answeredBefore =
                !questions.has(own) && questions.has(before) && stems.getOrDefault(stem(recording), 0) == 1;
        return answeredBefore ? before : own;
    }

    private static String stem(FoundTable table) {
        return GatherQuestions.key(TablePlace.of(table).stem());
    }

    private static String path(FoundTable table, Path folder, String ending) {
        TablePlace source = TablePlace.of(table);
        Path file = source.file();
        Path within = file.startsWith(folder) ? folder.relativize(file) : file.getFileName();
        String whole = String.valueOf(within).replace('\\', '/');
        String plain = whole.substring(0, whole.length() - ending(table).length());
        return GatherQuestions.key(plain + ending + (source.tab().isBlank() ? "" : "-" + source.tab()));
    }

    private static String ending(FoundTable table) {
        String name = String.valueOf(TablePlace.of(table).file().getFileName());
        int dot = name.lastIndexOf('.');
        return dot > 0 ? name.substring(dot) : "";
    }
}
