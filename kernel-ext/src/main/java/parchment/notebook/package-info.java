/**
 * Notebook files without Jupyter: reads them, runs their cells with the kernel's own evaluator, writes them back with their
 * outputs, and makes one self-contained HTML page of each.
 *
 * <pre>{@code
 * Notebook notebook = Notebook.read(Path.of("notebooks/tour.ipynb"));
 * NotebookRun.Result result = NotebookRun.of(notebook).run(progress);
 * result.notebook().write(Path.of("out/tour.ipynb"));
 * Files.writeString(Path.of("out/tour.html"), HtmlPage.of(result.notebook(), "tour"));
 * }</pre>
 *
 * The file format is that of the nbformat project, version 4.
 *
 * @see <a href="https://nbformat.readthedocs.io/en/latest/format_description.html">The notebook file format</a>
 */
@NullMarked
package parchment.notebook;

import org.jspecify.annotations.NullMarked;
