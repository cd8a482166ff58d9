# SPDX-License-Identifier: GPL-3.0-or-later
# Cumulative logit mixed models of the wine data by Laplace's approximation; prints case, quantity, value.
# Usage: Rscript ordinal.R FOLDER-OF-REFERENCE-DATA > ordinal.csv
suppressMessages(library(ordinal))
folder <- commandArgs(TRUE)[1]
say <- function(case, quantity, value) cat(sprintf("%s,%s,%.15g\n", case, quantity, value), sep = "")
cat("case,quantity,value\n")
wine <- read.csv(file.path(folder, "ordinal/wine.csv"))
wine$rating <- factor(wine$rating, ordered = TRUE); wine$judge <- factor(wine$judge); wine$bottle <- factor(wine$bottle)

# clmm's default stop leaves the log likelihood 3e-6 off, a sharper one spoils its second derivatives: estimates from the sharp, errors from
# the default fit.
sharp <- clmm.control(gradTol = 1e-9)
report <- function(case, fit, loose = fit) {
  say(case, "log likelihood", as.numeric(logLik(fit)))
  errors <- sqrt(diag(vcov(loose)))
  for (name in names(fit$alpha)) { say(case, paste("threshold", name), fit$alpha[name]); say(case, paste("error", name), errors[name]) }
  for (name in names(fit$beta)) { say(case, paste("fixed", name), fit$beta[name]); say(case, paste("error", name), errors[name]) }
  if (!inherits(fit, "clmm")) return(invisible())
  effect <- ranef(fit); variance <- condVar(fit)
  for (term in names(effect)) {
    say(case, paste("deviation", term), sqrt(as.numeric(VarCorr(fit)[[term]])))
    for (group in rownames(effect[[term]])) {
      say(case, paste("effect", term, group), effect[[term]][group, 1])
      say(case, paste("effect error", term, group), sqrt(variance[[term]][group, 1]))
    }
  }
}
report("wine without judges", clm(rating ~ temp + contact, data = wine))
one <- rating ~ temp + contact + (1 | judge)
report("wine", suppressWarnings(clmm(one, wine, control = sharp)), clmm(one, wine))
two <- rating ~ temp + (1 | judge) + (1 | bottle)
report("wine with bottles", suppressWarnings(clmm(two, wine, control = sharp)), clmm(two, wine))
