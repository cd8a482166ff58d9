package parchment.launcher;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import parchment.display.Showable;
import parchment.logbook.Logbook;
import parchment.logbook.contents.Cautions;
import parchment.notebook.OurPage;
import parchment.trial.CoinFlip;
import parchment.trial.SetListing;
import parchment.trial.TrialFolder;
import parchment.trial.sealed.AnsweredTrial;
import parchment.trial.sealed.DrawnTarget;
import parchment.trial.sealed.SealCheck;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Draws a trial, opens it batch by batch, tells whether it was changed, and answers it: the coin flip, for those who want no code. */
@Command(
        name = "trial",
        description = {
            "Lets chance choose the target of each batch, sealed, so that what comes of it was done by the target.",
            "From the plan to the answer: docs/coin-flip.md."
        },
        synopsisSubcommandLabel = "COMMAND",
        mixinStandardHelpOptions = true,
        subcommands = {
            TrialCommand.New.class,
            TrialCommand.Next.class,
            TrialCommand.Verify.class,
            TrialCommand.Answer.class
        })
final class TrialCommand implements Callable<Integer> {
    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Override
    public Integer call() {
        spec.commandLine().usage(spec.commandLine().getOut());
        return 0;
    }

    private PrintWriter terminal() {
        return spec.commandLine().getOut();
    }

    private static Logbook logbook(@Nullable Path named) {
        LogbookChoice choice = LogbookChoice.of(named, Places.here());
        choice.asProperty();
        return Logbook.open();
    }

    private static TrialFolder trial(Path folder, @Nullable Path draw) {
        TrialFolder trial = TrialFolder.open(folder);
        return draw == null ? trial : trial.withDraw(draw);
    }

    /** Makes a page once its place is known to take one. */
    private interface Making {
        Showable make();
    }

    private static void page(
            Path file, @Nullable Path logbook, String title, List<String> notes, PrintWriter terminal, Making making)
            throws IOException {
        LogbookChoice choice = new LogbookChoice(logbook);
        try (MadeFolders folders = MadeFolders.begin()) {
            folders.page(file.toAbsolutePath(), choice);
            Showable made = making.make();
            folders.write(() -> OurPage.write(file.toAbsolutePath(), PrintedPage.of(title, notes, made)));
        }
        terminal.println("Page:      " + file.toAbsolutePath());
    }

    /** Draws and seals. */
    @Command(
            name = "new",
            description = {
                "Draws the targets of a trial and seals them with its plan in a new folder.",
                "Nothing is drawn unless both ends were tried in the logbook, can be sold, and are within the maker's limits.",
                "Give the seal that it prints to somebody else: a file's date proves nothing."
            },
            footer = {
                "",
                "Example:",
                "  parchment trial new flip-1 --score sweetness --drop 203 --sets 13 --sellable 200..206 --maker 0..225"
            },
            mixinStandardHelpOptions = true)
    static final class New implements Callable<Integer> {
        @ParentCommand
        @SuppressWarnings("NullAway.Init")
        private TrialCommand parent;

        @Parameters(paramLabel = "FOLDER", description = "The trial's folder; new or empty, and not in a logbook.")
        @SuppressWarnings("NullAway.Init")
        private Path folder;

        @Option(names = "--score", paramLabel = "NAME", required = true, description = "The attribute that is scored.")
        @SuppressWarnings("NullAway.Init")
        private String score;

        @Option(
                names = "--drop",
                paramLabel = "T",
                description =
                        "The middle drop temperature, in the logbook's degrees; every number below is in the same unit.")
        private @Nullable Double drop;

        @Option(
                names = "--charge",
                paramLabel = "T",
                description = "The middle charge temperature, in place of a drop.")
        private @Nullable Double charge;

        @Option(names = "--first-gas", paramLabel = "N", description = "The middle gas at charge, in place of a drop.")
        private @Nullable Double gas;

        @Option(
                names = "--gas-unit",
                paramLabel = "UNIT",
                defaultValue = "%",
                description = "The gas's unit as the curves have it; ${DEFAULT-VALUE} if none.")
        @SuppressWarnings("NullAway.Init")
        private String gasUnit;

        @Option(names = "--sets", paramLabel = "N", description = "How many sets; --size tells how many it takes.")
        private @Nullable Integer sets;

        @Option(names = "--size", description = "Tells how many batches it takes, and draws nothing.")
        private boolean size;

        @Option(
                names = "--sets-of",
                paramLabel = "N",
                defaultValue = "3",
                description = "How many batches a set has, 2 to 4; ${DEFAULT-VALUE} if none.")
        private int setsOf;

        @Option(names = "--ends-only", description = "Draws the two ends and no middle, for sets of 2 or 4.")
        private boolean endsOnly;

        @Option(
                names = "--step",
                paramLabel = "D",
                description = "From the middle to each end; 1.5 °C for a drop if none.")
        private @Nullable Double step;

        @Option(
                names = "--sellable",
                paramLabel = "LOW..HIGH",
                description = "Between which settings the coffee can be sold.")
        private @Nullable String sellable;

        @Option(
                names = "--maker",
                paramLabel = "LOW..HIGH",
                description = "Between which settings the maker allows it.")
        private @Nullable String maker;

        @Option(
                names = "--air",
                paramLabel = "T",
                description = "The hottest air that the maker allows; as machines.csv says if none.")
        private @Nullable Double air;

        @Option(
                names = "--miss",
                paramLabel = "D",
                description = "Your usual miss of an aim, to either side; the logbook's own if none.")
        private @Nullable Double miss;

        @Option(
                names = "--difference",
                paramLabel = "POINTS",
                defaultValue = "0.5",
                description = "The smallest difference that matters, from end to end; ${DEFAULT-VALUE} points if none.")
        private double difference;

        @Option(names = "--two-looks", description = "Plans two looks at the scores, with a smaller chance each.")
        private boolean twoLooks;

        @Option(
                names = "--cuppers",
                paramLabel = "NAMES",
                split = ",",
                description = "Who will cup, with commas between; the logbook's cuppers if none.")
        private @Nullable List<String> cuppers;

        @Option(
                names = "--cups",
                paramLabel = "N",
                defaultValue = "2",
                description = "How many cups of a batch each cupper scores; ${DEFAULT-VALUE} if none.")
        private int cups;

        @Option(
                names = "--seed",
                paramLabel = "N",
                description = "A whole number, for a virtual roastery's logbook alone.")
        private @Nullable Long seed;

        @Option(
                names = "--logbook",
                paramLabel = "DIR",
                description = "The logbook in which the ends were tried; the demo logbook if not given.")
        private @Nullable Path logbook;

        @Option(
                names = "--slips",
                paramLabel = "FILE",
                description =
                        "Also writes slips with every target to cut and fold; let somebody else run and print that.")
        private @Nullable Path slips;

        @Override
        public Integer call() throws IOException {
            if ((drop == null ? 0 : 1) + (charge == null ? 0 : 1) + (gas == null ? 0 : 1) != 1) {
                throw new IllegalArgumentException(
                        "Chance draws one thing: name its middle with --drop, with --charge or with --first-gas.");
            }
            Logbook read = logbook(logbook);
            CoinFlip flip = flip(read);
            PrintWriter terminal = parent.terminal();
            if (size) {
                terminal.println(flip.size().inShort().text());
                terminal.println("Nothing was drawn.");
                terminal.flush();
                return 0;
            }
            TrialFolder trial = flip.sealTo(folder);
            if (read.provenance() == Logbook.Provenance.INVENTED) {
                terminal.println(Cautions.INVENTED_MACHINE);
            }
            terminal.println("Sealed:    " + folder.toAbsolutePath());
            terminal.println(trial);
            terminal.println("Seal:      " + trial.seal());
            terminal.println(
                    "Give these digits to somebody else now, such as the cuppers: a file's date proves nothing.");
            terminal.println(Cautions.BESIDE_A_READING);
            if (slips != null) {
                page(slips, logbook, "Slips of " + folder, List.of(), terminal, trial::slips);
            }
            terminal.flush();
            return 0;
        }

        private CoinFlip flip(Logbook read) {
            TrialNumbers numbers = TrialNumbers.of(read, gas != null);
            CoinFlip flip = drop != null
                    ? CoinFlip.of(score, numbers.temperature(drop))
                    : charge != null
                            ? CoinFlip.ofChargeTemperature(score, numbers.temperature(charge))
                            : CoinFlip.ofFirstGas(score, gas == null ? 0 : gas, gasUnit);
            flip = flip.triedIn(read)
                    .withSetsOf(setsOf)
                    .withSmallestDifference(difference)
                    .withCups(cups);
            flip = sets == null ? flip : flip.withSets(sets);
            flip = endsOnly ? flip.withEndsOnly() : flip;
            flip = twoLooks ? flip.withTwoLooks() : flip;
            flip = step == null ? flip : flip.withStep(numbers.step(step));
            flip = miss == null ? flip : flip.hittingWithin(numbers.step(miss));
            flip = seed == null ? flip : flip.withSeed(seed);
            flip = cuppers == null ? flip : flip.withCuppers(cuppers.toArray(String[]::new));
            flip = air == null ? flip : flip.makerAllowsAirUpTo(numbers.temperature(air));
            if (sellable != null) {
                double[] ends = numbers.ends("--sellable", sellable);
                flip = flip.sellableBetween(ends[0], ends[1]);
            }
            if (maker != null) {
                double[] ends = numbers.ends("--maker", maker);
                flip = flip.makerAllowsBetween(ends[0], ends[1]);
            }
            return flip;
        }
    }

    /** Opens a line. */
    @Command(
            name = "next",
            description = {
                "Opens the target of the next batch, at its charge.",
                "Before the first of a set, list all batches of the set, weighed: one lot, one day, in the order of their charge."
            },
            footer = {
                "",
                "Examples:",
                "  parchment trial next flip-1 --lot \"Stone Bridge\" --batch B101=2.5kg --batch B102=2.5kg --batch B103=2.5kg",
                "  parchment trial next flip-1"
            },
            mixinStandardHelpOptions = true)
    static final class Next implements Callable<Integer> {
        @ParentCommand
        @SuppressWarnings("NullAway.Init")
        private TrialCommand parent;

        @Parameters(paramLabel = "FOLDER", description = "The trial's folder.")
        @SuppressWarnings("NullAway.Init")
        private Path folder;

        @Option(names = "--lot", paramLabel = "LOT", description = "The lot of the set that is listed.")
        private @Nullable String lot;

        @Option(
                names = "--batch",
                paramLabel = "NAME=MASS",
                description =
                        "A batch of the set and its green mass, such as B101=2.5kg (kg, g, lb, oz); one for each.")
        private @Nullable List<String> batches;

        @Option(names = "--day", paramLabel = "DATE", description = "The roast day, such as 2025-03-04; today if none.")
        private @Nullable LocalDate day;

        @Option(
                names = "--seen-by",
                paramLabel = "NAMES",
                split = ",",
                description =
                        "Who sees the targets of the set, with commas between; who cups all the same is left out of a second answer.")
        private @Nullable List<String> eyes;

        @Option(names = "--again", description = "Tells the newest open target once more, and opens none.")
        private boolean again;

        @Option(names = "--draw", paramLabel = "FILE", description = "Where draw.closed is, if somebody else kept it.")
        private @Nullable Path draw;

        @Option(
                names = "--sheets",
                paramLabel = "FILE",
                description = "Also writes a sheet for each batch that is listed, to print.")
        private @Nullable Path sheets;

        @Override
        public Integer call() throws IOException {
            TrialFolder trial = trial(folder, draw);
            PrintWriter terminal = parent.terminal();
            if (again && (lot != null || batches != null)) {
                throw new IllegalArgumentException("--again opens and lists nothing: leave --lot and --batch out.");
            }
            DrawnTarget target =
                    again ? trial.again() : lot == null && batches == null ? trial.next() : trial.next(listing());
            terminal.println(target.text());
            terminal.flush();
            if (sheets != null) {
                page(sheets, null, "Batch sheets of " + folder, List.of(), terminal, trial::sheets);
            }
            terminal.flush();
            return 0;
        }

        private SetListing listing() {
            if (lot == null || batches == null) {
                throw new IllegalArgumentException(
                        "A set is listed with its lot and all of its batches: --lot LOT and a --batch NAME=MASS for each.");
            }
            SetListing listing = SetListing.of(lot);
            listing = day == null ? listing : listing.on(day);
            for (String each : batches) {
                int sign = each.lastIndexOf('=');
                if (sign < 1) {
                    throw new IllegalArgumentException(
                            "A batch is listed with its mass, as in --batch B101=2.5kg, but this one is '" + each
                                    + "'.");
                }
                listing = listing.with(
                        each.substring(0, sign),
                        WrittenMass.of("green mass", "B101=2.5kg", each.substring(sign + 1))
                                .mass());
            }
            return eyes == null ? listing : listing.seenBy(eyes.toArray(String[]::new));
        }
    }

    /** Holds a folder against its seal. */
    @Command(
            name = "verify",
            description = {
                "Tells whether a trial is as it was sealed, and as it was written since.",
                "It ends with the code 1 where something was changed."
            },
            footer = {"", "Example:", "  parchment trial verify flip-1 --seal \"844d 5e80 ...\""},
            mixinStandardHelpOptions = true)
    static final class Verify implements Callable<Integer> {
        @ParentCommand
        @SuppressWarnings("NullAway.Init")
        private TrialCommand parent;

        @Parameters(paramLabel = "FOLDER", description = "The trial's folder.")
        @SuppressWarnings("NullAway.Init")
        private Path folder;

        @Option(
                names = "--seal",
                paramLabel = "DIGITS",
                required = true,
                description = "The 64 digits that were given away when it was sealed, in fours or not.")
        @SuppressWarnings("NullAway.Init")
        private String seal;

        @Option(
                names = "--record",
                paramLabel = "DIGITS",
                description = "Digits of the record that were given away since; may be said more than once.")
        private @Nullable List<String> record;

        @Option(names = "--draw", paramLabel = "FILE", description = "Where draw.closed is, if somebody else keeps it.")
        private @Nullable Path draw;

        @Override
        public Integer call() {
            SealCheck check =
                    trial(folder, draw).verify(seal, record == null ? new String[0] : record.toArray(String[]::new));
            parent.terminal().println(check.text());
            parent.terminal().flush();
            return check.outcome() == SealCheck.Outcome.WHOLE ? 0 : 1;
        }
    }

    /** Looks at the scores. */
    @Command(
            name = "answer",
            description = {
                "Looks at the scores and answers a trial by its own rules. The look is written down before the answer is shown.",
                "It writes a page to read or print."
            },
            footer = {"", "Example:", "  parchment trial answer flip-1 --logbook \"My Roasts\""},
            mixinStandardHelpOptions = true)
    static final class Answer implements Callable<Integer> {
        @ParentCommand
        @SuppressWarnings("NullAway.Init")
        private TrialCommand parent;

        @Parameters(paramLabel = "FOLDER", description = "The trial's folder.")
        @SuppressWarnings("NullAway.Init")
        private Path folder;

        @Option(
                names = "--logbook",
                paramLabel = "DIR",
                description = "The logbook with the batches and their scores; the demo logbook if not given.")
        private @Nullable Path logbook;

        @Option(
                names = "--out",
                paramLabel = "FILE",
                description = "The page to write; out/answer.html of the project if not given.")
        private @Nullable Path out;

        @Override
        public Integer call() throws IOException {
            TrialFolder trial = TrialFolder.open(folder);
            Logbook read = logbook(logbook);
            PrintWriter terminal = parent.terminal();
            Path page = OutputPlace.named(
                    "--out", out, Places.here().home().resolve("out").resolve("answer.html"));
            boolean invented = read.provenance() == Logbook.Provenance.INVENTED;
            List<String> notes = invented ? List.of(Cautions.INVENTED_PAGE) : List.of();
            page(page, logbook, "Trial " + folder, notes, terminal, () -> {
                AnsweredTrial answered = trial.answer(read);
                if (invented) {
                    terminal.println(Cautions.INVENTED_MACHINE);
                }
                terminal.println(answered.firstWords());
                return answered;
            });
            terminal.flush();
            return 0;
        }
    }
}
