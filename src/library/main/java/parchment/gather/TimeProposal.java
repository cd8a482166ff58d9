package parchment.gather;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import parchment.gather.ColumnClaim.UnitDoubt;
import parchment.gather.StrangeColumn.Form;

/**
 * Proposes which column of a recording holds its times, and how they are written.
 *
 * <p>What loggers do is common practice, no source: they write a reading each tenth of a second to each half minute, and a recording is
 * a minute to a day long.
 */
final class TimeProposal {
    private static final Pattern NAMED = Pattern.compile(
            ".*(time|zeit|clock|uhr|elapsed|heure|hora|tiempo|\\btempo\\b|\\btemps\\b|\\bora\\b|se[ck]ond|sekunde|segundo|minut|stunde|dauer|dur[ée]e|duraci[oó]n|durata).*");
    private static final Pattern CLOCK_OF_DAY =
            Pattern.compile(".*(uhr|clock|heure|\\bhora\\b|\\bora\\b|time of day).*");
    private static final Pattern BRACKETS = Pattern.compile(".*[\\[(]([^\\[\\]()]*)[])].*");
    private static final Pattern AT_END = Pattern.compile(".*[\\p{L}\\p{N})][\\s_.,:;/-]+(\\p{L}+)\\.?");
    private static final String HOURS_AND_MINUTES_WRITTEN = "h:min|hh?:mm?|h:m|std:min|uhr|hh?:mm uhr";

    private static final double SHORTEST = 60;
    private static final double LONGEST = 86_400;
    private static final double LONGEST_ROAST = 3_600;
    private static final double START = 0.1;
    private static final int MANY_ROWS = 60;
    private static final double FASTEST_LOGGER = 0.1;
    private static final double SLOWEST_LOGGER = 20;
    private static final double USUAL_LOGGER = 3;

    private TimeProposal() {}

    /** Returns the proposal by the column's place; nothing if no column holds times. */
    static Map<Integer, MeaningProposal> in(List<StrangeColumn> columns) {
        int best = -1;
        Optional<MeaningProposal> taken = Optional.empty();
        for (int i = 0; i < columns.size(); i++) {
            Optional<MeaningProposal> proposal = of(columns.get(i));
            boolean better = best < 0 || isNamed(columns.get(i)) && !isNamed(columns.get(best));
            if (proposal.isPresent() && better) {
                best = i;
                taken = proposal;
            }
        }
        int place = best;
        return taken.map(proposal -> Map.of(place, proposal)).orElse(Map.of());
    }

    private static boolean isNamed(StrangeColumn column) {
        return column.mostly(Form.DATE_AND_TIME)
                || NAMED.matcher(column.heading().toLowerCase(Locale.ROOT)).matches();
    }

    private static Optional<MeaningProposal> of(StrangeColumn column) {
        if (column.mostly(Form.DATE_AND_TIME)) {
            return Optional.of(
                    new MeaningProposal(Meaning.time(Meaning.DATE_AND_TIME), "its values are dates with times"));
        }
        if (column.mostly(Form.CLOCK)) {
            return Optional.of(clock(column));
        }
        if (!column.mostly(Form.NUMBER) || !column.rises() || column.numberCount() < MeaningProposal.FEWEST_ROWS) {
            return Optional.empty();
        }
        String stated = stated(column.heading(), isNamed(column));
        return Optional.of(stated.isEmpty() ? bare(column) : stated(column, stated));
    }

    private static MeaningProposal clock(StrangeColumn column) {
        boolean seconds = column.first().chars().filter(c -> c == ':').count() == 2;
        String such = "its values are times such as " + column.first();
        if (!seconds) {
            return twoParts(column, such);
        }
        boolean day = !column.first().startsWith("0:0") && !column.first().startsWith("00:0");
        return new MeaningProposal(
                Meaning.time(day ? Meaning.TIME_OF_DAY : "h:min:s"),
                such + (day ? ", too late for the start of a roast" : ""));
    }

    /** 9:30 is minutes and seconds in a recording, unless the heading or the whole length says hours and minutes. */
    private static MeaningProposal twoParts(StrangeColumn column, String such) {
        String small = column.heading().toLowerCase(Locale.ROOT);
        Matcher bracketed = BRACKETS.matcher(small);
        boolean written = bracketed.matches() && bracketed.group(1).strip().matches(HOURS_AND_MINUTES_WRITTEN);
        boolean day = CLOCK_OF_DAY.matcher(small).matches() && !column.first().matches("-?0?0:.*");
        boolean tooShort = column.clockSpan() > 0
                && column.clockSpan() < SHORTEST
                && column.count(Form.CLOCK) >= MeaningProposal.FEWEST_ROWS;
        if (written || day && tooShort) {
            boolean odd = !day && 60 * column.clockSpan() > LONGEST_ROAST;
            return new MeaningProposal(
                    Meaning.time(day ? Meaning.TIME_OF_DAY : Meaning.HOURS_AND_MINUTES),
                    such + (written ? ", and its heading says hours and minutes" : ", and its heading says a clock"),
                    odd ? UnitDoubt.OPEN : UnitDoubt.KNOWN);
        }
        return tooShort
                ? new MeaningProposal(
                        Meaning.time(Meaning.HOURS_AND_MINUTES),
                        such + ", which as minutes and seconds would be " + ColumnFit.written(column.clockSpan())
                                + " s in all, so hours and minutes",
                        UnitDoubt.OPEN)
                : new MeaningProposal(Meaning.time("min:s"), such);
    }

    /** Returns the unit of time that a heading states, as the logbook writes it; "" if it states none. */
    private static String stated(String heading, boolean named) {
        String small = heading.toLowerCase(Locale.ROOT).strip();
        Matcher bracketed = BRACKETS.matcher(small);
        if (bracketed.matches()) {
            return unit(bracketed.group(1).strip());
        }
        String alone = small.length() > 1 ? unit(small.replaceAll("^(elapsed|time in|zeit in)\\s+", "")) : "";
        Matcher end = AT_END.matcher(small);
        return !alone.isEmpty() ? alone : named && end.matches() ? unit(end.group(1)) : "";
    }

    private static String unit(String word) {
        return word.matches("s|secs?|sek|seg|second(s|es|i|o)?|sekunden?|segundos?|s\\.|sec\\.|sek\\.")
                ? "s"
                : word.matches("min|mins|minute(s|n)?|minut[oi]s?|min\\.|m")
                        ? "min"
                        : word.matches("h|hrs?|hours?|std|std\\.|stunden?|heures?|horas?|ore|ora")
                                ? Meaning.HOURS
                                : word.matches("ms|msecs?|millis|mill?i?se[ckg][a-z]*") ? Meaning.MILLISECONDS : "";
    }

    private static double secondsOf(String unit) {
        return switch (unit) {
            case "min" -> 60;
            case Meaning.HOURS -> 3_600;
            case Meaning.MILLISECONDS -> 0.001;
            default -> 1;
        };
    }

    private static String rises(StrangeColumn column) {
        return String.format(
                Locale.ROOT, "it rises from row to row, by %.0f in all", column.lastNumber() - column.firstNumber());
    }

    /** A written unit is taken; where that makes no recording, it is asked. */
    private static MeaningProposal stated(StrangeColumn column, String unit) {
        double span = (column.lastNumber() - column.firstNumber()) * secondsOf(unit);
        boolean odd = column.numberCount() >= MANY_ROWS && (span < SHORTEST || span > LONGEST);
        String reason = rises(column) + ", and its heading has the unit";
        return odd
                ? new MeaningProposal(
                        Meaning.time(unit),
                        String.format(Locale.ROOT, "%s, though that makes %.0f s in all", reason, span),
                        UnitDoubt.OPEN)
                : new MeaningProposal(Meaning.time(unit), reason);
    }

    private static MeaningProposal bare(StrangeColumn column) {
        double span = column.lastNumber() - column.firstNumber();
        String rises = rises(column);
        String bare = rises.replaceFirst(", by .*", "");
        double step = span / (column.numberCount() - 1);
        if (column.firstNumber() > 20_000 && column.lastNumber() < 80_000 && span > 0 && span < 1) {
            return new MeaningProposal(
                    Meaning.time(Meaning.SERIAL),
                    bare + " by parts of a day, as a spreadsheet writes dates with times");
        }
        if (span < 1 && column.firstNumber() >= 0 && column.lastNumber() < 1) {
            return shares(span, step, bare, span <= 0.2 || column.firstNumber() > START);
        }
        if (span > 100_000) {
            return new MeaningProposal(Meaning.time(Meaning.MILLISECONDS), rises + ": too many for seconds");
        }
        if (span >= 40 && step < FASTEST_LOGGER && column.numberCount() >= MANY_ROWS) {
            return new MeaningProposal(
                    Meaning.time(60 * span <= LONGEST ? "min" : "s"),
                    rises
                            + String.format(
                                    Locale.ROOT,
                                    ": as seconds it would have a reading each %.2f s, as minutes each %.1f s",
                                    step,
                                    60 * step),
                    UnitDoubt.OPEN);
        }
        if (span >= 40) {
            return new MeaningProposal(Meaning.time("s"), rises);
        }
        return step * 60 < FASTEST_LOGGER && column.numberCount() >= MANY_ROWS
                ? new MeaningProposal(
                        Meaning.time(Meaning.HOURS),
                        rises
                                + String.format(
                                        Locale.ROOT,
                                        ": as minutes it would have a reading each %.2f s, so hours",
                                        step * 60),
                        UnitDoubt.OPEN)
                : new MeaningProposal(Meaning.time("min"), rises + ": too few for seconds");
    }

    /** Numbers below 1 are parts of a day or of an hour: a logger writes more often than each 20 s. */
    private static MeaningProposal shares(double span, double step, String bare, boolean shareByLength) {
        double asShare = step * 86_400;
        boolean hours = span * 3_600 >= SHORTEST && asShare > USUAL_LOGGER && step * 3_600 >= FASTEST_LOGGER;
        if (!hours && (shareByLength || asShare <= USUAL_LOGGER)) {
            return new MeaningProposal(
                    Meaning.time(Meaning.SHARE_OF_DAY), bare + " by parts of a day, as a spreadsheet writes times");
        }
        boolean open = asShare < SLOWEST_LOGGER;
        return new MeaningProposal(
                Meaning.time(hours && !open || !shareByLength ? Meaning.HOURS : Meaning.SHARE_OF_DAY),
                bare
                        + String.format(
                                Locale.ROOT,
                                " and stays below 1: as hours it has a reading each %.1f s, as parts of a day each %.0f s",
                                step * 3_600,
                                asShare),
                open ? UnitDoubt.OPEN : UnitDoubt.KNOWN);
    }
}
