"""Reads a log into columns of numbers with parsed times, as a user of each library would: LIBRARY FILE KIND [sum].

Run as a process of its own by tests/bench/reading; prints the number of rows, with `sum` that of all numbers too. Exit code 69
where the library is not here.
"""
import sys


def numpy_columns(path, comma, with_sum):
    import numpy

    delimiter = ";" if comma else ","
    with open(path, encoding="utf-8") as file:
        columns = len(file.readline().split(delimiter)) - 1
        dtype = [("time", "datetime64[s]"), ("cells", "f8", (columns,))]
        lines = (line.replace(",", ".") for line in file) if comma else file
        log = numpy.loadtxt(lines, delimiter=delimiter, dtype=dtype)
    return len(log), numpy.nansum(log["cells"]) if with_sum else None


def pandas_columns(path, comma, with_sum):
    import pandas

    log = pandas.read_csv(path, sep=";" if comma else ",", decimal="," if comma else ".", na_values=["OPEN"],
                          parse_dates=[0], infer_datetime_format=True)
    return len(log), log.iloc[:, 1:].sum().sum() if with_sum else None


def main():
    library, path, kind, *more = sys.argv[1:]
    read = {"numpy": numpy_columns, "pandas": pandas_columns}
    try:
        rows, total = read[library](path, kind == "commas", bool(more))
        print(f"{rows} {total:.1f}" if more else rows)
    except ImportError:
        sys.exit(69)


main()
