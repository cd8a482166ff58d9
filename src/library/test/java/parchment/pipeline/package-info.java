/**
 * Counts how often answers are right when the whole of the library runs: from a folder of CSV files to the answer, on logbooks with
 * known truth from two roasteries that share no equation. For tests only; docs/measurements/pipeline.md holds the table.
 */
package parchment.pipeline;
