package parchment.launcher;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import parchment.display.Showable;
import parchment.display.answer.InShort;
import parchment.logbook.Logbook;
import parchment.logbook.contents.Cautions;
import parchment.notebook.OurPage;

/** Writes a card as a page of its own and says its first sentences in the terminal. */
final class CardPage {
    /**
     * Holds a card that was made.
     *
     * @param title the page's title
     * @param inShort its first sentences
     * @param shown the whole card
     */
    record Made(String title, InShort inShort, Showable shown) {}

    private CardPage() {}

    /**
     * Makes a card of the logbook and writes it.
     *
     * @param logbook the folder that was named, or null for the one of the session
     * @param out the page that was named, or null for the usual one
     * @param usual the name of the usual page, inside the project's folder 'out'
     */
    static int write(
            @Nullable Path logbook,
            @Nullable Path out,
            String usual,
            PrintWriter terminal,
            Function<Logbook, Made> card)
            throws IOException {
        Places places = Places.here();
        LogbookChoice choice = LogbookChoice.of(logbook, places);
        choice.asProperty();
        Path page = OutputPlace.named("--out", out, places.home().resolve("out").resolve(usual));
        try (MadeFolders folders = MadeFolders.begin()) {
            folders.page(page, choice);
            Logbook read = Logbook.open();
            Made made = card.apply(read);
            folders.write(() -> OurPage.write(page, PrintedPage.of(made.title(), made.shown())));
            if (read.provenance() == Logbook.Provenance.INVENTED) {
                terminal.println(Cautions.INVENTED_MACHINE);
            }
            terminal.println(made.inShort().text());
            terminal.println("Page:      " + page);
            terminal.flush();
        }
        return 0;
    }
}
