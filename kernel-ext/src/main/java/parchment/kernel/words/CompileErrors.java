package parchment.kernel.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import jdk.jshell.Diag;
import jdk.jshell.SourceCodeAnalysis;
import parchment.kernel.source.Brackets;
import parchment.kernel.source.CellSplitter;
import parchment.kernel.source.CellText;

/** Explains in plain words why a cell is not valid Java, where, and what was most likely meant. */
public final class CompileErrors {
    public static final String NAME = "Not valid Java";
    private static final int AT_MOST = 3;

    private final CompilerWords words;

    /** @param failed variables whose cell failed, so that they have no value */
    public CompileErrors(SourceCodeAnalysis analysis, Set<String> failed) {
        this.words = new CompilerWords(new UnknownNames(analysis, failed));
    }

    /** Explains the diagnostics of one part of a cell; at most three, since the first ones tend to cause the rest. */
    public CellError explain(CellText cell, CellSplitter.Part part, List<Diag> diagnostics) {
        List<String> lines = new ArrayList<>();
        String first = "";
        for (Diag diagnostic :
                diagnostics.stream().filter(Diag::isError).limit(AT_MOST).toList()) {
            int place = place(part, diagnostic);
            Optional<String> stray = strayBracket(part);
            Optional<String> slip = stray.isPresent() ? stray : Slips.in(cell.lineText(cell.line(place)));
            String said = slip.orElseGet(() -> words.of(part.source(), diagnostic));
            if (first.isEmpty()) {
                first = "Line " + cell.line(place) + ": " + said;
            } else {
                lines.add("");
            }
            lines.addAll(cell.pointAt(place));
            lines.add(said);
            if (slip.isPresent() || CompilerWords.isConfusing(diagnostic)) {
                break;
            }
        }
        if (lines.isEmpty()) {
            first = "Java did not accept this cell, and gave no reason.";
            lines.add(first);
        }
        return new CellError(NAME, first, lines);
    }

    /** Explains a part that Java would take, and that surely was meant otherwise. */
    public static CellError lost(CellText cell, CellSplitter.Part part) {
        List<String> lines = new ArrayList<>(cell.pointAt(part.offset()));
        lines.add(Slips.LOST);
        return new CellError(NAME, Slips.LOST, lines);
    }

    /** Explains a cell that ends before what it began does. */
    public static CellError unfinished(CellText cell, CellSplitter.Part part) {
        Brackets.Open open = Brackets.lastOpen(part.source());
        List<String> lines = new ArrayList<>();
        String words;
        if (open == null) {
            lines.add(cell.mark(cell.line(cell.code().stripTrailing().length())));
            words = Slips.in(lastLine(cell)).orElse("The cell ends in the middle of a statement.");
        } else {
            lines.addAll(cell.pointAt(part.offset() + open.offset()));
            words = "The " + open.what() + " opened here is never closed: " + open.closing() + " is missing.";
        }
        lines.add(words);
        return new CellError(NAME, words, lines);
    }

    /** Says that what a cell has declared needs names that nobody has defined. */
    public static String notYet(List<String> declared, String missing) {
        int last = declared.size() - 1;
        String subject = last == 0
                ? declared.get(0) + " is"
                : String.join(", ", declared.subList(0, last)) + " and " + declared.get(last) + " are";
        return subject + " noted, but cannot be used yet: nothing here is named " + missing + ".";
    }

    /** Returns the names of what is missing, each once. */
    public static String names(List<String> missing) {
        return String.join(
                ", ", missing.stream().map(CompileErrors::bare).distinct().toList());
    }

    private static String lastLine(CellText cell) {
        return cell.lineText(cell.line(cell.code().stripTrailing().length()));
    }

    private static String bare(String dependency) {
        return "`" + dependency.replaceFirst("^(variable|method|class) ", "") + "`";
    }

    private static Optional<String> strayBracket(CellSplitter.Part part) {
        String code = part.source().strip();
        boolean stray = !code.isEmpty() && "}])".indexOf(code.charAt(0)) >= 0;
        return stray
                ? Optional.of("This " + code.charAt(0) + " closes nothing: no bracket before it is open.")
                : Optional.empty();
    }

    private static int place(CellSplitter.Part part, Diag diagnostic) {
        long position =
                diagnostic.getPosition() == Diag.NOPOS ? diagnostic.getStartPosition() : diagnostic.getPosition();
        return part.offset()
                + (int) Math.max(0, Math.min(position, part.source().length()));
    }
}
