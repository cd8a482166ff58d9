package parchment.stats.mixed;

import java.util.Arrays;

/** Numbers pairs of nodes in the order in which they are first met. */
final class PairIndex {
    private long[] keys = new long[1024];
    private int[] numbers = new int[1024];
    private int size;

    PairIndex() {
        Arrays.fill(keys, -1);
    }

    int size() {
        return size;
    }

    int number(int low, int high) {
        long key = ((long) low << 32) | high;
        int at = slot(key);
        if (keys[at] == key) {
            return numbers[at];
        }
        if (2 * (size + 1) > keys.length) {
            grow();
            at = slot(key);
        }
        keys[at] = key;
        numbers[at] = size;
        return size++;
    }

    /** Returns the low (shifted) and high node of every pair, by number. */
    long[] pairs() {
        long[] pairs = new long[size];
        for (int i = 0; i < keys.length; i++) {
            if (keys[i] >= 0) {
                pairs[numbers[i]] = keys[i];
            }
        }
        return pairs;
    }

    private int slot(long key) {
        long hash = key * 0x9E3779B97F4A7C15L;
        int at = (int) (hash >>> 32) & (keys.length - 1);
        while (keys[at] >= 0 && keys[at] != key) {
            at = (at + 1) & (keys.length - 1);
        }
        return at;
    }

    private void grow() {
        long[] oldKeys = keys;
        int[] oldNumbers = numbers;
        keys = new long[2 * oldKeys.length];
        numbers = new int[keys.length];
        Arrays.fill(keys, -1);
        for (int i = 0; i < oldKeys.length; i++) {
            if (oldKeys[i] >= 0) {
                int at = slot(oldKeys[i]);
                keys[at] = oldKeys[i];
                numbers[at] = oldNumbers[i];
            }
        }
    }
}
