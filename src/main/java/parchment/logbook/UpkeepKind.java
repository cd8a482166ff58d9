package parchment.logbook;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * Says what a piece of work on a machine was, as far as readings are concerned.
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
            Set.of("probe", "probes", "thermocouple", "thermocouples", "sensor", "sensors");
    private static final Set<String> MOVED = Set.of(
            "moved", "move", "moving", "shifted", "reseated", "repositioned", "lowered", "raised", "turned", "deeper");
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
    private static final Set<String> IN_AIR =
            Set.of("air", "exhaust", "environment", "inlet", "stack", "chimney", "ambient", "room");
    private static final Set<String> NOT =
            Set.of("not", "no", "never", "without", "before", "planned", "order", "ordered");

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
    static Optional<UpkeepKind> written(String text) {
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
    static List<String> allWords() {
        return List.of(values()).stream().map(UpkeepKind::words).toList();
    }

    /**
     * Proposes a kind from free words: a part of a sentence that names a probe and says that it was moved or replaced. Each part between commas,
     * semicolons, full stops and "and" is read by itself, so that "ducts cleaned, probe not touched" moves no probe.
     */
    static UpkeepKind proposed(String what) {
        UpkeepKind best = OTHER;
        for (String part : what.toLowerCase(Locale.ROOT).split("[,;.:()]|\\band\\b")) {
            List<String> said = List.of(part.strip().split("[^\\p{L}\\p{N}]+"));
            UpkeepKind kind = ofPart(said);
            if (kind.changesTheBeanProbe()) {
                return kind;
            }
            best = best == OTHER ? kind : best;
        }
        return best;
    }

    /** Says whether words name a probe without saying what was done to it, so that no kind can be proposed. */
    static boolean namesAProbeOnly(String what) {
        List<String> said = List.of(what.strip().toLowerCase(Locale.ROOT).split("[^\\p{L}\\p{N}]+"));
        return said.stream().anyMatch(PROBES::contains)
                && said.stream().allMatch(word -> PROBES.contains(word) || word.equals("bean") || word.equals("the"));
    }

    /** Says whether words name a probe that is not one in the air. */
    static boolean namesABeanProbe(String what) {
        for (String part : what.toLowerCase(Locale.ROOT).split("[,;.:()]|\\band\\b")) {
            List<String> said = List.of(part.strip().split("[^\\p{L}\\p{N}]+"));
            if (said.stream().anyMatch(PROBES::contains) && said.stream().noneMatch(IN_AIR::contains)) {
                return true;
            }
        }
        return false;
    }

    private static UpkeepKind ofPart(List<String> said) {
        boolean denied = said.stream().anyMatch(NOT::contains);
        if (said.stream().anyMatch(PROBES::contains)) {
            boolean moved = said.stream().anyMatch(MOVED::contains);
            boolean replaced = said.stream().anyMatch(REPLACED::contains);
            if (denied || !(moved || replaced)) {
                return OTHER;
            }
            if (said.stream().anyMatch(IN_AIR::contains)) {
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
