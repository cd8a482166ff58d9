package parchment.launcher;

import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/**
 * Explains how a logbook is named where a folder stands without {@code --logbook}; any other slip is told as usual, with the usage.
 */
final class WhereTheLogbookGoes implements IParameterExceptionHandler {
    private static final String OPTION = "--logbook";

    private final IParameterExceptionHandler usual;

    /** @param usual tells any other slip */
    WhereTheLogbookGoes(IParameterExceptionHandler usual) {
        this.usual = usual;
    }

    @Override
    public int handleParseException(ParameterException slip, String[] arguments) throws Exception {
        CommandLine command = slip.getCommandLine();
        if (slip instanceof UnmatchedArgumentException
                && command.getCommandSpec().findOption(OPTION) != null
                && !List.of(arguments).contains(OPTION)) {
            String written = ((UnmatchedArgumentException) slip).getUnmatched().get(0);
            if (!written.startsWith("-")) {
                String name = command.getCommandSpec().qualifiedName();
                command.getErr()
                        .println("'" + name + "' takes no '" + written + "' by itself. Did you mean " + OPTION + " \""
                                + written + "\"? All options: " + name + " --help");
                return CommandLine.ExitCode.USAGE;
            }
        }
        return usual.handleParseException(slip, arguments);
    }
}
