package parchment.contract;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import parchment.logbook.Logbook;

/**
 * Makes a contact sheet of every page and picture of the product (DEVELOPERS.md, "Look at everything").
 *
 * <p>{@code FOLDER [pages] [launcher] [pictures] [sheets] [LOGBOOK...]}, run in {@code src}: the four steps, or those named; of the five logbooks, or those
 * named. {@code pages} writes the pages of
 * every result for five logbooks, {@code launcher} those of every command, {@code pictures} has a browser take pictures of what is there and list the flaws
 * it can measure in {@code flaws.txt}, {@code sheets} puts them on sheets.
 */
final class ContactSheet {
    private static final List<String> STEPS = List.of("pages", "launcher", "pictures", "sheets");

    /** The endings of the pictures' names: widths, the dark page, paper. */
    private static final List<String> WAYS = List.of("1200", "800", "400", "dark", "print");

    private static final Path BROWSER = Path.of("..", "kernel-ext", "src", "test", "browser");

    private ContactSheet() {}

    /** Makes the sheets. */
    public static void main(String[] arguments) throws IOException, InterruptedException {
        if (arguments.length == 0) {
            System.err.println("Say the folder that the pages and sheets are to be written into.");
            return;
        }
        Path folder = Path.of(arguments[0]).toAbsolutePath().normalize();
        List<String> named = List.of(arguments).subList(1, arguments.length);
        List<String> steps = named.stream().anyMatch(STEPS::contains) ? named : STEPS;
        Path pages = Files.createDirectories(folder.resolve("pages"));
        Map<String, Path> logbooks = PictureLogbooks.in(Files.createDirectories(folder.resolve("logbooks")));
        if (logbooks.keySet().stream().anyMatch(named::contains)) {
            logbooks.keySet().retainAll(named);
        }
        if (steps.contains("pages")) {
            PicturePages writer = new PicturePages();
            for (Map.Entry<String, Path> logbook : logbooks.entrySet()) {
                long began = System.nanoTime();
                Path own = pages.resolve(logbook.getKey());
                int count = writer.write(Logbook.open(logbook.getValue()), own).size();
                System.out.printf(
                        "%s: %d pages, %d s%n", logbook.getKey(), count, (System.nanoTime() - began) / 1_000_000_000);
            }
        }
        if (steps.contains("launcher")) {
            LauncherPages.write(logbooks, pages);
        }
        if (steps.contains("pictures")) {
            Process browser = new ProcessBuilder("node", "pictures.mjs", folder.toString())
                    .directory(BROWSER.toFile())
                    .inheritIO()
                    .start();
            System.out.println("pictures: ended with " + browser.waitFor());
        }
        if (steps.contains("sheets")) {
            sheets(folder);
        }
    }

    private static void sheets(Path folder) throws IOException {
        Path pictures = folder.resolve("pictures");
        Map<String, List<Thumbnails.Named>> groups = new LinkedHashMap<>();
        try (Stream<Path> files = Files.walk(pictures)) {
            for (Path file : files.filter(each -> each.toString().endsWith(".png"))
                    .sorted()
                    .toList()) {
                String name = pictures.relativize(file).toString().replace('\\', '/');
                String group = name.substring(0, name.indexOf('/'));
                for (String way : WAYS) {
                    if (name.endsWith("." + way + ".png")) {
                        groups.computeIfAbsent(group + "-" + way, each -> new ArrayList<>())
                                .add(new Thumbnails.Named(
                                        name.substring(group.length() + 1, name.length() - way.length() - 5), file));
                    }
                }
            }
        }
        for (Map.Entry<String, List<Thumbnails.Named>> group : groups.entrySet()) {
            System.out.println(Thumbnails.write(group.getValue(), folder.resolve("sheets"), group.getKey())
                            .size() + " sheets " + group.getKey());
        }
    }
}
