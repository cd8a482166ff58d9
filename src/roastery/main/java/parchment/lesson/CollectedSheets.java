package parchment.lesson;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import parchment.lesson.sheet.GivenAnswer;
import parchment.lesson.sheet.HandedInPlan;
import parchment.virtual.classroom.ClassList;

/**
 * Finds the sheets of answers in a folder, one for each student and lesson, whatever the files are named.
 *
 * @param sheets the sheets, in the order of their files
 * @param unread the files that are meant as sheets and were left out, each once, with the reason
 * @param notCounted single answers that were left out of a sheet that was marked, with the reason
 * @param others plain files that are no sheets, seen from the folder
 * @param leftBehind the files among those left out that could be opened, each with the students that are named in it
 */
record CollectedSheets(
        List<Sheet> sheets,
        List<String> unread,
        List<String> notCounted,
        List<String> others,
        Map<String, Set<String>> leftBehind) {
    /** Ends of names under which an answer is handed in by mistake, in the place of the sheet. */
    private static final Set<String> IN_PLACE_OF_A_SHEET =
            Set.of("ipynb", "xlsx", "xls", "ods", "numbers", "zip", "pdf", "html", "txt");

    /**
     * Holds one student's answers to one lesson.
     *
     * @param file where they were found, seen from the folder
     */
    record Sheet(String file, List<GivenAnswer> answers) {
        GivenAnswer first() {
            return answers.get(0);
        }

        /** Counts what was done: tries never grow fewer, so of two sheets the one with more is the later one. */
        private int done() {
            return answers.size()
                    + answers.stream().mapToInt(GivenAnswer::tries).sum();
        }
    }

    static CollectedSheets in(Path folder, SheetOwner owner) throws IOException {
        CollectedFiles files = CollectedFiles.in(folder);
        Search search = new Search(owner, new ArrayList<>(files.refused()));
        for (Path file : files.files()) {
            search.look(file, files.name(file));
        }
        return search.found();
    }

    /**
     * Returns a file of a student of whom nothing was marked: a sheet that could not be marked, or what may have been handed in by mistake
     * in its place; blank if nothing is there.
     */
    String thereOf(String student) {
        Stream<String> unmarked = sheets.stream()
                .filter(sheet -> sheet.first().student().equals(student))
                .map(Sheet::file);
        Stream<String> left = leftBehind.entrySet().stream()
                .filter(file -> file.getValue().contains(student) || isNamedAfter(student, file.getKey()))
                .map(Map.Entry::getKey);
        Stream<String> instead =
                others.stream().filter(CollectedSheets::isInPlaceOfASheet).filter(file -> isNamedAfter(student, file));
        return Stream.of(unmarked, left, instead)
                .flatMap(files -> files)
                .findFirst()
                .orElse("");
    }

    private static boolean isInPlaceOfASheet(String file) {
        return HandedInPlan.isOne(Path.of(file))
                || IN_PLACE_OF_A_SHEET.contains(
                        file.substring(file.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT));
    }

    private static boolean isNamedAfter(String student, String file) {
        String key = ClassList.inFileName(student).toLowerCase(Locale.ROOT);
        return ("-" + LessonWords.asKey(file) + "-").contains("-" + key + "-");
    }

    /** Gathers what is found, file by file. */
    private static final class Search {
        private final SheetOwner owner;
        private final List<String> unread;
        private final Map<String, List<Sheet>> byStudent = new LinkedHashMap<>();
        private final Map<Sheet, List<String>> leftOut = new LinkedHashMap<>();
        private final List<String> others = new ArrayList<>();
        private final Map<String, Set<String>> leftBehind = new LinkedHashMap<>();

        Search(SheetOwner owner, List<String> unread) {
            this.owner = owner;
            this.unread = unread;
        }

        void look(Path file, String name) {
            if (!CollectedFiles.isTable(file) || HandedInPlan.isOne(file)) {
                others.add(name);
                return;
            }
            try {
                if (SheetText.isMeantAsSheet(file)) {
                    take(
                            AnswerSheet.read(file).answers().stream()
                                    .map(owner::named)
                                    .toList(),
                            name);
                } else {
                    others.add(name);
                }
            } catch (FileSystemException e) {
                leftBehind.put(name, Set.of());
                unread.add(name + ": " + CollectedFiles.reason(e));
            } catch (IOException | IllegalArgumentException e) {
                leftBehind.putIfAbsent(name, Set.of());
                String message = String.valueOf(e.getMessage());
                String said = file.toString();
                unread.add(name + (message.startsWith(said) ? message.substring(said.length()) : ": " + message));
            }
        }

        private void take(List<GivenAnswer> answers, String name) {
            leftBehind.put(name, answers.stream().map(GivenAnswer::student).collect(Collectors.toUnmodifiableSet()));
            if (answers.isEmpty()) {
                unread.add(name + ": it holds no answer.");
                return;
            }
            GivenAnswer own = owner.own(answers);
            List<GivenAnswer> kept = new ArrayList<>();
            List<String> left = new ArrayList<>();
            for (int i = 0; i < answers.size(); i++) {
                GivenAnswer answer = answers.get(i);
                String place = name + ", answer " + (i + 1) + " ('" + answer.question() + "')";
                if (!answer.isOfSameSheet(own)) {
                    left.add(place + ": it speaks for " + answer.speaksFor() + ", and the sheet is that of "
                            + own.speaksFor() + ". A sheet speaks for its own student only.");
                } else if (kept.stream().anyMatch(before -> before.question().equals(answer.question()))) {
                    left.add(place + ": this question was answered before on the sheet; the first answer counts.");
                } else {
                    kept.add(answer);
                }
            }
            leftBehind.remove(name);
            Sheet sheet = new Sheet(name, List.copyOf(kept));
            leftOut.put(sheet, left);
            byStudent
                    .computeIfAbsent(own.lesson() + " " + own.student(), student -> new ArrayList<>())
                    .add(sheet);
        }

        CollectedSheets found() {
            List<Sheet> sheets = new ArrayList<>();
            List<String> notCounted = new ArrayList<>();
            for (List<Sheet> same : byStudent.values()) {
                Sheet latest =
                        same.stream().max(Comparator.comparingInt(Sheet::done)).orElseThrow();
                sheets.add(latest);
                notCounted.addAll(leftOut.getOrDefault(latest, List.of()));
                same.stream()
                        .filter(sheet -> sheet != latest)
                        .forEach(sheet -> unread.add(sheet.file() + ": the same student and lesson as " + latest.file()
                                + ", which has as many tries or more and was marked."));
            }
            return new CollectedSheets(
                    List.copyOf(sheets), List.copyOf(unread), List.copyOf(notCounted), List.copyOf(others), leftBehind);
        }
    }
}
