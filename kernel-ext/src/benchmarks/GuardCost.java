package parchment.kernel.stop;

import java.io.ByteArrayOutputStream;
import java.io.OutputStream;
import java.net.URI;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.DoubleSupplier;
import javax.tools.FileObject;
import javax.tools.ForwardingJavaFileManager;
import javax.tools.JavaFileManager;
import javax.tools.JavaFileObject;
import javax.tools.SimpleJavaFileObject;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;

/**
 * Measures what the guard of a cell costs: the same class run as compiled and as guarded, in turn, in one process.
 *
 * <p>Prints for each piece of work the median time of a run as compiled and as guarded, in milliseconds. In the package of the guard,
 * because that is nobody else's business.
 */
final class GuardCost {
    private static final int ROUNDS = 15;

    private static final String WORK = """
            import java.util.*;
            import java.util.function.*;
            import java.util.stream.*;
            public final class Work {
                static int fib(int n) { return n < 2 ? n : fib(n - 1) + fib(n - 2); }
                static double calls() { return fib(35); }
                static final double[] NUMBERS = new Random(1).doubles(1_000_000).toArray();
                static double sum() {
                    double sum = 0;
                    for (int round = 0; round < 60; round++) {
                        for (int i = 0; i < NUMBERS.length; i++) { sum += NUMBERS[i] * NUMBERS[i]; }
                    }
                    return sum;
                }
                static double filled() {
                    double[] into = new double[NUMBERS.length];
                    for (int round = 0; round < 100; round++) {
                        for (int i = 0; i < into.length; i++) { into[i] += NUMBERS[i] * 1.5 + round; }
                    }
                    return into[7];
                }
                static double logistic() {
                    double sum = 0;
                    for (int i = 0; i < 3_000_000; i++) { sum += 1 / (1 + Math.exp(-i / 1e6)); }
                    return sum;
                }
                static double streamed() {
                    double sum = 0;
                    for (int round = 0; round < 10; round++) {
                        sum += Arrays.stream(NUMBERS).map(x -> x * x).filter(x -> x > 0.5).sum();
                    }
                    return sum;
                }
                static double collected() {
                    Map<Integer, Integer> counts = new HashMap<>();
                    for (int i = 0; i < 2_000_000; i++) { counts.merge(i % 1000, 1, Integer::sum); }
                    return counts.get(3);
                }
                static double sorted() {
                    Double[] boxed = Arrays.stream(NUMBERS).limit(200_000).boxed().toArray(Double[]::new);
                    Arrays.sort(boxed, Comparator.comparing(x -> -x));
                    return boxed[0];
                }
                public static Map<String, DoubleSupplier> all() {
                    Map<String, DoubleSupplier> all = new LinkedHashMap<>();
                    all.put("fib(35), 30 million calls", Work::calls);
                    all.put("sum of squares, 60 million numbers", Work::sum);
                    all.put("one array into another, 100 million numbers", Work::filled);
                    all.put("logistic curve, 3 million points", Work::logistic);
                    all.put("stream with two lambdas, 10 million numbers", Work::streamed);
                    all.put("counts in a map, 2 million", Work::collected);
                    all.put("200,000 numbers sorted by a lambda", Work::sorted);
                    return all;
                }
            }
            """;

    private GuardCost() {}

    public static void main(String[] arguments) throws Exception {
        Map<String, byte[]> compiled = compiled();
        Map<String, DoubleSupplier> bare = work(compiled);
        Map<String, byte[]> guardedClasses = new HashMap<>();
        for (var entry : compiled.entrySet()) {
            guardedClasses.put(entry.getKey(), GuardedBytecode.guard(entry.getValue()));
        }
        Map<String, DoubleSupplier> guarded = work(guardedClasses);
        System.out.println("| work | as compiled, ms | guarded, ms | cost |");
        System.out.println("| --- | ---: | ---: | ---: |");
        for (String name : bare.keySet()) {
            double[] before = new double[ROUNDS];
            double[] after = new double[ROUNDS];
            for (int warm = 0; warm < 5; warm++) {
                milliseconds(bare.get(name));
                milliseconds(guarded.get(name));
            }
            for (int round = 0; round < ROUNDS; round++) {
                before[round] = milliseconds(bare.get(name));
                after[round] = milliseconds(guarded.get(name));
            }
            double one = median(before);
            double two = median(after);
            System.out.printf(Locale.ROOT, "| %s | %.1f | %.1f | %+.0f %% |%n", name, one, two, 100 * (two / one - 1));
        }
    }

    private static double milliseconds(DoubleSupplier work) {
        long begin = System.nanoTime();
        if (Double.isNaN(work.getAsDouble())) {
            throw new IllegalStateException("The work went wrong.");
        }
        return (System.nanoTime() - begin) / 1e6;
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }

    @SuppressWarnings("unchecked")
    private static Map<String, DoubleSupplier> work(Map<String, byte[]> classes) throws ReflectiveOperationException {
        ClassLoader loader = new ClassLoader(GuardCost.class.getClassLoader()) {
            @Override
            protected Class<?> findClass(String name) throws ClassNotFoundException {
                byte[] bytes = classes.get(name);
                if (bytes == null) {
                    throw new ClassNotFoundException(name);
                }
                return defineClass(name, bytes, 0, bytes.length);
            }
        };
        return (Map<String, DoubleSupplier>)
                loader.loadClass("Work").getMethod("all").invoke(null);
    }

    private static Map<String, byte[]> compiled() {
        Map<String, ByteArrayOutputStream> written = new HashMap<>();
        var compiler = ToolProvider.getSystemJavaCompiler();
        StandardJavaFileManager standard = compiler.getStandardFileManager(null, null, null);
        JavaFileManager keeping = new ForwardingJavaFileManager<>(standard) {
            @Override
            public JavaFileObject getJavaFileForOutput(
                    Location location, String name, JavaFileObject.Kind kind, FileObject sibling) {
                return new SimpleJavaFileObject(URI.create("memory:///" + name + ".class"), kind) {
                    @Override
                    public OutputStream openOutputStream() {
                        return written.computeIfAbsent(name, n -> new ByteArrayOutputStream());
                    }
                };
            }
        };
        JavaFileObject source =
                new SimpleJavaFileObject(URI.create("memory:///Work.java"), JavaFileObject.Kind.SOURCE) {
                    @Override
                    public CharSequence getCharContent(boolean ignoreErrors) {
                        return WORK;
                    }
                };
        if (!compiler.getTask(null, keeping, null, List.of("-proc:none"), null, List.of(source)).call()) {
            throw new IllegalStateException("The work does not compile.");
        }
        Map<String, byte[]> classes = new HashMap<>();
        written.forEach((name, bytes) -> classes.put(name, bytes.toByteArray()));
        return classes;
    }
}
