package parchment.stats;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Holds the numerics to the order of their subjects on the maintainer's page, and finds what nothing asks any more. */
class SubjectsOfStatsTest {
    private static final JavaClasses LIBRARY = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("parchment");

    /** Waiting for work that is begun, with the reason in decision 21. */
    private static final Set<String> WAITING = Set.of("GaussianProcess", "NonlinearModel", "ForestModel", "ResponseCurve", "LikelihoodRatio");

    private static List<String> order() throws IOException {
        return Files.readString(Path.of("..", "docs", "architecture.md"))
                .lines()
                .filter(line -> line.matches("\\| `stats\\.\\w+` \\|.*|\\| `stats` \\| the front.*"))
                .map(line -> "parchment." + line.substring(3, line.indexOf('`', 3)))
                .toList();
    }

    @Test
    void aSubjectUsesOnlyThoseAboveIt() throws IOException {
        List<String> order = order();
        assertEquals(
                LIBRARY.stream()
                        .map(type -> type.getPackageName())
                        .filter(name -> name.startsWith("parchment.stats"))
                        .collect(Collectors.toCollection(TreeSet::new)),
                new TreeSet<>(order));
        for (int i = 0; i + 1 < order.size(); i++) {
            noClasses()
                    .that()
                    .resideInAPackage(order.get(i))
                    .should()
                    .dependOnClassesThat(
                            resideInAnyPackage(order.subList(i + 1, order.size()).toArray(String[]::new)))
                    .check(LIBRARY);
        }
    }

    @Test
    void everyPublicTypeIsAskedByAnotherPackage() {
        Set<String> unasked = LIBRARY.stream()
                .filter(type -> type.getPackageName().startsWith("parchment.stats"))
                .filter(type -> !type.getPackageName().equals("parchment.stats.warp"))
                .filter(type -> type.getModifiers().contains(com.tngtech.archunit.core.domain.JavaModifier.PUBLIC))
                .filter(type -> type.isTopLevelClass() && !type.getSimpleName().equals("package-info"))
                .filter(type -> type.getDirectDependenciesToSelf().stream()
                        .noneMatch(use -> !use.getOriginClass().getPackageName().equals(type.getPackageName())))
                .map(type -> type.getSimpleName())
                .collect(Collectors.toCollection(TreeSet::new));
        unasked.removeAll(WAITING);
        assertEquals(Set.of(), unasked);
    }
}
