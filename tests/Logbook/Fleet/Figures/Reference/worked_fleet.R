# Works out the figures of the fleet in Worked.cs: Rscript worked_fleet.R
# R 4.2.2, survival 3.5-3. It shares the data with the tests and no code.
library(survival)
level <- 0.8
d <- read.csv(text = "
prop,boat,material,hours,end
a1,kea,aluminium,120,worn
a2,kea,aluminium,210,struck
a3,kea,aluminium,260,worn
a4,tui,aluminium,330,none
a5,tui,aluminium,340,worn
a6,tui,aluminium,410,corroded
a7,moa,aluminium,150,none
s1,kea,stainless,380,none
s2,tui,stainless,520,worn
s3,moa,stainless,610,worn
s4,moa,stainless,450,struck
s5,moa,stainless,700,none")
d$water <- ifelse(d$boat == "tui", "silty", "salt")

cat("question,group,age,followed,share,low,high\n")
for (q in c("used_up", "worn")) {
  d$ended <- d$end %in% c("worn", "corroded", if (q == "used_up") "struck")
  for (g in c("aluminium", "stainless", "salt")) {
    x <- d[d$material == g | d$water == g, ]
    f <- survfit(Surv(hours, ended) ~ 1, x, conf.int = level, conf.type = "log-log")
    s <- summary(f, times = c(200, 300, 500), extend = FALSE)
    for (i in seq_along(s$time))
      cat(sprintf("%s,%s,%g,%d,%.10f,%.10f,%.10f\n", q, g, s$time[i], sum(x$hours >= s$time[i]), s$surv[i], s$lower[i], s$upper[i]))
    m <- quantile(f, 0.5)
    cat(sprintf("%s,%s,median,%d,%s,%s,%s\n", q, g, nrow(x), m$quantile, m$lower, m$upper))
    if (sum(x$ended) >= 4) {
      w <- survreg(Surv(hours, ended) ~ 1, x, dist = "weibull", control = survreg.control(rel.tolerance = 1e-12))
      k <- 1 / w$scale; eta <- exp(coef(w))
      cat(sprintf("%s,%s,weibull,%d,%.8f,%.8f,%.8f\n", q, g, sum(x$ended), k, eta, eta * gamma(1 + 1 / k)))
    }
  }
  for (test in list(list("materials", survdiff(Surv(hours, ended) ~ material, d)),
                    list("waters", survdiff(Surv(hours, ended) ~ water, d)),
                    list("materials within waters", survdiff(Surv(hours, ended) ~ material + strata(water), d))))
    cat(sprintf("%s,%s,log-rank,%d,%.10f,%.10f,\n", q, test[[1]], 1L, test[[2]]$chisq, pchisq(test[[2]]$chisq, 1, lower.tail = FALSE)))
}

cat("\ngroup,hours,strikes,rate,low,high\n")
garwood <- function(name, n, h) cat(sprintf("%s,%g,%d,%.10f,%.10f,%.10f\n", name, h, n, 1000 * n / h,
  1000 * ifelse(n == 0, 0, qgamma((1 - level) / 2, n)) / h, 1000 * qgamma((1 + level) / 2, n + 1) / h))
kea <- sum(d$hours[d$boat == "kea"]); tui <- sum(d$hours[d$boat == "tui"]); moa <- sum(d$hours[d$boat == "moa"])
garwood("kea", 5, kea); garwood("tui", 3, tui); garwood("moa", 1, moa); garwood("bay", 4, tui + moa); garwood("fleet", 9, kea + tui + moa)
garwood("kea marked", 4, kea); garwood("none", 0, 250)

# Spares: the fleet with a4 and a8 fitted on 5 October, 42 days ahead, 95 %. Rates are gamma-Poisson with the fleet's mean m
# and the spread c among sizes integrated: c uniform from 0 to 1.5, log m normal about log((events + 1) / exposure), sd 1.5.
cat("\nsize,fitted,wanted,years,rate,sd,expected,stock,enough_with_none,enough_with_one\n")
at <- function(month, day) as.POSIXct(sprintf("2026-%02d-%02d 09:00", 2 + month, day), tz = "Pacific/Auckland")
years <- function(from, to) as.numeric(difftime(to, from, units = "days")) / 365.25
stay <- function(month) years(at(month, 5), at(month + 2, 3))
E <- c(aluminium = 3 * stay(0) + 2 * stay(2) + 2 * stay(4), # a1 a4 a7, a2 a5, a3 a6
       stainless = stay(6) + stay(6) + stay(2) + stay(4) + years(at(6, 5), at(8, 5))) # s1 s2 s3 s4, s5 still fitted
y <- c(6, 3); fitted <- c(2, 1)
unit <- sum(E) / (sum(y) + 1)
grid <- expand.grid(c = seq(0.005, 1.495, 0.01), logm = seq(-9, 9, 0.02))
k <- 1 / grid$c^2; b <- k / exp(grid$logm)
lp <- dnorm(grid$logm, 0, 1.5, log = TRUE)
for (i in 1:2) lp <- lp + lgamma(k + y[i]) - lgamma(k) - k * log1p(E[i] / unit / b) - y[i] * log(b + E[i] / unit)
w <- exp(lp - max(lp)); w <- w / sum(w)
for (i in 1:2) {
  m1 <- sum(w * (k + y[i]) / (b + E[i] / unit)); m2 <- sum(w * (k + y[i]) * (k + y[i] + 1) / (b + E[i] / unit)^2)
  rate <- m1 / unit; sd <- sqrt(m2 - m1^2) / unit
  mu <- rate * fitted[i] * 42 / 365.25; n <- (rate / sd)^2
  cat(sprintf("%s,%d,%d,%.10f,%.8f,%.8f,%.8f,%d,%.8f,%.8f\n", names(E)[i], fitted[i], y[i], E[i], rate, sd, mu,
    qnbinom(0.95, n, mu = mu), pnbinom(0, n, mu = mu), pnbinom(1, n, mu = mu)))
}
