#!/bin/sh
# What GPSBabel (Debian: gpsbabel) reads in the sample recordings, and what it writes.
# Run here, after `recordings` of the study program has made the samples:
#   ./make.sh
set -e
samples=../../../sample-sessions/recordings
work=$(mktemp -d)
trap 'rm -r "$work"' EXIT

# Read: every point of a FIT, a TCX and a GPX sample.
gpsbabel -t -i garmin_fit -f "$samples/ilse-round-trips-laps.fit" -o unicsv,utc=0 -F "$work/fit.csv"
gunzip -c "$samples/tova-one-way-laps.tcx.gz" > "$work/in.tcx"
gpsbabel -t -i gtrnctr -f "$work/in.tcx" -o unicsv,utc=0 -F "$work/tcx.csv"
gunzip -c "$samples/bram-round-trips.gpx.gz" > "$work/in.gpx"
gpsbabel -t -i gpx -f "$work/in.gpx" -o unicsv,utc=0 -F "$work/gpx.csv"
for format in fit tcx gpx; do
    gzip -9nc "$work/$format.csv" > "read-$format.csv.gz"
done

# Write: five minutes of the FIT sample in each format, and the same points as a table.
cut="-x track,start=20260510022000,stop=20260510022500"
gpsbabel -t -i garmin_fit -f "$samples/ilse-round-trips-laps.fit" $cut -o garmin_fit -F written.fit
gpsbabel -t -i garmin_fit -f "$samples/ilse-round-trips-laps.fit" $cut -o gtrnctr,course=0 -F "$work/written.tcx"
gpsbabel -t -i garmin_fit -f "$samples/ilse-round-trips-laps.fit" $cut -o gpx,gpxver=1.1,garminextensions=1 -F "$work/written.gpx"
gpsbabel -t -i garmin_fit -f "$samples/ilse-round-trips-laps.fit" $cut -o unicsv,utc=0 -F "$work/written.csv"
for format in tcx gpx csv; do
    gzip -9nc "$work/written.$format" > "written.$format.gz"
done
