package parchment.launcher;

import java.util.Arrays;
import parchment.kernel.KernelMain;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.HelpCommand;

/** Where every start begins: hands over to the kernel, or to one of the commands. */
@Command(
        name = "parchment",
        description =
                "Opens a coffee roaster's logbook in a notebook. It reads; it never writes into a logbook folder.",
        synopsisSubcommandLabel = "COMMAND",
        mixinStandardHelpOptions = true,
        versionProvider = Main.Version.class,
        subcommands = {
            OpenCommand.class,
            RunCommand.class,
            GatherCommand.class,
            WeekCommand.class,
            NextCommand.class,
            BatchCommand.class,
            TrialCommand.class,
            HandbookCommand.class,
            TestCommand.class,
            InstallCommand.class,
            UninstallCommand.class,
            MakeDatasetsCommand.class,
            RoasteryCommand.class,
            ClassCommand.class,
            StickCommand.class,
            ReleaseCommand.class,
            HelpCommand.class
        })
public final class Main {
    private Main() {}

    /** Runs the command and ends the process with its exit code. */
    public static void main(String[] arguments) {
        if (arguments.length > 0 && arguments[0].equals("kernel")) {
            // A kernel's start is waited for; the option parser would be a tenth of it.
            KernelMain.main(Arrays.copyOfRange(arguments, 1, arguments.length));
            return;
        }
        int code;
        try {
            code = commandLine().execute(arguments);
        } catch (OutOfMemoryError | StackOverflowError e) {
            System.err.println(Words.of(e));
            code = CommandLine.ExitCode.SOFTWARE;
        }
        System.exit(code);
    }

    static CommandLine commandLine() {
        CommandLine line = new CommandLine(new Main());
        return line.setCaseInsensitiveEnumValuesAllowed(true)
                .setParameterExceptionHandler(new WhereTheLogbookGoes(line.getParameterExceptionHandler()))
                .setExecutionExceptionHandler((exception, command, parsed) -> {
                    command.getErr().println(Words.of(exception));
                    if (System.getenv("PARCHMENT_TRACE") != null) {
                        exception.printStackTrace(command.getErr());
                    }
                    return CommandLine.ExitCode.SOFTWARE;
                });
    }

    /** Reads the version off the jar. */
    static final class Version implements CommandLine.IVersionProvider {
        @Override
        public String[] getVersion() {
            String version = Main.class.getPackage().getImplementationVersion();
            return new String[] {"Parchment " + (version == null ? "(not packaged)" : version)};
        }
    }
}
