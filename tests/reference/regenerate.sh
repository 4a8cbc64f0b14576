#!/bin/sh
# Regenerates every reference from Debian's packages. The posterior takes some ten minutes; the rest, seconds.
#   tests/reference/regenerate.sh            installs what is missing (asks apt), then runs everything
#   tests/reference/regenerate.sh classical  only the parts named: logbooks, classical, posterior
set -e
cd "$(dirname "$0")"
missing=""
for package in r-base-core r-cran-lme4 r-cran-nlme r-cran-jsonlite r-cran-rjags r-cran-coda jags; do
    dpkg -s "$package" >/dev/null 2>&1 || missing="$missing $package"
done
[ -z "$missing" ] || apt-get install -y --no-install-recommends $missing

for part in ${*:-logbooks classical posterior}; do
    case "$part" in
        logbooks) Rscript logbooks/make.R ;;
        classical) for script in longley mixed fieller logbooks; do Rscript "classical/$script.R"; done ;;
        posterior) for script in posterior heart squad; do Rscript "posterior/$script.R"; done ;;
        *) echo "regenerate: no part called $part" >&2; exit 2 ;;
    esac
done
