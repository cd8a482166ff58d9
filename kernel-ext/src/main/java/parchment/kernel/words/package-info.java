/**
 * Why a cell failed, in words for the person who wrote it: what is not valid Java, what was thrown, what was most likely meant.
 */
@NullMarked
package parchment.kernel.words;

import org.jspecify.annotations.NullMarked;
