package parchment.contract;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import parchment.contract.ShowableExamples.Root;
import parchment.display.Html;
import parchment.display.Showable;
import parchment.logbook.Logbook;

/**
 * Writes each result that shows itself as a page or a picture, as the pages of {@code parchment run} would show it: one file for each line of
 * {@link ShowableExamples#ROOTS}, and one for each other class that can be had from those.
 */
final class PicturePages {
    private static final Path FORM = Path.of("..", "kernel-ext", "src", "main", "resources", "parchment", "notebook");

    /** What was written already, so that what does not depend on the logbook is shown once. */
    private final Set<String> written = new HashSet<>();

    private final String page;

    PicturePages() throws IOException {
        page = Files.readString(FORM.resolve("page.html"))
                .replace("@STYLE@", Files.readString(FORM.resolve("page.css")))
                .replace("@LANGUAGE@", "en");
    }

    /** Writes the pages of a logbook into a folder and returns the files by name. */
    Map<String, Path> write(Logbook logbook, Path folder) throws IOException {
        Map<String, Path> files = new TreeMap<>();
        for (Map.Entry<String, String> content : contents(logbook).entrySet()) {
            if (written.add(content.getKey() + content.getValue())) {
                Path file = folder.resolve(content.getKey() + ".html");
                Files.createDirectories(folder);
                Files.writeString(
                        file, page.replace("@TITLE@", content.getKey()).replace("@BODY@", content.getValue()));
                files.put(content.getKey(), file);
            }
        }
        return files;
    }

    /** Returns the bodies of the pages by name. What a logbook cannot be asked is there as the sentence it is answered with. */
    static Map<String, String> contents(Logbook logbook) {
        Map<String, String> contents = new LinkedHashMap<>();
        List<Root> roots = new ArrayList<>();
        Set<Class<?>> shown = new HashSet<>();
        ShowableExamples.ROOTS.forEach((name, make) -> {
            try {
                int number = 0;
                for (Object value : ShowableExamples.flat(make.apply(logbook))) {
                    roots.add(new Root(name, value));
                    if (value instanceof Showable showable) {
                        shown.add(value.getClass());
                        String called = name + (number == 0 ? "" : "-" + (number + 1));
                        number++;
                        body(showable).ifPresent(body -> contents.put(called, body));
                    }
                }
            } catch (ShowableExamples.NoBatchToAskAbout e) {
                // There is nothing that could be asked, so there is no answer to look at.
            } catch (RuntimeException e) {
                contents.put(name, "<pre class=\"error\">" + Html.escape(String.valueOf(e.getMessage())) + "</pre>");
            }
        });
        Map<String, Showable> others = new TreeMap<>();
        ShowableExamples.reachedFrom(roots).forEach((value, way) -> {
            if (!shown.contains(value.getClass())) {
                others.putIfAbsent(value.getClass().getSimpleName(), value);
            }
        });
        others.forEach((name, value) -> body(value).ifPresent(body -> contents.putIfAbsent(name, body)));
        return contents;
    }

    private static Optional<String> body(Showable value) {
        Optional<String> html = value.html();
        return html.isPresent()
                ? html.map(words -> "<div class=\"output\">" + words + "</div>")
                : value.svg().map(picture -> "<figure class=\"output\">" + picture + "</figure>");
    }
}
