package parchment.gather;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Puts the files that are written alike together, so that what their columns mean is asked once. */
final class GatherStyle {
    private final String letter;
    private final FoundTable sample;
    private final List<FoundTable> tables = new ArrayList<>();
    private final List<MeaningProposal> proposals;
    private final List<StrangeColumn> columns;
    private final Map<String, Integer> words = new TreeMap<>();
    private final Map<Double, Integer> odd = new TreeMap<>();

    GatherStyle(String letter, FoundTable sample, List<StrangeColumn> columns, List<MeaningProposal> proposals) {
        this.letter = letter;
        this.sample = sample;
        this.columns = columns;
        this.proposals = new ArrayList<>(proposals);
    }

    /** Returns what makes two recordings one style: the same headings, and temperatures that fit the same scale. */
    static String key(FoundTable file, List<MeaningProposal> proposals) {
        return style(file)
                + proposals.stream()
                        .map(MeaningProposal::meaning)
                        .filter(m -> m.kind() == Meaning.Kind.TIME
                                || m.quantity().isPresent()
                                        && !m.quantity().get().isControl())
                        .map(Meaning::toString)
                        .collect(Collectors.joining("\u001F"));
    }

    private static String style(FoundTable file) {
        return file.sheet().delimiter() + String.join("\u001F", file.headings());
    }

    void add(FoundTable file, List<StrangeColumn> fileColumns, List<MeaningProposal> fileProposals) {
        tables.add(file);
        for (int i = 0; i < fileColumns.size(); i++) {
            StrangeColumn column = fileColumns.get(i);
            // A column of events is empty in a batch where nobody typed.
            if (proposals.get(i).meaning().kind() == Meaning.Kind.LEFT_OUT) {
                proposals.set(i, fileProposals.get(i));
            }
            if (fileProposals.get(i).meaning().kind() == Meaning.Kind.EVENTS) {
                column.words().forEach((word, count) -> words.merge(word, count, Integer::sum));
            }
            if (fileProposals
                    .get(i)
                    .meaning()
                    .quantity()
                    .filter(q -> !q.isControl())
                    .isPresent()) {
                column.oddReadings().forEach((value, count) -> odd.merge(value, count, Integer::sum));
            }
        }
    }

    String letter() {
        return letter;
    }

    FoundTable sample() {
        return sample;
    }

    List<FoundTable> tables() {
        return tables;
    }

    List<MeaningProposal> proposals() {
        return proposals;
    }

    List<StrangeColumn> columns() {
        return columns;
    }

    Map<String, Integer> words() {
        return words;
    }

    /** Returns numbers that probably mean "no reading", and how often each stands. */
    Map<Double, Integer> odd() {
        return new LinkedHashMap<>(odd);
    }
}
