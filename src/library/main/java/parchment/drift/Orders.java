package parchment.drift;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import parchment.logbook.Logbook;
import parchment.logbook.contents.BlendPart;
import parchment.logbook.contents.LogbookException;
import parchment.quantity.Mass;
import parchment.quantity.MassUnit;

/** The orders of a week: those of one lot added up, blends taken apart as {@code blends.csv} has them. */
final class Orders {
    /** More is a slip of the pen; common sense, no source. */
    private static final double MOST = 100_000;

    private final Logbook logbook;
    private final Map<String, Order> byLot;
    private final List<String> blends;
    private final List<GreenNeeded> needed;
    private final Map<String, Double> green = new LinkedHashMap<>();

    /** What is to be delivered of one lot, in kg, and the unit in which it was ordered first. */
    private record Order(double kilograms, MassUnit unit) {
        Order and(Order more) {
            return new Order(kilograms + more.kilograms, unit);
        }
    }

    private Orders(Logbook logbook, Map<String, Order> byLot, List<String> blends) {
        this.logbook = logbook;
        this.byLot = byLot;
        this.blends = List.copyOf(blends);
        this.needed = byLot.entrySet().stream()
                .map(one -> GreenNeeded.of(
                        one.getKey(),
                        Mass.kilograms(one.getValue().kilograms()),
                        one.getValue().unit(),
                        logbook))
                .toList();
        // Here and not when asked, so that an order whose green coffee cannot be taken apart is refused at once.
        for (GreenNeeded one : needed) {
            double mass = Double.isNaN(one.charged()) ? one.kilograms() : one.charged();
            addGreen(one.lot(), mass, new LinkedHashSet<>());
        }
    }

    static Orders none(Logbook logbook) {
        return new Orders(logbook, Map.of(), List.of());
    }

    /** Returns the orders with one more, told in the unit that the logbook's masses are written in. */
    Orders with(String name, Mass roasted) {
        return with(name, roasted, logbook.massUnit());
    }

    /** Returns the orders with one more, told in the unit in which it was given. */
    Orders with(String name, Mass roasted, MassUnit unit) {
        if (!(roasted.kilograms() > 0)) {
            throw new LogbookException(
                    "An order is a mass above 0, but for '" + name + "' it is " + roasted + ". Write it as 12 kg.");
        }
        if (roasted.kilograms() > MOST) {
            throw new LogbookException(
                    "An order is at most " + MassWords.in(MassUnit.KILOGRAM).exact(MOST) + ", but for '" + name
                            + "' it is " + roasted + ". Write it as 12 kg.");
        }
        Map<String, Order> more = new LinkedHashMap<>(byLot);
        Set<String> told = new LinkedHashSet<>(blends);
        add(name, new Order(roasted.kilograms(), unit), more, told, new LinkedHashSet<>());
        return new Orders(logbook, more, List.copyOf(told));
    }

    private void add(String name, Order order, Map<String, Order> more, Set<String> told, Set<String> within) {
        List<BlendPart> parts = parts(name);
        if (parts.isEmpty()) {
            refuseUnknown(name, within);
            more.merge(name, order, Order::and);
            return;
        }
        goInto(name, within);
        double sum = sum(name, parts);
        boolean asOne = isRoastedAsOne(name, parts);
        told.add(words(name, parts, sum, asOne));
        if (asOne) {
            more.merge(name, order, Order::and);
        } else {
            for (BlendPart part : parts) {
                Order share = new Order(order.kilograms() * part.share() / sum, order.unit());
                add(part.lot(), share, more, told, new LinkedHashSet<>(within));
            }
        }
    }

    /** Refuses a name that is neither a lot nor a blend, and says where it stands if nobody ordered it by that name. */
    private void refuseUnknown(String name, Set<String> within) {
        try {
            logbook.ofLot(name);
        } catch (LogbookException e) {
            if (within.isEmpty()) {
                throw e;
            }
            throw new LogbookException(
                    "blends.csv names '" + name + "' as a part of '"
                            + List.copyOf(within).get(within.size() - 1) + "', but there is no such lot: "
                            + e.getMessage(),
                    e);
        }
    }

    private static void goInto(String blend, Set<String> within) {
        if (!within.add(blend)) {
            throw new LogbookException("The blend '" + blend + "' is a part of itself in blends.csv ("
                    + String.join(" > ", within) + "), so an order of it cannot be taken apart. Name its lots there.");
        }
    }

    private List<BlendPart> parts(String name) {
        return logbook.contents().blends().stream()
                .filter(part -> part.blend().equals(name))
                .toList();
    }

    private static double sum(String name, List<BlendPart> parts) {
        double sum = 0;
        for (BlendPart part : parts) {
            if (part.share() < 0) {
                throw new LogbookException(String.format(
                        Locale.ROOT,
                        "The share of '%s' in the blend '%s' is %.0f in blends.csv, and an order cannot be taken apart by that. Write a"
                                + " number above 0, in per cent, as in 60.",
                        part.lot(),
                        name,
                        100 * part.share()));
            }
            if (Double.isNaN(part.share())) {
                throw new LogbookException("The blend '" + name + "' has no share for '" + part.lot()
                        + "' in blends.csv, so an order of it cannot be taken apart. Write the share of each part in per cent"
                        + " there, as in 60.");
            }
            sum += part.share();
        }
        if (!(sum > 0)) {
            throw new LogbookException(
                    "The shares of the blend '" + name
                            + "' in blends.csv are all 0, so an order of it cannot be taken apart. Write them in per cent, as in 60.");
        }
        return sum;
    }

    private boolean isRoastedAsOne(String name, List<BlendPart> parts) {
        long before = parts.stream()
                .filter(part -> part.blended() == BlendPart.Blended.BEFORE_ROASTING)
                .count();
        long after = parts.stream()
                .filter(part -> part.blended() == BlendPart.Blended.AFTER_ROASTING)
                .count();
        if (before > 0 && after > 0) {
            throw new LogbookException("The blend '" + name
                    + "' has parts that are blended before and parts that are blended after roasting in blends.csv. Give those that"
                    + " are roasted together a blend of their own there, and name it as one part.");
        }
        return before > 0 || after == 0 && roastedUnder(name) > 0;
    }

    private long roastedUnder(String name) {
        return logbook.batches().stream()
                .filter(batch -> batch.lot().filter(name::equals).isPresent())
                .count();
    }

    private String words(String name, List<BlendPart> parts, double sum, boolean asOne) {
        boolean written = parts.stream().anyMatch(part -> part.blended() != BlendPart.Blended.NOT_WRITTEN);
        Map<String, Double> byLot = new LinkedHashMap<>();
        parts.forEach(part -> byLot.merge(part.lot(), part.share() / sum, Double::sum));
        List<String> shares = new ArrayList<>();
        byLot.forEach((lot, share) -> shares.add(String.format(Locale.ROOT, "%.0f %% %s", 100 * share, lot)));
        long under = roastedUnder(name);
        String when = written
                ? "The blend " + name + " is put together " + (asOne ? "before" : "after") + " roasting"
                : "When the blend " + name + " is put together is not said in blends.csv; "
                        + (asOne
                                ? under + (under == 1 ? " batch was" : " batches were")
                                        + " roasted under its name, so it is taken as roasted as one"
                                : "no batch was roasted under its name, so each part is taken as roasted by itself");
        return when + ". Shares of the " + (asOne ? "green" : "roasted") + " mass: " + String.join(", ", shares)
                + (Math.abs(sum - 1) > 0.005
                        ? String.format(
                                Locale.ROOT, " (in proportion, for those in blends.csv add up to %.0f %%)", 100 * sum)
                        : "")
                + "."
                + (byLot.size() == parts.size() ? "" : " A part is named twice in blends.csv; its shares are added.");
    }

    /** Returns what each lot or blend that is roasted as one takes. */
    List<GreenNeeded> needed() {
        return needed;
    }

    /** Returns how each blend was taken apart, a sentence or two each. */
    List<String> blends() {
        return blends;
    }

    /**
     * Returns the green coffee charged of each lot, in kg, where a blend that is roasted as one takes it from several; NaN where it cannot be told.
     */
    Map<String, Double> green() {
        return new LinkedHashMap<>(green);
    }

    private void addGreen(String name, double kilograms, Set<String> within) {
        List<BlendPart> parts = parts(name);
        if (parts.isEmpty()) {
            green.merge(name, kilograms, Double::sum);
            return;
        }
        goInto(name, within);
        double sum = sum(name, parts);
        parts.forEach(part -> addGreen(part.lot(), kilograms * part.share() / sum, new LinkedHashSet<>(within)));
    }

    /** Returns the unit of all orders; the one that the logbook is written in where they were given in several. */
    MassUnit unit() {
        List<MassUnit> units = needed.stream().map(GreenNeeded::unit).distinct().toList();
        return units.size() == 1 ? units.get(0) : logbook.massUnit();
    }

    /** Tells whether green coffee of several lots goes into one charge. */
    boolean hasBlendRoastedAsOne() {
        return needed.stream().anyMatch(one -> !parts(one.lot()).isEmpty());
    }
}
