package parchment.stats.mixed;

/**
 * How far one group lies from the others, as predicted (best linear unbiased prediction: shrunken towards 0).
 *
 * @param term the random term
 * @param group the group's label
 * @param effect which effect of the group, as "(Intercept)"
 * @param estimate the predicted effect
 * @param standardError standard deviation of prediction minus true effect, at the estimated variances, fixed terms estimated
 */
public record GroupEffect(String term, String group, String effect, double estimate, double standardError) {}
