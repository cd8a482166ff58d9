package parchment.lesson;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Finds the sheets of answers in a folder, one for each student and lesson, whatever the files are named.
 *
 * @param sheets the sheets, in the order of their files
 * @param unread the files that were left out, with the reason
 */
record CollectedSheets(List<Sheet> sheets, List<String> unread) {
    /**
     * Holds one student's answers to one lesson.
     *
     * @param file where they were found, seen from the folder
     */
    record Sheet(String file, List<GivenAnswer> answers) {
        /** Counts what was done: tries never grow fewer, so of two sheets the one with more is the later one. */
        private int done() {
            return answers.size()
                    + answers.stream().mapToInt(GivenAnswer::tries).sum();
        }
    }

    static CollectedSheets in(Path folder) throws IOException {
        List<Path> files;
        try (Stream<Path> walk = Files.walk(folder)) {
            files = walk.filter(file -> file.getFileName().toString().endsWith(".csv"))
                    .filter(file -> !HandedInPlan.isOne(file))
                    .sorted()
                    .toList();
        }
        Map<String, List<Sheet>> byStudent = new LinkedHashMap<>();
        List<String> unread = new ArrayList<>();
        for (Path file : files) {
            String name = folder.relativize(file).toString();
            try {
                List<GivenAnswer> answers = AnswerSheet.read(file).answers();
                if (answers.isEmpty()) {
                    unread.add(name + ": it holds no answer.");
                    continue;
                }
                GivenAnswer first = answers.get(0);
                byStudent
                        .computeIfAbsent(first.lesson() + " " + first.student(), student -> new ArrayList<>())
                        .add(new Sheet(name, answers));
            } catch (CharacterCodingException e) {
                unread.add(name + ": it is not text in UTF-8; save it so, or ask for the file as it was handed in.");
            } catch (IOException e) {
                unread.add(name + ": " + e.getMessage());
            }
        }
        List<Sheet> sheets = new ArrayList<>();
        for (List<Sheet> same : byStudent.values()) {
            Sheet latest =
                    same.stream().max(Comparator.comparingInt(Sheet::done)).orElseThrow();
            sheets.add(latest);
            same.stream()
                    .filter(sheet -> sheet != latest)
                    .forEach(sheet -> unread.add(sheet.file() + ": the same student and lesson as " + latest.file()
                            + ", which has as many tries or more and was marked."));
        }
        return new CollectedSheets(List.copyOf(sheets), List.copyOf(unread));
    }
}
