package parchment.gather;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import parchment.sheet.Header;
import parchment.sheet.Words;

/**
 * Decides which columns of a strange file are written into the new one, and under which headings: each heading once, so that no column is
 * lost for having none, or another's.
 *
 * @param places the places of the columns in the strange file
 * @param headings their headings in the new file
 * @param told what is to be said of those that have another heading now, or no place
 */
record GatherColumns(List<Integer> places, List<String> headings, List<String> told) {
    static final String TIME = "time [s]";

    /** Returns the columns of a curve file behind its times. */
    static GatherColumns ofCurve(List<Meaning> meanings, List<String> written) {
        List<Integer> places = new ArrayList<>();
        List<String> headings = new ArrayList<>();
        List<String> told = new ArrayList<>();
        Set<String> used = new HashSet<>(Set.of(TIME));
        boolean timed = false;
        for (int i = 0; i < meanings.size(); i++) {
            Meaning meaning = meanings.get(i);
            switch (meaning.kind()) {
                case QUANTITY, EXTRA -> {
                    String wanted = meaning.kind() == Meaning.Kind.QUANTITY ? meaning.toString() : written.get(i);
                    String heading = heading(i, wanted, used);
                    if (!heading.equals(wanted)) {
                        told.add(column(i, written) + " is kept as " + Words.quote(heading) + ".");
                    }
                    places.add(i);
                    headings.add(heading);
                }
                case TIME -> {
                    if (timed) {
                        told.add(column(i, written) + " is a second time: left out, the first one kept.");
                    }
                    timed = true;
                }
                default -> {
                    // What was typed becomes marks and notes; what is left out was asked about.
                }
            }
        }
        return new GatherColumns(places, headings, told);
    }

    private static String column(int index, List<String> written) {
        return "Column " + (index + 1) + " " + Words.quote(written.get(index));
    }

    /** Returns the heading that a column gets: its own, its place for none, or its own with a number before the unit if another has it. */
    static String heading(int index, String wanted, Set<String> used) {
        String plain = wanted.isBlank() ? "#" + (index + 1) : wanted;
        int bracket = plain.endsWith("]") ? plain.lastIndexOf('[') : -1;
        String name = bracket < 0 ? plain : plain.substring(0, bracket).strip();
        String unit = bracket < 0 ? "" : " " + plain.substring(bracket);
        String heading = plain;
        for (int number = 2; !used.add(Header.parse(heading).written().toLowerCase(Locale.ROOT)); number++) {
            heading = name + " " + number + unit;
        }
        return heading;
    }
}
