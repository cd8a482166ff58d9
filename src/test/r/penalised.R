# SPDX-License-Identifier: GPL-3.0-or-later
# Ridge, elastic net and lasso by glmnet, partial least squares by pls; prints case, quantity, value.
# Usage: Rscript penalised.R FOLDER-OF-REFERENCE-DATA > penalised.csv
suppressMessages({library(glmnet); library(pls)})
folder <- commandArgs(TRUE)[1]
say <- function(case, quantity, value) cat(sprintf("%s,%s,%.15g\n", case, quantity, value), sep = "")
cat("case,quantity,value\n")
cars <- read.csv(file.path(folder, "r-datasets/mtcars.csv"))
X <- as.matrix(cars[, -1]); y <- cars$mpg
for (mixing in c(0, 0.5, 1)) for (penalty in c(2, 0.5, 0.1)) {
  # glmnet's own coordinate descent, run to the end; for ridge also the closed form with glmnet's scaling (y to a variance of 1).
  found <- if (mixing == 0) {
    S <- sqrt(colMeans(scale(X, scale = FALSE)^2)); Z <- scale(X, scale = S); b <- solve(crossprod(Z) / nrow(Z) + penalty / sqrt(mean((y - mean(y))^2)) * diag(ncol(Z)), crossprod(Z, y - mean(y)) / nrow(Z)) / S
    c(mean(y) - sum(colMeans(X) * b), b)
  } else as.numeric(coef(glmnet(X, y, alpha = mixing, lambda = c(4, 2, 1, 0.5, 0.2, 0.1), thresh = 1e-20, maxit = 1e7), s = penalty, exact = FALSE))
  names(found) <- c("(Intercept)", colnames(X))
  for (name in names(found)) say(sprintf("mixing %g penalty %g", mixing, penalty), name, found[name])
}
ridge <- as.numeric(coef(glmnet(X, y, alpha = 0, lambda = c(4, 2, 1, 0.5), thresh = 1e-20, maxit = 1e7), s = 2))
say("ridge by glmnet penalty 2", "wt", ridge[1 + which(colnames(X) == "wt")])
# Centred and not scaled, the default of both; every car left out once.
fit <- plsr(y ~ X, ncomp = 10, validation = "LOO")
left <- RMSEP(fit, estimate = "CV")$val[1, 1, ]
for (i in 0:10) say("partial", paste("left one out", i), left[i + 1])
share <- explvar(fit)
for (i in 1:10) say("partial", paste("explained", i), share[i])
first <- plsr(mpg ~ X, ncomp = 2, data = data.frame(mpg = y[1:24], X = I(X[1:24, ])))
foretold <- predict(first, ncomp = 2, newdata = data.frame(X = I(X[25:32, ])))
say("partial", "test error 2", sqrt(mean((y[25:32] - foretold)^2)))
slopes <- coef(fit, ncomp = 3)
for (name in colnames(X)) say("partial", paste("slope of 3", name), slopes[name, 1, 1])
