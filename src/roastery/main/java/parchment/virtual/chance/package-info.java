/** Seeds and what is drawn from them: the same seed gives the same roastery, byte for byte. */
@NullMarked
package parchment.virtual.chance;

import org.jspecify.annotations.NullMarked;
