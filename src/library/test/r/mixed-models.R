# SPDX-License-Identifier: GPL-3.0-or-later
# Fits lme4's published examples and a crossed panel; prints case, quantity, value.
# Usage: Rscript mixed-models.R FOLDER-OF-REFERENCE-DATA bootstrap > mixed-models.csv
suppressMessages({library(lme4); library(lmerTest)})
folder <- commandArgs(TRUE)[1]
table_of <- function(path) read.csv(file.path(folder, path), stringsAsFactors = TRUE)
say <- function(case, quantity, value) cat(sprintf("%s,%s,%.15g\n", case, quantity, value), sep = "")
cat("case,quantity,value\n")
sharp <- lmerControl(optimizer = "bobyqa", optCtrl = list(rhoend = 1e-11, maxfun = 1e5), check.conv.singular = "ignore")

report <- function(case, fit, effects = TRUE) {
  say(case, "criterion", REMLcrit(fit))
  say(case, "residual", sigma(fit))
  coefficients <- coef(summary(fit, ddf = "Satterthwaite"))
  for (name in rownames(coefficients)) {
    say(case, paste("fixed", name), coefficients[name, "Estimate"])
    say(case, paste("error", name), coefficients[name, "Std. Error"])
    say(case, paste("degrees", name), coefficients[name, "df"])
  }
  variances <- as.data.frame(VarCorr(fit))
  for (i in seq_len(nrow(variances))) if (is.na(variances$var2[i]) && variances$grp[i] != "Residual")
    say(case, paste("deviation", variances$grp[i], variances$var1[i]), variances$sdcor[i])
  if (!effects) return(invisible())
  # Henderson's equations with lme4's own matrices: errors with the fixed terms estimated, not taken as known.
  X <- getME(fit, "X"); Z <- t(as.matrix(getME(fit, "Zt"))); L <- t(as.matrix(getME(fit, "Lambdat")))
  ZL <- Z %*% L
  M <- rbind(cbind(crossprod(ZL) + diag(ncol(ZL)), crossprod(ZL, X)), cbind(crossprod(X, ZL), crossprod(X)))
  V <- sigma(fit)^2 * (L %*% solve(M)[seq_len(ncol(ZL)), seq_len(ncol(ZL))] %*% t(L))
  errors <- sqrt(pmax(0, diag(V)))
  known <- sqrt(pmax(0, diag(sigma(fit)^2 * (L %*% solve(crossprod(ZL) + diag(ncol(ZL))) %*% t(L)))))
  at <- 0
  effect <- ranef(fit, condVar = FALSE)
  for (term in names(getME(fit, "flist"))) for (group in rownames(effect[[term]])) for (name in colnames(effect[[term]])) {
    at <- at + 1
    say(case, paste("effect", term, group, name), effect[[term]][group, name])
    say(case, paste("effect error", term, group, name), errors[at])
    say(case, paste("effect error with fixed terms known", term, group, name), known[at])
  }
}

sleep <- table_of("lme4/sleepstudy.csv"); sleep$Subject <- factor(sleep$Subject)
fit <- lmer(Reaction ~ Days + (Days | Subject), sleep, control = sharp)
report("sleepstudy", fit)
for (row in c(1, 57, 180)) {
  say("sleepstudy", paste("predicted for an average group row", row), predict(fit, re.form = NA)[row])
  say("sleepstudy", paste("predicted with groups row", row), predict(fit)[row])
}
report("Dyestuff", lmer(Yield ~ 1 + (1 | Batch), table_of("lme4/Dyestuff.csv"), control = sharp))
report("Dyestuff2", lmer(Yield ~ 1 + (1 | Batch), table_of("lme4/Dyestuff2.csv"), control = sharp))
report("Penicillin", lmer(diameter ~ 1 + (1 | plate) + (1 | sample), table_of("lme4/Penicillin.csv"), control = sharp))
pastes <- table_of("lme4/Pastes.csv")
full <- lmer(strength ~ 1 + (1 | sample) + (1 | batch), pastes, control = sharp)
report("Pastes", full)
cake <- table_of("lme4/cake.csv")
for (name in c("recipe", "temperature", "replicate")) cake[[name]] <- factor(cake[[name]], ordered = FALSE)
report("cake", lmer(angle ~ recipe * temperature + (1 | recipe:replicate), cake, control = sharp), effects = FALSE)

panel <- read.csv(gzfile(file.path(folder, "panel/panel.csv.gz")), stringsAsFactors = TRUE)
report("panel", lmer(score ~ x1 + x2 + x3 + (1 | taster) + (1 | session) + (1 | batch), panel, control = sharp), effects = FALSE)

small <- lmer(strength ~ 1 + (1 | sample), pastes, control = sharp)
observed <- REMLcrit(small) - REMLcrit(full)
say("Pastes without batch", "likelihood ratio", observed)

# With a second argument also the parametric bootstrap of leaving out the batches (it takes a while); known within its Monte Carlo error only.
if (length(commandArgs(TRUE)) > 1) {
  set.seed(1)
  statistics <- sapply(simulate(small, 400), function(y)
    suppressMessages(suppressWarnings(REMLcrit(lme4::refit(small, y)) - REMLcrit(lme4::refit(full, y)))))
  say("Pastes without batch", "bootstrap probability", (1 + sum(statistics >= observed - 1e-7)) / (1 + length(statistics)))
}
