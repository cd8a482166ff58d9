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
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Holds the numerics to the order of their subjects on the maintainer's page. */
class SubjectsOfStatsTest {
    private static final JavaClasses LIBRARY = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("parchment");

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
                    .dependOnClassesThat(resideInAnyPackage(
                            order.subList(i + 1, order.size()).toArray(String[]::new)))
                    .check(LIBRARY);
        }
    }
}
