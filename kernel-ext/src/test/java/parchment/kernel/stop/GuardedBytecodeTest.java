package parchment.kernel.stop;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import parchment.kernel.cell.Evaluator;
import parchment.kernel.cell.RecordingPage;
import parchment.kernel.page.Outcome;

class GuardedBytecodeTest {
    /** Level of the class files of Java 1.0.2 up to 1.1, from which each Java counts one more (The Java Virtual Machine Specification, 4.1). */
    private static final int BEFORE_JAVA_1 = 44;

    private static byte[] classFile() throws IOException {
        try (InputStream in = GuardedBytecodeTest.class.getResourceAsStream("GuardedBytecodeTest.class")) {
            return in.readAllBytes();
        }
    }

    private static byte[] ofLevel(int major) throws IOException {
        byte[] file = classFile();
        file[6] = (byte) (major >> 8);
        file[7] = (byte) major;
        return file;
    }

    @Test
    void knowsTheClassFilesOfTheRunningJava() {
        assertTrue(
                GuardedBytecode.NEWEST >= BEFORE_JAVA_1 + Runtime.version().feature(),
                "the byte code library knows levels up to " + GuardedBytecode.NEWEST + ": take a newer one");
    }

    @Test
    void guardsEveryLevelItKnowsAndRefusesTheNext() throws IOException {
        assertFalse(GuardedBytecode.guard(ofLevel(GuardedBytecode.NEWEST)).length == classFile().length);
        assertThrows(IllegalArgumentException.class, () -> GuardedBytecode.guard(ofLevel(GuardedBytecode.NEWEST + 1)));
    }

    @Test
    void letsAClassOfANewerJavaRunAsItIsAndTellsOnce() throws IOException {
        Guarding guarding = new Guarding();
        byte[] newer = ofLevel(GuardedBytecode.NEWEST + 1);
        assertEquals(Optional.empty(), guarding.untold());
        assertArrayEquals(newer, guarding.guard(newer));
        guarding.guard(newer);
        assertEquals(
                Optional.of(
                        "Java " + Runtime.version().feature()
                                + " is newer than what guards the cells here: a cell runs all the"
                                + " same, but once stopped it may go on in the background, and an exit in it ends the session."),
                guarding.untold());
        guarding.guard(newer);
        assertEquals(Optional.empty(), guarding.untold());
    }

    @Test
    void aMethodThatIsTooLongWithItsChecksRunsWithoutThem() {
        StringBuilder method = new StringBuilder("int many(int n) {\n");
        for (int i = 0; i < 4_500; i++) {
            method.append("while (n > ").append(i + 40_000).append(") n--;\n");
        }
        RecordingPage page = new RecordingPage();
        try (Evaluator evaluator = Evaluator.open()) {
            assertTrue(evaluator.run(method + "return n; }", page).fine());
            assertTrue(evaluator.run("many(3)", page).fine());
        }
        assertEquals("3", page.result());
        assertEquals(
                "This cell is too long to be guarded: a cell runs all the same, but once stopped it may go on in the background, and"
                        + " an exit in it ends the session.\n",
                page.err());
    }

    @Test
    void guardsReferencesToMethodsOfEveryKind() {
        RecordingPage page = new RecordingPage();
        try (Evaluator evaluator = Evaluator.open()) {
            Outcome outcome = evaluator.run("""
                    interface Shouting { default Function<String, String> shout() { return String::toUpperCase; } }
                    class Loud implements Shouting { }
                    BinaryOperator<Integer> most = Math::max;
                    Function<Object, String> text = Object::toString;
                    Supplier<List<String>> made = ArrayList::new;
                    IntFunction<int[]> array = int[]::new;
                    var word = new StringBuilder("word");
                    IntSupplier length = word::length;
                    Supplier<String> boxed = Optional.of("in")::get;
                    LongBinaryOperator wide = Math::floorMod;
                    Comparator<String> order = Comparator.comparing(String::length);
                    Function<List<Integer>, Integer> size = Collection::size;
                    var kept = (Supplier<String> & java.io.Serializable) "kept"::toString;
                    most.apply(2, 3) + text.apply(4) + made.get() + array.apply(2).length + length.getAsInt() + boxed.get()
                            + wide.applyAsLong(7, 4) + order.compare("a", "ab") + size.apply(List.of(1)) + new Loud().shout().apply("x")
                            + kept.get()""", page);
            assertTrue(outcome.fine(), () -> outcome.error().orElseThrow().text());
        }
        assertEquals("34[]24in3-11Xkept", page.result());
    }
}
