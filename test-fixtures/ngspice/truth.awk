# One line of truth.csv from the parameters of a netlist.
/^\.param/ {
  for (i = 2; i <= NF; i++) {
    split($i, pair, "=")
    value[pair[1]] = pair[2]
  }
}
/^\* event:/ { event = $3 }
/^\* note:/ { sub(/^\* note: /, ""); note = $0 }
function millis(name) { return name in value ? sprintf("%.4f", value[name] * 1000) : "" }
END {
  if (event == "") event = "loss"
  last = "t_last_open" in value ? "t_last_open" : "t_open"
  transfer = "t_make" in value ? sprintf("%.4f", (value["t_make"] - value["t_open"]) * 1000) : ""
  file = FILENAME
  sub(/\.cir$/, ".csv", file)
  gsub(/"/, "\"\"", note)
  printf "%s,%s,%s,%s,%s,%s,%s,%s,%s,%s,%s,%s,\"%s\"\n", file, event, value["volts"], \
    value["hertz"], value["rate"], value["angle"], millis("t_open"), millis(last), \
    millis("t_first_make"), millis("t_make"), transfer, value["step"], note
}
