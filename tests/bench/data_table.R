# The same by data.table: FILE KIND [sum].
if (!requireNamespace("data.table", quietly = TRUE)) quit(status = 69)
given <- commandArgs(trailingOnly = TRUE)
comma <- given[2] == "commas"
log <- data.table::fread(given[1], sep = if (comma) ";" else ",", dec = if (comma) "," else ".",
                         na.strings = c("", "NaN", "OPEN"), showProgress = FALSE)
log[["Time"]] <- as.POSIXct(log[["Time"]], tz = "UTC")
if (length(given) > 2) {
  cat(nrow(log), sprintf("%.1f", sum(sapply(log[, -1], function(column) sum(as.numeric(column), na.rm = TRUE)))))
} else {
  cat(nrow(log), "\n")
}
