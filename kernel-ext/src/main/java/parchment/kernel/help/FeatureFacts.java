package parchment.kernel.help;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.lang.model.element.Element;
import javax.lang.model.element.ExecutableElement;
import javax.lang.model.element.TypeElement;
import org.jspecify.annotations.Nullable;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.feature.kind.Need;
import parchment.kernel.help.DocPage.Block;
import parchment.kernel.help.DocPage.Span;
import parchment.kernel.help.DocPage.Term;
import parchment.quantity.TemperatureUnit;

/** What a feature says of itself: its unit, how it is measured, its family and what it needs. */
final class FeatureFacts {
    private FeatureFacts() {}

    /** Returns the facts of the built-in feature that a method gives; empty for any other element. */
    static Optional<List<Block>> of(Element element) {
        return feature(element).flatMap(FeatureFacts::of);
    }

    /** Returns the facts of a value if it is a feature. */
    static Optional<List<Block>> of(@Nullable Object value) {
        if (!(value instanceof Feature feature)) {
            return Optional.empty();
        }
        List<Term> facts = new ArrayList<>();
        facts.add(term("feature", feature.name()));
        facts.add(term("measured", feature.definition()));
        String symbol = feature.unit().symbol(TemperatureUnit.CELSIUS);
        facts.add(term("unit", symbol.isEmpty() ? "none" : symbol));
        String identity = feature.family().identity();
        facts.add(term("family", feature.family().words() + (identity.isEmpty() ? "" : ": " + identity)));
        if (!feature.needs().isEmpty()) {
            facts.add(term("needs", feature.needs().stream().map(Need::words).collect(Collectors.joining(", "))));
        }
        return Optional.of(List.of(new DocPage.Terms(facts)));
    }

    /** Returns how the built-in feature that a method gives is used; empty for any other element. */
    static Optional<Block> example(Element element) {
        return feature(element)
                .map(feature -> new DocPage.Code("BatchTable.of(logbook, " + element.getSimpleName() + "())"));
    }

    private static Optional<Feature> feature(Element element) {
        boolean named = element instanceof ExecutableElement method
                && method.getParameters().isEmpty()
                && method.getEnclosingElement() instanceof TypeElement owner
                && owner.getQualifiedName().contentEquals(Features.class.getName());
        if (!named) {
            return Optional.empty();
        }
        try {
            Object value =
                    Features.class.getMethod(element.getSimpleName().toString()).invoke(null);
            return value instanceof Feature feature ? Optional.of(feature) : Optional.empty();
        } catch (ReflectiveOperationException e) {
            return Optional.empty(); // Not a public method; it has no facts, then.
        }
    }

    private static Term term(String name, String meaning) {
        return new Term(name, List.of(Span.words(meaning)));
    }
}
