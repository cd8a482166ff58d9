package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static parchment.gather.MadeJoins.LIST;
import static parchment.gather.MadeJoins.said;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.logbook.MarkKind;

/** Looking up the rows that a recording may be finds the same joins, with the same words, as comparing all with all. */
class JoinCandidatesTest {
    private static final List<String> LOTS = List.of("Kela washed", "Low Orchard", "Kela", "Wren", "Río Velado");
    private static final List<String> SIGNS = List.of(" - ", "_", " ", " #", ", ");

    private final List<GatheredBatch> curves = new ArrayList<>();
    private final List<ListedRoast> rows = new ArrayList<>();

    private static <T> T any(List<T> of, Random random) {
        return of.get(random.nextInt(of.size()));
    }

    /** A folder of every kind of name, line, day and time, some of them wrong. */
    private void folder(long seed) {
        Random random = new Random(seed);
        int batches = 2 + random.nextInt(30);
        boolean again = random.nextInt(4) == 0;
        for (int i = 0; i < batches; i++) {
            LocalDateTime at = LocalDateTime.of(2031, 5, 30, random.nextInt(3) == 0 ? 23 : 8, 45)
                    .plusDays(i / 5)
                    .plusMinutes(17L * (i % 5));
            int number = again ? 1 + i % 5 : 8 + i;
            String lot = any(LOTS, random);
            curve(random, at.plusSeconds(random.nextInt(900) - 300), Integer.toString(number), lot);
            if (random.nextInt(8) > 0) {
                row(random, at, Integer.toString(number), lot, again);
            }
        }
        Collections.shuffle(rows, random);
    }

    private void curve(Random random, LocalDateTime at, String number, String lot) {
        String stamp = at.toLocalDate()
                + (random.nextBoolean()
                        ? "_" + at.toLocalTime().toString().substring(0, 5).replace(":", "")
                        : "");
        String name = any(
                List.of(
                        number,
                        "00" + number,
                        "Batch " + number + any(SIGNS, random) + lot,
                        stamp + " roast " + number,
                        stamp,
                        "r" + number,
                        "(" + lot + ")" + number,
                        "H" + number + any(SIGNS, random) + stamp,
                        number + any(SIGNS, random) + random.nextInt(20),
                        lot),
                random);
        List<List<String>> above = any(
                List.of(
                        List.<List<String>>of(),
                        List.of(List.of("Batch " + number, at.toString())),
                        List.of(List.of("Roast no.", "H" + number), List.of("Coffee: " + lot)),
                        List.of(List.of("Logger 2", "Lot n° " + number), List.of("", "by Ida")),
                        List.of(List.of(lot + ", H" + number + " of the day"))),
                random);
        boolean timed = random.nextInt(3) > 0;
        curves.add(MadeJoins.curve(
                name,
                above,
                timed ? Optional.of(at) : Optional.empty(),
                timed || random.nextInt(3) == 0 ? Optional.empty() : Optional.of(at.toLocalDate())));
    }

    private void row(Random random, LocalDateTime at, String number, String lot, boolean again) {
        LocalDate day = random.nextInt(15) == 0 ? at.toLocalDate().plusDays(1) : at.toLocalDate();
        String name = again
                ? day + "-" + number
                : any(List.of(number, "0" + number, "H" + number, lot, lot + " " + number, "--", ""), random);
        boolean timed = random.nextBoolean();
        boolean dated = random.nextInt(5) > 0;
        rows.add(new ListedRoast(
                name,
                List.of(new ListedBatch(
                        name,
                        timed && dated ? Optional.of(day.atTime(at.toLocalTime())) : Optional.empty(),
                        dated ? Optional.of(day) : Optional.empty(),
                        Map.of("lot", lot),
                        random.nextBoolean() ? Map.of(MarkKind.DROP, 560.0 + random.nextInt(100)) : Map.of(),
                        List.of(),
                        LIST,
                        rows.size() + 2))));
    }

    private static List<String> lines(List<Join> joins) {
        return joins.stream()
                .map(join -> said(join) + " [line " + join.roast().rows().get(0).line() + "]")
                .toList();
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void findsWhatComparingAllWithAllFinds(long seed) {
        int found = 0;
        for (long folder = 50 * seed; folder < 50 * seed + 50; folder++) {
            curves.clear();
            rows.clear();
            folder(folder);
            List<String> all = lines(Joins.of(curves, rows, Joins.Looking.AT_ALL));
            assertEquals(all, lines(Joins.of(curves, rows)), "folder " + folder);
            found += all.size();
        }
        assertTrue(found > 300, "the folders have joins: " + found);
    }

    /** Each way in which a name can be meant is looked up; a row of another day and name is not. */
    @ParameterizedTest
    @CsvSource({
        "'Wren', '', 'wren', true",
        "'0012', '', '12', true",
        "'a 0012 b', '', '12', true",
        "'(wren)', '', '--', true",
        "'x low-orchard 3', '', 'Low Orchard', true",
        "'x low-orchard 3', '', 'Orchard', true",
        "'x low-orchards 3', '', 'Low Orchard', false",
        "'x', 'Batch 12', '12', true",
        "'x', 'Batch H12b', '12', false",
        "'x', 'Lot n° 12', '12', true",
        "'x', 'Lot 12', '12', false",
        "'x', 'by: low orchard, 2', 'Low  Orchard', true",
        "'x', '', 'y', false"
    })
    void aNameIsLookedUpWhereverItMayStand(String file, String line, String row, boolean looked) {
        List<JoinRow> of = List.of(JoinRow.of(MadeJoins.row(row)));
        GatheredBatch curve = line.isEmpty() ? MadeJoins.curve(file) : MadeJoins.titled(file, line);
        assertEquals(
                looked, !new JoinCandidates(of).of(JoinEvidence.Curve.of(curve)).isEmpty());
        if (!looked) {
            assertEquals(List.of(), JoinEvidence.of(JoinEvidence.Curve.of(curve), of.get(0)));
        }
    }

    /** A clock near midnight may be of the next day in the list. */
    @ParameterizedTest
    @CsvSource({"23:45, 00:04, true", "23:45, 00:06, true", "12:00, 00:00, false", "23:39, 00:00, false"})
    void aTimeNearMidnightLooksAtTheNextDay(String at, String listed, boolean looked) {
        LocalDate day = LocalDate.of(2031, 6, 1);
        List<JoinRow> rows =
                List.of(JoinRow.of(MadeJoins.rowAt("5", day.plusDays(1).atTime(LocalTime.parse(listed)))));
        GatheredBatch curve = MadeJoins.curveAt("x", day.atTime(LocalTime.parse(at)));
        assertEquals(
                looked,
                !new JoinCandidates(rows).of(JoinEvidence.Curve.of(curve)).isEmpty());
    }

    @Test
    void aFolderOfTwoThousandIsJoinedInSeconds() {
        for (int i = 0; i < 2_000; i++) {
            LocalDateTime at =
                    LocalDateTime.of(2028, 1, 3, 8, 0).plusDays(i / 6).plusMinutes(22L * (i % 6));
            curves.add(MadeJoins.curveAt("Batch " + (101 + i) + " - " + LOTS.get(i % LOTS.size()), at));
            rows.add(MadeJoins.rowAt(Integer.toString(101 + i), at));
        }
        long began = System.nanoTime();
        List<Join> joins = Joins.of(curves, rows);
        double seconds = (System.nanoTime() - began) / 1e9;
        assertEquals(
                2_000,
                joins.stream().filter(join -> join.sure() == Join.Sure.CERTAIN).count());
        // All with all took 16 s and more; what is measured here is a tenth of a second, on a machine with nothing else
        // to do.
        assertTrue(seconds < 8, seconds + " s");
    }
}
