package parchment.gather;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import parchment.sheet.Words;

/**
 * Knows which batches a name or number can mean. A number means the batch whose name holds it behind a word for a batch, or behind any word that
 * several names begin with: of "zoop 1", "zoop 2" and "zoop 3" the second is batch 2, whatever a zoop is.
 */
final class BatchNames {
    /** Names that must begin with one word before it is taken for a word for a batch; common practice, no source. */
    static final int FEWEST_OF_A_WORD = 3;

    static final String KIND =
            "(?:batch|charge|roast|lote de tueste|tueste|tostado|torra|tosta|tostatura|torrefaction|torréfaction|röstung|rostung|nr\\.?|no\\.?|number|#)";
    private static final Pattern NUMBER =
            Pattern.compile("(?iu)" + KIND + "?\\s*[#:]?\\s*0*(\\d{1,9})(?:\\s*[-–:,].*|\\s+\\p{L}.*)?");
    private static final Pattern MARKED = Pattern.compile("(?iu)^" + KIND + "\\s*[#:]?\\s*0*\\d{1,9}(?!\\d)");
    private static final Pattern BEHIND_A_WORD =
            Pattern.compile("(\\p{L}[\\p{L}\\p{M}]+)[\\s_.:#-]*0*(\\d{1,9})(?:\\s*[-–:,(]\\s*\\p{L}.*|\\s+\\p{L}.*)?");

    private final Map<String, Set<String>> byName = new LinkedHashMap<>();
    private final Map<String, Set<String>> byNumber = new LinkedHashMap<>();
    private final Set<String> words = new LinkedHashSet<>();

    private BatchNames() {}

    /** Returns the names of some batches, by which each batch is found. */
    static BatchNames of(List<NamedBatch> batches) {
        BatchNames names = new BatchNames();
        names.words.addAll(
                words(batches.stream().flatMap(batch -> all(batch).stream()).toList()));
        for (NamedBatch batch : batches) {
            for (String name : all(batch)) {
                names.byName
                        .computeIfAbsent(CupJoin.plain(name), n -> new LinkedHashSet<>())
                        .add(batch.name());
                names.number(name)
                        .ifPresent(n -> names.byNumber
                                .computeIfAbsent(n, k -> new LinkedHashSet<>())
                                .add(batch.name()));
            }
        }
        return names;
    }

    private static List<String> all(NamedBatch batch) {
        List<String> all = new ArrayList<>(batch.otherNames());
        all.add(batch.name());
        return all;
    }

    /** Returns the names, and the numbers that stand in them behind a word that several begin with. */
    static Set<String> withNumbers(Collection<String> names) {
        Set<String> words = words(names);
        Set<String> all = new LinkedHashSet<>(names);
        names.forEach(name -> behind(name, words).ifPresent(all::add));
        return all;
    }

    private static Set<String> words(Collection<String> names) {
        Map<String, Set<String>> numbers = new LinkedHashMap<>();
        for (String name : names) {
            Matcher matcher = BEHIND_A_WORD.matcher(name.strip());
            if (matcher.matches()) {
                numbers.computeIfAbsent(matcher.group(1).toLowerCase(Locale.ROOT), w -> new LinkedHashSet<>())
                        .add(matcher.group(2));
            }
        }
        numbers.values().removeIf(some -> some.size() < FEWEST_OF_A_WORD);
        return numbers.keySet();
    }

    private static Optional<String> behind(String name, Set<String> words) {
        Matcher matcher = BEHIND_A_WORD.matcher(name.strip());
        return matcher.matches() && words.contains(matcher.group(1).toLowerCase(Locale.ROOT))
                ? Optional.of(matcher.group(2))
                : Optional.empty();
    }

    /** Returns the number in "#101", "Batch 101" and "101 - Wren", without zeros before it, and in "zoop 101" where several names begin so. */
    Optional<String> number(String name) {
        Matcher matcher = NUMBER.matcher(name.strip());
        return matcher.matches() ? Optional.of(matcher.group(1)) : behind(name, words);
    }

    /** Returns whether a text says with a word that it is a batch's number. */
    static boolean isMarked(String text) {
        return MARKED.matcher(text.strip()).find();
    }

    /** Returns the batches that a name or, if there is none of it, a number means. */
    Set<String> meant(String written) {
        Set<String> names = byName.getOrDefault(CupJoin.plain(written), Set.of());
        return names.isEmpty()
                ? number(written).map(n -> byNumber.getOrDefault(n, Set.of())).orElse(Set.of())
                : names;
    }

    /** Returns whether a batch is called just so. */
    boolean isName(String written) {
        return byName.containsKey(CupJoin.plain(written));
    }

    /** Returns the batches of a number. */
    Set<String> numbered(String written) {
        return byNumber.getOrDefault(number(written).orElse(""), Set.of());
    }

    /** Returns the batch whose name or number is a slip away. */
    Optional<String> nearest(String written) {
        Optional<String> close = Words.closest(written, byName.keySet());
        if (close.isPresent()) {
            return close.flatMap(n -> byName.getOrDefault(n, Set.of()).stream().findFirst());
        }
        return Words.closest(written.replaceFirst("(?iu)^" + KIND + "\\s*[#:]?\\s*", ""), byNumber.keySet())
                .flatMap(n -> byNumber.getOrDefault(n, Set.of()).stream().findFirst());
    }
}
