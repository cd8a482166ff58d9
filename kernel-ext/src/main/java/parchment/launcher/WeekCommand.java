package parchment.launcher;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import parchment.drift.GreenNeeded;
import parchment.drift.Week;
import parchment.logbook.Logbook;
import parchment.logbook.contents.Cautions;
import parchment.notebook.OurPage;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Writes the page of the week, for those who want no code. */
@Command(
        name = "week",
        description = {
            "Writes one page about the last week of roasting: each batch against its lot's usual, what stands out and since when,"
                    + " what is worth cupping, and the green coffee that orders take, in the charges that you use.",
            "Open it in a browser, or print it."
        },
        footer = {"", "Example:", "  parchment week --logbook \"My Roasts\" --order \"Cinder Ridge=12kg\""},
        mixinStandardHelpOptions = true)
final class WeekCommand implements Callable<Integer> {
    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Option(
            names = "--logbook",
            paramLabel = "DIR",
            description = "The logbook folder to read; the demo logbook if not given.")
    private @Nullable Path logbook;

    @Option(
            names = "--order",
            paramLabel = "LOT=MASS",
            description = {
                "Roasted coffee to deliver, such as \"Cinder Ridge=12kg\" (kg, g, lb, oz), of a lot or of a blend in blends.csv.",
                "May be given more than once; orders of one lot add up."
            })
    private List<String> orders = List.of();

    @Option(
            names = "--out",
            paramLabel = "FILE",
            description = "The page to write; out/week.html of the project if not given.")
    private @Nullable Path out;

    /** A page that says what is missing is a page too, as for the other commands that write one: only what stopped it ends with 1. */
    @Override
    public Integer call() throws IOException {
        Places places = Places.here();
        LogbookChoice choice = LogbookChoice.of(logbook, places);
        choice.asProperty();
        Path page = OutputPlace.named("--out", out, places.home().resolve("out").resolve("week.html"));
        try (MadeFolders folders = MadeFolders.begin()) {
            folders.page(page, choice);
            Logbook read = Logbook.open();
            Week week = Week.of(read).readOn(LocalDate.now(ZoneId.systemDefault()));
            for (String order : orders) {
                OrderText typed = OrderText.of(order);
                week = week.withOrder(
                        typed.lot(), typed.mass().amount(), typed.mass().unit());
            }
            List<String> notes =
                    read.provenance() == Logbook.Provenance.INVENTED ? List.of(Cautions.INVENTED_PAGE) : List.of();
            Week written = week;
            folders.write(() -> OurPage.write(page, PrintedPage.of("The week of " + read.name(), notes, written)));
            PrintWriter terminal = spec.commandLine().getOut();
            if (read.provenance() == Logbook.Provenance.INVENTED) {
                terminal.println(Cautions.INVENTED_MACHINE);
            }
            terminal.println(week.inShort().text());
            for (GreenNeeded order : week.orders()) {
                terminal.println(order.inShort().found());
            }
            terminal.println("Page:      " + page);
            terminal.flush();
        }
        return 0;
    }
}
