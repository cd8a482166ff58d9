package parchment.kernel.words;

import java.lang.module.ModuleDescriptor.Exports;
import java.lang.reflect.Modifier;
import java.util.List;
import java.util.stream.Collectors;

/** The types that Java itself brings and that are not imported for a session. */
final class JavaTypes {
    private static final int AT_MOST = 3;

    private JavaTypes() {}

    /** Returns the line that would make a name known, as a sentence after a space; an empty text where Java has no such type. */
    static String howToImport(String name) {
        if (!Character.isUpperCase(name.charAt(0))) {
            return "";
        }
        List<String> lines = packages().stream()
                .filter(place -> isPublicType(place + "." + name))
                .map(place -> "`import " + place + "." + name + ";`")
                .limit(AT_MOST)
                .collect(Collectors.toList());
        return lines.isEmpty() ? "" : " Java has it; write: " + String.join(" or ", lines);
    }

    private static List<String> packages() {
        return ModuleLayer.boot().modules().stream()
                .flatMap(module -> module.getDescriptor().exports().stream())
                .filter(exported -> !exported.isQualified())
                .map(Exports::source)
                .filter(place -> place.startsWith("java.") || place.startsWith("javax."))
                .sorted()
                .toList();
    }

    private static boolean isPublicType(String name) {
        try {
            Class<?> type = Class.forName(name, false, ClassLoader.getPlatformClassLoader());
            return Modifier.isPublic(type.getModifiers());
        } catch (ClassNotFoundException | LinkageError e) {
            return false;
        }
    }
}
