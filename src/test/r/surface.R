# SPDX-License-Identifier: GPL-3.0-or-later
# A smooth of two features: our columns made from mgcv's own P-spline bases, fitted by mgcv with one penalty per part.
# Prints case, quantity, value. Usage: Rscript surface.R FOLDER-OF-REFERENCE-DATA > surface.csv
suppressMessages(library(mgcv))
folder <- commandArgs(TRUE)[1]
say <- function(case, quantity, value) cat(sprintf("%s,%s,%.15g\n", case, quantity, value), sep = "")
cat("case,quantity,value\n")
air <- na.omit(read.csv(file.path(folder, "r-datasets/airquality.csv"))[, c("Ozone", "Temp", "Wind")])
k <- 7
D <- diff(diag(k), differences = 2)
halves <- function(x, at) {
  smooth <- smooth.construct(s(x, bs = "ps", k = k, m = c(2, 2)), data.frame(x = x), NULL)
  B <- Predict.matrix(smooth, data.frame(x = at))
  list(line = (at - mean(range(x))) / (diff(range(x)) / 2), wiggle = B %*% t(D) %*% solve(D %*% t(D)))
}
columns <- function(at) {
  x <- halves(air$Temp, at$Temp); z <- halves(air$Wind, at$Wind)
  both <- do.call(cbind, lapply(seq_len(k - 2), function(i) x$wiggle[, i] * z$wiggle))
  list(lx = x$line, lz = z$line, lxz = x$line * z$line, A = x$wiggle, B = z$wiggle, C = x$wiggle * z$line, E = z$wiggle * x$line, F = both)
}
data <- c(columns(air), list(y = air$Ozone))
small <- list(diag(k - 2)); large <- list(diag((k - 2)^2))
fit <- gam(y ~ lx + lz + lxz + A + B + C + E + F, data = data, method = "REML",
  paraPen = list(A = small, B = small, C = small, E = small, F = large), control = gam.control(epsilon = 1e-11, newton = list(conv.tol = 1e-10)))
say("surface", "score", as.numeric(fit$gcv.ubre))
say("surface", "effective degrees of freedom", sum(fit$edf))
say("surface", "scale", fit$scale)
points <- data.frame(Temp = c(60, 70, 80, 90, 75, 85, 95), Wind = c(12, 14, 8, 7, 10, 12, 6))
answer <- predict(fit, columns(points), se.fit = TRUE)
tensor <- predict(gam(Ozone ~ te(Temp, Wind, bs = "ps", k = k, m = list(c(2, 2), c(2, 2))), data = air, method = "REML"), points)
for (i in seq_len(nrow(points))) {
  say("surface", paste("height", points$Temp[i], points$Wind[i]), answer$fit[i])
  say("surface", paste("error", points$Temp[i], points$Wind[i]), answer$se.fit[i])
  say("te", paste("height", points$Temp[i], points$Wind[i]), tensor[i])
}
