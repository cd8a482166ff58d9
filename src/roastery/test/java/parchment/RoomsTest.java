package parchment;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noMethods;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaMember;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Holds the rooms of the library apart: a room uses only those above it in this list. */
class RoomsTest {
    /** The rooms from the top down; rooms on one line do not know each other. */
    private static final List<Set<String>> ROOMS = List.of(
            Set.of("file"),
            Set.of("quantity"),
            Set.of("stats"),
            Set.of("display"),
            Set.of("control"),
            Set.of("chart"),
            Set.of("curve"),
            Set.of("sheet"),
            Set.of("logbook"),
            Set.of("gather"),
            Set.of("calendar"),
            Set.of("phase"),
            Set.of("period"),
            Set.of("align"),
            Set.of("feature"),
            Set.of("table", "picture"),
            Set.of("learning"),
            Set.of("evidence"),
            Set.of("drift"),
            Set.of("trial"),
            Set.of("card"),
            Set.of("machine"),
            Set.of("panel"),
            Set.of("virtual"),
            Set.of("lesson"));

    /**
     * What the numerics may use from further down, so that a fitted model shows itself, and so that long work says how far it is and can
     * be stopped (docs/decisions/0004).
     */
    private static final DescribedPredicate<JavaClass> SHOWN_TO_NUMERICS = JavaClass.Predicates.equivalentTo(
                    parchment.display.Showable.class)
            .or(JavaClass.Predicates.equivalentTo(parchment.display.Progress.class))
            .or(JavaClass.Predicates.equivalentTo(parchment.display.Interruption.class));

    private static final JavaClasses LIBRARY = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .withImportOption(location -> !location.contains("-tests.jar"))
            .importPackages("parchment");

    @Test
    void aRoomUsesOnlyTheRoomsAboveIt() {
        for (int i = 0; i < ROOMS.size(); i++) {
            List<String> below = new ArrayList<>();
            ROOMS.subList(i + 1, ROOMS.size())
                    .forEach(level -> level.forEach(room -> below.add("parchment." + room + "..")));
            for (String room : ROOMS.get(i)) {
                if (!below.isEmpty()) {
                    noClasses()
                            .that()
                            .resideInAPackage("parchment." + room + "..")
                            .should()
                            .dependOnClassesThat(resideInAnyPackage(below.toArray(String[]::new))
                                    .and(not(SHOWN_TO_NUMERICS)))
                            .allowEmptyShould(true)
                            .check(LIBRARY);
                }
            }
        }
    }

    /** Every room may write files, but the maintainer's page says which do. */
    @Test
    void theMaintainersPageNamesTheRoomsThatUseFiles() throws IOException {
        String page = Files.readString(Path.of("..", "docs", "architecture.md"));
        Set<String> using = LIBRARY.stream()
                .filter(c -> c.getDirectDependenciesFromSelf().stream()
                        .anyMatch(d -> d.getTargetClass().getPackageName().equals("parchment.file")))
                .map(c -> c.getPackageName().split("\\.")[1])
                .filter(room -> !room.equals("file"))
                .collect(Collectors.toSet());
        Set<String> named = page.lines()
                .filter(line -> line.matches("\\| `\\w+` \\|.*"))
                .filter(line -> line.substring(line.lastIndexOf(" | ", line.length() - 3))
                        .contains("`file`"))
                .map(line -> line.substring(3, line.indexOf('`', 3)))
                .collect(Collectors.toSet());
        assertEquals(using, named);
        assertTrue(using.contains("logbook"), using.toString());
    }

    @Test
    void everyClassLivesInARoom() {
        String[] rooms = ROOMS.stream()
                .flatMap(Set::stream)
                .map(room -> "parchment." + room + "..")
                .toArray(String[]::new);
        classes().should().resideInAnyPackage(rooms).check(LIBRARY);
    }

    @Test
    void theNumericsKnowNothingOfCoffee() {
        Set<String> allowed = Set.of("parchment.stats");
        noClasses()
                .that()
                .resideInAPackage("parchment.stats..")
                .should()
                .dependOnClassesThat(new DescribedPredicate<JavaClass>("are in another room") {
                    @Override
                    public boolean test(JavaClass used) {
                        return used.getPackageName().startsWith("parchment.")
                                && !SHOWN_TO_NUMERICS.test(used)
                                && allowed.stream().noneMatch(used.getPackageName()::startsWith);
                    }
                })
                .allowEmptyShould(true)
                .check(LIBRARY);
    }

    @Test
    void eachLibraryOfOthersStaysBehindOneRoom() {
        onlyIn("org.knowm.xchart..", "picture");
        onlyIn("smile..", "learning");
        onlyIn("tech.tablesaw..", "table");
        onlyIn("org.apache.commons.csv..", "sheet", "logbook", "gather", "virtual", "lesson");
        onlyIn("org.dhatim.fastexcel..", "sheet");
        onlyIn("com.github.miachm.sods..", "sheet");
        noClasses()
                .that()
                .resideInAPackage("parchment..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("org.dflib..", "io.github.spencerpark..", "jdk.jshell..")
                .check(LIBRARY);
    }

    @Test
    void hipparchusNeverShowsInAPublicSignature() {
        noMethods()
                .that()
                .arePublic()
                .and()
                .areDeclaredInClassesThat()
                .arePublic()
                .should()
                .haveRawReturnType(JavaClass.Predicates.resideInAPackage("org.hipparchus..")
                        .as("a type of Hipparchus"))
                .orShould()
                .haveRawParameterTypes(new DescribedPredicate<>("a type of Hipparchus") {
                    @Override
                    public boolean test(List<JavaClass> parameters) {
                        return parameters.stream()
                                .anyMatch(p -> p.getPackageName().startsWith("org.hipparchus"));
                    }
                })
                .allowEmptyShould(true)
                .check(LIBRARY);
    }

    @Test
    void noStateIsSharedBetweenSessions() {
        fields().that()
                .areStatic()
                .and()
                .areDeclaredInClassesThat()
                .resideInAPackage("parchment..")
                .should()
                .beFinal()
                .check(LIBRARY);
    }

    @Test
    void noTwoClassesShareAName() {
        Map<String, List<String>> homes = LIBRARY.stream()
                .filter(c -> !c.getName().contains("$") && !c.getSimpleName().equals("package-info"))
                .collect(Collectors.groupingBy(
                        JavaClass::getSimpleName,
                        TreeMap::new,
                        Collectors.mapping(JavaClass::getPackageName, Collectors.toList())));
        homes.values().removeIf(packages -> packages.size() == 1);
        assertEquals(Map.of(), homes);
    }

    @Test
    void nothingIsCalledAHelper() {
        List<String> vague = List.of("util", "helper", "manager", "common");
        List<String> found = LIBRARY.stream()
                .filter(c -> vague.stream().anyMatch(word -> nameOf(c).contains(word)))
                .map(JavaClass::getName)
                .collect(Collectors.toList());
        org.junit.jupiter.api.Assertions.assertEquals(List.of(), found);
    }

    @Test
    void everyPublicClassIsFinalOrAnInterface() {
        classes()
                .that()
                .arePublic()
                .and()
                .areNotInterfaces()
                .and()
                .doNotHaveModifier(JavaModifier.ABSTRACT)
                .and()
                .areNotEnums()
                .should()
                .haveModifier(JavaModifier.FINAL)
                .check(LIBRARY);
    }

    @Test
    void publicMethodsTakeNoBooleans() {
        noMethods()
                .that()
                .arePublic()
                .and()
                .areDeclaredInClassesThat()
                .arePublic()
                .and(new DescribedPredicate<JavaMember>("are not a record's own") {
                    @Override
                    public boolean test(JavaMember member) {
                        return !member.getOwner().isRecord()
                                && !member.getName().equals("equals");
                    }
                })
                .should()
                .haveRawParameterTypes(new DescribedPredicate<>("a boolean") {
                    @Override
                    public boolean test(List<JavaClass> parameters) {
                        return parameters.stream().anyMatch(p -> p.isEquivalentTo(boolean.class));
                    }
                })
                .check(LIBRARY);
    }

    private void onlyIn(String others, String... rooms) {
        String[] packages = java.util.Arrays.stream(rooms)
                .map(room -> "parchment." + room + "..")
                .toArray(String[]::new);
        noClasses()
                .that()
                .resideOutsideOfPackages(packages)
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(others)
                .allowEmptyShould(true)
                .check(LIBRARY);
    }

    private static String nameOf(JavaClass c) {
        return c.getName().toLowerCase(Locale.ROOT);
    }
}
