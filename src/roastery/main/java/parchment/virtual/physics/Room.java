package parchment.virtual.physics;

/**
 * The air of the room at one batch.
 *
 * @param temperature °C
 * @param humidity relative humidity, share
 * @param pressure hPa
 */
public record Room(double temperature, double humidity, double pressure) {
    /** Returns a mild room: 21 °C, 55 %, 1013 hPa. */
    public static Room mild() {
        return new Room(21, 0.55, 1013);
    }
}
