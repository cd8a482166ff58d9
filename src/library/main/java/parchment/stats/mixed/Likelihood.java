package parchment.stats.mixed;

/** Chooses which likelihood a mixed model maximises. */
public enum Likelihood {
    /** Restricted (residual) maximum likelihood, REML: variances are not biased by the fixed terms. The default. */
    RESTRICTED,
    /** Full maximum likelihood, ML: for likelihood-ratio tests between models with different fixed terms. */
    FULL
}
