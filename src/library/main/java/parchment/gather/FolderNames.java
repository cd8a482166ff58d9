package parchment.gather;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * Knows the folders that recordings lie in, where they lie in several: of a machine, a day, a month. What they say is part of a recording's name where another
 * recording is called the same.
 */
final class FolderNames {
    private final Path common;
    private final Map<String, Set<Path>> foldersOf = new HashMap<>();
    private final Set<Path> repeating = new HashSet<>();

    private FolderNames(Path common) {
        this.common = common;
    }

    /** Looks at the folders of some recordings. */
    static FolderNames of(List<GatheredBatch> curves) {
        List<Path> folders = curves.stream()
                .flatMap(curve -> folder(curve).stream())
                .distinct()
                .toList();
        Path common = Path.of("");
        if (!folders.isEmpty()) {
            common = folders.get(0);
            for (Path folder : folders) {
                while (common != null && !folder.startsWith(common)) {
                    common = common.getParent();
                }
            }
        }
        FolderNames names = new FolderNames(common == null ? Path.of("") : common);
        curves.forEach(curve -> folder(curve)
                .ifPresent(folder -> names.foldersOf
                        .computeIfAbsent(plain(curve), name -> new HashSet<>())
                        .add(folder)));
        names.foldersOf.values().stream().filter(of -> of.size() > 1).forEach(names.repeating::addAll);
        return names;
    }

    private static String plain(GatheredBatch curve) {
        return curve.name().toLowerCase(Locale.ROOT);
    }

    private static Optional<Path> folder(GatheredBatch curve) {
        return curve.recording()
                .map(known -> TablePlace.of(known.file()).file().getParent())
                .filter(folder -> folder != null);
    }

    /** Returns the names of the folders around a recording, the outermost first; none where all recordings lie in one. */
    List<String> around(GatheredBatch curve) {
        return folder(curve)
                .filter(folder -> folder.startsWith(common) && !folder.equals(common))
                .map(folder -> {
                    Path within = common.relativize(folder);
                    return IntStream.range(0, within.getNameCount())
                            .mapToObj(i -> within.getName(i).toString())
                            .toList();
                })
                .orElse(List.of());
    }

    /**
     * Returns the name of a recording with its folder's before it, or with the day that its folder names; empty unless recordings in that folder and another are
     * called the same.
     */
    Optional<String> whole(GatheredBatch curve) {
        List<String> around = around(curve);
        if (around.isEmpty() || folder(curve).filter(repeating::contains).isEmpty()) {
            return Optional.empty();
        }
        String last = around.get(around.size() - 1);
        boolean day = WrittenDay.ofCell(last).isPresent() || last.matches("\\d{1,2}") && around.size() >= 3;
        Optional<String> dated = curve.roastedAt()
                .map(at -> at.toLocalDate())
                .or(curve::day)
                .filter(known -> day)
                .map(known -> known + "-" + curve.name());
        return Optional.of(dated.orElse(last + " " + curve.name()));
    }

    /** Returns what a list may call a recording that its folder and its number name together, such as "Big 1" for "Big/roast 1.csv". */
    List<String> aliases(GatheredBatch curve) {
        String own = BatchNumbers.afterWord(curve.name()).orElse(curve.name());
        List<String> aliases = new ArrayList<>();
        around(curve).forEach(folder -> aliases.add(folder + " " + own));
        return aliases;
    }
}
