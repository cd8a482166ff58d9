/** What sort of number a feature is: its family, its role in a comparison, what a batch must have for it. */
@NullMarked
package parchment.feature.kind;

import org.jspecify.annotations.NullMarked;
