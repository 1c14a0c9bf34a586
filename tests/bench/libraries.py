"""Reads a log into columns of numbers with parsed times, as a user of each library would: LIBRARY FILE KIND.

Run as a process of its own by tests/bench/reading; prints the number of rows. Exit code 69 where the library is not here.
"""
import sys


def numpy_columns(path, comma):
    import numpy

    delimiter = ";" if comma else ","
    with open(path, encoding="utf-8") as file:
        columns = len(file.readline().split(delimiter)) - 1
        dtype = [("time", "datetime64[s]"), ("cells", "f8", (columns,))]
        lines = (line.replace(",", ".") for line in file) if comma else file
        return len(numpy.loadtxt(lines, delimiter=delimiter, dtype=dtype))


def pandas_columns(path, comma):
    import pandas

    return len(
        pandas.read_csv(path, sep=";" if comma else ",", decimal="," if comma else ".", na_values=["OPEN"],
                        parse_dates=[0], infer_datetime_format=True))


def polars_columns(path, comma):
    import polars

    frame = polars.read_csv(path, separator=";" if comma else ",", null_values=["NaN", "OPEN"], try_parse_dates=True,
                            **({"decimal_comma": True} if comma else {}))
    return frame.height


def duckdb_columns(path, comma):
    import duckdb

    options = ", delim=';', decimal_separator=','" if comma else ""
    duckdb.sql(f"create table log as select * from read_csv('{path}', nullstr=['NaN', 'OPEN', '']{options})")
    return duckdb.sql("select count(*) from log").fetchone()[0]


def main():
    library, path, kind = sys.argv[1:]
    read = {"numpy": numpy_columns, "pandas": pandas_columns, "polars": polars_columns, "duckdb": duckdb_columns}
    try:
        print(read[library](path, kind == "commas"))
    except ImportError:
        sys.exit(69)


main()
