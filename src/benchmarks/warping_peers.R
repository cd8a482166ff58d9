# Times a plain loop, compiled to R's byte code: "job,median in ms,answer". Use: Rscript warping_peers.R FILE
numbers <- readBin(commandArgs(TRUE)[1], "double", 1600, size = 8, endian = "little")
a <- numbers[1:800]
b <- numbers[801:1600]
distance <- function(a, b, radius) {
  n <- length(a)
  m <- length(b)
  before <- c(0, rep(Inf, m))
  for (i in 1:n) {
    row <- rep(Inf, m + 1)
    ai <- a[i]
    for (j in max(1, i - radius):min(m, i + radius)) {
      least <- before[j]
      if (before[j + 1] < least) least <- before[j + 1]
      if (row[j] < least) least <- row[j]
      row[j + 1] <- abs(ai - b[j]) + least
    }
    before <- row
  }
  before[m + 1]
}
distance <- compiler::cmpfun(distance)
for (job in c("full", "band")) {
  radius <- if (job == "full") 800 else 80
  answer <- distance(a, b, radius)
  times <- replicate(15, {
    start <- proc.time()[["elapsed"]]
    for (k in 1:4) distance(a, b, radius)
    250 * (proc.time()[["elapsed"]] - start)
  })
  cat(sprintf("%s,%.6f,%.6f\n", job, median(times), answer))
}
