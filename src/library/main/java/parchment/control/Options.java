package parchment.control;

import java.util.List;
import java.util.stream.Collectors;

/** Checks what a list is chosen from. */
final class Options {
    private Options() {}

    static List<String> checked(String label, List<String> options) {
        if (options.isEmpty()) {
            throw new IllegalArgumentException("'" + label + "' needs something to choose from; its list is empty.");
        }
        List<String> twice =
                options.stream()
                        .collect(Collectors.groupingBy(option -> option, Collectors.counting()))
                        .entrySet()
                        .stream()
                        .filter(option -> option.getValue() > 1)
                        .map(option -> "'" + option.getKey() + "'")
                        .sorted()
                        .limit(3)
                        .toList();
        if (!twice.isEmpty()) {
            throw new IllegalArgumentException("What '" + label
                    + "' is chosen from has to differ; more than once in its list: " + String.join(", ", twice) + ".");
        }
        return List.copyOf(options);
    }

    static String known(String label, List<String> options, String value) {
        if (!options.contains(value)) {
            throw new IllegalArgumentException(
                    "'" + label + "' cannot be '" + value + "'. It is chosen from: " + listed(options) + ".");
        }
        return value;
    }

    static String listed(List<String> options) {
        return options.size() <= 6
                ? String.join(", ", options)
                : String.join(", ", options.subList(0, 5)) + " and " + (options.size() - 5) + " more";
    }
}
