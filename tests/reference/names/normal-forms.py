# Names in Unicode's normal forms C and D, as Python's unicodedata has them, for src/TrialLog.Domain/Values/Accents.cs.
#
#   python3 normal-forms.py > normal-forms.csv       (each text as hexadecimal UTF-16 code units: as typed, form C, form D)
#
# Texts are drawn with a fixed seed from all characters of the basic plane that are a letter and a mark in one, their letters, their
# marks, and Hangul; each of those characters follows by itself. Characters that only stand for another one (the unit A with ring, CJK compatibility) are left out.

import random
import unicodedata

joined = []
for code in range(0x10000):
    parts = unicodedata.decomposition(chr(code)).split()
    if len(parts) == 2 and not parts[0].startswith("<"):
        letter, mark = (chr(int(part, 16)) for part in parts)
        if unicodedata.normalize("NFC", letter + mark) == chr(code):
            joined += [chr(code), letter, mark]
marks = sorted({mark for mark in joined[2::3]})
hangul = ["\u1100", "\u1112", "\u1161", "\u1175", "\u11a8", "\u11ab", "\u11c2", "\uac00", "\ud55c", "\uad6d"]
draw = random.Random(7)


def hexadecimal(text):
    return " ".join(f"{ord(c):04X}" for c in text)


print("typed,c,d")
drawn = ["".join(draw.choice(draw.choice([joined, marks, hangul, "aeouAEOU "])) for _ in range(draw.randint(1, 7))) for _ in range(1500)]
for text in drawn + joined[0::3]:
    print(",".join(hexadecimal(form) for form in (text, unicodedata.normalize("NFC", text), unicodedata.normalize("NFD", text))))
