import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import jdk.jshell.JShell;

/** Prints the median time in milliseconds that JShell alone takes for a text, as a yardstick for the kernel. Arguments: the text, how often. */
final class BareShell {
    private BareShell() {}

    public static void main(String[] arguments) {
        String text = arguments[0];
        int count = Integer.parseInt(arguments[1]);
        try (JShell shell = JShell.builder().executionEngine("local").build()) {
            shell.eval(text);
            shell.eval(text);
            double[] times = new double[count];
            for (int i = 0; i < count; i++) {
                long begin = System.nanoTime();
                // What an evaluation of any text begins with: finding out where its first statement ends.
                shell.eval(shell.sourceCodeAnalysis().analyzeCompletion(text).source());
                times[i] = (System.nanoTime() - begin) / 1e6;
            }
            double[] last = Arrays.copyOfRange(times, Math.max(0, count - 20), count);
            Arrays.sort(times);
            Arrays.sort(last);
            System.out.printf(Locale.ROOT, "%.1f %.1f%n", times[count / 2], last[last.length / 2]);
        }
    }
}
