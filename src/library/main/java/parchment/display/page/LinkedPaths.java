package parchment.display.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * One path per thing that {@link LinkedViews} shows, and the axes on which the paths can be laid over each other.
 *
 * <p>Numbers are in the reader's unit. A path with more than {@value #MOST_POINTS} points is thinned when it is added.
 */
public final class LinkedPaths {
    /** Points that a path is thinned to: more cannot be told apart on a picture some four hundred dots wide. */
    public static final int MOST_POINTS = 120;

    /**
     * Names an axis of numbers.
     *
     * @param name what is measured, in full words
     * @param unit its unit as printed; {@code "min:s"} stands for seconds that are printed as minutes and seconds
     * @param digits how many decimals are shown
     */
    public record Scale(String name, String unit, int digits) {
        /** The unit of an axis in seconds that prints minutes and seconds. */
        public static final String CLOCK = "min:s";
    }

    private enum Turn {
        AS_GIVEN,
        TURNED
    }

    private record Setting(String name, Scale across, Scale upwards, Turn turn, double[] shifts) {}

    private final String title;
    private final Scale across;
    private final Scale upwards;
    private final List<double[][]> paths;
    private final List<Setting> settings;

    private LinkedPaths(String title, Scale across, Scale upwards, List<double[][]> paths, List<Setting> settings) {
        this.title = title;
        this.across = across;
        this.upwards = upwards;
        this.paths = List.copyOf(paths);
        this.settings = List.copyOf(settings);
    }

    /** Starts a picture of paths without any path. */
    public static LinkedPaths titled(String title, Scale across, Scale upwards) {
        return new LinkedPaths(title, across, upwards, List.of(), List.of());
    }

    /**
     * Adds the next thing's path; a NaN among the values leaves a gap, and no values at all leave the thing out.
     *
     * @throws IllegalArgumentException if the arrays differ in length
     */
    public LinkedPaths withPath(double[] positions, double[] values) {
        if (positions.length != values.length) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT,
                    "A path needs a value for each position; it was given %d positions and %d values.",
                    positions.length,
                    values.length));
        }
        List<double[][]> more = new ArrayList<>(paths);
        more.add(LargestTriangles.thin(positions, values, MOST_POINTS));
        return new LinkedPaths(title, across, upwards, more, settings);
    }

    /**
     * Adds a way to lay the paths over each other: every position less the thing's own zero.
     *
     * @param zeros one per thing; NaN leaves the thing out
     */
    public LinkedPaths withZeros(String name, double[] zeros) {
        return withSetting(new Setting(
                name, new Scale(name, across.unit(), across.digits()), upwards, Turn.AS_GIVEN, zeros.clone()));
    }

    /** Adds the way in which the picture is turned: when each value was first reached after the lowest one. */
    public LinkedPaths withValueAcross(String name) {
        return withSetting(new Setting(name, upwards, across, Turn.TURNED, new double[0]));
    }

    private LinkedPaths withSetting(Setting setting) {
        List<Setting> more = new ArrayList<>(settings);
        more.add(setting);
        return new LinkedPaths(title, across, upwards, paths, more);
    }

    int size() {
        return paths.size();
    }

    void writeTo(JsonText json) {
        json.object().text("title", title).list("settings");
        for (Setting setting : settings.isEmpty() ? List.of(asGiven()) : settings) {
            json.object().text("name", setting.name());
            scale(json, "across", setting.across());
            scale(json, "upwards", setting.upwards());
            json.text("turn", setting.turn() == Turn.TURNED ? "turned" : "as given");
            json.numbers("zeros", setting.shifts(), across.digits()).end();
        }
        json.end().list("paths");
        for (double[][] path : paths) {
            json.object()
                    .numbers("x", path[0], across.digits())
                    .numbers("y", path[1], upwards.digits() + 1)
                    .end();
        }
        json.end().end();
    }

    private Setting asGiven() {
        return new Setting(across.name(), across, upwards, Turn.AS_GIVEN, new double[0]);
    }

    private static void scale(JsonText json, String name, Scale scale) {
        json.object(name)
                .text("name", scale.name())
                .text("unit", scale.unit())
                .number("digits", scale.digits())
                .end();
    }

    @Override
    public String toString() {
        return title + ": " + paths.size() + " paths";
    }
}
