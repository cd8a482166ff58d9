/** What an answer about scores is said with: a slope, an association or effect, its verdict and its claim, and the words for them. */
@NullMarked
package parchment.evidence.finding;

import org.jspecify.annotations.NullMarked;
