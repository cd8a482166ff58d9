/**
 * Is the virtual roastery: a seeded simulator whose truth is known, which makes demo logbooks and lessons.
 *
 * <p>A batch is roasted by balances of heat and water with an invented machine, a person with habits moves gas and air and writes
 * marks, a logger writes readings, and cuppers with biases score the cups. For example
 * {@code RoastSimulator.fitted().roast(GreenBeans.ordinary(), Charge.of(2.1, 177), ReferenceRoaster.commonPractice())} roasts
 * one batch. Every machine here is invented: nothing made by this package may be roasted from.
 */
@NullMarked
package parchment.virtual;

import org.jspecify.annotations.NullMarked;
