package parchment.gather;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import parchment.sheet.Header;
import parchment.sheet.Words;

/** Gives each column of a sheet one meaning or heading of its own, and says which it cannot. */
final class GatherSheetColumns {
    private final Table sheet;
    private final GatherQuestions questions;

    GatherSheetColumns(Table sheet, GatherQuestions questions) {
        this.sheet = sheet;
        this.questions = questions;
    }

    /** Leaves out, in words, a column that means what another means already. */
    List<Header> onlyOnce(List<Header> meanings) {
        List<Header> once = new ArrayList<>();
        for (int i = 0; i < meanings.size(); i++) {
            String name = meanings.get(i).name();
            boolean again = !List.of("extra", "leave out").contains(name)
                    && once.stream().anyMatch(other -> other.name().equals(name));
            if (again) {
                questions.say("  " + column(i) + " is a second " + name + ": left out, the first one kept.");
            }
            once.add(again ? Header.parse("leave out") : meanings.get(i));
        }
        return once;
    }

    /** Returns the headings of all columns, as those without a known meaning get them in the new logbook; says which are new. */
    List<String> headings(List<Header> meanings) {
        Set<String> used = new HashSet<>(Set.of("batch", "roasted at"));
        meanings.forEach(meaning -> used.add(meaning.written().toLowerCase(Locale.ROOT)));
        List<String> headings = new ArrayList<>(sheet.headings());
        for (int i = 0; i < headings.size(); i++) {
            if (meanings.get(i).name().equals("extra")) {
                String heading = GatherColumns.heading(i, headings.get(i), used);
                if (!heading.equals(headings.get(i))) {
                    questions.say("  " + column(i) + " is kept as " + Words.quote(heading) + ".");
                }
                headings.set(i, heading);
            }
        }
        return headings;
    }

    private String column(int index) {
        return "Column " + (index + 1) + " " + Words.quote(sheet.headings().get(index));
    }
}
