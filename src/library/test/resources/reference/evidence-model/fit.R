# Fits the evidence room's default model with an outside program, from the raw table, assembling every column here.
# Source of the data: invented, drawn by parchment.evidence.KnownTruth (see AgreesWithLme4Test for the seeds and settings).
# Made with: R 4.2.2, lme4 1.1-31, lmerTest 3.1-3, nlme 3.1-162 (Debian 12 packages r-cran-lme4, r-cran-lmertest, r-cran-nlme).
# Run in this folder: Rscript fit.R > fits.csv
suppressMessages({library(lme4); library(lmerTest); library(nlme)})
options(digits = 17)

read <- function(file) {
  d <- read.csv(file, stringsAsFactors = TRUE)
  at <- as.POSIXct(substr(as.character(d$roasted_at), 1, 16), format = "%Y-%m-%dT%H:%M", tz = "UTC")
  d$date <- as.Date(at)
  d$day <- factor(as.character(d$date))
  batch <- unique(data.frame(batch = d$batch, at = at, day = d$day, lot = d$lot, x = d$drop_temperature_c, mass = d$green_mass_kg,
                             date = d$date))
  batch <- batch[order(batch$at), ]
  batch$place <- ave(seq_along(batch$day), batch$day, FUN = seq_along)
  batch$lotmean <- ave(batch$x, batch$lot)
  batch$within <- batch$x - batch$lotmean
  i <- match(d$batch, batch$batch)
  d$within <- batch$within[i]
  d$square <- d$within^2
  d$lotmean <- batch$lotmean[i]
  d$place <- batch$place[i]
  d$rest <- as.numeric(as.Date(as.character(d$tasted_on)) - d$date)
  days <- sort(unique(as.numeric(d$date)))
  d$line <- (as.numeric(d$date) - days[1]) / (days[length(days)] - days[1]) - 0.5
  d$sitting <- interaction(d$cupping, d$cupper, drop = TRUE)
  d
}

out <- function(set, name, value) cat(sprintf("%s,%s,%.15g\n", set, name, value))
cat("set,quantity,value\n")

# 1. Eleven roast days: no bends over the date, so the model is one that lmer writes.
d <- read("eleven-days.csv")
tight <- lmerControl(optimizer = "bobyqa", optCtrl = list(rhobeg = 0.2, rhoend = 1e-10, maxfun = 1e6),
                     calc.derivs = TRUE)
f <- suppressMessages(lmer(score ~ within + lotmean + rest + place + green_mass_kg + line +
            (1 | lot) + (1 | day) + (1 | batch) + (1 | cupper) + (1 | cupping) + (1 | sitting),
          data = d, REML = TRUE, control = tight))
s <- coef(summary(f))
out("line", "reml", as.numeric(REMLcrit(f)))
out("line", "slope", s["within", "Estimate"])
out("line", "standard error", s["within", "Std. Error"])
out("line", "degrees of freedom", s["within", "df"])
v <- as.data.frame(VarCorr(f))
for (k in seq_len(nrow(v))) out("line", paste("spread", v$grp[k]), v$sdcor[k])
g <- suppressMessages(update(f, . ~ . + square))
s <- coef(summary(g))
out("bend", "reml", as.numeric(REMLcrit(g)))
out("bend", "slope", s["within", "Estimate"])
out("bend", "square", s["square", "Estimate"])
out("bend", "square standard error", s["square", "Std. Error"])

# 2. Twenty-four roast days: six bends that share one variance, with nlme.
d <- read("bends.csv")
days <- sort(unique(as.numeric(d$date)))
n <- length(days)
knots <- min(10, n %/% 4)
line <- (days - days[1]) / (days[n] - days[1]) - 0.5
for (k in seq_len(knots)) {
  at <- (n - 1) * k / (knots + 1)
  knot <- line[floor(at + 0.5) + 1]
  d[[paste0("bend", k)]] <- pmax(0, d$line - knot)
}
d$all <- factor(1)
bends <- as.formula(paste("~ 0 +", paste0("bend", seq_len(knots), collapse = " + ")))
h <- lme(score ~ within + lotmean + rest + place + green_mass_kg + line, data = d, method = "REML",
         random = list(all = pdBlocked(list(pdIdent(bends), pdIdent(~ 0 + lot), pdIdent(~ 0 + day), pdIdent(~ 0 + batch),
                                            pdIdent(~ 0 + cupper), pdIdent(~ 0 + cupping), pdIdent(~ 0 + sitting)))),
         control = lmeControl(msMaxIter = 500, maxIter = 500, tolerance = 1e-10, msTol = 1e-10, opt = "optim",
                              optimMethod = "BFGS", returnObject = TRUE))
out("smooth", "reml", -2 * as.numeric(logLik(h)))
out("smooth", "slope", fixef(h)["within"])
out("smooth", "standard error", sqrt(vcov(h)["within", "within"]))
out("smooth", "spread Residual", h$sigma)
