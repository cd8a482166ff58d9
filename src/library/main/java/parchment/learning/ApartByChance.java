package parchment.learning;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Counts how many batches stand apart by chance alone: of as many drawn from one normal cloud whose features spread and move together as
 * these do.
 *
 * @param mean how many on average over the draws
 * @param most how many at most
 */
record ApartByChance(double mean, int most) {
    static final int DRAWS = 20;
    /** With more batches every second, third and so on is enough for how features spread and move together. */
    private static final int MOST = 300;

    static ApartByChance of(List<double[]> rows, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int sum = 0;
        int most = 0;
        for (int draw = 0; draw < DRAWS; draw++) {
            double[] scores = IsolatedBatches.scores(cloud(rows, random), seed);
            double above = SecondLook.apartFrom(scores);
            int apart =
                    (int) Arrays.stream(scores).filter(score -> score > above).count();
            sum += apart;
            most = Math.max(most, apart);
        }
        return new ApartByChance((double) sum / DRAWS, most);
    }

    /** A sum of the rows with normal weights has their covariance; they are counted from their means already. */
    private static List<double[]> cloud(List<double[]> rows, SplittableRandom random) {
        int columns = rows.get(0).length;
        int every = 1 + (rows.size() - 1) / MOST;
        int summed = (rows.size() + every - 1) / every;
        List<double[]> cloud = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            double[] drawn = new double[columns];
            for (int j = 0; j < summed; j++) {
                double weight = random.nextGaussian() / Math.sqrt(summed);
                for (int k = 0; k < columns; k++) {
                    drawn[k] += weight * rows.get(j * every)[k];
                }
            }
            cloud.add(drawn);
        }
        return cloud;
    }

    /** Returns the mean as a whole number in words: "none", "about 3". */
    String about() {
        long whole = Math.round(mean);
        return whole == 0 ? "none as a rule" : "about " + whole;
    }
}
