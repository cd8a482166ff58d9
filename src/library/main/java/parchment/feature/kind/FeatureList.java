package parchment.feature.kind;

import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.display.answer.ShownAs;
import parchment.feature.Feature;

/**
 * Lists features with their definitions, units and needs.
 *
 * @param title what the list is of
 * @param list the features
 */
public record FeatureList(String title, List<Feature> list) implements ShownAs, Iterable<Feature> {

    /** Copies the list. */
    public FeatureList {
        list = List.copyOf(list);
    }

    public static FeatureList of(String title, List<Feature> list) {
        return new FeatureList(title, list);
    }

    /** Returns the names in order. */
    public List<String> names() {
        return list.stream().map(Feature::name).toList();
    }

    /** Returns the features of one family. */
    public FeatureList of(Family family) {
        return new FeatureList(
                title + " of the family " + family.words(),
                list.stream().filter(f -> f.family() == family).toList());
    }

    @Override
    public Iterator<Feature> iterator() {
        return list.iterator();
    }

    public static String needs(Feature feature) {
        return feature.needs().isEmpty()
                ? "nothing more"
                : feature.needs().stream().map(Need::words).collect(Collectors.joining(", "));
    }

    private Table table() {
        return Table.titled(toString())
                .withText("feature", list, Feature::name)
                .withText("unit", list, f -> unit(f))
                .withText("definition", list, Feature::definition)
                .withText("needs", list, FeatureList::needs)
                .withText("family", list, f -> f.family().words())
                .withRowsShown(Math.max(1, list.size()));
    }

    public static String unit(Feature feature) {
        String unit = feature.unit().toString();
        return unit.isEmpty() ? "a bare number" : unit;
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%s: %d in all", title, list.size());
    }

    @Override
    public Showable shownAs() {
        return table();
    }
}
