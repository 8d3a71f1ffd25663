#!/bin/sh
# Makes the captures (*.csv) and truth.csv again from the netlists (*.cir) beside this script.
# Needs ngspice and awk. The truth comes from the switch times written in the netlists alone.
set -eu
cd "$(dirname "$0")"
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
here=$(pwd)

truth="file,event,nominal_volts,hertz,sample_rate_hertz,point_on_wave_deg,loss_ms,last_opening_ms"
echo "$truth,first_return_ms,return_ms,transfer_ms,phase_step_deg,note" > "$work/truth.csv"

for netlist in *.cir; do
  name=${netlist%.cir}
  rm -f "$work/capture.data"
  (cd "$work" && cp "$here/$netlist" "$here"/*.inc . \
    && ngspice -b "$netlist" > ngspice.log 2>&1) || true
  if [ ! -s "$work/capture.data" ]; then
    cat "$work/ngspice.log" >&2
    echo "$netlist: ngspice wrote no capture" >&2
    exit 1
  fi
  awk -f truth.awk "$netlist" >> "$work/truth.csv"
  awk -f capture.awk "$netlist" "$work/capture.data" > "$name.csv"
done
mv "$work/truth.csv" truth.csv
