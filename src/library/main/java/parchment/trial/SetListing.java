package parchment.trial;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import parchment.quantity.Mass;
import parchment.sheet.Words;

/**
 * Lists the batches of a set, weighed, before any of its targets is seen: one lot, one roast day, in the order in which they will be charged.
 *
 * <pre>{@code
 * trial.next(SetListing.of("Stone Bridge")
 *         .with("B101", Mass.kilograms(2.5))
 *         .with("B102", Mass.kilograms(2.5))
 *         .with("B103", Mass.kilograms(2.5))
 *         .seenBy("Ada"))
 * }</pre>
 *
 * <p>What is listed stays: no batch joins the set, leaves it, or takes another's place.
 */
public final class SetListing {
    /** A lot, a batch or a person is named without the signs that part a line of the record. */
    private static final Pattern NAME = Pattern.compile("[^|;\\p{Cntrl}]{1,200}");

    private static final Pattern WEIGHED = Pattern.compile("([^|;]+);(\\d+\\.\\d{3}) kg");

    private final String lot;
    private final LocalDate day;
    private final List<Weighed> batches;
    private final Set<String> eyes;

    /**
     * One batch of a set.
     *
     * @param batch its name, as it will stand in the logbook
     * @param mass the green coffee that was weighed for it
     */
    public record Weighed(String batch, Mass mass) {
        public String text() {
            return batch + String.format(Locale.ROOT, ";%.3f kg", mass.kilograms());
        }
    }

    private SetListing(String lot, LocalDate day, List<Weighed> batches, Set<String> eyes) {
        this.lot = lot;
        this.day = day;
        this.batches = List.copyOf(batches);
        this.eyes = new LinkedHashSet<>(eyes);
    }

    /**
     * Returns a listing of a lot's batches of today, without a batch yet.
     *
     * @throws IllegalArgumentException if no record can hold the name
     */
    public static SetListing of(String lot) {
        return new SetListing(named("lot", lot), LocalDate.now(ZoneId.systemDefault()), List.of(), Set.of());
    }

    /** Returns the listing for another roast day. */
    public SetListing on(LocalDate roastDay) {
        return new SetListing(lot, roastDay, batches, eyes);
    }

    /**
     * Returns the listing with one more batch, which will be charged after those before it.
     *
     * @param batch its name, as it will stand in the logbook
     * @param weighed the green coffee for it, on the scale
     * @throws IllegalArgumentException if the batch is listed already, or nothing was weighed for it
     */
    public SetListing with(String batch, Mass weighed) {
        String name = named("batch", batch);
        if (batches.stream().anyMatch(each -> each.batch().equals(name))) {
            throw new IllegalArgumentException(
                    "The batch " + Words.quote(name) + " is in the set already. Give each batch a name of its own.");
        }
        if (!(weighed.kilograms() >= 0.001)) {
            throw new IllegalArgumentException("The batch " + Words.quote(name)
                    + " weighs nothing. Weigh its green coffee before you list it: no target is opened before that.");
        }
        List<Weighed> more = new ArrayList<>(batches);
        more.add(new Weighed(name, weighed));
        return new SetListing(lot, day, more, eyes);
    }

    /** Returns the listing with the names of those who see the targets: their scores are left out of a second answer. */
    public SetListing seenBy(String... people) {
        Set<String> all = new LinkedHashSet<>(eyes);
        Arrays.stream(people).map(name -> named("person", name)).forEach(all::add);
        return new SetListing(lot, day, batches, all);
    }

    private static String named(String what, String name) {
        String plain = name.strip();
        if (!NAME.matcher(plain).matches()) {
            throw new IllegalArgumentException(
                    "The " + what + " " + Words.quote(name)
                            + " cannot be kept in the trial's record: a name there has 1 to 200 letters, no bar and no semicolon.");
        }
        return plain;
    }

    public String lot() {
        return lot;
    }

    public LocalDate day() {
        return day;
    }

    public List<Weighed> batches() {
        return batches;
    }

    public Set<String> eyes() {
        return Set.copyOf(eyes);
    }

    /** Returns what the record keeps of it. */
    public String text(int set) {
        List<String> parts = new ArrayList<>(List.of(Integer.toString(set), day.toString(), lot));
        batches.forEach(each -> parts.add(each.text()));
        parts.add("seen by " + String.join(";", eyes));
        return String.join("|", parts);
    }

    /** One set as the record keeps it. */
    public record Kept(int set, SetListing listing) {}

    /** Reads what the record keeps; empty if it is no listing. */
    public static Optional<Kept> read(String text) {
        List<String> parts = List.of(text.split("\\|", -1));
        if (parts.size() < 5 || !parts.get(0).matches("[1-9]\\d{0,4}")) {
            return Optional.empty();
        }
        String seen = parts.get(parts.size() - 1);
        List<Weighed> batches = new ArrayList<>();
        for (String part : parts.subList(3, parts.size() - 1)) {
            Matcher weighed = WEIGHED.matcher(part);
            if (!weighed.matches()) {
                return Optional.empty();
            }
            batches.add(new Weighed(weighed.group(1), Mass.kilograms(Double.parseDouble(weighed.group(2)))));
        }
        try {
            Set<String> eyes = new LinkedHashSet<>(
                    List.of(seen.replaceFirst("^seen by ", "").split(";")));
            eyes.remove("");
            return Optional.of(new Kept(
                    Integer.parseInt(parts.get(0)),
                    new SetListing(parts.get(2), LocalDate.parse(parts.get(1)), batches, eyes)));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    @Override
    public String toString() {
        return Words.count(batches.size(), "batch", "batches") + " of " + lot + " on " + day;
    }
}
