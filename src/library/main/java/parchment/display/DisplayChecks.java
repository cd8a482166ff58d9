package parchment.display;

/** Refuses, in words, what {@link Display} cannot do anything with. */
final class DisplayChecks {
    private DisplayChecks() {}

    static String id(String id) {
        if (id.isBlank()) {
            throw new IllegalArgumentException(
                    "A place on the page needs a name, but was given an empty one. Give it any word: Display.show(\"count\", value).");
        }
        return id;
    }

    static <T> Class<T> toRegister(Class<T> type) {
        if (type.isPrimitive()) {
            throw new IllegalArgumentException(
                    "No value is of the class " + type
                            + ".class by the time it is shown: it is in a box then. Register Integer.class, Double.class and the like.");
        }
        if (Showable.class.isAssignableFrom(type)) {
            throw new IllegalArgumentException("A " + type.getSimpleName()
                    + " shows itself, so that nothing registered for it would be asked. Make what is to be shown of it:"
                    + " Display.show(Display.as(\"text/html\", ...)).");
        }
        return type;
    }

    static String className(String name) {
        if (name.isBlank()) {
            throw new IllegalArgumentException(
                    "Display.register needs the name of a class, as in com.example.Cup, but was given an empty"
                            + " one.");
        }
        return name.strip();
    }
}
