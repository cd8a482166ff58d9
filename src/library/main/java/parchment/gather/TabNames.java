package parchment.gather;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/** Names recordings after their files where their tabs are called alike in several workbooks: such a tab's name says nothing of the batch. */
final class TabNames {
    private TabNames() {}

    /** Returns the recordings in their order, with such names changed. */
    static List<GatheredBatch> of(List<GatheredBatch> curves) {
        Map<String, Set<String>> files = new HashMap<>();
        Map<String, Set<String>> tabs = new HashMap<>();
        for (GatheredBatch curve : curves) {
            curve.recording().map(known -> TablePlace.of(known.file())).ifPresent(source -> {
                if (!source.tab().isBlank()) {
                    files.computeIfAbsent(key(source), t -> new HashSet<>())
                            .add(source.file().toString());
                    tabs.computeIfAbsent(source.file().toString(), f -> new HashSet<>())
                            .add(source.tab());
                }
            });
        }
        List<GatheredBatch> named = new ArrayList<>();
        for (GatheredBatch curve : curves) {
            named.add(curve.recording()
                    .map(known -> TablePlace.of(known.file()))
                    .filter(source -> files.getOrDefault(key(source), Set.of()).size() > 1
                            && curve.name().startsWith(source.stem()))
                    .map(source -> {
                        String file = new TablePlace(source.file(), "").stem();
                        boolean alone = tabs.getOrDefault(source.file().toString(), Set.of())
                                        .size()
                                == 1;
                        return curve.named((alone ? file : file + " " + source.stem())
                                + curve.name().substring(source.stem().length()));
                    })
                    .orElse(curve));
        }
        return named;
    }

    private static String key(TablePlace source) {
        return source.stem().toLowerCase(Locale.ROOT);
    }
}
