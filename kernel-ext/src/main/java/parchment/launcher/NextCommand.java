package parchment.launcher;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import parchment.card.LotCard;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Writes the card of a lot before its next batch, for those who want no code. */
@Command(
        name = "next",
        description = {
            "Writes a card of a lot to take to the machine before its next batch: the last batches that went well, their settings,"
                    + " marks and paths side by side, and how far they agree.",
            "It shows what was and is no plan. Open it in a browser, or print it."
        },
        footer = {"", "Example:", "  parchment next \"Cinder Ridge\" --logbook \"My Roasts\""},
        mixinStandardHelpOptions = true)
final class NextCommand implements Callable<Integer> {
    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Parameters(paramLabel = "LOT", description = "The lot, or the blend, as the logbook names it.")
    @SuppressWarnings("NullAway.Init")
    private String lot;

    @Option(
            names = "--logbook",
            paramLabel = "DIR",
            description = "The logbook folder to read; the demo logbook if not given.")
    private @Nullable Path logbook;

    @Option(
            names = "--charge",
            paramLabel = "MASS",
            description =
                    "The green mass of the next batch, such as 2.5kg (kg, g, lb, oz); that of the lot's newest batches if not given.")
    private @Nullable String charge;

    @Option(
            names = "--out",
            paramLabel = "FILE",
            description = "The page to write; out/next.html of the project if not given.")
    private @Nullable Path out;

    @Override
    public Integer call() throws IOException {
        return CardPage.write(logbook, out, "next.html", spec.commandLine().getOut(), read -> {
            LotCard card = LotCard.of(lot, read);
            card = charge == null
                    ? card
                    : card.withCharge(WrittenMass.of("charge", "2.5kg", charge).mass());
            card = card.readOn(LocalDate.now(ZoneId.systemDefault()));
            return new CardPage.Made("Lot card of " + lot, card.inShort(), card);
        });
    }
}
