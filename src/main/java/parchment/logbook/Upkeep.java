package parchment.logbook;

import java.time.LocalDate;
import java.util.Optional;

/**
 * Holds one piece of work on a machine.
 *
 * @param machine the machine's name
 * @param doneOn the day it was done
 * @param what what was done, as in "probe moved" or "burner cleaned"
 * @param note whatever else was written
 */
public record Upkeep(String machine, LocalDate doneOn, String what, Optional<String> note) {}
