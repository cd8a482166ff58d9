/**
 * The workshop of the virtual drum: what beans, air, metal and probes do, second by second. {@link parchment.virtual.physics.RoastSimulator} roasts one batch
 * of {@link parchment.virtual.physics.GreenBeans} in one {@link parchment.virtual.physics.DrumMachine}; the seasons, habits and cuppings around it are the
 * room's. Invented machines: do not roast by them.
 */
@NullMarked
package parchment.virtual.physics;

import org.jspecify.annotations.NullMarked;
