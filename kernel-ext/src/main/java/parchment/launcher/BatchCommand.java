package parchment.launcher;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import parchment.card.BatchCard;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Writes the card of one batch, for those who want no code. */
@Command(
        name = "batch",
        description = {
            "Writes one page of what differed in a batch: from its lot's others, on its day, in what was written about it and in its"
                    + " cups, with the batches most like it.",
            "Open it in a browser, or print it."
        },
        footer = {"", "Example:", "  parchment batch H123 --logbook \"My Roasts\""},
        mixinStandardHelpOptions = true)
final class BatchCommand implements Callable<Integer> {
    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Parameters(paramLabel = "NAME", description = "The batch, as the logbook names it.")
    @SuppressWarnings("NullAway.Init")
    private String name;

    @Option(
            names = "--logbook",
            paramLabel = "DIR",
            description = "The logbook folder to read; the demo logbook if not given.")
    private @Nullable Path logbook;

    @Option(
            names = "--out",
            paramLabel = "FILE",
            description = "The page to write; out/batch.html of the project if not given.")
    private @Nullable Path out;

    @Override
    public Integer call() throws IOException {
        return CardPage.write(logbook, out, "batch.html", spec.commandLine().getOut(), read -> {
            BatchCard card = BatchCard.of(name, read).readOn(LocalDate.now(ZoneId.systemDefault()));
            return new CardPage.Made("Batch " + name, card.inShort(), card);
        });
    }
}
