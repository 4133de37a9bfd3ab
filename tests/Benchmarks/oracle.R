# R's side of the oracle: reads the cases of every method, answers with one number a line (method, key, value).
# None of the arithmetic is shared with the program: R's own functions, or dense matrices.
folder <- commandArgs(trailingOnly = TRUE)[1]
for (package in c("survival", "nlme")) {
  if (!requireNamespace(package, quietly = TRUE)) stop("the package ", package, " is missing")
}
library(survival)
cat(sprintf("R %s, survival %s, nlme %s\n", getRversion(), packageVersion("survival"), packageVersion("nlme")))

answers <- new.env()
method <- ""
say <- function(case, what, value) {
  line <- sprintf("%s,%s%s,%.17g", method, case, ifelse(what == "", "", paste0("/", what)), value)
  answers$lines <- c(answers$lines, list(line))
}
each <- function(name, answer) {
  method <<- name
  cases <- read.csv(file.path(folder, paste0(name, ".csv")))
  for (one in split(cases, cases$case)) answer(one, one$case[1])
}

each("survfit", function(d, case) {
  for (kind in c("Plain", "Log", "LogMinusLog")) {
    type <- c(Plain = "plain", Log = "log", LogMinusLog = "log-log")[[kind]]
    lives <- if (any(d$from > 0)) Surv(d$from, d$to, d$ended) else Surv(d$to, d$ended)
    f <- survfit(lives ~ 1, conf.int = 0.8, conf.type = type)
    none <- which(f$surv <= 0)
    keep <- f$n.event > 0 & f$surv > 0 & seq_along(f$surv) < min(none, Inf)
    key <- sprintf("%s/%.0f", kind, f$time[keep])
    say(case, paste0(key, "/alive"), f$surv[keep])
    say(case, paste0(key, "/se"), summary(f, times = f$time[keep])$std.err)
    say(case, paste0(key, "/low"), f$lower[keep])
    say(case, paste0(key, "/high"), f$upper[keep])
  }
})

each("survdiff", function(d, case) {
  several <- length(unique(d$stratum)) > 1
  test <- if (several) survdiff(Surv(to, ended) ~ group + strata(stratum), d) else survdiff(Surv(to, ended) ~ group, d)
  say(case, "chi2", test$chisq)
  expected <- if (several) rowSums(test$exp) else test$exp
  say(case, paste0("expected/", seq_along(expected) - 1), expected)
})

each("survreg", function(d, case) {
  careful <- survreg.control(rel.tolerance = 1e-13, maxiter = 200)
  d$group <- factor(d$group)
  f <- if (nlevels(d$group) > 1) {
    survreg(Surv(to, ended) ~ group - 1, d, dist = "weibull", control = careful)
  } else {
    survreg(Surv(to, ended) ~ 1, d, dist = "weibull", control = careful)
  }
  group <- seq_along(coef(f)) - 1
  errors <- sqrt(diag(vcov(f)))
  say(case, "shape", 1 / f$scale)
  say(case, "se/log shape", errors[length(errors)])
  say(case, "likelihood", f$loglik[2])
  say(case, paste0("scale/", group), exp(coef(f)))
  say(case, paste0("se/log scale/", group), errors[seq_along(group)])
})

each("poisson", function(d, case) {
  limits <- poisson.test(d$count, d$exposure, conf.level = d$level)$conf.int
  say(case, c("low", "high"), limits[1:2])
})

each("need", function(d, case) {
  mean <- d$mean * d$duration
  size <- 1 / d$doubt^2
  atmost <- function(n) if (d$doubt == 0) ppois(n, mean) else pnbinom(n, size, mu = mean)
  above <- function(n) if (d$doubt == 0) ppois(n, mean, lower.tail = FALSE) else pnbinom(n, size, mu = mean, lower.tail = FALSE)
  enough <- function(p) if (d$doubt == 0) qpois(p, mean) else qnbinom(p, size, mu = mean)
  waiting <- sum(above(d$stock:(d$stock + 20000)))
  say(case, "ready", atmost(d$stock))
  say(case, "fill", atmost(d$stock - 1))
  say(case, "waiting", waiting)
  say(case, "on hand", if (d$stock == 0) 0 else sum(atmost(0:(d$stock - 1))))
  say(case, c("enough", "ordered"), enough(d$share))
})

each("erlang", function(d, case) say(case, "", dpois(d$stock, d$away) / ppois(d$stock, d$away)))

each("lme", function(d, case) {
  d$place <- factor(d$place)
  careful <- nlme::lmeControl(tolerance = 1e-12, msTol = 1e-14, msMaxIter = 500)
  f <- nlme::lme(value ~ 1, d, random = ~ 1 | place, control = careful)
  say(case, "mean", nlme::fixef(f))
  say(case, "se", sqrt(vcov(f)[1, 1]))
  say(case, "tau", sqrt(nlme::getVarCov(f)[1, 1]))
  drawn <- coef(f)
  say(case, paste0("each/", rownames(drawn)), drawn[, 1])
})

each("reml", function(d, case) {
  y <- d$value
  V <- function(tau2) diag(d$variance + tau2)
  ones <- rep(1, length(y))
  restricted <- function(log_tau2) {
    inverse <- solve(V(exp(log_tau2)))
    information <- drop(ones %*% inverse %*% ones)
    mean <- drop(ones %*% inverse %*% y) / information
    -0.5 * (as.numeric(determinant(V(exp(log_tau2)))$modulus) + log(information) + drop((y - mean) %*% inverse %*% (y - mean)))
  }
  tau2 <- exp(optimize(restricted, log(c(1, 1e6)), maximum = TRUE, tol = 1e-10)$maximum)
  inverse <- solve(V(tau2))
  information <- drop(ones %*% inverse %*% ones)
  mean <- drop(ones %*% inverse %*% y) / information
  say(case, c("mean", "se", "tau"), c(mean, 1 / sqrt(information), sqrt(tau2)))
  say(case, paste0("each/", seq_along(y) - 1), mean + tau2 * drop(inverse %*% (y - mean)))
})

each("line", function(d, case) {
  d$stretch <- factor(d$stretch)
  f <- if (nlevels(d$stretch) > 1) lm(y ~ stretch + x, d) else lm(y ~ x, d)
  new <- data.frame(x = d$at[1], stretch = tail(levels(d$stretch), 1))
  p <- predict(f, new, se.fit = TRUE, interval = "confidence", level = 0.8)
  say(case, "slope", coef(f)[["x"]])
  say(case, "slope se", summary(f)$coefficients["x", 2])
  say(case, "noise", summary(f)$sigma)
  say(case, c("level", "low", "high"), p$fit[1, ])
  say(case, "level se", p$se.fit)
})

each("regression", function(d, case) {
  d$x <- d$hours / 100
  d$warm <- d$air - 15
  d$precision <- 1 / (d$noise^2 + d$own^2)
  f <- lm(rpm ~ x + repitches + warm + load, d, weights = precision)
  covariance <- summary(f)$cov.unscaled # the noise is known
  last <- c(1, tail(d$x, 1), tail(d$repitches, 1), 0, 0) # under reference conditions
  say(case, "drift", coef(f)[["x"]])
  say(case, "drift se", sqrt(covariance["x", "x"]))
  say(case, "level", sum(last * coef(f)))
  say(case, "level se", sqrt(sum(last * (covariance %*% last))))
  say(case, "step", coef(f)[["repitches"]])
  say(case, "step se", sqrt(covariance["repitches", "repitches"]))
})

# The whole estimator: for each set of gross errors (two at most, one at most among three trials or fewer) and each noise the
# density of all trials given the drift is a multivariate normal one, with levels, steps and weather integrated out.
drifts <- -20:80
sound <- dnorm(drifts, 0, 1.5)
upto <- pgamma(pmax(drifts + 0.5, 0), 2, 2 / 12)
wearing <- c(upto[1], diff(upto))
prior <- 0.15 * sound / sum(sound) + 0.85 * wearing / sum(wearing) + 1e-15
prior <- prior / sum(prior)
hermite <- c(sqrt(5 + sqrt(10)), sqrt(5 - sqrt(10))) # five nodes for the standard normal distribution
nodes <- c(-hermite, 0, rev(hermite))[c(1, 2, 3, 4, 5)]
weights <- c((7 - 2 * sqrt(10)) / 60, (7 + 2 * sqrt(10)) / 60, 8 / 15)[c(1, 2, 3, 2, 1)]

each("mixture", function(d, case) {
  n <- nrow(d)
  r <- median(d$rpm)
  x <- (d$hours - d$hours[n]) / 100
  columns <- list(rep(1, n))
  mean <- 1.02 * 5500
  variance <- 600^2
  strikes <- diff(d$strikes)
  repitches <- diff(d$repitches)
  for (i in which(strikes + repitches > 0)) { # events between the same two trials are one step
    columns <- c(columns, list(as.numeric(seq_len(n) > i)))
    mean <- c(mean, 85 * strikes[i])
    variance <- c(variance, 90^2 * strikes[i] + 250^2 * repitches[i])
  }
  steps <- length(columns) - 1
  now <- c(rep(1, length(columns)), 0, 0)
  asked <- c(list(now), lapply(seq_len(steps), function(k) as.numeric(seq_along(now) == k + 1))) # level, each step
  A <- cbind(do.call(cbind, columns), d$air - 15, d$load / 100)
  mean <- c(mean, 0, 0)
  P0 <- diag(c(variance, (2e-4 * r)^2, (5e-4 * r)^2))
  u <- d$rpm - A %*% mean
  most <- min(n, if (n <= 3) 1 else 2)
  sets <- unlist(lapply(0:most, function(k) combn(n, k, simplify = FALSE)), recursive = FALSE)
  parts <- list()
  for (set in sets) {
    for (j in 1:5) {
      fine <- (0.007 * exp(0.2 * nodes[j]) * r)^2
      noise <- rep(fine, n)
      noise[set] <- fine + (0.055 * r)^2
      V <- A %*% P0 %*% t(A) + diag(noise + d$own^2, n)
      inverse <- solve(V)
      left <- drop(u) - outer(x, drifts)
      log <- log(weights[j]) + length(set) * log(0.03) + (n - length(set)) * log(0.97) -
        0.5 * (n * log(2 * pi) + as.numeric(determinant(V)$modulus) + colSums(left * (inverse %*% left)))
      parts <- c(parts, list(list(set = set, log = log + log(prior), found = lapply(asked, function(row) {
        gain <- drop(row %*% P0 %*% t(A) %*% inverse)
        list(mean = sum(row * mean) + drop(gain %*% left), variance = sum(row * (P0 %*% row)) - sum(gain * (A %*% P0 %*% row)))
      }))))
    }
  }
  top <- max(sapply(parts, function(p) max(p$log)))
  mass <- sapply(parts, function(p) exp(p$log - top)) # drifts by parts
  total <- sum(mass)
  mass <- mass / total
  w <- rowSums(mass)
  m <- sum(w * drifts)
  below <- cumsum(w)
  point <- function(share) {
    g <- which(below >= share)[1]
    drifts[g] - 0.5 + (share - below[g] + w[g]) / w[g]
  }
  whole <- function(k) {
    means <- sapply(parts, function(p) p$found[[k]]$mean) # drifts by parts
    doubts <- sapply(parts, function(p) rep(p$found[[k]]$variance, length(drifts)))
    l <- sum(mass * means)
    c(l, sqrt(sum(mass * ((means - l)^2 + doubts))))
  }
  say(case, "drift", m)
  say(case, "drift se", sqrt(sum(w * (drifts - m)^2) + 1 / 12))
  say(case, c("low", "high"), c(point(0.1), point(0.9)))
  say(case, c("level", "level se"), whole(1))
  for (k in seq_len(steps)) say(case, paste0(c("step/", "step se/"), k - 1), whole(k + 1))
  say(case, "evidence", top + log(total))
  gross <- sapply(1:n, function(i) sum(mass[, sapply(parts, function(p) i %in% p$set)]))
  say(case, paste0("gross/", 1:n - 1), gross)
})

writeLines(unlist(answers$lines), file.path(folder, "results.csv"))
