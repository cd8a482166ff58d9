package parchment.display.page;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import parchment.display.Showable;

/**
 * Shows many things in pictures that hang together: what is chosen in one is set off in all, and in a table.
 *
 * <p>The page is one fragment of HTML that holds its data, its style and its script, and loads nothing. It can be worked with the mouse
 * and with the keyboard, takes its colours from the page it stands on, and puts every name in as text. Where scripts do not run, and in
 * print, a still picture takes its place. Nothing here knows what the things are:
 *
 * <pre>{@code
 * LinkedViews.of("Ships", "ship", List.of("Anna", "Berta"))
 *         .withGroup("harbour", List.of("north", "south"))
 *         .withNumber(LinkedNumber.of("length", "m", 1, new double[] {12.5, 31}))
 * }</pre>
 */
public final class LinkedViews implements Showable {
    private final String title;
    private final String noun;
    private final List<String> names;
    private final Map<String, List<String>> groups;
    private final Optional<Map.Entry<String, List<String>>> dates;
    private final List<LinkedNumber> numbers;
    private final List<LinkedPaths> paths;
    private final List<String> notes;
    private final Optional<Showable> still;
    private final List<String> code;
    private final Optional<ChosenNames> chosen;

    private LinkedViews(
            String title,
            String noun,
            List<String> names,
            Map<String, List<String>> groups,
            Optional<Map.Entry<String, List<String>>> dates,
            List<LinkedNumber> numbers,
            List<LinkedPaths> paths,
            List<String> notes,
            Optional<Showable> still,
            List<String> code,
            Optional<ChosenNames> chosen) {
        this.title = title;
        this.noun = noun;
        this.names = names;
        this.groups = groups;
        this.dates = dates;
        this.numbers = numbers;
        this.paths = paths;
        this.notes = notes;
        this.still = still;
        this.code = code;
        this.chosen = chosen;
    }

    /**
     * Returns a page of named things without any picture yet.
     *
     * @param noun what one of the things is called, in the singular; the plural adds an s or es
     */
    public static LinkedViews of(String title, String noun, List<String> names) {
        return new LinkedViews(
                title,
                noun,
                List.copyOf(names),
                Map.of(),
                Optional.empty(),
                List.of(),
                List.of(),
                List.of(),
                Optional.empty(),
                List.of(),
                Optional.empty());
    }

    /**
     * Adds a label that the things can be filtered by.
     *
     * @param values one per thing, empty where it is not known
     * @throws IllegalArgumentException if there is not one value per thing
     */
    public LinkedViews withGroup(String name, List<String> values) {
        check(name, values.size());
        Map<String, List<String>> more = new LinkedHashMap<>(groups);
        more.put(name, List.copyOf(values));
        return new LinkedViews(title, noun, names, more, dates, numbers, paths, notes, still, code, chosen);
    }

    /**
     * Adds the day of each thing, by which the things can be filtered.
     *
     * @throws IllegalArgumentException if there is not one day, or the lack of one, per thing
     */
    public LinkedViews withDates(String name, List<Optional<LocalDate>> days) {
        check(name, days.size());
        List<String> written = days.stream()
                .map(day -> day.map(LocalDate::toString).orElse(""))
                .toList();
        return new LinkedViews(
                title,
                noun,
                names,
                groups,
                Optional.of(Map.entry(name, written)),
                numbers,
                paths,
                notes,
                still,
                code,
                chosen);
    }

    /**
     * Adds a number that the things can be looked at by.
     *
     * @throws IllegalArgumentException if there is not one number per thing
     */
    public LinkedViews withNumber(LinkedNumber number) {
        check(number.name(), number.size());
        List<LinkedNumber> more = new ArrayList<>(numbers);
        more.add(number);
        return new LinkedViews(title, noun, names, groups, dates, List.copyOf(more), paths, notes, still, code, chosen);
    }

    /**
     * Adds a picture of paths.
     *
     * @throws IllegalArgumentException if there is not one path per thing
     */
    public LinkedViews withPaths(LinkedPaths picture) {
        check(picture.toString(), picture.size());
        List<LinkedPaths> more = new ArrayList<>(paths);
        more.add(picture);
        return new LinkedViews(
                title, noun, names, groups, dates, numbers, List.copyOf(more), notes, still, code, chosen);
    }

    /** Adds a sentence below the pictures. */
    public LinkedViews withNote(String sentence) {
        List<String> more = new ArrayList<>(notes);
        more.add(sentence);
        return new LinkedViews(
                title, noun, names, groups, dates, numbers, paths, List.copyOf(more), still, code, chosen);
    }

    /** Returns the same page with the picture that stands there where scripts do not run, and in print. */
    public LinkedViews withStill(Showable picture) {
        return new LinkedViews(
                title, noun, names, groups, dates, numbers, paths, notes, Optional.of(picture), code, chosen);
    }

    /** Returns the same page with the code that the names of the chosen things, quoted for Java, are put between. */
    public LinkedViews withCode(String before, String after) {
        return new LinkedViews(
                title, noun, names, groups, dates, numbers, paths, notes, still, List.of(before, after), chosen);
    }

    /** Returns the same page that begins with a choice and, where the page is live, brings back what a person chooses. */
    public LinkedViews withChosen(ChosenNames choice) {
        return new LinkedViews(
                title, noun, names, groups, dates, numbers, paths, notes, still, code, Optional.of(choice));
    }

    private void check(String what, int size) {
        if (size != names.size()) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT,
                    "'%s' needs one entry for each of the %d names; it has %d.",
                    what,
                    names.size(),
                    size));
        }
    }

    Optional<ChosenNames> chosen() {
        return chosen;
    }

    Optional<Showable> still() {
        return still;
    }

    List<String> notes() {
        return notes;
    }

    String title() {
        return title;
    }

    /** Returns everything the script needs, as JSON that may stand inside a page. */
    String data() {
        JsonText json = new JsonText();
        json.object().text("title", title).text("noun", noun).list("names");
        names.forEach(json::text);
        json.end().list("groups");
        groups.forEach((name, values) -> {
            List<String> distinct = values.stream()
                    .filter(v -> !v.isEmpty())
                    .distinct()
                    .sorted()
                    .toList();
            json.object().text("name", name).list("labels");
            distinct.forEach(json::text);
            double[] of = values.stream()
                    .mapToDouble(v -> v.isEmpty() ? Double.NaN : distinct.indexOf(v))
                    .toArray();
            json.end().numbers("of", of, 0).end();
        });
        json.end();
        dates.ifPresent(named -> {
            json.object("dates").text("name", named.getKey()).list("values");
            named.getValue().forEach(json::text);
            json.end().end();
        });
        json.list("numbers");
        for (LinkedNumber number : numbers) {
            json.object()
                    .text("name", number.name())
                    .text("unit", number.unit())
                    .number("digits", number.digits())
                    .text("role", number.role() == LinkedNumber.Role.JUDGES ? "judges" : "describes")
                    .text("place", number.place() == LinkedNumber.Place.BESIDE_THE_NAME ? "beside" : "asked")
                    .numbers("values", number.values(), number.digits() + 1)
                    .end();
        }
        json.end().list("paths");
        paths.forEach(picture -> picture.writeTo(json));
        json.end().list("code");
        code.forEach(json::text);
        json.end().list("chosen");
        chosen.ifPresent(choice -> choice.names().forEach(json::text));
        return json.end().end().toString();
    }

    @Override
    public Optional<String> html() {
        return Optional.of(LinkedViewsPage.of(this));
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "%s: %d names, %d numbers, %d pictures of paths",
                title,
                names.size(),
                numbers.size(),
                paths.size());
    }
}
