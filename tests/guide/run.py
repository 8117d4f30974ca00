"""Runs every example of a guide and compares what it prints.

Usage: run.py PROGRAM SOURCE_DIR [--refresh]

In the guide a block ```file NAME is a file to write, ```sh are commands, and a plain block right after commands is
what they print (standard output and errors together). With --refresh the plain blocks are written anew.
"""
import os
import re
import subprocess
import sys
import tempfile

program, source = sys.argv[1:3]
refresh = "--refresh" in sys.argv
path = os.path.join(source, "rubrics", "first-rubric.md")
text = open(path, encoding="utf-8").read()
block = re.compile(r"^```([^\n]*)\n(.*?)^```\n", re.S | re.M)
out, done, ran, failed, printed = [], 0, 0, 0, None

with tempfile.TemporaryDirectory() as folder:
    tools = os.path.join(folder, ".bin")
    os.mkdir(tools)
    os.symlink(os.path.abspath(program), os.path.join(tools, "retort"))
    env = dict(os.environ, PATH=tools + ":" + os.environ["PATH"], RETORT_RUBRICS=os.path.join(source, "rubrics"), COLUMNS="80", LC_ALL="C.UTF-8")
    for match in block.finditer(text):
        out.append(text[done:match.start()])
        done = match.end()
        kind, body = match.group(1), match.group(2)
        if kind.startswith("file "):
            name = os.path.join(folder, kind[5:])
            os.makedirs(os.path.dirname(name), exist_ok=True)
            open(name, "w", encoding="utf-8").write(body)
        elif kind == "sh":
            run = subprocess.run(["bash", "-c", body], cwd=folder, env=env, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, timeout=120)
            printed = run.stdout
            ran += 1
            if run.returncode not in (0, 1) or not printed:
                failed += 1
                print(f"FAILED (status {run.returncode}): {body}{printed}")
        elif kind == "" and printed is not None:
            # "..." stands for lines left out; what is before and after it must be printed in that order
            if refresh and "...\n" not in body:
                body = printed
            at, good = 0, True
            for piece in body.split("...\n"):
                found = printed.find(piece, at)
                good = good and found >= 0 and ("...\n" in body or piece == printed)
                at = max(found, 0) + len(piece)
            if not good:
                failed += 1
                print(f"FAILED: the guide says\n{body}\nbut this is printed\n{printed}")
            printed = None
        out.append("```" + kind + "\n" + body + "```\n")
out.append(text[done:])
if refresh:
    open(path, "w", encoding="utf-8").write("".join(out))
print(f"{ran - failed} passed, {failed} failed")
sys.exit(1 if failed or ran < 6 else 0)
