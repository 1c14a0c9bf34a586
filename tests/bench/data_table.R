# The same by data.table: FILE KIND.
if (!requireNamespace("data.table", quietly = TRUE)) quit(status = 69)
given <- commandArgs(trailingOnly = TRUE)
comma <- given[2] == "commas"
log <- data.table::fread(given[1], sep = if (comma) ";" else ",", dec = if (comma) "," else ".",
                         na.strings = c("", "NaN", "OPEN"), showProgress = FALSE)
log[["Time"]] <- as.POSIXct(log[["Time"]], tz = "UTC")
cat(nrow(log), "\n")
