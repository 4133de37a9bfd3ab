# Steps and trials with noise of their own, worked out without a line of the program: Rscript make/step_and_own_noise.R
# in this folder writes step_and_own_noise.csv. Base R alone. Invented data.
hours <- c(0, 310, 480, 700, 1150, 1300, 1710, 1900)
rpm <- c(5505, 5652, 5611, 5840, 5895, 5660, 5802, 5811)
air <- c(12, 18, 25, 15, 9, 22, 28, 17)
load <- c(0, 120, -60, 0, 200, 40, -100, 0)
own <- c(0, 55, 0, 0, 90, 0, 0, 30)            # further sd of each trial [1/min]
strike <- as.numeric(seq_along(hours) >= 4)    # after the third trial
repitch <- as.numeric(seq_along(hours) >= 6)   # after the fifth
r <- median(rpm); share <- 0.007; gross <- 0.055; eps <- 0.03
x <- (hours - hours[8]) / 100
A <- cbind(level = 1, strike, repitch, air = air - 15, load = load / 100)
m0 <- c(1.02 * 5500, 85, 0, 0, 0); s0 <- c(600, 90, 250, 2e-4 * r, 5e-4 * r)
now <- c(1, 1, 1, 0, 0)
out <- data.frame()
put <- function(case, what, value) out <<- rbind(out, data.frame(case = case, what = what, value = sprintf("%.10g", value)))

# 1. Drift without a prior, no gross error: lm with weights, each prior as a row that was observed once.
X <- rbind(cbind(A, x), cbind(diag(5), 0)); Y <- c(rpm, m0); W <- 1 / c((share * r)^2 + own^2, s0^2)
fit <- lm(Y ~ X - 1, weights = W); b <- unname(coef(fit)); V <- unname(summary(fit)$cov.unscaled)
at <- function(f) c(sum(f * b), sqrt(drop(t(f) %*% V %*% f)))
for (k in list(list("drift", c(0, 0, 0, 0, 0, 1)), list("strike", c(0, 1, 0, 0, 0, 0)), list("repitch", c(0, 0, 1, 0, 0, 0)),
               list("level", c(now, 0)), list("level 40 h before", c(now, -0.4)), list("level 250 h after", c(now, 2.5)))) {
  v <- at(k[[2]]); put("lm", paste(k[[1]], "mean"), v[1]); put("lm", paste(k[[1]], "sd"), v[2])
}

rpm[7] <- 5480; stopifnot(median(rpm) != r); r <- median(rpm); s0[4:5] <- c(2e-4, 5e-4) * r
# 2. The seventh misread, drift 0 or 20 alike, up to two gross errors: every set by its dense multivariate normal density.
sets <- c(list(integer()), as.list(1:8), combn(8, 2, simplify = FALSE))
log_density <- c(); member <- c(); drift <- c(); moments <- list()
for (s in c(0, 20)) for (z in sets) {
  v <- (share * r)^2 + own^2; v[z] <- v[z] + (gross * r)^2
  S <- A %*% diag(s0^2) %*% t(A) + diag(v); d <- rpm - A %*% m0 - s * x
  log_density <- c(log_density, log(0.5) + length(z) * log(eps) + (8 - length(z)) * log(1 - eps) -
    0.5 * (8 * log(2 * pi) + as.numeric(determinant(S)$modulus) + drop(t(d) %*% solve(S, d))))
  G <- diag(s0^2) %*% t(A) %*% solve(S)
  moments <- c(moments, list(list(m = m0 + G %*% d, V = diag(s0^2) - G %*% A %*% diag(s0^2), z = z)))
  drift <- c(drift, s)
}
top <- max(log_density); w <- exp(log_density - top); put("sets", "log evidence", top + log(sum(w))); w <- w / sum(w)
put("sets", "weight of 20", sum(w[drift == 20]))
for (i in 1:8) put("sets", paste("gross", i), sum(w[sapply(moments, function(k) i %in% k$z)]))
mix <- function(f) {
  m <- sapply(moments, function(k) sum(f * k$m)); v <- sapply(moments, function(k) drop(t(f) %*% k$V %*% f))
  c(sum(w * m), sqrt(sum(w * (v + m^2)) - sum(w * m)^2))
}
for (k in list(list("strike", c(0, 1, 0, 0, 0)), list("repitch", c(0, 0, 1, 0, 0)), list("level", now))) {
  v <- mix(k[[2]]); put("sets", paste(k[[1]], "mean"), v[1]); put("sets", paste(k[[1]], "sd"), v[2])
}
write.csv(out, "step_and_own_noise.csv", row.names = FALSE, quote = FALSE)
