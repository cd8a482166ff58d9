package parchment.sheet;

/**
 * Keeps a file that may come from anywhere from filling the memory: the largest that is read of a file of tables. They are far beyond any
 * roastery's tables (common practice, no source): they keep a file that was made to fill the memory, or one slip, from stopping what can
 * be said of all others.
 */
final class SheetBounds {
    /** Largest workbook, in bytes as it lies on the disk: a season of tabs takes one or two million. */
    static final long LARGEST_WORKBOOK = 64L << 20;

    /** Largest text file, in bytes; what fits into the memory may be less, see {@link BoundedReader#mostCharacters}. */
    static final long LARGEST_TEXT = 256L << 20;

    /** Most that all parts that are read may unpack to, in bytes, however much memory there is. */
    private static final long LARGEST_UNPACKED = 256L << 20;

    /** Parts are unpacked, written anew and packed again, and their cells become texts: all that together is some ten times as large. */
    private static final int UNPACKED_SHARE = 10;

    /** A cell takes some hundred bytes as a text in its row, and is kept twice while it is looked at. */
    private static final int BYTES_A_CELL = 250;

    /** Most that a part may unpack to that holds no cells, such as the list of formats, in bytes. */
    static final long LARGEST_OTHER_PART = 16L << 20;

    /** Most files packed in a workbook: a tab has two or three, a picture one. */
    static final int MOST_PARTS = 10_000;

    /** Times a part may grow by unpacking, once it is larger than {@link #SMALL_PART}: tables grow by 5 to 40, a bomb by 1,000. */
    static final int LARGEST_GROWTH = 250;

    /** Size in bytes up to which growth does not matter. */
    static final long SMALL_PART = 4L << 20;

    /** Most tabs. */
    static final int MOST_TABS = 500;

    /** Most rows of a sheet: three days at one a second. */
    static final int MOST_ROWS = 300_000;

    /** Most columns of a sheet, as in a logbook's tables. */
    static final int MOST_COLUMNS = 1000;

    /** Most cells of a file that are not blank, in all its sheets, however much memory there is. */
    private static final int MOST_CELLS = 3_000_000;

    /** Most cells of a file that it states once and repeats: equal readings that follow one another are kept so, by the dozen. */
    static final int MOST_REPEATED_CELLS = 20_000;

    /** Most letters of a cell: no spreadsheet keeps more (32,767). */
    static final int LONGEST_CELL = 32_767;

    /** Most different texts that a workbook may keep apart from its sheets. */
    static final int MOST_SHARED_TEXTS = 1_000_000;

    /** Most cells of a sheet that are counted because they could not be read. */
    static final int MOST_ODD_CELLS = 10_000;

    /** Most merged stretches of a sheet that are looked at. */
    static final int MOST_MERGED = 10_000;

    /** Most lines that a cell in quotation marks may hold before its mark is taken for one that was never closed. */
    static final int MOST_LINES_IN_A_CELL = 200;

    /** Marks never closed after which every mark of the file is taken for a letter, so that reading takes no second look for each. */
    static final int MOST_OPEN_MARKS = 100;

    private SheetBounds() {}

    /** Returns the most that all parts of a workbook that are read may unpack to, in bytes, with so much memory. */
    static long largestUnpacked(long memory) {
        return Math.min(LARGEST_UNPACKED, Math.max(SMALL_PART, memory / UNPACKED_SHARE));
    }

    /** Returns the most cells of a file that are not blank, in all its sheets, with so much memory. */
    static int mostCells(long memory) {
        return (int) Math.min(MOST_CELLS, memory / BYTES_A_CELL);
    }

    static long memory() {
        return Runtime.getRuntime().maxMemory();
    }
}
