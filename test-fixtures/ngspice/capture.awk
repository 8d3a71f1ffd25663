# A capture file from ngspice's columns of seconds and volts. Volts keep one decimal, unless the
# netlist says otherwise.
BEGIN { decimals = 1 }
FNR == NR { if (/^\* decimals:/) decimals = $3; next }
FNR == 1 { print "time (ms),load (V)" }
NF == 2 && $1 + 0 == $1 {
  volts = sprintf("%.*f", decimals, $2)
  if (volts + 0 == 0) sub(/^-/, "", volts)
  printf "%.2f,%s\n", $1 * 1000, volts
}
