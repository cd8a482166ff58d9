package parchment.learning;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class ClustersTest {
    private static final Path REFERENCE = Path.of("library", "test", "resources", "reference");

    private static Path reference(String name) {
        return REFERENCE.resolve(name);
    }

    private static float[][] cars() throws IOException {
        List<double[]> rows = Files.readAllLines(reference("r-datasets/mtcars.csv")).stream()
                .skip(1)
                .map(line -> Arrays.stream(line.split(","))
                        .filter(cell -> cell.matches("-?[0-9.]+"))
                        .mapToDouble(Double::parseDouble)
                        .toArray())
                .toList();
        return distances(rows);
    }

    static float[][] distances(List<double[]> rows) {
        float[][] out = new float[rows.size()][rows.size()];
        for (int i = 0; i < out.length; i++) {
            for (int j = 0; j < out.length; j++) {
                double sum = 0;
                for (int k = 0; k < rows.get(i).length; k++) {
                    double off = rows.get(i)[k] - rows.get(j)[k];
                    sum += off * off;
                }
                out[i][j] = (float) Math.sqrt(sum);
            }
        }
        return out;
    }

    @Test
    @Tag("agrees-with")
    void joinsAtTheHeightsOfOtherLibraries() throws IOException {
        double[] theirs = Files.readAllLines(reference("clusters/mtcars-average.csv")).stream()
                .filter(line -> line.matches("[0-9.]+"))
                .mapToDouble(Double::parseDouble)
                .toArray();
        Clusters clusters = Clusters.of(cars());
        assertEquals(31, theirs.length);
        assertArrayEquals(theirs, clusters.heights(), 1e-3);
    }

    /** Group sizes by cutree(h, 3), and root of the first eigenvalues of cmdscale over the number of rows, R 4.2.2. */
    @Test
    @Tag("agrees-with")
    void cutsAndSpreadsAsOtherLibraries() throws IOException {
        int[] sizes = Clusters.sizes(Clusters.of(cars()).groups(3));
        Arrays.sort(sizes);
        assertArrayEquals(new int[] {1, 15, 16}, sizes);
        double[] spreads = PrincipalSpreads.of(cars());
        assertArrayEquals(new double[] {134.382787, 37.547283}, Arrays.copyOf(spreads, 2), 1e-2);
    }

    /** The cloud of this seed has a pair at a right angle seen from the mean, where only rounding is left. Unit spread in both directions. */
    @Test
    void aPairAtARightAngleSeenFromTheMeanIsSpreadAsAnyOther() {
        SplittableRandom random = new SplittableRandom(29);
        List<double[]> rows = IntStream.range(0, 160)
                .mapToObj(i -> new double[] {random.nextGaussian(), random.nextGaussian()})
                .toList();
        assertArrayEquals(new double[] {1, 1}, PrincipalSpreads.of(distances(rows)), 0.2);
    }

    /** Jaccard: two shared of four in all. */
    @Test
    void overlapIsWhatIsSharedOfAll() {
        BitSet one = BitSet.valueOf(new long[] {0b0111});
        BitSet other = BitSet.valueOf(new long[] {0b1110});
        assertEquals(0.5, StableSplit.overlap(one, other));
        assertEquals(1, StableSplit.overlap(one, one));
    }

    /** Four points by hand on a line, two and two: Rousseeuw 1987, s = (b - a) / max(a, b). */
    @Test
    void howFarApartIsTheSilhouetteWidth() {
        float[][] line = distances(List.of(new double[] {0}, new double[] {1}, new double[] {10}, new double[] {11}));
        Split split = new Split(List.of(BitSet.valueOf(new long[] {0b0011}), BitSet.valueOf(new long[] {0b1100})), 4);
        double outer = (10.5 - 1) / 10.5;
        double inner = (9.5 - 1) / 9.5;
        assertEquals((outer + inner) / 2, split.apart(line), 1e-6);
        assertEquals(0, split.kindOf(1));
        assertEquals(1, split.kindOf(2));
    }

    private static StableSplit.Search search(double[] centres, int each, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<double[]> rows = new ArrayList<>();
        List<String> days = new ArrayList<>();
        for (int i = 0; i < each * centres.length; i++) {
            double[] row = new double[4];
            Arrays.setAll(row, k -> random.nextGaussian());
            row[0] += centres[i % centres.length];
            rows.add(row);
            days.add("day " + i / 3);
        }
        return StableSplit.search(distances(rows), days, 1);
    }

    @Test
    void cloudsThatLieApartAreFoundAndOneCloudIsNotSplit() {
        StableSplit two = search(new double[] {0, 8}, 30, 1).found().orElseThrow();
        assertEquals(
                List.of(30, 30),
                two.split().kinds().stream().map(BitSet::cardinality).toList());
        assertTrue(two.stability().stream().allMatch(overlap -> overlap > 0.95), two.toString());
        assertEquals(
                3,
                search(new double[] {0, 9, 18}, 20, 2)
                        .found()
                        .orElseThrow()
                        .split()
                        .kinds()
                        .size());
        long split = IntStream.range(0, 10)
                .filter(seed -> search(new double[] {0}, 60, 100 + seed).found().isPresent())
                .count();
        assertTrue(split <= 1, split + " of 10 single clouds were split");
    }

    /** A day whose batches are alike is no kind: it does not come again when it is not drawn. */
    @Test
    void aKindTooSmallToComeAgainIsNone() {
        SplittableRandom random = new SplittableRandom(4);
        List<double[]> rows = new ArrayList<>();
        List<String> days = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            double far = i < 6 ? 9 : 0;
            rows.add(new double[] {far + random.nextGaussian(), random.nextGaussian()});
            days.add("day " + i / 6);
        }
        assertTrue(StableSplit.search(distances(rows), days, 1).found().isEmpty());
    }
}
