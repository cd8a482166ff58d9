/** The people of a virtual roastery: what they taste, the scores they give, and the flavour that their scores come from. */
@NullMarked
package parchment.virtual.people;

import org.jspecify.annotations.NullMarked;
