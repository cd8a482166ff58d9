package parchment.gather;

import java.util.List;
import java.util.Map;

/**
 * The lots of a gathering as they will be written, so that every table spells them alike.
 *
 * @param batches the batches, each with its lot's full name
 * @param lots the lots by name, each with its values by heading; none where no list has it
 * @param bare the lots that batches name and no list has
 */
record GatheredLots(List<GatheredBatch> batches, Map<String, Map<String, String>> lots, List<String> bare) {}
