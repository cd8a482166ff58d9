# SPDX-License-Identifier: GPL-3.0-or-later
# The R side of mixed_models.py: job, file of data, warm-up runs, timed runs; prints "name,seconds,number". "export" writes InstEval to the file.
suppressMessages(library(lme4))
given <- commandArgs(TRUE); job <- given[1]
if (job == "export") {
  write.csv(InstEval[, c("s", "d", "dept", "service", "y")], given[2], row.names = FALSE, quote = FALSE)
  quit()
}
data <- read.csv(given[2], stringsAsFactors = TRUE)
if (startsWith(job, "insteval")) for (name in c("s", "d", "dept", "service")) data[[name]] <- factor(data[[name]])
if (job == "permutation") {
  # The fastest way known to us: Freedman and Lane's residuals, one QR, one product.
  set.seed(1); n <- 2000; X <- cbind(1, matrix(rnorm(n * 6), n)); y <- rnorm(n)
  once <- function() {
    Z <- X[, -2]; q <- qr(Z); e <- qr.resid(q, y); xr <- qr.resid(q, X[, 2])
    P <- sapply(1:1000, function(i) sample(e)); max(abs(drop(crossprod(qr.resid(q, P), xr)) / sum(xr^2)))
  }
} else {
  formula <- switch(job,
    panel = score ~ x1 + x2 + x3 + (1 | taster) + (1 | session) + (1 | batch),
    interaction = score ~ x1 + x2 + x3 + (1 | taster) + (1 | session) + (1 | batch) + (1 | taster:session),
    insteval = y ~ service + (1 | s) + (1 | d) + (1 | dept) + (1 | dept:service),
    `insteval-two` = y ~ 1 + (1 | s) + (1 | d))
  once <- function() REMLcrit(suppressMessages(lmer(formula, data)))
}
warm <- as.integer(given[3])
for (run in seq_len(warm + as.integer(given[4]))) {
  gc(FALSE)
  seconds <- system.time(number <- once())[["elapsed"]]
  if (run > warm) cat(sprintf("%s,%.4f,%.6f\n", job, seconds, number))
}
