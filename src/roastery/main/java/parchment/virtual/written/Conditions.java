package parchment.virtual.written;

import parchment.virtual.physics.Probes;
import parchment.virtual.physics.Room;

/**
 * The day's true conditions at the machine, most of which nobody sees.
 *
 * @param room the room's air
 * @param flameFactor what the gas supply gives against the ordinary
 * @param draughtFactor what chimney and ducts let through against clean ducts in calm weather
 * @param probes how the probes are fitted
 * @param probePeriod number of the probe period, from 1
 */
public record Conditions(Room room, double flameFactor, double draughtFactor, Probes probes, int probePeriod) {}
