package parchment.quantity;

/** Names a scale on which temperatures are written, and converts to and from degrees Celsius. */
public enum TemperatureUnit {
    /** Degrees Celsius. */
    CELSIUS("°C", 1, 0),
    /** Degrees Fahrenheit. */
    FAHRENHEIT("°F", 1.8, 32),
    /** Kelvin. */
    KELVIN("K", 1, 273.15);

    private final String symbol;
    private final double degreesPerCelsius;
    private final double valueAtZeroCelsius;

    TemperatureUnit(String symbol, double degreesPerCelsius, double valueAtZeroCelsius) {
        this.symbol = symbol;
        this.degreesPerCelsius = degreesPerCelsius;
        this.valueAtZeroCelsius = valueAtZeroCelsius;
    }

    /** Returns the unit as it is printed: "°C", "°F" or "K". */
    public String symbol() {
        return symbol;
    }

    /** Converts a reading on this scale to degrees Celsius. */
    public double toCelsius(double reading) {
        return (reading - valueAtZeroCelsius) / degreesPerCelsius;
    }

    /** Converts degrees Celsius to a reading on this scale. */
    public double fromCelsius(double celsius) {
        return celsius * degreesPerCelsius + valueAtZeroCelsius;
    }

    /** Converts a difference (or a rate, or a standard error) in degrees Celsius to this scale's degrees; no offset is added. */
    public double stepFromCelsius(double celsiusDifference) {
        return celsiusDifference * degreesPerCelsius;
    }
}
