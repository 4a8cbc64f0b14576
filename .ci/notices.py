#!/usr/bin/env python3
"""Writes THIRD-PARTY-NOTICES.txt and bill-of-materials.json (CycloneDX 1.5) from what the program's restore resolved.

    dotnet restore src/TrialLog && python3 .ci/notices.py

The copyright lines and licence names are those of the packages; the licences' texts stand below. Needs the Apache licence's text in
/usr/share/common-licenses, where Debian keeps it."""
import base64
import html
import json
import pathlib
import re

top = pathlib.Path(__file__).resolve().parent.parent
assets = json.loads((top / "src/TrialLog/obj/project.assets.json").read_text())
folders = [pathlib.Path(folder) for folder in assets["packageFolders"]]


def field(text, name):
    found = re.search(rf"<{name}(?: [^>]*)?>([^<]*)<", text)
    return html.unescape(found.group(1)).strip() if found else ""


packages = []
for key, library in sorted(assets["libraries"].items(), key=lambda item: item[0].lower()):
    if library["type"] != "package":
        continue
    name, version = key.split("/")
    nuspec = next(path for folder in folders for path in (folder / library["path"]).glob("*.nuspec"))
    text = nuspec.read_text(encoding="utf-8-sig")
    owner = field(text, "copyright") or field(text, "authors")
    packages.append((name, version, field(text, "license"), owner, library["sha512"]))

chosen = {"MS-PL OR Apache-2.0": "Apache-2.0"}
mit = """Permission is hereby granted, free of charge, to any person obtaining a copy of this software and associated documentation files (the
"Software"), to deal in the Software without restriction, including without limitation the rights to use, copy, modify, merge, publish,
distribute, sublicense, and/or sell copies of the Software, and to permit persons to whom the Software is furnished to do so, subject to
the following conditions:

The above copyright notice and this permission notice shall be included in all copies or substantial portions of the Software.

THE SOFTWARE IS PROVIDED "AS IS", WITHOUT WARRANTY OF ANY KIND, EXPRESS OR IMPLIED, INCLUDING BUT NOT LIMITED TO THE WARRANTIES OF
MERCHANTABILITY, FITNESS FOR A PARTICULAR PURPOSE AND NONINFRINGEMENT. IN NO EVENT SHALL THE AUTHORS OR COPYRIGHT HOLDERS BE LIABLE FOR
ANY CLAIM, DAMAGES OR OTHER LIABILITY, WHETHER IN AN ACTION OF CONTRACT, TORT OR OTHERWISE, ARISING FROM, OUT OF OR IN CONNECTION WITH
THE SOFTWARE OR THE USE OR OTHER DEALINGS IN THE SOFTWARE.
"""
bsd = """Redistribution and use in source and binary forms, with or without modification, are permitted provided that the following conditions are
met:

1. Redistributions of source code must retain the above copyright notice, this list of conditions and the following disclaimer.

2. Redistributions in binary form must reproduce the above copyright notice, this list of conditions and the following disclaimer in the
documentation and/or other materials provided with the distribution.

THIS SOFTWARE IS PROVIDED BY THE COPYRIGHT HOLDERS AND CONTRIBUTORS "AS IS" AND ANY EXPRESS OR IMPLIED WARRANTIES, INCLUDING, BUT NOT
LIMITED TO, THE IMPLIED WARRANTIES OF MERCHANTABILITY AND FITNESS FOR A PARTICULAR PURPOSE ARE DISCLAIMED. IN NO EVENT SHALL THE
COPYRIGHT HOLDER OR CONTRIBUTORS BE LIABLE FOR ANY DIRECT, INDIRECT, INCIDENTAL, SPECIAL, EXEMPLARY, OR CONSEQUENTIAL DAMAGES
(INCLUDING, BUT NOT LIMITED TO, PROCUREMENT OF SUBSTITUTE GOODS OR SERVICES; LOSS OF USE, DATA, OR PROFITS; OR BUSINESS INTERRUPTION)
HOWEVER CAUSED AND ON ANY THEORY OF LIABILITY, WHETHER IN CONTRACT, STRICT LIABILITY, OR TORT (INCLUDING NEGLIGENCE OR OTHERWISE)
ARISING IN ANY WAY OUT OF THE USE OF THIS SOFTWARE, EVEN IF ADVISED OF THE POSSIBILITY OF SUCH DAMAGE.
"""
texts = {"MIT": mit, "BSD-2-Clause": bsd, "Apache-2.0": pathlib.Path("/usr/share/common-licenses/Apache-2.0").read_text()}

out = ["What the program contains besides its own code, which is under the licence in LICENSE. The .NET runtime, where it is in the same",
       "file, is (c) .NET Foundation and contributors, under the MIT licence. SQLite itself is in the public domain.", ""]
for licence in sorted(texts):
    out += ["=" * 78, f"Under {licence}:", ""]
    out += [f"  {name} {version}  {owner}" for name, version, named, owner, _ in packages if chosen.get(named, named) == licence]
    out += ["", texts[licence].strip("\n"), ""]
unknown = [package for package in packages if chosen.get(package[2], package[2]) not in texts]
if unknown:
    raise SystemExit(f"no licence text for: {unknown}")
(top / "THIRD-PARTY-NOTICES.txt").write_text("\n".join(out) + "\n")

bom = {"bomFormat": "CycloneDX", "specVersion": "1.5", "version": 1,
       "metadata": {"component": {"type": "application", "name": "triallog", "licenses": [{"license": {"id": "MIT"}}]}},
       "components": [{"type": "library", "name": name, "version": version, "purl": f"pkg:nuget/{name}@{version}",
                       "hashes": [{"alg": "SHA-512", "content": base64.b64decode(digest).hex()}], "licenses": [{"expression": named}]}
                      for name, version, named, _, digest in packages]}
(top / "bill-of-materials.json").write_text(json.dumps(bom, indent=2) + "\n")
