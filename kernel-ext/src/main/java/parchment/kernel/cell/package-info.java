/**
 * Runs cells one after the other in one session, with JShell behind it; knows nothing of Jupyter.
 *
 * <p>The life of a cell: {@link parchment.kernel.cell.Evaluator} cuts it into snippets, JShell compiles each, {@code CellControl}
 * loads the classes (with a check put into every loop, so that any cell can be stopped) and keeps the value itself rather than
 * its text, {@link parchment.kernel.page.Shown} asks the value for its forms, and the {@link parchment.kernel.page.CellPage} of a Jupyter
 * client or of the headless run receives them.
 *
 * <pre>{@code
 * try (var evaluator = Evaluator.open()) {
 *     Outcome outcome = evaluator.run("1 + 1", page);   // the page is shown "2"
 * }
 * }</pre>
 */
@NullMarked
package parchment.kernel.cell;

import org.jspecify.annotations.NullMarked;
