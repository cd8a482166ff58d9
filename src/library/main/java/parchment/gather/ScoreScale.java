package parchment.gather;

/**
 * Holds the scale that an attribute is scored on, where a sheet tells it.
 *
 * @param attribute the roaster's own word
 * @param low the lowest score
 * @param high the highest score
 * @param reason why
 */
record ScoreScale(String attribute, double low, double high, String reason) {}
