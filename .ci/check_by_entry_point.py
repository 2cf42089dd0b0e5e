"""Check a repair by every set of provisions of one installed distribution, as a user would."""

from __future__ import annotations

import subprocess
import sys

from jacketcheck import load_host

EVALUATED = (0, 1)  # every check ran; whether the repair passes is not the question here

distribution, repair = sys.argv[1:3]
host = load_host()
if host.problems:
    sys.exit("\n".join(str(problem) for problem in host.problems))
brought = {plugin.name for plugin in host.plugins if plugin.distribution == distribution}
own = sorted(
    {
        one.limit_state.provisions
        for one in host.registered
        if one.plugin.name in brought and one.limit_state.provisions != "us"
    }
)
if not own:
    sys.exit(f"{distribution}: no provisions of it are found by its entry point")
for provisions in own:
    command = [sys.executable, "-m", "jacketcheck", "check", repair, "--provisions", provisions]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    print(f"{distribution}: {provisions} on {repair}: exit {done.returncode}")
    if done.returncode not in EVALUATED or distribution not in done.stdout:
        sys.exit(done.stdout + done.stderr)
