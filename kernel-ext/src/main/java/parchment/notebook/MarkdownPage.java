package parchment.notebook;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import parchment.file.Rights;
import parchment.file.WholeFile;
import parchment.kernel.page.Shown;
import parchment.logbook.contents.Cautions;

/**
 * A notebook that ran, as a page of Markdown with its pictures in files beside it: for places that show Markdown and run no scripts, such as the sites
 * that show a project's files. Long tables are cut, and what is folded away stays folded.
 */
public final class MarkdownPage {
    /** Stands at the end of every page, so that only such pages are ever written over. */
    static final String SIGN = "This page was written by the command `run --markdown` of Parchment";

    private static final Pattern LINK = Pattern.compile("(\\]\\()([^()\\s]+)(\\))");
    private static final Pattern ELSEWHERE = Pattern.compile("[a-zA-Z][a-zA-Z+.-]*:.*|[#/].*");
    private static final Pattern NUMBERED = Pattern.compile("([0-9]+)\\.svg");

    private final Path notebookFile;
    private final Path folder;
    private final boolean invented;
    private final List<String> pictures = new ArrayList<>();
    private final StringBuilder text = new StringBuilder();
    private final MarkdownOutput.Wall wall = new MarkdownOutput.Wall() {
        @Override
        public String hang(String svg) {
            pictures.add(InlinePictures.alone(svg));
            return "![" + MarkdownText.escaped(InlinePictures.words(svg)) + "](" + place() + "/" + pictures.size()
                    + ".svg)";
        }

        @Override
        public String under() {
            return invented ? "*" + Cautions.INVENTED_MACHINE + "*" : "";
        }
    };

    private MarkdownPage(Path notebookFile, Path folder, boolean invented) {
        this.notebookFile = notebookFile.toAbsolutePath().normalize();
        this.folder = folder.toAbsolutePath().normalize();
        this.invented = invented;
    }

    /**
     * Returns the page of a notebook with its outputs.
     *
     * @param file where the notebook lies, to which its links lead
     * @param folder where the page is to lie
     */
    public static MarkdownPage of(Notebook ran, Path file, Path folder) {
        MarkdownPage page = new MarkdownPage(file, folder, isInvented(ran));
        page.fill(ran);
        return page;
    }

    private static boolean isInvented(Notebook ran) {
        return ran.cells().stream()
                .flatMap(cell -> cell.outputs().stream())
                .flatMap(output -> shown(output).stream())
                .anyMatch(shown -> shown.text().contains(Cautions.INVENTED_MACHINE));
    }

    private static Optional<Shown> shown(CellOutput output) {
        if (output instanceof CellOutput.Display display) {
            return Optional.of(display.shown());
        }
        return output instanceof CellOutput.Result result ? Optional.of(result.shown()) : Optional.empty();
    }

    private void fill(Notebook ran) {
        boolean begun = false;
        for (Cell cell : ran.cells()) {
            if (cell.kind() == Cell.Kind.MARKDOWN) {
                String words = withLinks(cell.source().strip());
                int end = words.startsWith("# ") && !begun ? (words + "\n").indexOf('\n') : 0;
                add(words.substring(0, end));
                if (!begun) {
                    begin();
                }
                add(words.substring(end));
            } else if (cell.kind() == Cell.Kind.CODE && !cell.source().isBlank()) {
                if (!begun) {
                    begin();
                }
                add(MarkdownText.fenced("java", cell.source()));
                cell.outputs().forEach(this::output);
            }
            begun = true;
        }
        if (invented) {
            add("> " + Cautions.INVENTED_PAGE);
        }
        add("*" + SIGN + "; what is to be changed is changed in the notebook.*");
    }

    private void begin() {
        if (invented) {
            add("> **" + Cautions.INVENTED_MACHINE + "**"
                    + Cautions.INVENTED_PAGE.substring(Cautions.INVENTED_MACHINE.length()));
        }
        String name = String.valueOf(notebookFile.getFileName());
        add("*The notebook [" + name + "](" + toNotebooks(inAddress(name))
                + ") as it ran. Long tables are cut, and what is folded away in the notebook stays folded.*");
    }

    private void output(CellOutput output) {
        if (output instanceof CellOutput.Printed printed) {
            add(MarkdownText.fenced("text", printed.text()));
        } else if (output instanceof CellOutput.Failed failed) {
            add(MarkdownText.fenced("text", failed.error().text()));
        }
        shown(output)
                .filter(shown -> !shown.text().equals(Cautions.INVENTED_PAGE))
                .ifPresent(this::add);
    }

    private void add(Shown shown) {
        String html = shown.forms().getOrDefault(Shown.HTML, shown.forms().getOrDefault(Shown.SVG, ""));
        String markdown = shown.forms().get("text/markdown");
        if (html.isEmpty() && markdown != null) {
            add(markdown);
            return;
        }
        if (html.isEmpty()) {
            add(MarkdownText.fenced("text", shown.text()));
            return;
        }
        int before = pictures.size();
        try {
            add(MarkdownOutput.of(html, wall));
        } catch (IllegalArgumentException e) { // Not ours: a cell may show any HTML.
            pictures.subList(before, pictures.size()).clear();
            add(MarkdownText.fenced("text", shown.text()));
        }
    }

    private void add(String paragraph) {
        if (!paragraph.isBlank()) {
            text.append(paragraph.strip()).append("\n\n");
        }
    }

    /** Where the pictures lie, seen from the page. */
    private String place() {
        return "pictures/" + inAddress(name());
    }

    /** Writes signs so that they do not end a link. */
    private static String inAddress(String path) {
        return path.replace("%", "%25").replace(" ", "%20").replace("(", "%28").replace(")", "%29");
    }

    private String name() {
        return String.valueOf(notebookFile.getFileName()).replaceFirst("\\.ipynb$", "");
    }

    private String withLinks(String words) {
        return LINK.matcher(words).replaceAll(link -> {
            String target = link.group(2);
            String leads = ELSEWHERE.matcher(target).matches() ? target : toNotebooks(target);
            return java.util.regex.Matcher.quoteReplacement(link.group(1) + leads + link.group(3));
        });
    }

    private String toNotebooks(String target) {
        Path from = notebookFile.resolveSibling("");
        Path way = folder.getRoot().equals(from.getRoot()) ? folder.relativize(from) : from;
        String lead = inAddress(way.toString().replace('\\', '/'));
        return lead.isEmpty() ? target : lead + "/" + target;
    }

    /** Returns the page's text. */
    public String text() {
        return text.toString().stripTrailing() + "\n";
    }

    /** Returns the pictures in their order, each the text of an SVG file that stands alone. */
    public List<String> pictures() {
        return List.copyOf(pictures);
    }

    /**
     * Checks that the page of that notebook can be written there without losing what somebody else wrote.
     *
     * @throws IOException if something of that name is there which is no such page; the message says what to do
     */
    public static void check(Path file, Path folder) throws IOException {
        Path page = new MarkdownPage(file, folder, false).file();
        if (Files.exists(page)
                && !(Files.isRegularFile(page) && Files.readString(page).contains(SIGN))) {
            throw new IOException(
                    "'" + page + "' is there already and is no page that 'run --markdown' wrote, so it was left as it"
                            + " is. Name another folder, or move that one away.");
        }
    }

    private Path file() {
        return folder.resolve(name() + ".md");
    }

    /**
     * Writes the page and its pictures, takes away pictures of an earlier page that this one has not, and returns the page's file.
     *
     * @throws IOException if it cannot be written, or something else of its name is there
     */
    public Path write() throws IOException {
        check(notebookFile, folder);
        Path aside = folder.resolve("pictures").resolve(name());
        Rights.USUAL.makeFolder(pictures.isEmpty() ? folder : aside);
        for (int i = 0; i < pictures.size(); i++) {
            WholeFile.at(aside.resolve(i + 1 + ".svg")).write(pictures.get(i));
        }
        WholeFile.at(file()).write(text());
        removeBeyond(aside);
        return file();
    }

    private void removeBeyond(Path aside) throws IOException {
        if (!Files.isDirectory(aside)) {
            return;
        }
        List<Path> old;
        try (Stream<Path> files = Files.list(aside)) {
            old = files.filter(file -> {
                        var number = NUMBERED.matcher(String.valueOf(file.getFileName()));
                        return number.matches()
                                && number.group(1).length() < 6
                                && Integer.parseInt(number.group(1)) > pictures.size();
                    })
                    .toList();
        }
        for (Path file : old) {
            Files.delete(file);
        }
    }
}
