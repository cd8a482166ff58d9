package parchment.launcher;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import parchment.card.Overview;
import parchment.logbook.Logbook;

/** Writes the start page of a logbook as it stands when all of it is worked out, for the contact sheet: {@code FILE --logbook FOLDER}. */
final class WrittenStartPage {
    private WrittenStartPage() {}

    /** Writes the page. */
    public static void main(String[] arguments) throws IOException {
        Path file = Path.of(arguments[0]);
        Path folder = Path.of(arguments[2]);
        Logbook logbook = Logbook.open(folder);
        StartPage page = new StartPage(folder, Places.here().notebooks());
        Path kernel = Files.createTempDirectory("kernel");
        String address = page.openIn(kernel, NotebookServer.LAB);
        page.isOf(logbook);
        for (Overview.Part part : Overview.Part.values()) {
            page.put(part.of(logbook));
        }
        Path written = kernel.resolve(address.substring(address.lastIndexOf('/') + 1));
        Files.move(written, file, StandardCopyOption.REPLACE_EXISTING);
        Files.delete(kernel);
    }
}
