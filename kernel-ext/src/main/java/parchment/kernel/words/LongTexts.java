package parchment.kernel.words;

import com.sun.source.tree.BinaryTree;
import com.sun.source.tree.ClassTree;
import com.sun.source.tree.ExpressionTree;
import com.sun.source.tree.IdentifierTree;
import com.sun.source.tree.LiteralTree;
import com.sun.source.tree.MemberSelectTree;
import com.sun.source.tree.ParenthesizedTree;
import com.sun.source.tree.Tree;
import com.sun.source.tree.VariableTree;
import com.sun.source.util.TreeScanner;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import javax.lang.model.element.Modifier;
import org.jspecify.annotations.Nullable;
import parchment.kernel.source.CellSplitter;
import parchment.kernel.source.CellText;
import parchment.kernel.source.Syntax;

/**
 * Finds a text in a cell that is longer than a class file can hold, before the compiler does: it tells of it half-way through writing
 * the class, and each later cell of the session would fail by it.
 *
 * @see <a href="https://docs.oracle.com/javase/specs/jvms/se17/html/jvms-4.html#jvms-4.4.7">The Java Virtual Machine Specification,
 *     4.4.7: a text's length in bytes is held in two bytes</a>
 */
public final class LongTexts {
    /** One less than the specification's, because the compiler itself takes no more letters than that. */
    static final int MOST_BYTES = 65_534;

    /** A cell shorter than this holds no such text, unless it adds one to itself many times. */
    private static final int SHORT_CELL = 4_000;

    /** A constant shorter than this is not kept: a short cell could not add enough of them up. */
    private static final int KEPT_FROM = 500;

    private static final Pattern DECLARES_A_TYPE = Pattern.compile("\\b(?:class|interface|enum|record)\\s");

    /** Constants of types that earlier cells have declared, as cells name them ({@code Texts.HEAD}), with their bytes. */
    private final Map<String, Long> constants = new HashMap<>();

    /** Returns the same, to which what is kept from now on is not added. */
    public LongTexts copy() {
        LongTexts copy = new LongTexts();
        copy.constants.putAll(constants);
        return copy;
    }

    /** Keeps the long constants of the types that a part of a cell declares, which a later one may join: the compiler makes one text of them. */
    public void keep(CellSplitter.Part part) {
        if (part.source().length() < KEPT_FROM && constants.isEmpty()
                || !DECLARES_A_TYPE.matcher(part.source()).find()) {
            return;
        }
        Syntax.read(part.source()).ifPresent(read -> {
            Finder finder = new Finder(constants);
            finder.scan(read.tree(), null);
            finder.types.forEach(type -> constants.keySet().removeIf(name -> name.startsWith(type + ".")));
            finder.ofTypes.forEach((name, bytes) -> {
                if (bytes >= KEPT_FROM) {
                    constants.put(name, bytes);
                }
            });
        });
    }

    private boolean mentionsConstant(String source) {
        return constants.keySet().stream().anyMatch(name -> source.contains(name.substring(name.lastIndexOf('.') + 1)));
    }

    /** Returns why the part of a cell cannot be run, if it holds such a text. */
    public Optional<CellError> refusal(CellText cell, CellSplitter.Part part) {
        if (part.source().length() < SHORT_CELL && !mentionsConstant(part.source())) {
            return Optional.empty();
        }
        return Syntax.read(part.source()).flatMap(read -> {
            Finder finder = new Finder(constants);
            finder.scan(read.tree(), null);
            return finder.found == null
                    ? Optional.empty()
                    : Optional.of(refusal(cell, part.offset() + read.placeOf(finder.found), finder.bytes));
        });
    }

    private static CellError refusal(CellText cell, int place, long bytes) {
        int line = cell.line(place);
        String words = String.format(
                Locale.ROOT,
                "This text is %,d bytes long, and Java takes at most %,d between quotes. Save it as a file, and read it with"
                        + " `Files.readString(Path.of(\"name-of-the-file\"))`.",
                bytes,
                MOST_BYTES);
        String begin = cell.lineText(line);
        String shown = begin.length() > 80 ? begin.substring(0, 80) + "..." : begin;
        return new CellError(
                CompileErrors.NAME,
                "Line " + line + ": " + words,
                new ArrayList<>(List.of("Line " + line + ":  " + shown.strip(), words)));
    }

    /** Returns how many bytes a text takes in a class file. */
    static long bytes(String text) {
        return text.chars()
                .mapToLong(c -> c == 0 || c >= 0x80 && c < 0x800 ? 2 : c < 0x80 ? 1 : 3)
                .sum();
    }

    /** Adds up texts as the compiler does, which makes one of those that are joined by a plus sign. */
    private static final class Finder extends TreeScanner<@Nullable Void, @Nullable Void> {
        private static final long NO_CONSTANT = -1;

        /** The class around a snippet that is read by itself; what stands directly in it is no member of a type of the cell's. */
        private static final String AROUND = "P";

        private final Map<String, Long> named;
        private final Map<String, Long> ofTypes = new HashMap<>();
        private final List<String> types = new ArrayList<>();
        private final Deque<String> inside = new ArrayDeque<>();
        private final Deque<Tree.Kind> kinds = new ArrayDeque<>();
        private @Nullable Tree found;
        private long bytes;

        Finder(Map<String, Long> constants) {
            named = new HashMap<>(constants);
        }

        @Override
        public @Nullable Void visitClass(ClassTree type, @Nullable Void nothing) {
            String name = type.getSimpleName().toString();
            boolean around = inside.isEmpty() && name.equals(AROUND);
            String whole = inside.isEmpty() || inside.getLast().isEmpty() ? name : inside.getLast() + "." + name;
            inside.addLast(around ? "" : whole);
            kinds.addLast(type.getKind());
            if (!around) {
                types.add(whole);
            }
            super.visitClass(type, nothing);
            inside.removeLast();
            kinds.removeLast();
            return null;
        }

        @Override
        public @Nullable Void scan(@Nullable Tree tree, @Nullable Void nothing) {
            if (found == null && tree instanceof ExpressionTree expression) {
                long length = length(expression);
                if (length > MOST_BYTES) {
                    found = expression;
                    bytes = length;
                }
                if (length != NO_CONSTANT) {
                    return null; // Looked at as a whole.
                }
            }
            return found == null ? super.scan(tree, nothing) : null;
        }

        @Override
        public @Nullable Void visitVariable(VariableTree variable, @Nullable Void nothing) {
            ExpressionTree value = variable.getInitializer();
            boolean ofInterface = !kinds.isEmpty() && kinds.getLast() == Tree.Kind.INTERFACE;
            if (value != null
                    && (ofInterface || variable.getModifiers().getFlags().contains(Modifier.FINAL))) {
                long length = length(value);
                String name = variable.getName().toString();
                named.put(name, length);
                boolean constant =
                        ofInterface || variable.getModifiers().getFlags().contains(Modifier.STATIC);
                if (constant && !inside.isEmpty() && !inside.getLast().isEmpty()) {
                    named.put(inside.getLast() + "." + name, length);
                    ofTypes.put(inside.getLast() + "." + name, length);
                }
            }
            return super.visitVariable(variable, nothing);
        }

        private long length(ExpressionTree expression) {
            if (expression instanceof LiteralTree literal && literal.getValue() != null) {
                return bytes(literal.getValue().toString());
            }
            if (expression instanceof ParenthesizedTree inner) {
                return length(inner.getExpression());
            }
            if (expression instanceof IdentifierTree name) {
                return named.getOrDefault(name.getName().toString(), NO_CONSTANT);
            }
            if (expression instanceof MemberSelectTree) {
                return named.getOrDefault(expression.toString(), NO_CONSTANT);
            }
            if (expression instanceof BinaryTree sum && sum.getKind() == Tree.Kind.PLUS) {
                long right = length(sum.getRightOperand());
                long left = right == NO_CONSTANT ? NO_CONSTANT : length(sum.getLeftOperand());
                return left == NO_CONSTANT ? NO_CONSTANT : left + right;
            }
            return NO_CONSTANT;
        }
    }
}
