package parchment.kernel.stop;

import java.lang.management.GarbageCollectorMXBean;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.lang.management.MemoryUsage;
import java.util.List;
import java.util.Optional;

/**
 * Sees that the memory runs out while a cell runs, a little before there is none: many small things that a cell keeps would otherwise leave
 * none to the threads that speak to the client, and the session would answer no more.
 *
 * <p>What counts is what is left in use right after a collection since the cell began; before one nobody knows how much of it is needed. What
 * is kept only as long as there is room for it (curves that were smoothed, say) is let go of before a cell is blamed.
 */
final class MemoryWatch {
    /** What the rest of the program needs to compile the next cell and to answer. */
    private static final long NEEDED_BYTES = 48L << 20;

    private static final double NEEDED_SHARE = 0.05;

    private static final int MOST_NUMBERS = Integer.MAX_VALUE - 8;
    private static final long[] NOTHING = {};

    /** Written to, so that no compiler leaves the request out. */
    private static volatile long[] asked = NOTHING;

    private static final Optional<MemoryPoolMXBean> LASTING = lasting();

    private static final List<GarbageCollectorMXBean> COLLECTORS = LASTING.map(
                    pool -> List.of(pool.getMemoryManagerNames()))
            .map(names -> ManagementFactory.getGarbageCollectorMXBeans().stream()
                    .filter(collector -> names.contains(collector.getName()))
                    .toList())
            .orElse(List.of());

    private long collected = collections();

    /** Returns where what is kept lies: the largest part of the heap that can say what a collection left in it. */
    private static Optional<MemoryPoolMXBean> lasting() {
        return ManagementFactory.getMemoryPoolMXBeans().stream()
                .filter(pool -> pool.getType() == MemoryType.HEAP && pool.isCollectionUsageThresholdSupported())
                .filter(pool -> pool.getUsage().getMax() > 0)
                .max((a, b) -> Long.compare(a.getUsage().getMax(), b.getUsage().getMax()));
    }

    private static long collections() {
        long all = 0;
        for (GarbageCollectorMXBean collector : COLLECTORS) {
            all += Math.max(0, collector.getCollectionCount());
        }
        return all;
    }

    /** Tells whether a collection since this began has left too little, also of what Java lets go of only when it must. */
    boolean runsOut() {
        if (LASTING.isEmpty() || collections() == collected || !isTooFull(LASTING.get())) {
            return false;
        }
        letGo();
        collected = collections();
        return isTooFull(LASTING.get());
    }

    private static boolean isTooFull(MemoryPoolMXBean pool) {
        MemoryUsage left = pool.getCollectionUsage();
        return left != null && isTooFull(left.getUsed(), left.getMax());
    }

    /** Asks for more than there is: before it refuses that, Java lets go of all that is only softly held, and no other request makes it. */
    private static void letGo() {
        long all = Runtime.getRuntime().maxMemory() / Long.BYTES;
        if (all > MOST_NUMBERS) {
            return; // It might be given.
        }
        try {
            asked = new long[(int) all];
        } catch (OutOfMemoryError e) {
            // As meant.
        } finally {
            asked = NOTHING;
        }
    }

    /** Tells whether so much in use of so much, in bytes, leaves less than the rest of the program needs. */
    static boolean isTooFull(long used, long most) {
        return most > 0 && most - used < Math.min(most / 3, Math.max(NEEDED_BYTES, (long) (NEEDED_SHARE * most)));
    }
}
