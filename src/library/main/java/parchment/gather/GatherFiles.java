package parchment.gather;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import parchment.sheet.ReadableFile;
import parchment.sheet.Words;

/** Finds the files of a folder that may hold a table, and names those that are not looked into. */
final class GatherFiles {
    /** Files lie in as many folders within each other, the given one counted, or in fewer. */
    static final int DEEPEST = 6;

    /** Names of files that may hold a table; a name may hold the end of a line. */
    private static final Pattern TABLE = Pattern.compile("(?is).*\\.(csv|tsv|txt|log|dat|xlsx|xlsm|ods|xls)");

    private final Path folder;
    private final List<Path> tables = new ArrayList<>();
    private final List<String> hidden = new ArrayList<>();
    private final List<String> deeper = new ArrayList<>();
    private final List<String> links = new ArrayList<>();
    private final List<String> out = new ArrayList<>();
    private final List<String> folders = new ArrayList<>();
    private final Map<String, Integer> others = new TreeMap<>();

    private GatherFiles(Path folder) {
        this.folder = folder;
    }

    /** Returns the files to look at, in the order of their names, after saying which are left out. */
    static List<Path> in(Path folder, GatherQuestions questions) throws IOException {
        GatherFiles files = new GatherFiles(folder);
        FilesWithin within = FilesWithin.of(folder, Integer.MAX_VALUE);
        within.paths().forEach(files::add);
        if (!within.shut().isEmpty()) {
            questions.leaveOut("May not be looked into, and left out: "
                    + Words.all(within.shut().stream()
                            .map(shut -> folder.relativize(shut).toString())
                            .toList())
                    + ".");
        }
        files.say(questions);
        return files.tables;
    }

    private void add(Path path) {
        Path within = folder.relativize(path);
        String name = String.valueOf(path.getFileName());
        if (Files.isDirectory(path)) {
            if (within.getNameCount() > 0 && !Files.isDirectory(path, LinkOption.NOFOLLOW_LINKS)) {
                links.add(within.toString());
            } else if (within.getNameCount() > 0 && TABLE.matcher(name).matches()) {
                folders.add(within.toString());
            }
        } else if (!TABLE.matcher(name).matches()) {
            int dot = name.lastIndexOf('.');
            others.merge(dot > 0 ? name.substring(dot) : "none", 1, Integer::sum);
        } else if (!Files.isRegularFile(path)) {
            links.add(within.toString());
        } else if (ReadableFile.leadsOut(path, folder)) {
            out.add(within.toString());
        } else if (within.getNameCount() > DEEPEST) {
            deeper.add(within.toString());
        } else if (name.startsWith(".")) {
            hidden.add(within.toString());
        } else {
            tables.add(path);
        }
    }

    private void say(GatherQuestions questions) {
        if (!hidden.isEmpty()) {
            questions.leaveOut("Left out, because a computer hides files whose names begin with a dot: "
                    + Words.all(hidden) + ". To take one in, give it another name.");
        }
        if (!deeper.isEmpty()) {
            questions.leaveOut(
                    "Left out, because " + (deeper.size() == 1 ? "it lies" : "they lie") + " in more than " + DEEPEST
                            + " folders within each other: " + Words.count(deeper.size(), "file", "files") + ", "
                            + Words.all(deeper) + ". To take one in, gather a folder nearer to it.");
        }
        if (!links.isEmpty()) {
            questions.leaveOut("Left out, because a link to a folder is not followed, and what is no file is not read: "
                    + Words.all(links) + ".");
        }
        if (!out.isEmpty()) {
            questions.leaveOut("Left out, because a link out of the folder is not followed: " + Words.all(out)
                    + ". To take one in, copy the file into the folder.");
        }
        if (!folders.isEmpty()) {
            questions.leaveOut("Folders, though named like files, so only what lies in them was looked at: "
                    + Words.all(folders) + ".");
        }
        if (!others.isEmpty()) {
            int count = others.values().stream().mapToInt(Integer::intValue).sum();
            questions.leaveOut("Not looked at, because no table is kept in such: " + Words.count(count, "file", "files")
                    + ", whose names end in " + Words.all(others.keySet()) + ".");
        }
    }
}
