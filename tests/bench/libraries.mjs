// Reads a log into columns of numbers with parsed times, as a user of each library would: LIBRARY FILE KIND [sum].
//
// Run as a process of its own by tests/bench/reading, which installs both from npm (package.json); prints the number of
// rows, with `sum` that of all numbers too.
import { createRequire } from "node:module";

const [library, path, kind, sum] = process.argv.slice(2);
const comma = kind === "commas";
// The packages are in the build folder: node looks beside this file otherwise.
const require = createRequire(`${process.env.SOAKWRIGHT_NODE_MODULES}/`);

function polarsColumns() {
  const polars = require("nodejs-polars");
  const frame = polars.readCSV(path, { sep: comma ? ";" : ",", nullValues: ["NaN", "OPEN"], tryParseDates: true });
  const names = frame.columns.slice(1);
  // This binding has no decimal comma: the columns come as texts.
  const read = comma ? frame.withColumns(...names.map((name) => polars.col(name).str.replace(",", ".").cast(polars.Float64))) : frame;
  if (!sum) return [read.height];
  return [read.height, names.reduce((all, name) => all + read.getColumn(name).dropNulls().sum(), 0)];
}

async function duckdbColumns() {
  const { DuckDBInstance } = require("@duckdb/node-api");
  const connection = await (await DuckDBInstance.create(":memory:")).connect();
  const options = comma ? ", delim=';', decimal_separator=','" : "";
  await connection.run(`create table log as select * from read_csv('${path}', nullstr=['NaN', 'OPEN', '']${options})`);
  const first = async (query) => (await connection.runAndReadAll(query)).getRows()[0].map(Number);
  const [rows] = await first("select count(*) from log");
  if (!sum) return [rows];
  const sums = await first("select sum(columns(* exclude (Time))) from log");
  return [rows, sums.reduce((all, one) => all + one, 0)];
}

const [rows, total] = library === "polars" ? polarsColumns() : await duckdbColumns();
console.log(sum ? `${rows} ${total.toFixed(1)}` : rows);
