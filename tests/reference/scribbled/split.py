#!/usr/bin/env python3
"""Splits the two files of scribbled lines by the hash of each line: a third stays unseen."""
import hashlib, sys, os
src, out = sys.argv[1], sys.argv[2]
for lang in ("en", "es"):
    rows = open(os.path.join(src, f"lines_{lang}.tsv"), encoding="utf-8").read().split("\n")
    rows = [r for r in rows if r.strip()]
    part = {"seen": [], "unseen": []}
    for r in rows:
        if r.startswith('#'): continue
        h = int(hashlib.sha256(r.split("\t")[0].encode()).hexdigest(), 16) % 3
        part["unseen" if h == 0 else "seen"].append(r)
    for k, v in part.items():
        open(os.path.join(out, f"{lang}_{k}.tsv"), "w", encoding="utf-8").write("\n".join(v) + "\n")
        print(lang, k, len(v))
