package parchment.gather;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import parchment.gather.ListColumn.Confidence;

/**
 * Settles what the columns of a list mean: by what their values do, by the curves of the folder, and by their names, in that order.
 *
 * @param table the list
 * @param columns its columns, by place
 */
record ListColumns(FoundTable table, List<ListColumn> columns) {
    private static final double LEAST = 0.5;
    private static final double CERTAIN = 0.82;
    private static final double LIKELY = 0.6;
    private static final double CLOSE = 0.08;

    /** What a wrong answer would change most comes first. */
    private static final List<ListMeaning> BY_WEIGHT = List.of(
            ListMeaning.BATCH,
            ListMeaning.ROASTED_AT,
            ListMeaning.DATE,
            ListMeaning.TIME_OF_DAY,
            ListMeaning.RUNNING_NUMBER,
            ListMeaning.LOT,
            ListMeaning.DROP,
            ListMeaning.FIRST_CRACK_START,
            ListMeaning.DEVELOPMENT_TIME,
            ListMeaning.GREEN_MASS,
            ListMeaning.ROASTED_MASS,
            ListMeaning.YELLOWING,
            ListMeaning.CHARGE_TEMPERATURE);

    ListColumns {
        columns = List.copyOf(columns);
    }

    /** Finds the meanings of a table's columns. */
    static ListColumns of(FoundTable written, Clues clues) {
        FoundTable table = NamePairs.apart(written);
        List<ColumnValues> values = new ArrayList<>();
        for (int i = 0; i < table.headings().size(); i++) {
            values.add(ColumnValues.of(table, i));
        }
        ListScale scale = ListScale.of(values, clues.scale());
        List<ColumnClaim> claims = new ArrayList<>();
        claims.addAll(BatchColumn.of(values, clues));
        claims.addAll(MassPairs.of(values, scale));
        claims.addAll(TimeOrder.of(values));
        List<ColumnClaim> times = RoastTimes.of(values);
        claims.addAll(times);
        for (ColumnValues column : values) {
            claims.addAll(ColumnNames.of(column, scale));
        }
        Set<Integer> clocks = times.stream()
                .filter(claim -> claim.meaning() == ListMeaning.TIME_OF_DAY)
                .map(ColumnClaim::place)
                .collect(Collectors.toSet());
        return new ListColumns(table, settle(values, DropRivals.without(claims, values, clocks))).withCoffee();
    }

    private static List<ListColumn> settle(List<ColumnValues> values, List<ColumnClaim> claims) {
        List<ColumnClaim> sorted = claims.stream()
                .filter(claim -> claim.score() >= LEAST)
                .sorted(Comparator.comparingDouble((ColumnClaim claim) -> -claim.score())
                        .thenComparingInt(ColumnClaim::place))
                .toList();
        Map<Integer, ColumnClaim> won = new HashMap<>();
        Set<ListMeaning> taken = new HashSet<>();
        for (ColumnClaim claim : sorted) {
            if (!won.containsKey(claim.place()) && !taken.contains(claim.meaning())) {
                won.put(claim.place(), claim);
                if (!claim.meaning().mayRepeat()) {
                    taken.add(claim.meaning());
                }
            }
        }
        giveWay(sorted, won);
        List<ListColumn> columns = new ArrayList<>();
        for (ColumnValues column : values) {
            columns.add(column(column, values, sorted, won));
        }
        return columns;
    }

    /** A column that can mean something else gives way to one that cannot and is as good: "Time" beside "Drop" is a time of day. */
    private static void giveWay(List<ColumnClaim> sorted, Map<Integer, ColumnClaim> won) {
        for (ColumnClaim claim : sorted) {
            if (won.containsKey(claim.place())) {
                continue;
            }
            for (ColumnClaim holder : List.copyOf(won.values())) {
                if (holder.meaning() != claim.meaning() || holder.score() - claim.score() >= CLOSE) {
                    continue;
                }
                Optional<ColumnClaim> other = sorted.stream()
                        .filter(each -> each.place() == holder.place() && each.score() >= LIKELY)
                        .filter(each -> won.values().stream().noneMatch(w -> w.meaning() == each.meaning()))
                        .findFirst();
                other.ifPresent(each -> {
                    won.put(holder.place(), each);
                    won.put(claim.place(), claim);
                });
            }
        }
    }

    /** In a list of roasts without a lot, where the coffee comes from is what was roasted, or what stands under "What". */
    private ListColumns withCoffee() {
        boolean roasts = of(ListMeaning.ROASTED_MASS).isPresent()
                || columns.stream().anyMatch(column -> column.meaning().mark().isPresent());
        Optional<ListColumn> origin = of(ListMeaning.ORIGIN).or(this::whatWasRoasted);
        if (!roasts || origin.isEmpty() || of(ListMeaning.LOT).isPresent()) {
            return this;
        }
        List<ListColumn> changed = new ArrayList<>(columns);
        ListColumn column = origin.get();
        changed.set(
                column.place(),
                new ListColumn(
                        column.place(),
                        column.heading(),
                        ListMeaning.LOT,
                        "",
                        column.reason() + "; no other column says which coffee was roasted",
                        Confidence.LIKELY,
                        List.of(column.meaning())));
        return new ListColumns(table, changed);
    }

    /** Roasts have no work beside them: "What", with few words that come again, is what was roasted. */
    private Optional<ListColumn> whatWasRoasted() {
        return of(ListMeaning.WORK).filter(column -> {
            ColumnValues values = ColumnValues.of(table, column.place());
            return values.mostly(CellForm.WORDS) && 2 * values.distinct() <= values.filled();
        });
    }

    private static ListColumn column(
            ColumnValues column, List<ColumnValues> values, List<ColumnClaim> sorted, Map<Integer, ColumnClaim> won) {
        Optional<ColumnClaim> found = Optional.ofNullable(won.get(column.place()));
        List<ColumnClaim> here =
                sorted.stream().filter(claim -> claim.place() == column.place()).toList();
        if (found.isEmpty()) {
            boolean blank = column.filled() == 0;
            return new ListColumn(
                    column.place(),
                    column.heading(),
                    blank ? ListMeaning.BLANK : ListMeaning.EXTRA,
                    "",
                    blank
                            ? "holds nothing"
                            : here.isEmpty()
                                    ? "is kept under its own heading: neither its name nor its values say more"
                                    : "is kept under its own heading: another column is the "
                                            + here.get(0).meaning().words(),
                    here.isEmpty() ? Confidence.CERTAIN : Confidence.LIKELY,
                    here.stream().map(ColumnClaim::meaning).distinct().toList());
        }
        ColumnClaim claim = found.get();
        List<ColumnClaim> rivals = here.stream()
                .filter(other -> other.meaning() != claim.meaning() && claim.score() - other.score() < CLOSE)
                .filter(other -> won.values().stream().noneMatch(w -> w.meaning() == other.meaning()))
                .toList();
        // Another column that wanted the same meaning as much makes it a matter for a person.
        boolean contested = sorted.stream()
                .anyMatch(other -> other.place() != claim.place()
                        && !values.get(other.place()).isSame(column)
                        && other.meaning() == claim.meaning()
                        && claim.score() - other.score() < CLOSE / 2
                        && Optional.ofNullable(won.get(other.place())).isEmpty());
        boolean open = claim.unitOpen() == ColumnClaim.UnitDoubt.OPEN || !rivals.isEmpty() || contested;
        Confidence confidence = open || claim.score() < LIKELY
                ? Confidence.OPEN
                : claim.score() >= CERTAIN ? Confidence.CERTAIN : Confidence.LIKELY;
        return new ListColumn(
                column.place(),
                column.heading(),
                claim.meaning(),
                claim.unit(),
                claim.reason(),
                confidence,
                Stream.concat(rivals.stream(), here.stream())
                        .map(ColumnClaim::meaning)
                        .filter(meaning -> meaning != claim.meaning())
                        .distinct()
                        .toList());
    }

    /** Returns the column of a meaning. */
    Optional<ListColumn> of(ListMeaning meaning) {
        return columns.stream().filter(column -> column.meaning() == meaning).findFirst();
    }

    /** Returns the columns that a person should be asked about, what changes most first. */
    List<ListColumn> open() {
        return columns.stream()
                .filter(column -> column.confidence() == Confidence.OPEN)
                .sorted(Comparator.comparingInt(column -> weight(column.meaning())))
                .toList();
    }

    private static int weight(ListMeaning meaning) {
        int place = BY_WEIGHT.indexOf(meaning);
        return place < 0 ? BY_WEIGHT.size() : place;
    }

    /** Returns the columns with one as a person answered; another column that had the meaning is kept as an extra,
     * and the roasted mass follows the green mass into another unit. */
    ListColumns with(int place, ListMeaning meaning, String unit) {
        List<ListColumn> changed = new ArrayList<>();
        String before = columns.get(place).unit();
        for (ListColumn column : columns) {
            boolean follows = meaning == ListMeaning.GREEN_MASS
                    && column.meaning() == ListMeaning.ROASTED_MASS
                    && column.unit().equals(before)
                    && ColumnValues.statedUnit(column.heading()).isEmpty();
            if (follows) {
                changed.add(new ListColumn(
                        column.place(),
                        column.heading(),
                        column.meaning(),
                        unit,
                        column.reason(),
                        column.confidence(),
                        column.others()));
            } else if (column.place() == place) {
                changed.add(new ListColumn(
                        place, column.heading(), meaning, unit, "was answered so", Confidence.CERTAIN, List.of()));
            } else if (column.meaning() == meaning && !meaning.mayRepeat()) {
                changed.add(new ListColumn(
                        column.place(),
                        column.heading(),
                        ListMeaning.EXTRA,
                        "",
                        "is kept under its own heading: another column is the " + meaning.words(),
                        Confidence.CERTAIN,
                        List.of()));
            } else {
                changed.add(column);
            }
        }
        return new ListColumns(table, changed);
    }
}
