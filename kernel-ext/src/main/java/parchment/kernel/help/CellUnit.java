package parchment.kernel.help;

import java.util.ArrayList;
import java.util.List;
import jdk.jshell.ImportSnippet;
import jdk.jshell.JShell;
import jdk.jshell.Snippet;
import jdk.jshell.SourceCodeAnalysis;
import parchment.kernel.source.Brackets;
import parchment.kernel.source.CellSplitter;
import parchment.kernel.source.CellSplitter.Part;
import parchment.kernel.source.Syntax;

/**
 * A cell with what the session knows, written as one source file: so the compiler can say what a name in the cell means, without
 * anything being run. The cell need not be finished.
 *
 * @param source the file
 * @param begin where the name in question begins in it
 */
record CellUnit(String source, int begin) {
    /** The class that stands for the session in the file. */
    static final String TYPE = "Session$";

    /** Returns the file for the name that begins and ends at the given places of the cell. */
    static CellUnit of(JShell shell, CellSplitter splitter, String code, int begin, int end) {
        List<Part> parts = splitter.split(code);
        Writer writer = new Writer(shell);
        for (int i = 0; i < parts.size(); i++) {
            Part part = parts.get(i);
            int next = i + 1 < parts.size() ? parts.get(i + 1).offset() : code.length() + 1;
            if (begin < next) {
                writer.addAsked(part, begin - part.offset(), end - part.offset());
                break;
            }
            writer.add(part.source());
        }
        return writer.unit();
    }

    private static final class Writer {
        private final SourceCodeAnalysis analysis;
        private final StringBuilder imports = new StringBuilder();
        private final StringBuilder members = new StringBuilder();
        private final StringBuilder body = new StringBuilder();
        private final List<Integer> place = new ArrayList<>();
        private StringBuilder asked = body;

        Writer(JShell shell) {
            analysis = shell.sourceCodeAnalysis();
            shell.imports()
                    .map(ImportSnippet::source)
                    .forEach(line -> imports.append(line).append('\n'));
            shell.variables()
                    .filter(variable -> !variable.name().startsWith("$"))
                    .forEach(variable -> members.append(variable.typeName().replace("REPL.", ""))
                            .append(' ')
                            .append(variable.name())
                            .append(";\n"));
            shell.types().forEach(type -> members.append(type.source()).append('\n'));
            shell.methods().forEach(method -> members.append(method.source()).append('\n'));
        }

        void add(String part) {
            place(part);
        }

        /** Adds the part with the name: whole if it can be read, and otherwise as much as goes up to the name. */
        void addAsked(Part part, int begin, int end) {
            String text = part.source();
            if (part.state() != CellSplitter.State.WHOLE) {
                String closed = text + closers(text);
                String cut = text.substring(0, Math.min(end, text.length()));
                text = Syntax.isJava(closed) ? closed : cut + closers(cut);
            }
            int start = place(text);
            place.add(start + begin);
        }

        /** Puts a snippet where Java wants it; returns where in its buffer it begins. */
        private int place(String snippet) {
            Snippet.Kind kind = analysis.sourceToSnippets(snippet).stream()
                    .findFirst()
                    .map(Snippet::kind)
                    .orElse(Snippet.Kind.ERRONEOUS);
            String lead = "";
            String text = snippet.stripTrailing();
            switch (kind) {
                case IMPORT -> asked = imports;
                case METHOD, TYPE_DECL -> asked = members;
                case EXPRESSION -> {
                    asked = body;
                    lead = "Object value$" + body.length() + " = ";
                    text = text.endsWith(";") ? text : text + ";";
                }
                default -> {
                    asked = body;
                    text = text.endsWith(";") || text.endsWith("}") ? text : text + ";";
                }
            }
            int start = asked.length() + lead.length();
            asked.append(lead).append(text).append('\n');
            return start;
        }

        CellUnit unit() {
            String head = imports + "class " + TYPE + " {\n";
            String middle = "Object cell$() throws Throwable {\n";
            int base = asked == imports
                    ? 0
                    : asked == members ? head.length() : head.length() + members.length() + middle.length();
            int begin = place.isEmpty() ? -1 : base + place.get(0);
            return new CellUnit(head + members + middle + body + "}\n}\n", begin);
        }

        private static String closers(String text) {
            StringBuilder closing = new StringBuilder();
            String sofar = text;
            for (var open = Brackets.lastOpen(sofar); open != null; open = Brackets.lastOpen(sofar)) {
                closing.append(open.closing());
                sofar += open.closing();
            }
            return closing.toString();
        }
    }
}
