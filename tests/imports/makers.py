"""The programs that make the drafts, installed into the build folder once, and how we read a draft."""
import json
import os
import pathlib
import subprocess
import sys
import venv

# Two makers for each kind of document, so that no one's habits are taken for the format.
PYTHON = ["python-docx==1.2.0", "odfpy==1.4.1", "odfdo==3.27.3", "commonmark==0.9.2"]
# CommonMark's specification, as its authors publish it; all of its words are read as it says.
NODE = ["docx@9.15.2", "commonmark-spec@0.30.0"]


def skip(why):
    print(f"skipped: {why}")
    sys.exit(77)


def install(folder):
    """Makes the makers usable; the test is skipped where they cannot be had."""
    folder = pathlib.Path(folder)
    wanted = " ".join(PYTHON + NODE)
    done = folder / "installed"
    if not done.exists() or done.read_text() != wanted:
        venv.create(folder / "python", with_pip=True)
        pip = [folder / "python" / "bin" / "pip", "install", "--quiet", *PYTHON]
        if subprocess.run(pip, check=False).returncode:
            skip("the Python packages cannot be installed")
        npm = ["npm", "install", "--silent", "--no-audit", "--no-fund", "--prefix", folder, *NODE]
        try:
            if subprocess.run(npm, check=False).returncode:
                skip("the Node packages cannot be installed")
        except FileNotFoundError:
            skip("npm is not there")
        done.write_text(wanted)
    for site in (folder / "python" / "lib").glob("python*/site-packages"):
        sys.path.insert(0, str(site))
    return folder


def run(program, *arguments, data=None):
    return subprocess.run([program, *map(str, arguments)], input=data, capture_output=True,
                          timeout=60, check=False)


def imported(program, file, *flags):
    """The script that a draft becomes, which must also be one that the checker reads."""
    done = run(program, "import", *flags, file)
    assert done.returncode == 0, done.stderr.decode()
    checked = run(program, "check", "-", data=done.stdout)
    assert checked.returncode in (0, 1), checked.stderr.decode()
    return done.stdout.decode(), done.stderr.decode()


def explained(program, script):
    """Every thought of a script as the program explains it."""
    if not script.strip():
        return []
    done = run(program, "explain", "-", data=script.encode())
    assert done.returncode == 0, done.stderr.decode()
    return [json.loads(line) for line in done.stdout.decode().splitlines()]


class Checks:
    """Counts what was right; prints what was not, and fails if anything was."""

    def __init__(self):
        self.right, self.wrong = 0, []

    def same(self, what, got, expected):
        if got == expected:
            self.right += 1
        else:
            self.wrong.append(f"{what}\n--- expected\n{expected}\n--- came out\n{got}")

    def holds(self, what, fine):
        self.same(what, bool(fine), True)

    def finish(self):
        print(f"{self.right} checks right, {len(self.wrong)} wrong")
        if self.wrong:
            print("\n".join(self.wrong[:10]))
        sys.exit(1 if self.wrong or not self.right else 0)
