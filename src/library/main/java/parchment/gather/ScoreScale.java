package parchment.gather;

/**
 * The scale that an attribute is scored on, as a sheet tells it, to be written into the settings.
 *
 * @param attribute the roaster's own word
 * @param low the lowest score
 * @param high the highest score
 * @param reason why
 */
record ScoreScale(String attribute, double low, double high, String reason) {}
