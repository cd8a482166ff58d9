package parchment.logbook;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.Reader;
import java.util.regex.Pattern;
import parchment.sheet.Words;

/**
 * Takes out of a file of settings what would stop the reading of all of it: a backslash with 'u' that no four hexadecimal digits follow,
 * as in a path of Windows. The setting is a problem, and the others are read.
 */
final class SettingLines {
    private static final Pattern NO_CHARACTER = Pattern.compile("(?<!\\\\)(?:\\\\\\\\)*\\\\u(?![0-9a-fA-F]{4})");
    private static final Pattern NO_SETTING = Pattern.compile("[ \\t\\f]*(?:[#!].*)?");
    private static final Pattern GOES_ON = Pattern.compile("(?:.*[^\\\\])?(?:\\\\\\\\)*\\\\");

    private SettingLines() {}

    /** Returns the lines of the settings that can be read. */
    static String readable(Reader settings, ProblemLog problems) throws IOException {
        StringBuilder readable = new StringBuilder();
        BufferedReader lines = new BufferedReader(settings);
        int number = 0;
        for (String line = lines.readLine(); line != null; line = lines.readLine()) {
            int first = ++number;
            if (NO_SETTING.matcher(line).matches()) {
                continue;
            }
            StringBuilder setting = new StringBuilder(line).append('\n');
            while (line != null && GOES_ON.matcher(line).matches()) {
                line = lines.readLine();
                number++;
                setting.append(line == null ? "" : line).append('\n');
            }
            if (NO_CHARACTER.matcher(setting).find()) {
                problems.add(
                        first,
                        "",
                        Words.quote(setting.toString().strip().replace('\n', ' '))
                                + ", with a backslash and 'u' that are no character",
                        "settings, one 'name=value' a line; write a backslash twice",
                        "setting left out");
            } else {
                readable.append(setting);
            }
        }
        return readable.toString();
    }
}
