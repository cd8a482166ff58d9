package parchment.jars;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class PomTextTest {
    private static final String SCALES =
            "<dependency><groupId>harbour.tools</groupId><artifactId>scales</artifactId><version>2.1</version>%s</dependency>";

    private static List<String> libraries(String text, String... scopes) {
        return PomText.parse(text, List.of(scopes)).libraries().stream()
                .map(Coordinate::toString)
                .toList();
    }

    @Test
    void readsAPieceAndAWholeAlike() {
        String piece = SCALES.formatted("");
        List<String> scales = List.of("harbour.tools:scales:2.1");
        assertEquals(scales, libraries(piece));
        assertEquals(scales, libraries("<dependencies>" + piece + "</dependencies>"));
        assertEquals(
                scales,
                libraries("<?xml version=\"1.0\"?>\n<project xmlns=\"http://maven.apache.org/POM/4.0.0\"><dependencies>"
                        + piece + "</dependencies></project>"));
    }

    @Test
    void takesTheScopesNamed() {
        String test = SCALES.formatted("<scope>test</scope>");
        assertTrue(assertThrows(IllegalArgumentException.class, () -> libraries(test))
                .getMessage()
                .startsWith("No dependency was found here"));
        assertEquals(1, libraries(test, "test").size());
        assertEquals(1, libraries(SCALES.formatted("<scope>runtime</scope>")).size());
    }

    @Test
    void putsInWhatTheTextSaysOfVersions() {
        assertEquals(List.of("harbour.tools:scales:2.1", "harbour.tools:blends:1.0"), libraries("""
                        <project>
                          <version>1.0</version>
                          <groupId>harbour.tools</groupId>
                          <properties><scales.version>2.1</scales.version></properties>
                          <dependencyManagement><dependencies><dependency>
                            <groupId>harbour.tools</groupId><artifactId>blends</artifactId><version>${project.version}</version>
                          </dependency></dependencies></dependencyManagement>
                          <dependencies>
                            <dependency><groupId>${project.groupId}</groupId><artifactId>scales</artifactId>
                              <version>${scales.version}</version></dependency>
                            <dependency><groupId>harbour.tools</groupId><artifactId>blends</artifactId></dependency>
                          </dependencies>
                        </project>
                        """));
    }

    @Test
    void saysWhichVersionIsMissing() {
        String words = assertThrows(
                        IllegalArgumentException.class,
                        () -> libraries("<dependency><groupId>a</groupId><artifactId>b</artifactId></dependency>"))
                .getMessage();
        assertTrue(words.startsWith("The dependency a:b has no version here."), words);
    }

    @Test
    void readsRepositoriesAndRefusesThoseWithoutEncryption() {
        String piece = SCALES.formatted("");
        String repository = "<repository><id>ours</id><url>%s</url></repository>";
        assertEquals(
                List.of(new Repository("ours", "https://maven.example.org/")),
                PomText.parse(repository.formatted("https://maven.example.org/") + piece, List.of())
                        .repositories());
        assertThrows(
                IllegalArgumentException.class,
                () -> libraries(repository.formatted("http://maven.example.org/") + piece));
    }

    @Test
    void saysThatItIsNoXml() {
        String words = assertThrows(IllegalArgumentException.class, () -> libraries("<dependency>"))
                .getMessage();
        assertTrue(words.startsWith("This is not whole XML, as a pom.xml is: "), words);
    }

    @Test
    void saysThatADoctypeIsNotRead() {
        assertEquals(
                "A pom.xml has no line that begins with <!DOCTYPE, and nothing that one names is read here. Take it out, and run"
                        + " the cell again.",
                assertThrows(
                                IllegalArgumentException.class,
                                () -> PomText.parse("<!DOCTYPE a [<!ENTITY b \"c\">]><project/>", List.of()))
                        .getMessage());
    }
}
