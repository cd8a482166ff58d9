# SPDX-License-Identifier: GPL-3.0-or-later
# Fits what the evidence room fits to four food data sets laid out as logbooks; every column is put together here, from the raw tables.
# How each table becomes a logbook stands in parchment.evidence.FoodLogbooks; the lines "as a logbook" say it again.
# Usage: Rscript food-logbooks.R FOLDER-OF-REFERENCE-DATA > food-logbooks.csv
# Made with R 4.2.2, lme4 1.1-31, nlme 3.1-162, ordinal 2022.11-16.
suppressMessages({library(lme4); library(nlme); library(ordinal)})
folder <- commandArgs(TRUE)[1]
table_of <- function(path) read.csv(file.path(folder, path))
say <- function(case, quantity, value) cat(sprintf("%s,%s,%.15g\n", case, quantity, value), sep = "")
cat("case,quantity,value\n")
sharp <- lmerControl(optimizer = "bobyqa", optCtrl = list(rhobeg = 0.2, rhoend = 1e-10, maxfun = 1e6), check.conv.singular = "ignore")
report <- function(case, fit) {
  say(case, "slope", fixef(fit)["feature"])
  say(case, "standard error", sqrt(as.matrix(vcov(fit))["feature", "feature"]))
}

# Cake (Cochran and Cox 1957): lot = recipe; a roast day for each batter; six cakes a day, whose order turns from day to day.
cake <- table_of("lme4/cake.csv")
cake$recipe <- match(cake$recipe, c("A", "B", "C"))
cake$number <- 3 * (cake$replicate - 1) + cake$recipe - 1                              # as a logbook: days, from 0
cake$place <- ((cake$temperature - 175) / 10 + cake$number) %% 6 + 1                   # as a logbook: batch of the day
cake$feature <- cake$temperature - 200                                                  # every recipe has the same mean
cake$lot <- factor(cake$recipe); cake$day <- factor(cake$number); cake$all <- factor(1)
days <- sort(unique(cake$number)); n <- length(days)
cake$line <- cake$number / days[n] - 0.5
bends <- min(10, n %/% 4)
for (k in seq_len(bends)) {
  knot <- days[floor((n - 1) * k / (bends + 1) + 0.5) + 1] / days[n] - 0.5
  cake[[paste0("bend", k)]] <- pmax(0, cake$line - knot)
}
bent <- as.formula(paste("~ 0 +", paste0("bend", seq_len(bends), collapse = " + ")))
whole <- lme(angle ~ feature + place + line, data = cake, method = "REML",
             random = list(all = pdBlocked(list(pdIdent(bent), pdIdent(~ 0 + lot), pdIdent(~ 0 + day)))),
             control = lmeControl(msMaxIter = 500, maxIter = 500, tolerance = 1e-10, msTol = 1e-10, opt = "optim",
                                  optimMethod = "BFGS", returnObject = TRUE))
say("cake", "slope", nlme::fixef(whole)["feature"])
say("cake", "standard error", sqrt(whole$varFix["feature", "feature"]))
# The split plot of the textbooks, with nothing of the logbook's order in it.
report("cake as a split plot", lmer(angle ~ feature + factor(recipe) + (1 | recipe:replicate), cake, control = sharp))

# Carrots (lmerTest): twelve products, two a day; cuppers = consumers, each with a slope of their own.
carrots <- table_of("lme4/carrots.csv")
products <- sort(unique(carrots$Product))
number <- match(carrots$Product, products) - 1
carrots$day <- factor(number %/% 2); carrots$line <- (number %/% 2) / 5 - 0.5; carrots$place <- number %% 2 + 1
mean_of_products <- mean(tapply(carrots$sens2, carrots$Product, mean))
carrots$feature <- carrots$sens2 - mean_of_products
report("carrots", lmer(Preference ~ feature + place + line + (1 | day) + (1 | Product) + (1 | Consumer) + (1 | Consumer:day) +
                         (0 + feature | Consumer), carrots, control = sharp))

# Ham (lmerTest): lot = product, one roast day each; two batches a day, without and with information, in turns first.
ham <- table_of("lme4/ham.csv")
ham$feature <- ham$Information - 1.5
ham$place <- (ham$Product + ham$Information) %% 2 + 1
report("ham", lmer(Informed.liking ~ feature + place + (1 | Product) + (1 | Product:Information) + (1 | Consumer) +
                     (1 | Consumer:Product) + (0 + feature | Consumer), ham, control = sharp))

# Wine (Randall 1989): lot = contact; a cold and a warm bottle a day, in turns first; the rating taken as a number.
wine <- table_of("ordinal/wine.csv")
wine$feature <- ifelse(wine$temp == "warm", 0.5, -0.5)
wine$pair <- (wine$bottle - 1) %% 4 + 1                                                 # bottles 1 and 5, 2 and 6, 3 and 7, 4 and 8
wine$place <- ((wine$temp == "warm") + wine$pair + 1) %% 2 + 1
report("wine", lmer(rating ~ feature + place + (1 | contact) + (1 | pair) + (1 | bottle) + (1 | judge) + (1 | judge:pair) +
                      (0 + feature | judge), wine, control = sharp))
wine$rating <- factor(wine$rating, ordered = TRUE); wine$judge <- factor(wine$judge)
steps <- suppressWarnings(clmm(rating ~ temp + contact + (1 | judge), wine, control = clmm.control(gradTol = 1e-9)))
say("wine in steps", "slope", steps$beta["tempwarm"])
