/**
 * The kernel as Jupyter finds it: its folder, its settings, and the archive of loaded classes that makes it start sooner.
 */
@NullMarked
package parchment.kernel.install;

import org.jspecify.annotations.NullMarked;
