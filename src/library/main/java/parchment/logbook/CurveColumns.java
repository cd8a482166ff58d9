package parchment.logbook;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import parchment.sheet.Header;
import parchment.sheet.Value;
import parchment.sheet.Words;

/**
 * Finds out which column of a curve file is what.
 *
 * @param time the place of the times
 * @param timeUnit the unit of the times; empty if the first reading has to show it
 * @param columns the columns of values
 * @param unusable the columns whose values are only counted
 */
record CurveColumns(
        int time,
        String timeHeading,
        Optional<Value.TimeUnit> timeUnit,
        List<Column> columns,
        List<UnusableColumn> unusable) {

    /**
     * Holds one column of values.
     *
     * @param quantity what it is; empty for a column without a known meaning
     * @param heading what problems call it
     * @param header its unit
     */
    record Column(int index, Optional<Quantity> quantity, String heading, Header header) {}

    /** Matches headings, or the places that a layout states; empty if there is no column of times. */
    static Optional<CurveColumns> match(List<String> headings, int line, CurveLayout layout, ProblemLog problems) {
        List<Header> headers = headings.stream().map(Header::parse).toList();
        OptionalInt time = layout.time().isPresent() ? find(layout.time().get(), headers) : findByName("time", headers);
        if (time.isEmpty()) {
            List<String> names = headers.stream().map(Header::name).toList();
            String wanted = layout.time().map(CurveLayout.Source::column).orElse("time");
            problems.add(
                    line,
                    "",
                    "no column " + Words.quote(wanted),
                    "one; the headings are " + Words.some(headings) + "." + Words.didYouMean(wanted, names)
                            + (layout.isStandard() ? " A file of another form needs curves/layout.properties" : ""),
                    "file left out");
            return Optional.empty();
        }
        int timeAt = time.getAsInt();
        Optional<Value.TimeUnit> timeUnit = timeUnit(headers.get(timeAt), layout, line, problems);
        List<Column> columns = new ArrayList<>();
        List<UnusableColumn> unusable = new ArrayList<>();
        Set<Quantity> seen = EnumSet.noneOf(Quantity.class);
        Set<Integer> used = new HashSet<>(Set.of(timeAt));
        for (Quantity quantity : Quantity.values()) {
            stated(quantity, headers, layout, line, problems).ifPresent(column -> {
                if (used.add(column.index())) {
                    columns.add(column);
                    seen.add(quantity);
                }
            });
        }
        for (int i = 0; i < headers.size(); i++) {
            if (used.contains(i)) {
                continue;
            }
            Optional<UnusableColumn> cannotBeUsed = UnusableColumn.of(i, headers.get(i));
            if (cannotBeUsed.isPresent()) {
                unusable.add(cannotBeUsed.get());
            } else {
                columns.add(byHeading(i, headers.get(i), layout, seen, line, problems));
            }
        }
        // The unit of the bean temperature may have to stand in for another's, so it is looked at first.
        columns.sort(Comparator.comparingInt(
                column -> column.quantity().map(Quantity::ordinal).orElse(Integer.MAX_VALUE)));
        return Optional.of(new CurveColumns(timeAt, headers.get(timeAt).written(), timeUnit, columns, unusable));
    }

    private static Optional<Value.TimeUnit> timeUnit(Header header, CurveLayout layout, int line, ProblemLog problems) {
        if (layout.time().isPresent()) {
            return Value.TimeUnit.of(
                    Header.parse("x [" + layout.time().get().unit() + "]").plainUnit());
        }
        Optional<Value.TimeUnit> unit = Value.TimeUnit.of(header.plainUnit());
        if (unit.isEmpty() && !header.unit().isEmpty()) {
            problems.add(
                    line,
                    header.written(),
                    "the unit " + Words.quote(header.unit()),
                    Field.Kind.TIME.units(),
                    "its values decide");
        }
        return unit;
    }

    private static Optional<Column> stated(
            Quantity quantity, List<Header> headers, CurveLayout layout, int line, ProblemLog problems) {
        Optional<CurveLayout.Source> source = layout.source(quantity);
        if (source.isEmpty()) {
            return Optional.empty();
        }
        OptionalInt place = find(source.get(), headers);
        if (place.isEmpty()) {
            problems.add(
                    line,
                    "",
                    "no column " + Words.quote(source.get().column()) + " for the " + quantity,
                    "the column that the curve layout names",
                    "the " + quantity + " left out");
            return Optional.empty();
        }
        Header unit = Header.parse("x [" + source.get().unit() + "]");
        return Optional.of(new Column(place.getAsInt(), Optional.of(quantity), quantity.words(), unit));
    }

    private static Column byHeading(
            int index, Header header, CurveLayout layout, Set<Quantity> seen, int line, ProblemLog problems) {
        String plain = Header.plain(header.name());
        Optional<Quantity> named =
                Quantity.named(plain).filter(quantity -> layout.source(quantity).isEmpty());
        if (named.isPresent() && seen.add(named.get())) {
            if (header.brackets() == Header.Brackets.ROUND) {
                problems.add(
                        line, header.written(), "a unit in round brackets", "square brackets", "read all the same");
            }
            return new Column(index, named, header.written(), header);
        }
        if (named.isPresent()) {
            problems.add(line, header.written(), "the same column twice", "one of them", "kept as an extra");
        }
        List<String> names =
                Arrays.stream(Quantity.values()).map(Quantity::words).toList();
        Optional<String> meant = Quantity.named(plain).filter(seen::contains).isPresent() || plain.length() < 5
                ? Optional.empty()
                : Words.closest(plain, names);
        meant.ifPresent(name -> problems.add(
                line,
                header.written(),
                "a column that is not known",
                Words.quote(name) + ", if that is meant",
                "kept as an extra"));
        return new Column(index, Optional.empty(), header.written(), header);
    }

    private static OptionalInt find(CurveLayout.Source source, List<Header> headers) {
        OptionalInt place = source.place();
        if (place.isPresent()) {
            return place.getAsInt() < headers.size() ? place : OptionalInt.empty();
        }
        String wanted = Header.parse(source.column()).written().toLowerCase(Locale.ROOT);
        for (int i = 0; i < headers.size(); i++) {
            if (headers.get(i).written().toLowerCase(Locale.ROOT).equals(wanted)) {
                return OptionalInt.of(i);
            }
        }
        return findByName(wanted, headers);
    }

    private static OptionalInt findByName(String name, List<Header> headers) {
        for (int i = 0; i < headers.size(); i++) {
            if (Header.plain(headers.get(i).name()).equals(Header.plain(name))) {
                return OptionalInt.of(i);
            }
        }
        return OptionalInt.empty();
    }
}
