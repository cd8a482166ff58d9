package parchment.file;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Finds the same name behind several ways of writing it in Unicode: an é is one sign, or an e and an accent. A file system may change the
 * form of a name by itself, so a name in another form is the same name wherever only one can be meant.
 *
 * @see <a href="https://www.unicode.org/reports/tr15/">Unicode Standard Annex #15, Unicode Normalization Forms</a>
 */
public final class NameForms {
    private final Map<String, List<String>> byForm = new HashMap<>();

    private NameForms(Collection<String> names) {
        names.forEach(name -> byForm.computeIfAbsent(composed(name), form -> new ArrayList<>())
                .add(name));
    }

    /** Returns the forms of some names; one that stands twice counts twice. */
    public static NameForms of(Collection<String> names) {
        return new NameForms(names);
    }

    /** Returns a name with each letter and its accents as one sign, where there is one (normalization form C). */
    public static String composed(String name) {
        return Normalizer.normalize(name, Normalizer.Form.NFC);
    }

    /** Returns the names that are the given one in any form, in their order. */
    public List<String> alike(String name) {
        return List.copyOf(byForm.getOrDefault(composed(name), List.of()));
    }

    /** Returns the one of the names that is meant: the very same, or the only one that differs in its form alone. */
    public Optional<String> meant(String name) {
        List<String> alike = alike(name);
        return alike.contains(name)
                ? Optional.of(name)
                : alike.size() == 1 ? Optional.of(alike.get(0)) : Optional.empty();
    }
}
