package parchment.gather;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import parchment.sheet.DateOrder;
import parchment.sheet.Words;

/**
 * Decides from all dates of a folder together which number is the day: a month above 12 anywhere decides for every date that does not say it itself.
 *
 * @param order the order, if one was found; empty if a person must be asked
 * @param perSource the order of each file that proves the other one by a date of its own
 * @param reason which date decided, as a sentence
 * @param told what else a person should know, a sentence each
 * @param inQuestion how many dates need the order
 */
record Dates(
        Optional<DateOrder> order, Map<String, DateOrder> perSource, String reason, List<String> told, int inQuestion) {
    Dates {
        perSource = Map.copyOf(perSource);
        told = List.copyOf(told);
    }

    /**
     * Holds dates of one source that are written by one hand: the names of the files, the lines above their readings, one list.
     *
     * @param key what tells it from all others, which may be called the same
     * @param source how it is told to a person
     * @param dates the dates
     */
    record Source(String key, String source, List<WrittenDay> dates) {
        Source {
            dates = List.copyOf(dates);
        }
    }

    /** Decides the order of all dates. */
    static Dates decide(List<Source> sources) {
        Map<DateOrder, String> proofs = new LinkedHashMap<>();
        Map<String, DateOrder> per = new LinkedHashMap<>();
        List<String> told = new ArrayList<>();
        int inQuestion = 0;
        for (Source source : sources) {
            Map<DateOrder, WrittenDay> here = new LinkedHashMap<>();
            for (WrittenDay date : source.dates()) {
                inQuestion += date.needsOrder() ? 1 : 0;
                if (date.order().isEmpty()) {
                    date.proves().ifPresent(order -> {
                        here.putIfAbsent(order, date);
                    });
                }
            }
            if (here.size() > 1) {
                List<String> both = here.values().stream()
                        .map(date -> Words.quote(date.written()))
                        .toList();
                told.add(source.source() + " has dates of both kinds: " + String.join(" and ", both)
                        + "; its other dates cannot be told from it.");
            }
            here.forEach((order, date) -> proofs.putIfAbsent(
                    order, Words.quote(date.written()) + " in " + source.source() + " can only be " + order.words()));
            if (here.size() == 1) {
                per.put(source.key(), here.keySet().iterator().next());
            }
        }
        return settled(proofs, per, told, inQuestion);
    }

    private static Dates settled(
            Map<DateOrder, String> proofs, Map<String, DateOrder> per, List<String> told, int inQuestion) {
        if (proofs.isEmpty()) {
            return new Dates(
                    Optional.empty(),
                    Map.of(),
                    "no date has a number above 12 where a month would stand",
                    told,
                    inQuestion);
        }
        if (proofs.size() == 1) {
            Map.Entry<DateOrder, String> only = proofs.entrySet().iterator().next();
            return new Dates(Optional.of(only.getKey()), Map.of(), only.getValue(), told, inQuestion);
        }
        told.add("The folder has dates of both kinds: " + String.join("; ", proofs.values())
                + ". Files that show their kind are read by it; for the others it is open.");
        return new Dates(Optional.empty(), per, String.join("; ", proofs.values()), told, inQuestion);
    }

    /** Returns the order for one source; empty if a person must be asked. */
    Optional<DateOrder> of(String key) {
        return Optional.ofNullable(perSource.get(key)).or(() -> order);
    }

    /** Returns whether a person must be asked: dates need an order, and none was found. */
    boolean isOpen() {
        return order.isEmpty() && inQuestion > 0;
    }
}
