package parchment.stats.mixed;

/** Derivatives of a mixed model's criterion by the relative factors: of the log determinant and of the penalised sum of squares. */
final class MixedGradient {
    private MixedGradient() {}

    /** Writes the gradient and its two parts into a value just computed, whose inverse is in force. */
    static void of(MixedSystem system, MixedSystem.Value value) {
        CrossProducts p = system.products;
        MixedLayout layout = system.layout;
        double[][] lambda = system.lambda;
        double[] inverse = system.inverse;
        double[] solution = system.solution;
        int[] firstParameter = system.firstParameter;
        int parameters = system.parameters;
        double[] log = new double[parameters];
        for (int pair = 0; pair < p.pairs.length; pair++) {
            int low = (int) (p.pairs[pair] >>> 32);
            int high = (int) p.pairs[pair];
            int s = p.termOfNode[low];
            int t = p.termOfNode[high];
            double[] block = p.values[pair];
            int[] target = layout.pairTargets[pair];
            int ns = p.sizeOfTerm[s];
            int nt = p.sizeOfTerm[t];
            if (ns == 1 && nt == 1) {
                double product = 2 * block[0] * inverse[target[0]];
                log[firstParameter[t]] += lambda[s][0] * product;
                if (low != high) {
                    log[firstParameter[s]] += lambda[t][0] * product;
                }
                continue;
            }
            boolean swap = layout.swapped[pair];
            // Derivative by the high node's factor, then (for two different nodes) by the low node's.
            for (int c = 0, k = firstParameter[t]; c < nt; c++) {
                for (int b = c; b < nt; b++, k++) {
                    double sum = 0;
                    for (int a = 0; a < ns; a++) {
                        for (int e = 0; e <= a; e++) {
                            sum += inverse[swap ? target[e * nt + c] : target[c * ns + e]]
                                    * lambda[s][a * ns + e]
                                    * block[b * ns + a];
                        }
                    }
                    log[k] += 2 * sum;
                }
            }
            if (low != high) {
                for (int c = 0, k = firstParameter[s]; c < ns; c++) {
                    for (int b = c; b < ns; b++, k++) {
                        double sum = 0;
                        for (int a = 0; a < nt; a++) {
                            for (int e = 0; e <= a; e++) {
                                sum += inverse[swap ? target[c * nt + e] : target[e * ns + c]]
                                        * lambda[t][a * nt + e]
                                        * block[a * ns + b];
                            }
                        }
                        log[k] += 2 * sum;
                    }
                }
            }
        }
        double[] squares = new double[parameters];
        double[] crossError = crossError(system);
        for (int node = 0; node < p.nodes; node++) {
            int t = p.termOfNode[node];
            int nt = p.sizeOfTerm[t];
            int first = p.firstComponent[node];
            for (int c = 0, k = firstParameter[t]; c < nt; c++) {
                int column = layout.columnOfNode[node] + c;
                int place = layout.placeOfFixed(column);
                for (int b = c; b < nt; b++, k++) {
                    squares[k] -= 2 * crossError[first + b] * solution[column];
                    if (system.inverseHasFixed) {
                        double sum = 0;
                        for (int x = 0; x < p.fixed; x++) {
                            sum += inverse[place + x] * p.withFixed[first + b][x];
                        }
                        log[k] += 2 * sum;
                    }
                }
            }
        }
        int n = system.divisor();
        double[] gradient = new double[parameters];
        for (int k = 0; k < parameters; k++) {
            gradient[k] = log[k] + n * squares[k] / value.squares;
        }
        value.gradient = gradient;
        value.gradientOfLog = log;
        value.gradientOfSquares = squares;
    }

    /** Z'(y - Z b - X beta), from the crossproducts. */
    private static double[] crossError(MixedSystem system) {
        CrossProducts p = system.products;
        MixedLayout layout = system.layout;
        double[] solution = system.solution;
        double[] b = system.effects();
        double[] error = new double[b.length];
        for (int i = 0; i < error.length; i++) {
            double[] cross = p.withFixed[i];
            double sum = cross[p.fixed];
            for (int k = 0; k < p.fixed; k++) {
                sum -= cross[k] * solution[layout.sparseColumns + layout.denseRandom + k];
            }
            error[i] = sum;
        }
        for (int pair = 0; pair < p.pairs.length; pair++) {
            int low = (int) (p.pairs[pair] >>> 32);
            int high = (int) p.pairs[pair];
            int ns = layout.size(low);
            int nt = layout.size(high);
            int fl = p.firstComponent[low];
            int fh = p.firstComponent[high];
            double[] block = p.values[pair];
            for (int r = 0; r < nt; r++) {
                for (int c = 0; c < ns; c++) {
                    error[fh + r] -= block[r * ns + c] * b[fl + c];
                    if (low != high) {
                        error[fl + c] -= block[r * ns + c] * b[fh + r];
                    }
                }
            }
        }
        return error;
    }
}
