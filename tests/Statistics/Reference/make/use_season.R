# Twelve invented engines over two years, and the shares of the months that make their hours likeliest, by a general
# optimiser and without any belief. Run in this folder's parent: Rscript make/use_season.R (R 4.2.2).
set.seed(1977)
shares <- pmax(0.05, 1 - 0.9 * cos(2 * pi * (0:11) / 12))
shares <- shares / mean(shares)
rows <- list()
for (boat in 1:12) {
  rate <- rgamma(1, 4, 4) * 6 # [h/d]; more than any boat runs, so that the belief hardly counts
  from <- as.Date("2022-01-01") + sample(0:40, 1)
  while (from < as.Date("2023-12-01")) {
    to <- from + sample(10:60, 1)
    months <- tabulate(as.POSIXlt(seq(from + 1, to, by = "day"))$mon + 1, 12)
    rows[[length(rows) + 1]] <- data.frame(boat, from, to, hours = min(23 * sum(months), 4 * rpois(1, rate * sum(months * shares) / 4)))
    from <- to
  }
}
all <- do.call(rbind, rows)
write.csv(all, "use_stretches.csv", row.names = FALSE, quote = FALSE)

days <- t(mapply(function(a, b) tabulate(as.POSIXlt(seq(a + 1, b, by = "day"))$mon + 1, 12), all$from, all$to))
minus_log_likelihood <- function(p) { # Poisson in lumps, each boat's rate at its likeliest
  s <- exp(c(p, 0)); s <- s / mean(s)
  x <- as.vector(days %*% s)
  rate <- tapply(all$hours, all$boat, sum) / tapply(x, all$boat, sum)
  mu <- rate[as.character(all$boat)] * x
  -sum((all$hours * log(mu) - mu) / 4)
}
best <- optim(rep(0, 11), minus_log_likelihood, method = "BFGS", control = list(reltol = 1e-15, maxit = 2000))
s <- exp(c(best$par, 0)); s <- s / mean(s)
x <- as.vector(days %*% s)
mu <- (tapply(all$hours, all$boat, sum) / tapply(x, all$boat, sum))[as.character(all$boat)] * x
keep <- mu > 2
dispersion <- sum(((all$hours - mu)^2 / mu)[keep]) / (sum(keep) - 12 - 11)
write.csv(data.frame(month = 1:12, share = sprintf("%.6f", s), dispersion_hours = sprintf("%.6f", dispersion)),
          "use_shares.csv", row.names = FALSE, quote = FALSE)
