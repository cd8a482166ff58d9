package parchment.logbook.written;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * What a piece of work on a machine was, as far as readings are concerned.
 *
 * <p>Only work that moved or replaced the bean probe makes readings before and after incomparable. Where the column {@code kind} of
 * upkeep.csv is blank, a kind is proposed from the whole of the words, and shown as proposed: "probe cleaned" and "air probe replaced" are no
 * new bean probe.
 */
public enum UpkeepKind {
    /** The bean probe sits elsewhere. */
    BEAN_PROBE_MOVED("bean probe moved"),
    /** Another bean probe. */
    BEAN_PROBE_REPLACED("bean probe replaced"),
    /** The probe in the drum's air or exhaust. */
    AIR_PROBE("air probe moved or replaced"),
    /** The burner or the heater. */
    BURNER("burner"),
    /** A fan. */
    FAN("fan"),
    /** Ducts, chimney, cyclone, chaff collector. */
    DUCTS("ducts"),
    /** The drum, its bearings or its speed. */
    DRUM("drum"),
    /** Anything else. */
    OTHER("other");

    private static final Set<String> PROBES =
            Set.of("probe", "probes", "thermocouple", "thermocouples", "sensor", "sensors", "pt100", "pt1000", "rtd");
    private static final Set<String> MOVED = Set.of(
            "moved",
            "move",
            "moving",
            "shifted",
            "reseated",
            "repositioned",
            "relocated",
            "refitted",
            "reinstalled",
            "lowered",
            "raised",
            "turned",
            "deeper",
            "higher",
            "lower");
    private static final Set<String> REPLACED = Set.of(
            "replaced",
            "replace",
            "replacing",
            "new",
            "changed",
            "change",
            "exchanged",
            "swapped",
            "renewed",
            "another");
    /** Parts beside the probe: to change them moves nothing, as far as the words say. */
    private static final Set<String> BESIDE =
            Set.of("gasket", "cable", "wire", "wires", "seal", "plug", "connector", "display", "gauge");

    private static final Set<String> IN_AIR =
            Set.of("air", "exhaust", "environment", "inlet", "stack", "chimney", "ambient", "room");
    private static final Set<String> NOT = Set.of("not", "never", "without", "planned", "order", "ordered");
    private static final Set<String> LOOKED_AFTER = Set.of(
            "cleaned",
            "clean",
            "wiped",
            "checked",
            "tested",
            "calibrated",
            "inspected",
            "swept",
            "greased",
            "emptied",
            "serviced");

    private final String words;

    UpkeepKind(String words) {
        this.words = words;
    }

    /** Returns the kind as it stands in the column {@code kind}. */
    public String words() {
        return words;
    }

    /** Says whether bean temperatures before and after such work are those of two probe periods. */
    public boolean changesTheBeanProbe() {
        return this == BEAN_PROBE_MOVED || this == BEAN_PROBE_REPLACED;
    }

    /** Returns the kind that is written so, upper and lower case alike; empty if there is none. */
    public static Optional<UpkeepKind> written(String text) {
        String plain = text.strip().toLowerCase(Locale.ROOT);
        for (UpkeepKind kind : values()) {
            if (kind.words.equals(plain)) {
                return Optional.of(kind);
            }
        }
        return plain.equals("air probe moved") || plain.equals("air probe replaced") || plain.equals("air probe")
                ? Optional.of(AIR_PROBE)
                : Optional.empty();
    }

    /** Returns the words that may stand in the column {@code kind}. */
    public static List<String> allWords() {
        return List.of(values()).stream().map(UpkeepKind::words).toList();
    }

    /**
     * Proposes a kind from free words: a part of a sentence that names a probe and says that it was moved or replaced. Each part between commas,
     * semicolons, full stops and "and" is read by itself, so that "ducts cleaned, probe not touched" moves no probe; a part that only names a probe is
     * read with the next, as in "bean probe, replaced".
     */
    public static UpkeepKind proposed(String what) {
        UpkeepKind best = OTHER;
        for (List<String> said : parts(what)) {
            UpkeepKind kind = ofPart(said);
            if (kind.changesTheBeanProbe()) {
                return kind;
            }
            best = best == OTHER ? kind : best;
        }
        return best;
    }

    private static List<List<String>> parts(String what) {
        String plain = what.toLowerCase(Locale.ROOT)
                .replaceAll("\\bno\\.?\\s*\\d+", " ")
                .replaceAll("\\bbean (and|&) air probes?\\b", "bean probe")
                .replaceAll(
                        "\\b(took|taken) (the )?(bean )?probe out\\b|\\bput back\\b|\\bput it back\\b|\\btaken out\\b",
                        " $3 moved probe ")
                .replaceAll("[()]", " ");
        List<List<String>> parts = new ArrayList<>();
        for (String part : plain.split("[,;:]|\\.(\\s|$)|\\band\\b")) {
            List<String> said = List.of(part.strip().split("[^\\p{L}\\p{N}]+"));
            if (!parts.isEmpty() && namesOnly(parts.get(parts.size() - 1))) {
                List<String> joined = new ArrayList<>(parts.remove(parts.size() - 1));
                joined.addAll(said);
                said = joined;
            }
            parts.add(said);
        }
        return parts;
    }

    /** Says whether a part names a probe and says nothing of what was done to it. */
    private static boolean namesOnly(List<String> said) {
        return said.stream().anyMatch(PROBES::contains)
                && said.stream()
                        .noneMatch(word -> MOVED.contains(word)
                                || REPLACED.contains(word)
                                || LOOKED_AFTER.contains(word)
                                || NOT.contains(word));
    }

    /** Says whether words name a probe without saying what was done to it, so that no kind can be proposed. */
    public static boolean namesAProbeOnly(String what) {
        List<String> said = List.of(what.strip().toLowerCase(Locale.ROOT).split("[^\\p{L}\\p{N}]+"));
        return said.stream().anyMatch(PROBES::contains)
                && said.stream().allMatch(word -> PROBES.contains(word) || word.equals("bean") || word.equals("the"));
    }

    /** Says whether words name a probe that is not one in the air. */
    static boolean namesABeanProbe(String what) {
        return parts(what).stream().anyMatch(said -> said.stream().anyMatch(PROBES::contains) && !inTheAir(said));
    }

    private static boolean inTheAir(List<String> said) {
        return !said.contains("bean") && said.stream().anyMatch(IN_AIR::contains);
    }

    private static UpkeepKind ofPart(List<String> said) {
        boolean denied = said.stream().anyMatch(NOT::contains);
        if (said.stream().anyMatch(PROBES::contains)) {
            boolean moved = said.stream().anyMatch(MOVED::contains);
            boolean replaced = said.stream().anyMatch(REPLACED::contains);
            if (denied || !(moved || replaced) || said.stream().anyMatch(BESIDE::contains)) {
                return OTHER;
            }
            if (inTheAir(said)) {
                return AIR_PROBE;
            }
            return replaced ? BEAN_PROBE_REPLACED : BEAN_PROBE_MOVED;
        }
        if (denied) {
            return OTHER;
        }
        return has(said, "burner", "burners", "heater", "gas", "jets", "regulator")
                ? BURNER
                : has(said, "fan", "fans", "blower")
                        ? FAN
                        : has(said, "duct", "ducts", "chimney", "cyclone", "chaff", "flue", "pipes")
                                ? DUCTS
                                : has(said, "drum", "bearing", "bearings") ? DRUM : OTHER;
    }

    private static boolean has(List<String> said, String... words) {
        return said.stream().anyMatch(Set.of(words)::contains);
    }

    @Override
    public String toString() {
        return words;
    }
}
