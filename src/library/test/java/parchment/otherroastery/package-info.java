/**
 * Makes logbooks whose truth is known by other equations, habits, noise and panel than the virtual roastery, for tests only.
 *
 * <p>What holds on the virtual roastery alone may hold because both were written by the same hand. Here the drum and its air each
 * have a temperature of their own and radiate, water leaves as a logistic front, cracking beans set heat free afterwards, the probe lags
 * twice, and the panel has one impression of a cup, a drift within a session and coarse steps. Everything reaches the library as a folder
 * of CSV files alone, so that the reading code runs. Numbers are invented; what looks like a fact of the trade is common practice, no
 * source.
 *
 * <pre>{@code
 * Truth truth = OtherRoastery.ordinary().withSeed(7).writeTo(folder);
 * Logbook logbook = Logbook.open(folder);
 * truth.bestReading("Amber", "sweetness")
 * }</pre>
 */
package parchment.otherroastery;
